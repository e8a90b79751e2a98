"""Hole: on the template of the part that it is drilled in, with how far its middle is from the edge."""

from __future__ import annotations

from dataclasses import replace

from sheetgen.base.pen import Extent, Pen
from sheetgen.draw.bits import Bit
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.hole import Hole
from sheetgen.parts.piece import Piece

CROSS = 2.4  # mm that its middle is marked beyond it, so that a narrow one is not filled with ink


def _mark(pen: Pen, piece: Piece, around: Extent) -> str:
    """The holes; one measured from an edge with that distance, one that is placed from the left and the top."""
    for one in piece.drilled:
        pen.circle(one.centre, one.width)
        pen.cross(one.centre, one.width + CROSS)
    if piece.drilled:
        x, y = piece.drilled[0].centre
        first = piece[Hole.beside].split(" and ", maxsplit=1)[0]
        placed = piece[Hole.place] is not None
        if placed or first in {"top", "bottom"}:
            ends = (around.top, y) if placed or first == "top" else (y, around.bottom)
            pen.beside(around.right + 4, *ends, _far(piece, *ends), to=x)
        if placed or first in {"left", "right"}:
            side = (around.left, x) if placed or first == "left" else (x, around.right)
            pen.across(around.bottom + 5, *side, _far(piece, *side), to=y)
    return f"Ø {piece[Hole.drill_used].told}"


def _far(piece: Piece, start: float, end: float) -> str:
    """How far apart, in print; what is marked from an edge is a figure."""
    if piece.has(Hole.wet_middle):
        return piece[Hole.wet_middle].words
    return piece.length(end - start, "tenth").words


def _pierces(plate: Bit, hole: Piece) -> Bit:
    """A plate with a hole near its end, for the ring that hangs in it."""
    edge, wide = hole.usual(Hole.edge), hole.usual(Hole.fired)

    def draw(pen: Pen) -> None:
        plate.draw(pen)
        pen.circle((0, plate.end - edge - wide / 2), wide)

    return replace(plate, draw=draw, long=plate.long - edge, wire=edge, plate=False)


DRAWN = Drawn(Hole.kind, mark=_mark, pierces=_pierces)
