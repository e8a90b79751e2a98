"""The loop at an end of a bent wire, in two moves."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe
from sheetgen.draw.cutaway import laid
from sheetgen.draw.gesture import side_by_side
from sheetgen.parts.bent import legs
from sheetgen.parts.bent_wire import BentWire

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.bend import Bend
    from sheetgen.base.pen import Pen, Point
    from sheetgen.draw.gesture import Picture
    from sheetgen.parts.piece import Piece

    Words = tuple[list[str], list[str]]

LEAD = 4.0  # mm of the piece: what is drawn of a straight


def ended(pen: Pen, piece: Piece, words: Words, k: float) -> None:
    """The last two arcs of its form: first the bend, the rest straight on; then the loop, back to the bend.

    What begins with a loop hangs by this one, and is bent upwards.
    """
    before, bend, loop = _ends(piece, piece[BentWire.form][-3:])
    hangs = -1 if piece[BentWire.form][0].degrees else 1
    lead = [_beyond(before[-1], before[-2], LEAD), before[-1]]
    straight = _beyond(bend[-1], bend[-2], -0.6 * _length(loop))
    turn = hangs * math.pi / 2 - _heading(before[-2], before[-1])  # the straight hangs down, or stands up
    moves = [([*lead, *bend[1:], straight], words[0]), ([*lead, *bend[1:], *loop[1:]], words[1])]
    _shown(pen, piece[BentWire.wire].thickness, (lead[-1], turn), moves, k)


def begun(pen: Pen, piece: Piece, words: Words, k: float) -> None:
    """The first two arcs of its form: first the loop, the rest straight on; then its neck bent back."""
    loop, neck, stem = _ends(piece, piece[BentWire.form][:3])
    straight = _beyond(loop[-1], loop[-2], -LEAD - _length(neck))
    turn = -math.pi / 2 - _heading(stem[0], stem[1])  # the stem stands up
    moves = [([*loop, straight], words[0]), ([*loop, *neck[1:], _beyond(stem[0], stem[1], LEAD)], words[1])]
    _shown(pen, piece[BentWire.wire].thickness, (stem[0], turn), moves, k)


def _ends(piece: Piece, pieces: Sequence[Bend]) -> list[list[Point]]:
    """The lines of three pieces of its form. Raises CannotBe where they are no straight with two arcs at its end."""
    if [bool(bend.degrees) for bend in pieces] not in ([False, True, True], [True, True, False]):
        raise CannotBe("its form has no straight with two arcs at this end", "straight, then the bend, then the loop")
    return legs(tuple(pieces), piece[BentWire.wire].thickness)


def _shown(
    pen: Pen, thick: float, at: tuple[Point, float], moves: Sequence[tuple[list[Point], list[str]]], k: float
) -> None:
    """Each move with its words, turned by radians round a point."""
    (x0, y0), turn = at
    c, s = math.cos(turn) * k, math.sin(turn) * k

    def picture(run: list[Point], lines: list[str]) -> Picture:
        path = [((x - x0) * c - (y - y0) * s, (x - x0) * s + (y - y0) * c) for x, y in run]
        return lambda on: laid(on, path, thick * k), lines

    side_by_side(pen, [picture(*move) for move in moves], gap=6.0)


def _heading(a: Point, b: Point) -> float:
    return math.atan2(b[1] - a[1], b[0] - a[0])


def _beyond(end: Point, before: Point, far: float) -> Point:
    """So far back from an end along its run; on beyond it where that is less than nothing."""
    way = _heading(end, before)
    return end[0] + far * math.cos(way), end[1] + far * math.sin(way)


def _length(run: Sequence[Point]) -> float:
    return sum(math.dist(a, b) for a, b in pairwise(run))
