"""The pieces that a template cuts: each outline by itself, with the holes in it."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING

from sheetgen.base.outline import Outline
from sheetgen.base.pen import Extent, Recorder, arc

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.pen import Point

GRAIN = 1e-6


def outlines(flat: Recorder) -> list[Recorder]:
    """Every outline in the order drawn, each with what is cut inside it. An open line encloses nothing: then none."""
    lines = [m for m in flat.lines if m[0] == "cut"]
    if not all(closed for _, _, closed in lines):
        return []
    cut = [Recorder([m]) for m in lines] + [Recorder([], [m]) for m in flat.ovals if m[0] == "cut"]
    largest = sorted(cut, key=lambda marks: -area(marks))
    holders: list[Recorder] = []
    for mark in largest:
        holder = next((h for h in holders if _holds(extent_of(h), extent_of(mark))), None)
        if holder is None:
            holders.append(mark)
        else:
            holder.lines += mark.lines
            holder.ovals += mark.ovals
    return [mark for mark in cut if any(mark is h for h in holders)]


def _holds(outer: Extent, inner: Extent) -> bool:
    return (
        inner.left >= outer.left - GRAIN and inner.right <= outer.right + GRAIN
        and inner.top >= outer.top - GRAIN and inner.bottom <= outer.bottom + GRAIN
    )  # fmt: skip


def extent_of(marks: Recorder) -> Extent:
    """How far recorded lines and ovals reach."""
    extent = Extent()
    marks.replay(extent)
    return extent


def area(marks: Recorder) -> float:
    """Area of the largest outline, mm²; its holes are not taken out."""
    lines = [Outline(tuple(points)).area for _, points, closed in marks.lines if closed]
    return max([*lines, *(math.pi / 4 * wide * tall for _, _, wide, tall in marks.ovals)], default=0.0)


def loops(marks: Recorder) -> list[list[Point]]:
    """Every line and oval as a run of points; a closed one ends where it began."""
    ovals = [
        [(centre[0] + x * wide, centre[1] + y * tall) for x, y in arc((0, 0), 0.5, 0, 360, 72)]
        for _, centre, wide, tall in marks.ovals
    ]
    return [*([*points, points[0]] if closed else list(points) for _, points, closed in marks.lines), *ovals]


def sampled(run: Sequence[Point], step: float = 1.0) -> Iterator[Point]:
    """Points along a run, no more than a step apart."""
    for a, b in pairwise(run):
        steps = int(max(abs(b[0] - a[0]), abs(b[1] - a[1])) / step) + 1
        yield from ((a[0] + (b[0] - a[0]) * i / steps, a[1] + (b[1] - a[1]) * i / steps) for i in range(steps + 1))


def within(p: Point, loop: Sequence[Point]) -> bool:
    """Whether a point lies inside a closed run (a ray from it crosses the run an odd number of times)."""
    inside = False
    for a, b in pairwise(loop):
        if (a[1] > p[1]) != (b[1] > p[1]) and p[0] < a[0] + (p[1] - a[1]) * (b[0] - a[0]) / (b[1] - a[1]):
            inside = not inside
    return inside
