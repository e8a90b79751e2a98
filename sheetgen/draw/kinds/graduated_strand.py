"""Graduated strand: round beads, growing to the middle."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import views
from sheetgen.draw.bits import Bit, bead
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.graduated_strand import GraduatedStrand
from sheetgen.parts.piece import Piece


def _sizes(piece: Piece) -> list[float]:
    side = round(piece[GraduatedStrand.each_side])
    largest, step = piece.usual(GraduatedStrand.largest), piece.usual(GraduatedStrand.step)
    return [largest - step * abs(i) for i in range(-side, side + 1)]


def _row(piece: Piece) -> list[Bit]:
    return [bead(one, one) for one in _sizes(piece)]


def _view(pen: Pen, piece: Piece) -> float:
    return views.strand(pen, [(one, one) for one in _sizes(piece)], piece.usual(GraduatedStrand.comes_out))


DRAWN = Drawn(GraduatedStrand.kind, view=_view, row=_row)
