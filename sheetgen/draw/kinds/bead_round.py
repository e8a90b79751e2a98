"""Beads round a neck or wrist: closed to a round."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import views
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.bead_round import BeadRound
from sheetgen.parts.piece import Piece


def _view(pen: Pen, piece: Piece) -> float:
    bead = piece[BeadRound.bead]
    run = [(bead.length.usual, bead.size.usual)] * round(piece[BeadRound.beads])
    return views.strand(pen, run, piece.usual(BeadRound.comes_out))


DRAWN = Drawn(BeadRound.kind, view=_view)
