"""What a flat piece fires to, drawn inside it: the cut lines of its template, smaller by the shrinkage.

A strip and any other narrow box shares its upper left corner with its ghost, so that it shows; all else shares its
middle. One so narrow that a copier would run the two into one has no ghost, and is told by its size alone. Where two
ends meet, what lies beyond the line is cut away and is not fired.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.cuts import area, extent_of, loops, outlines, sampled, within
from sheetgen.base.pen import Recorder

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.pen import Extent, Point

WORDS = "fires to"
SIZE = 2.4
LEAST = 0.3  # mm between a hole and its ghost
SIDE = 0.6  # mm on each side, or a box shares its corner with its ghost and not its middle
APART = 0.45  # mm between the lines of an outline and its ghost, along one side at the least
CLEAR = 0.9  # mm round the words
PLACES = (20, 8)  # places tried for the words, down and across


def ghosts(flat: Recorder, shrinkage: float) -> list[Recorder]:
    """The ghost of every outline of a template."""
    return [_fired(cut, flat, 1 - shrinkage) for cut in outlines(flat)]


def apart(cut: Recorder, ghost: Recorder) -> bool:
    """Whether an outline and its ghost are two lines to the eye, across and down."""
    a, b = extent_of(cut), extent_of(ghost)
    across, down = max(b.left - a.left, a.right - b.right), max(b.top - a.top, a.bottom - b.bottom)
    return min(across, down) >= APART


def _fired(cut: Recorder, flat: Recorder, keep: float) -> Recorder:
    around = extent_of(cut)
    right = min((x for x, y in _meets(flat) if around.top - 1e-6 <= y <= around.bottom + 1e-6), default=around.right)
    box = not cut.ovals and len(cut.lines) == 1 and _is_box(cut.lines[0][1])
    aside = box and (right < around.right or min(around.width, around.height) * (1 - keep) / 2 < SIDE)
    share = 0.0 if aside else 0.5
    at = (around.left + share * around.width, around.top + share * around.height)

    def moved(p: Point) -> Point:
        return at[0] + (min(p[0], right) - at[0]) * keep, at[1] + (p[1] - at[1]) * keep

    return Recorder(
        [("fired", [moved(p) for p in points], closed) for _, points, closed in cut.lines],
        [("fired", moved(spot), w * keep, h * keep) for _, spot, w, h in cut.ovals if _shows(around, spot, w, keep)],
    )


def _shows(around: Extent, at: Point, width: float, keep: float) -> bool:
    """Whether an oval has a ghost: the outline itself, and a hole in the middle that can be told from its ghost."""
    if width > around.width - 1e-6:
        return True
    middle = ((around.left + around.right) / 2, (around.top + around.bottom) / 2)
    return math.dist(at, middle) < 0.01 and width * (1 - keep) / 2 > LEAST  # noqa: PLR2004 - on one centre


def _meets(flat: Recorder) -> list[Point]:
    """The ends of lines where a strip's ends meet."""
    return [p for kind, points, _ in flat.lines if kind == "meet" for p in points]


def _is_box(points: Sequence[Point]) -> bool:
    xs, ys = {round(p[0], 6) for p in points}, {round(p[1], 6) for p in points}
    return len(points) == 4 and len(xs) == 2 and len(ys) == 2  # noqa: PLR2004 - four corners on two and two lines


def room_for_words(flat: Recorder, ghost: Recorder) -> Point | None:
    """Where "fires to" may begin: inside the ghost, over no other line, as low as it goes. None if nowhere."""
    outline = max(loops(ghost), key=lambda loop: area(Recorder([("fired", loop[:-1], True)])))
    long = 0.5 * SIZE * len(WORDS)
    marks = [p for loop in (*loops(ghost), *loops(flat)) for p in sampled(loop)]
    e = extent_of(ghost)
    for i in range(PLACES[0]):
        y = e.bottom - CLEAR - 0.3 - i * e.height / PLACES[0]
        for j in range(PLACES[1] + 1):
            x = e.left + CLEAR + 0.3 + j * max(0.0, e.width - long - 2 * CLEAR - 0.6) / PLACES[1]
            x1, x2, y1, y2 = x - CLEAR, x + long + CLEAR, y - 0.75 * SIZE - CLEAR, y + CLEAR
            if all(within((a, b), outline) for a in (x1, x2) for b in (y1, y2)) and not any(
                x1 < p[0] < x2 and y1 < p[1] < y2 for p in marks
            ):
                return x, y
    return None
