"""The face of a finished piece: what lies within its outline and not in its openings."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, Self

from sheetgen.base.pen import Extent

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.pen import Point

    Run = list[Point]

HALVINGS = 6  # of a step, to where a run leaves the face
CLEAR = 0.42  # mm from an edge: a fine line is half as wide, and so as much of white is left beside the edge


@dataclass(frozen=True, slots=True)
class Face:
    """An outline with its box, and openings with theirs; all are closed lines in mm."""

    outline: Sequence[Point]
    box: Extent
    openings: tuple[tuple[Extent, Sequence[Point]], ...]

    @classmethod
    def of(cls, loops: Sequence[Sequence[Point]]) -> Self | None:
        """The largest of some closed lines is the outline, and the others are openings; None without any."""
        if not loops:
            return None
        outline, *others = sorted(loops, key=_area, reverse=True)
        return cls(outline, _box(outline), tuple((_box(one), one) for one in others))

    def has(self, p: Point) -> bool:
        """Whether a point lies on it, clear of its edges."""
        if not _inside(p, self.outline) or _off(p, self.outline) < CLEAR:
            return False
        near = (loop for box, loop in self.openings if _near(p, box))
        return not any(_inside(p, loop) or _off(p, loop) < CLEAR for loop in near)

    def within(self, run: Run, step: float) -> Iterator[Run]:
        """The parts of a run that lie on it; a gap shorter than a step, mm, may be missed."""
        part: Run = []
        points = list(_followed(run, step))
        there = [self.has(p) for p in points]
        for (a, b), (at_a, at_b) in zip(pairwise(points), pairwise(there), strict=True):
            if at_a and not part:
                part = [a]
            if at_a and at_b:
                part.append(b)
            elif at_a:
                yield [*part, self._edge(a, b)]
                part = []
            elif at_b:
                part = [self._edge(b, a), b]
        if len(part) > 1:
            yield part

    def _edge(self, inner: Point, outer: Point) -> Point:
        """Where a step leaves it."""
        for _ in range(HALVINGS):
            half = (inner[0] + outer[0]) / 2, (inner[1] + outer[1]) / 2
            inner, outer = (half, outer) if self.has(half) else (inner, half)
        return inner


def _followed(run: Run, step: float) -> Iterator[Point]:
    """A run in small steps."""
    yield run[0]
    for (ax, ay), (bx, by) in pairwise(run):
        steps = max(1, math.ceil(math.dist((ax, ay), (bx, by)) / step))
        for i in range(1, steps + 1):
            yield ax + (bx - ax) * i / steps, ay + (by - ay) * i / steps


def _inside(p: Point, loop: Sequence[Point]) -> bool:
    """Whether a point lies in a closed outline: a ray from it crosses that an odd number of times."""
    x, y = p
    odd = False
    for (ax, ay), (bx, by) in zip(loop, [*loop[1:], loop[0]], strict=True):
        if (ay > y) != (by > y) and x < ax + (bx - ax) * (y - ay) / (by - ay):
            odd = not odd
    return odd


def _off(p: Point, loop: Sequence[Point]) -> float:
    """How far a point lies from a closed outline, mm."""
    return min(_from(p, a, b) for a, b in zip(loop, [*loop[1:], loop[0]], strict=True))


def _from(p: Point, a: Point, b: Point) -> float:
    """How far a point lies from a stretch, mm."""
    (x, y), (ax, ay), (dx, dy) = p, a, (b[0] - a[0], b[1] - a[1])
    along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy or 1)
    share = min(1.0, max(0.0, along))
    return math.hypot(x - ax - share * dx, y - ay - share * dy)


def _near(p: Point, box: Extent) -> bool:
    return box.left - CLEAR <= p[0] <= box.right + CLEAR and box.top - CLEAR <= p[1] <= box.bottom + CLEAR


def _box(loop: Sequence[Point]) -> Extent:
    box = Extent()
    box.line(loop)
    return box


def _area(loop: Sequence[Point]) -> float:
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(loop, [*loop[1:], loop[0]], strict=True)))
