"""What a flat piece fires to, drawn inside it: the cut lines of its template, smaller by the shrinkage.

A strip and any other plain box shares its upper left corner with its ghost, so that even a narrow one shows; all else
shares its middle. Where two ends meet, what lies beyond the line is cut away and is not fired.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.pen import Extent, Line, Point, Recorder, arc

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

WORDS = "fires to"
SIZE = 2.4
CLEAR = 0.6  # mm round the words
GRAINS = (20, 8)  # places tried for the words, down and across


def cut_marks(flat: Recorder) -> Recorder:
    """The cut lines alone; an open line encloses nothing, so a piece with one (a bent wire) has none."""
    lines = [(k, p, c) for k, p, c in flat.lines if k == "cut"]
    if not all(closed for _, _, closed in lines):
        return Recorder()
    return Recorder(lines, [o for o in flat.ovals if o[0] == "cut"])


def fired(flat: Recorder, shrinkage: float) -> Recorder:
    """The ghost of what is cut."""
    cut = cut_marks(flat)
    ends = min((p[0] for k, points, _ in flat.lines if k == "meet" for p in points), default=None)
    around = extent_of(cut)
    box = not cut.ovals and len(cut.lines) == 1 and _is_box(cut.lines[0][1])
    to = (0.0, 0.0) if box else (0.5, 0.5)
    at = (around.left + to[0] * around.width, around.top + to[1] * around.height)
    keep = 1 - shrinkage
    ghost: Line = "fired"

    def moved(p: Point) -> Point:
        x = p[0] if ends is None else min(p[0], ends)
        return at[0] + (x - at[0]) * keep, at[1] + (p[1] - at[1]) * keep

    return Recorder(
        [(ghost, [moved(p) for p in points], closed) for _, points, closed in cut.lines],
        [(ghost, moved(centre), width * keep, height * keep) for _, centre, width, height in cut.ovals],
    )


def extent_of(marks: Recorder) -> Extent:
    """How far recorded lines and ovals reach."""
    extent = Extent()
    for kind, points, closed in marks.lines:
        extent.line(points, kind, closed=closed)
    for kind, centre, width, height in marks.ovals:
        extent.oval(centre, width, height, kind)
    return extent


def room_for_words(flat: Recorder, ghost: Recorder) -> Point | None:
    """Where "fires to" may begin: inside the ghost, over no other line, as low as it goes. None if nowhere."""
    outline = max(_loops(ghost), key=_area, default=[])
    if not outline:
        return None
    long = 0.5 * SIZE * len(WORDS)
    marks = [p for loop in (*_loops(ghost), *_loops(flat)) for p in _sampled(loop)]
    left, right = min(p[0] for p in outline), max(p[0] for p in outline)
    top, bottom = min(p[1] for p in outline), max(p[1] for p in outline)
    for i in range(GRAINS[0]):
        y = bottom - CLEAR - 0.3 - i * (bottom - top) / GRAINS[0]
        for j in range(GRAINS[1] + 1):
            x = left + CLEAR + 0.3 + j * max(0.0, right - left - long - 2 * CLEAR - 0.6) / GRAINS[1]
            x1, x2, y1, y2 = x - CLEAR, x + long + CLEAR, y - 0.75 * SIZE - CLEAR, y + CLEAR
            if all(_within((a, b), outline) for a in (x1, x2) for b in (y1, y2)) and not any(
                x1 < p[0] < x2 and y1 < p[1] < y2 for p in marks
            ):
                return x, y
    return None


def _is_box(points: Sequence[Point]) -> bool:
    xs, ys = {round(p[0], 6) for p in points}, {round(p[1], 6) for p in points}
    return len(points) == 4 and len(xs) == 2 and len(ys) == 2  # noqa: PLR2004 - four corners on two and two lines


def _loops(marks: Recorder) -> list[list[Point]]:
    ovals = [
        [(centre[0] + x * width, centre[1] + y * height) for x, y in arc((0, 0), 0.5, 0, 360, 72)]
        for _, centre, width, height in marks.ovals
    ]
    return [*([*points, points[0]] if closed else list(points) for _, points, closed in marks.lines), *ovals]


def _sampled(run: Sequence[Point]) -> Iterator[Point]:
    """Points along a run, close enough that no words slip between two."""
    for a, b in zip(run, run[1:], strict=False):
        steps = int(max(abs(b[0] - a[0]), abs(b[1] - a[1])) / 1.0) + 1
        yield from ((a[0] + (b[0] - a[0]) * i / steps, a[1] + (b[1] - a[1]) * i / steps) for i in range(steps + 1))


def _area(loop: Sequence[Point]) -> float:
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(loop, loop[1:], strict=False))) / 2


def _within(p: Point, loop: Sequence[Point]) -> bool:
    inside = False
    for a, b in zip(loop, loop[1:], strict=False):
        if (a[1] > p[1]) != (b[1] > p[1]) and p[0] < a[0] + (p[1] - a[1]) * (b[0] - a[0]) / (b[1] - a[1]):
            inside = not inside
    return inside
