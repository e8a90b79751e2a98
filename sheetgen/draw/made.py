"""What is made of parts, as it is seen in a row of the finished piece: a plait, a tassel."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING

from sheetgen.draw import views
from sheetgen.draw.bits import Bit
from sheetgen.draw.woven import Spot, Strand, woven
from sheetgen.parts.bent_wire import BentWire
from sheetgen.parts.bundle import CordBundle
from sheetgen.parts.slit_strips import SlitStrips

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sheetgen.base.pen import Pen, Point
    from sheetgen.draw.bits import Place
    from sheetgen.parts.piece import Piece

PLIES, SWING, TURN, SLIM = 3, 0.95, 4.2, 0.86  # of a plait, in widths of a strip: how far it swings, one turn, a strip
END = 0.5  # mm of a plait that are hidden at each end
QUARTER = 4  # points that a strip is drawn through in a quarter of its turn
CORDS = 9  # of a tassel that are drawn: more run together on paper
SHELL = 0.5  # mm: how thick the wall of a cap is drawn, of which stock says only the inside


def made(how: str, piece: Piece, others: Sequence[Piece], long: float) -> Bit:
    """What is made of a part, by its name in facts/made.py, `long` mm of it; it may ask the other parts."""
    return MAKERS[how](piece, others, long)


def _plait(strips: Piece, _others: Sequence[Piece], long: float) -> Bit:
    """Three strips plaited flat, led along the row."""
    w = float(strips[SlitStrips.width])
    period, half = TURN * w, (SWING + SLIM / 2) * w

    def led(pen: Pen, place: Place) -> None:
        strands = []
        for ply in range(PLIES):
            for quarter in range(-PLIES * 2, int(4 * long / period) + 4):
                # Over on the way in, as it is plaited; where it goes under, it reaches on below what follows.
                over = quarter % 2
                steps = [(quarter + i / QUARTER) / 4 for i in range(over - 1, QUARTER + 2 - over)]
                path: list[Spot] = []
                for turns in steps:
                    s, t = (turns - ply / PLIES) * period, 2 * math.pi * turns
                    if END <= s <= long - END:
                        path.append((*place(s, math.sin(t) * SWING * w), over + s / long / 2))
                if len(path) > 1:
                    strands.append(Strand(path, SLIM * w, begins=False, ends=False))
        woven(pen, strands, stretch=QUARTER + 2)

    return Bit(lambda pen: pen.box((-half, 0), 2 * half, long), long, led=led)


def _tassel(bundle: Piece, others: Sequence[Piece], long: float) -> Bit:
    """The loop of its stem, the cap, and the cords `long` below it."""
    cap, across = bundle[CordBundle.cap], bundle.usual(CordBundle.across)
    stem = next((one for one in others if one.kind == BentWire.kind), None)
    d = stem[BentWire.wire].thickness if stem is not None else 1.0
    loop = stem[BentWire.form][-1].size.usual if stem is not None else 3.0
    inside, deep = (cap.inside or across, cap.depth or across) if cap is not None else (across, across)
    half, top = inside / 2 + SHELL, loop + 1.5 * d

    def draw(pen: Pen) -> None:
        low = top + deep
        n = min(CORDS, int(bundle[CordBundle.cords]))
        for i in range(n + 1):
            x = (i / n - 0.5) * inside
            pen.line([(x * 0.9, low), (x * 1.15, low + long)], "thin")
        pen.line([(-inside * 0.575, low + long), (inside * 0.575, low + long)], "thin")
        views.loop(pen, 0, loop, d)
        neck, shoulder = d, half * 0.8
        bell = [(neck, top), (shoulder, top + deep * 0.35), (half, low)]
        outline = _rounded([*((-x, y) for x, y in reversed(bell)), *bell])
        pen.cover([outline])
        pen.line(outline, closed=True)

    return Bit(draw, loop + deep + long, d, d)


def _rounded(points: Sequence[Point]) -> list[Point]:
    """A run with its inner corners cut twice (after Chaikin), its ends kept."""
    run = list(points)
    for _ in range(2):
        cut: list[Point] = [run[0]]
        for (x1, y1), (x2, y2) in pairwise(run):
            cut += [(0.75 * x1 + 0.25 * x2, 0.75 * y1 + 0.25 * y2), (0.25 * x1 + 0.75 * x2, 0.25 * y1 + 0.75 * y2)]
        run = [*cut, run[-1]]
    return run


MAKERS: dict[str, Callable[[Piece, Sequence[Piece], float], Bit]] = {"plait": _plait, "tassel": _tassel}
