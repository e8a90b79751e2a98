"""What a flat piece fires to, drawn inside it: the outline of its template, smaller by the shrinkage.

A strip and any other narrow box shares its upper left corner with its ghost, so that it shows; all else shares its
middle. One so narrow that a copier would run the two into one has no ghost, and is told by its size alone. Where two
ends meet, what lies beyond the line is cut away and is not fired.
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING

from sheetgen.base.flat import Flat, Oval
from sheetgen.base.outline import Outline
from sheetgen.base.pen import LETTER, SIZE

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.base.flat import Shape
    from sheetgen.base.pen import Extent, Point

WORDS = "fires to"
LEAST = 0.55  # mm between a hole and its ghost
SIDE = 0.6  # mm on each side, or a box shares its corner with its ghost and not its middle
APART = 0.55  # mm between the lines of an outline and its ghost, along one side at the least
CLEAR = 0.9  # mm round the words
NEAR = 3.0  # mm at most between the room of the words and the line that they are of
PLACES = (20, 8)  # places tried for the words, down and across


def ghost(cut: Flat, shrinkage: float) -> Flat:
    """What an outline with its holes fires to."""
    keep, around = 1 - shrinkage, cut.extent
    right = around.right if cut.meets is None else min(around.right, cut.meets)
    aside = _is_box(cut.outline) and (right < around.right or min(around.width, around.height) * (1 - keep) / 2 < SIDE)
    share = 0.0 if aside else 0.5
    at = (around.left + share * around.width, around.top + share * around.height)

    def fired(shape: Shape) -> Shape:
        if isinstance(shape, Oval):
            return Oval(moved(shape.centre), shape.width * keep, shape.height * keep)
        return Outline(tuple(moved(p) for p in shape.points))

    def moved(p: Point) -> Point:
        return at[0] + (min(p[0], right) - at[0]) * keep, at[1] + (p[1] - at[1]) * keep

    return Flat(fired(cut.outline), tuple(fired(h) for h in cut.holes if _shows(around, h, keep)), line="fired")


def apart(cut: Flat, fired: Flat) -> bool:
    """Whether an outline and its ghost are two lines to the eye, across and down."""
    a, b = cut.extent, fired.extent
    across, down = max(b.left - a.left, a.right - b.right), max(b.top - a.top, a.bottom - b.bottom)
    return min(across, down) >= APART


def _shows(around: Extent, hole: Shape, keep: float) -> bool:
    """Whether a hole has a ghost: a round one only in the middle, where it can be told from its ghost."""
    if not isinstance(hole, Oval):
        return True
    middle = ((around.left + around.right) / 2, (around.top + around.bottom) / 2)
    return math.dist(hole.centre, middle) < 0.01 and hole.width * (1 - keep) / 2 > LEAST  # noqa: PLR2004 - on one centre


def _is_box(shape: Shape) -> bool:
    if isinstance(shape, Oval):
        return False
    xs, ys = {round(p[0], 6) for p in shape.points}, {round(p[1], 6) for p in shape.points}
    return len(shape.points) == 4 and len(xs) == 2 and len(ys) == 2  # noqa: PLR2004 - four corners on two and two lines


def room_for_words(fired: Flat, drawn: Iterable[Sequence[Point]]) -> Point | None:
    """Where "fires to" may begin: inside the ghost and near its line, over no line that is drawn, as low as it goes.

    None if nowhere: words in the middle of a ring of holes would be read of the ring.
    """
    long = LETTER * SIZE * len(WORDS)
    outline, e = fired.runs[0], fired.extent
    marks = [p for run in (*fired.runs, *drawn) for p in _sampled(run)]
    for i in range(PLACES[0]):
        y = e.bottom - CLEAR - 0.3 - i * e.height / PLACES[0]
        for j in range(PLACES[1] + 1):
            x = e.left + CLEAR + 0.3 + j * max(0.0, e.width - long - 2 * CLEAR - 0.6) / PLACES[1]
            x1, x2, y1, y2 = x - CLEAR, x + long + CLEAR, y - 0.75 * SIZE - CLEAR, y + CLEAR
            if all(_within((a, b), outline) for a in (x1, x2) for b in (y1, y2)) and not any(
                x1 < p[0] < x2 and y1 < p[1] < y2 for p in marks
            ):
                near = min(max(x1 - p[0], p[0] - x2, y1 - p[1], p[1] - y2) for p in _sampled(outline))
                return (x, y) if near < NEAR else None
    return None


def _sampled(run: Sequence[Point], step: float = 1.0) -> Iterator[Point]:
    """Points along a run, no more than a step apart."""
    for a, b in pairwise(run):
        steps = int(max(abs(b[0] - a[0]), abs(b[1] - a[1])) / step) + 1
        yield from ((a[0] + (b[0] - a[0]) * i / steps, a[1] + (b[1] - a[1]) * i / steps) for i in range(steps + 1))


def _within(p: Point, loop: Sequence[Point]) -> bool:
    """Whether a point lies inside a closed run (a ray from it crosses the run an odd number of times)."""
    inside = False
    for a, b in pairwise(loop):
        if (a[1] > p[1]) != (b[1] > p[1]) and p[0] < a[0] + (p[1] - a[1]) * (b[0] - a[0]) / (b[1] - a[1]):
            inside = not inside
    return inside
