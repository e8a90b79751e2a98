"""Coil: seen upright."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import views
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.coil import Coil
from sheetgen.parts.piece import Piece


def _view(pen: Pen, piece: Piece) -> float:
    outside, long, pitch = (piece.usual(figure) for figure in (Coil.outside, Coil.long, Coil.pitch))
    views.coil(pen, outside, long, pitch, piece[Coil.wire].thickness)
    return long


DRAWN = Drawn(Coil.kind, view=_view)
