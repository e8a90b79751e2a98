"""Bead strand: its beads hanging, or closed to a round."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import views
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.bead_strand import BeadStrand
from sheetgen.parts.piece import Piece


def _view(pen: Pen, piece: Piece) -> float:
    bead = piece[BeadStrand.bead]
    run = [(bead.length.usual, bead.size.usual)] * round(piece[BeadStrand.beads])
    return views.strand(pen, run, piece.usual(BeadStrand.comes_out))


DRAWN = Drawn(BeadStrand.kind, view=_view)
