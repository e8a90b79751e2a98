"""A pen that leaves out points that no eye would miss, so that a picture of many parts stays small."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.pen import SIZE, Anchor, Line, Pen, Point

if TYPE_CHECKING:
    from collections.abc import Sequence

OFF = 0.01  # mm on paper: a twentieth of the finest line


@dataclass(slots=True)
class Sparing(Pen):
    """Hands on runs of few points (after Ramer, and Douglas and Peucker); ovals and words as they are."""

    pen: Pen

    def line(self, points: Sequence[Point], kind: Line = "cut", *, closed: bool = False) -> None:
        """As Pen.line."""
        self.pen.line(spared(points), kind, closed=closed)

    def oval(self, centre: Point, width: float, height: float, kind: Line = "cut") -> None:
        """As Pen.oval."""
        self.pen.oval(centre, width, height, kind)

    def cover(self, loops: Sequence[Sequence[Point]]) -> None:
        """As Pen.cover."""
        self.pen.cover([spared(loop) for loop in loops])

    def text(self, at: Point, words: str, *, size: float = SIZE, anchor: Anchor = "start", turn: float = 0) -> None:
        """As Pen.text."""
        self.pen.text(at, words, size=size, anchor=anchor, turn=turn)


def spared(points: Sequence[Point]) -> list[Point]:
    """The points without those that lie on the way between others, to `OFF`."""
    keep = {0, len(points) - 1}
    todo = [(0, len(points) - 1)]
    while todo:
        first, last = todo.pop()
        off, at = max(
            ((_off(points[i], points[first], points[last]), i) for i in range(first + 1, last)), default=(0, 0)
        )
        if off > OFF:
            keep.add(at)
            todo += [(first, at), (at, last)]
    return [points[i] for i in sorted(keep)]


def _off(p: Point, a: Point, b: Point) -> float:
    """How far a point lies off the run from a to b."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    long = dx * dx + dy * dy
    share = max(0.0, min(1.0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / long)) if long else 0.0
    return math.hypot(p[0] - a[0] - share * dx, p[1] - a[1] - share * dy)
