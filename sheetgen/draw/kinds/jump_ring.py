"""Jump ring: round with its inside, or oval with its seam on a long side; hanging, where the next part hangs in it."""

from __future__ import annotations

import math

from sheetgen.base.interval import GRAIN
from sheetgen.base.pen import Pen
from sheetgen.draw import forming, sketches
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.jump_ring import JumpRing
from sheetgen.parts.piece import Piece


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    d, long, wide = piece[JumpRing.wire].thickness, piece.usual(JumpRing.inner), piece.usual(JumpRing.narrow)
    inside, across, wire = piece[JumpRing.inner], piece.length(wide), piece.length(d)
    if piece[JumpRing.shape] == "round":
        rod, words = piece[JumpRing.rod_used], f"Ø {inside.words}"
        under = [f"wire {wire.words}, rod {rod.words}"]
        forming.captioned(pen, lambda on: sketches.round_ring(on, long, d, words, k), under)
        return f"A round ring, inside {inside.told}, wire {wire.told}, wound on a rod of {rod.told}"
    straight, both = piece[JumpRing.shape] == "oval", (inside.words, across.words)
    forming.captioned(
        pen, lambda on: sketches.oval(on, long, wide, d, both, k, straight=straight), [f"wire {wire.words}"]
    )
    oval = f"inside {inside.words} × {across.told}, wire {wire.told}"
    return f"An oval ring, {oval}, its seam in the middle of a long side"


def _view(pen: Pen, piece: Piece) -> float:
    d, long, wide = piece[JumpRing.wire].thickness, piece.usual(JumpRing.inner), piece.usual(JumpRing.narrow)
    path = sketches.oval_path(long, wide, d, straight=piece[JumpRing.shape] == "oval")
    sketches.wire(pen, [(-y, long / 2 + d + x) for x, y in path], d, closed=True)
    return long + d


def _side(pen: Pen, piece: Piece) -> float:
    """On edge: as wide as its wire is thick."""
    d, long = piece[JumpRing.wire].thickness, piece.usual(JumpRing.inner)
    pen.box((-d / 2, 0), d, long + 2 * d)
    return long + d


def _sunk(pen: Pen, piece: Piece) -> float:
    """The half of it that stands out, both its legs cut square."""
    d, long, wide = piece[JumpRing.wire].thickness, piece.usual(JumpRing.inner), piece.usual(JumpRing.narrow)
    path = sketches.oval_path(long, wide, d, straight=piece[JumpRing.shape] == "oval")
    upright = sorted(
        ((-y, long / 2 + d + x) for x, y in path if x <= GRAIN), key=lambda at: math.atan2(at[0], long - at[1])
    )
    sketches.wire(pen, upright, d)
    return long / 2 + d


DRAWN = Drawn(JumpRing.kind, diagram=_diagram, view=_view, side=_side, sunk=_sunk)
