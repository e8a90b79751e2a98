"""Clay by mass: the ball that it is, finished."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.clay_mass import ClayByMass
from sheetgen.parts.piece import Piece


def _view(pen: Pen, piece: Piece) -> float:
    across = piece.usual(ClayByMass.ball) * (1 - piece[ClayByMass.clay].shrinkage.usual)
    pen.circle((0.0, across / 2), across)
    return across


DRAWN = Drawn(ClayByMass.kind, view=_view)
