"""Tube: its strip with the line where the ends meet, the strip on its former, the finished cylinder."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import sketches
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.piece import Piece
from sheetgen.parts.tube import Tube


def _template(pen: Pen, piece: Piece) -> None:
    sketches.strip(pen, piece[Tube.strip_cut], piece[Tube.strip_meets], piece[Tube.wet_length])


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    return sketches.strip_on_former(pen, piece, piece[Tube.former_used], piece.usual(Tube.sheeted) / 2, k)


def _view(pen: Pen, piece: Piece) -> float:
    sketches.cylinder(pen, piece.usual(Tube.fired_outside), piece.usual(Tube.length))
    return piece.usual(Tube.length)


def _side(pen: Pen, piece: Piece) -> float:
    """Level, both its ends as lines."""
    wide, long = piece.usual(Tube.fired_outside), piece.usual(Tube.length)
    pen.box((-wide / 2, 0), wide, long)
    return long


DRAWN = Drawn(Tube.kind, template=_template, diagram=_diagram, view=_view, side=_side, textured=("front", "side"))
