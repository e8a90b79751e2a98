"""A closed outline of straight runs, in mm: its area, length and whether it crosses itself."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Outline:
    """A closed outline; the last point joins the first."""

    points: tuple[Point, ...]

    @property
    def width(self) -> float:
        """Across, mm."""
        return max(x for x, _ in self.points) - min(x for x, _ in self.points)

    @property
    def height(self) -> float:
        """Down, mm."""
        return max(y for _, y in self.points) - min(y for _, y in self.points)

    @property
    def area(self) -> float:
        """Enclosed area, mm² (the surveyor's formula)."""
        return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in self._edges())) / 2

    @property
    def perimeter(self) -> float:
        """Length of the line, mm."""
        return sum(math.dist(a, b) for a, b in self._edges())

    @property
    def room(self) -> float:
        """The largest circle round the middle of width and height that stays inside, mm; 0 if that is outside."""
        left, top = min(x for x, _ in self.points), min(y for _, y in self.points)
        middle = (left + self.width / 2, top + self.height / 2)
        return 2 * min(apart(middle, a, b) for a, b in self._edges()) if self.holds(middle) else 0.0

    def holds(self, point: Point) -> bool:
        """Whether a point lies inside (a ray from it crosses the line an odd number of times)."""
        (x, y), inside = point, False
        for (x1, y1), (x2, y2) in self._edges():
            if (y1 > y) != (y2 > y) and x < x1 + (y - y1) / (y2 - y1) * (x2 - x1):
                inside = not inside
        return inside

    def scaled(self, factor: float) -> Outline:
        """The same outline, larger or smaller."""
        return Outline(tuple((x * factor, y * factor) for x, y in self.points))

    def placed(self) -> Outline:
        """The same outline with its upper left corner at the origin."""
        left, top = min(x for x, _ in self.points), min(y for _, y in self.points)
        return Outline(tuple((x - left, y - top) for x, y in self.points))

    def crossing(self) -> Point | None:
        """A point where the line crosses itself, if it does."""
        edges = self._edges()
        count = len(edges)
        reached: list[int] = []  # edges that reach as far right as the one in hand, from left to right
        for i in sorted(range(count), key=lambda n: min(edges[n][0][0], edges[n][1][0])):
            a, b = edges[i]
            left, top, bottom = min(a[0], b[0]), min(a[1], b[1]), max(a[1], b[1])
            reached = [j for j in reached if max(edges[j][0][0], edges[j][1][0]) >= left]
            for j in reached:
                c, d = edges[j]
                if abs(i - j) in {1, count - 1} or max(c[1], d[1]) < top or min(c[1], d[1]) > bottom:
                    continue
                if _turn(a, b, c) * _turn(a, b, d) < 0 and _turn(c, d, a) * _turn(c, d, b) < 0:
                    return ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
            reached.append(i)
        return None

    def _edges(self) -> list[tuple[Point, Point]]:
        return list(pairwise((*self.points, self.points[0])))


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def apart(p: Point, a: Point, b: Point) -> float:
    """How far a point is from a stretch of line."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    along = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy or 1)
    t = min(1.0, max(0.0, along))
    return math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy)
