"""What is made of parts, as it is seen in a row of the finished piece: a plait, a tassel."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING

from sheetgen.base.interval import GRAIN
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
END = 1.5  # mm of a plait that are hidden at each end, where its strips are cut aslant
QUARTER = 8  # points that a strip is drawn through in a quarter of its turn
CORDS = 9  # of a tassel that are drawn: more run together on paper
SHELL = 0.5  # mm: how thick the wall of a cap is drawn, of which stock says only the inside


def made(how: str, piece: Piece, others: Sequence[Piece], long: float) -> Bit:
    """What is made of a part, by its name in facts/made.py, `long` mm of it; it may ask the other parts."""
    return MAKERS[how](piece, others, long)


def _plait(strips: Piece, _others: Sequence[Piece], long: float) -> Bit:
    """Three strips plaited flat, led along the row."""
    w = float(strips[SlitStrips.width])
    half = (SWING + SLIM / 2) * w

    def led(pen: Pen, place: Place) -> None:
        plaited(pen, w, (END, long - END), place)

    return Bit(lambda pen: pen.box((-half, 0), 2 * half, long), long, led=led)


def plaited(pen: Pen, w: float, reach: tuple[float, float], place: Place) -> None:
    """Three strips, each `w` wide, plaited from one length to another: the outer one goes over on its way in."""
    period, (start, end) = TURN * w, reach
    strands = []
    for ply in range(PLIES):
        first, last = start / period + ply / PLIES, end / period + ply / PLIES
        for quarter in range(int(4 * first), int(4 * last) + 1):
            over = quarter % 2
            more = (1 - over) / 4 / QUARTER  # what goes under reaches on below what follows
            low, high = max(first, quarter / 4 - more), min(last, (quarter + 1) / 4 + more)
            path: list[Spot] = []
            for i in range(QUARTER + 1):
                turns = low + (high - low) * i / QUARTER
                s, x = (turns - ply / PLIES) * period, math.sin(2 * math.pi * turns) * SWING * w
                path.append((*place(s, x), over + s / end / 2))
            if high - low > GRAIN:
                strands.append(Strand(path, SLIM * w, begins=False, ends=False))
    woven(pen, strands, stretch=QUARTER)


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
