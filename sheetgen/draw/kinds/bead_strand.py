"""Bead strand: its beads hanging, or closed to a round."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import views
from sheetgen.draw.bits import Bit, bead, between
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.bead_strand import BeadStrand
from sheetgen.parts.piece import Piece


def _view(pen: Pen, piece: Piece) -> float:
    one = piece[BeadStrand.bead]
    run = [(one.length.usual, one.size.usual)] * round(piece[BeadStrand.beads])
    return views.strand(pen, run, piece.usual(BeadStrand.comes_out))


def _row(piece: Piece) -> list[Bit]:
    """Its beads, with a knot before, between and after them where it is knotted."""
    one, knot = piece[BeadStrand.bead], piece.usual(BeadStrand.knot)
    beads = [bead(one.length.usual, one.size.usual)] * round(piece[BeadStrand.beads])
    if not knot:
        return beads
    tied = bead(knot, knot)
    return [tied, *between(beads, tied), tied]


DRAWN = Drawn(BeadStrand.kind, view=_view, row=_row)
