"""Graduated strand: round beads, growing to the middle."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import views
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.graduated_strand import GraduatedStrand
from sheetgen.parts.piece import Piece


def _view(pen: Pen, piece: Piece) -> float:
    side = round(piece[GraduatedStrand.each_side])
    largest, step = piece.usual(GraduatedStrand.largest), piece.usual(GraduatedStrand.step)
    sizes = [largest - step * abs(i) for i in range(-side, side + 1)]
    return views.strand(pen, [(one, one) for one in sizes], piece.usual(GraduatedStrand.comes_out))


DRAWN = Drawn(GraduatedStrand.kind, view=_view)
