"""Pens that hand on to another pen, turned, smaller or cut off at an edge; and one that keeps the lines it draws."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from itertools import pairwise
from typing import TYPE_CHECKING

from sheetgen.base.flat import Oval
from sheetgen.base.pen import SIZE, Anchor, Extent, Line, Pen, Point, arc

if TYPE_CHECKING:
    from collections.abc import Sequence

ROUND = 720  # runs in an oval that is cut off at an edge


@dataclass(slots=True)
class Turned(Pen):
    """A pen whose paper is turned a quarter clockwise: what ran across runs down."""

    pen: Pen

    def line(self, points: Sequence[Point], kind: Line = "cut", *, closed: bool = False) -> None:
        """As Pen.line, turned."""
        self.pen.line([(-y, x) for x, y in points], kind, closed=closed)

    def oval(self, centre: Point, width: float, height: float, kind: Line = "cut") -> None:
        """As Pen.oval, turned."""
        self.pen.oval((-centre[1], centre[0]), height, width, kind)

    def cover(self, loops: Sequence[Sequence[Point]]) -> None:
        """As Pen.cover, turned."""
        self.pen.cover([[(-y, x) for x, y in loop] for loop in loops])

    def text(self, at: Point, words: str, *, size: float = SIZE, anchor: Anchor = "start", turn: float = 0) -> None:
        """As Pen.text, turned with the rest."""
        self.pen.text((-at[1], at[0]), words, size=size, anchor=anchor, turn=turn + 90)


@dataclass(slots=True)
class Swung(Pen):
    """A pen whose paper is swung round: what ran down runs the way of `down`, a direction one long, from `at` on."""

    pen: Pen
    at: Point
    down: Point

    def _to(self, p: Point) -> Point:
        ux, uy = self.down
        return self.at[0] + p[0] * uy + p[1] * ux, self.at[1] - p[0] * ux + p[1] * uy

    def line(self, points: Sequence[Point], kind: Line = "cut", *, closed: bool = False) -> None:
        """As Pen.line, swung."""
        self.pen.line([self._to(p) for p in points], kind, closed=closed)

    def oval(self, centre: Point, width: float, height: float, kind: Line = "cut") -> None:
        """As Pen.oval; one that is no circle is drawn as short runs."""
        if math.isclose(width, height):
            self.pen.oval(self._to(centre), width, height, kind)
        else:
            self.line(Oval(centre, width, height).points, kind, closed=True)

    def cover(self, loops: Sequence[Sequence[Point]]) -> None:
        """As Pen.cover, swung."""
        self.pen.cover([[self._to(p) for p in loop] for loop in loops])

    def text(self, at: Point, words: str, *, size: float = SIZE, anchor: Anchor = "start", turn: float = 0) -> None:
        """As Pen.text, swung with the rest."""
        swing = math.degrees(math.atan2(-self.down[0], self.down[1]))
        self.pen.text(self._to(at), words, size=size, anchor=anchor, turn=turn + swing)


@dataclass(slots=True)
class Scaled(Pen):
    """A pen that draws smaller or larger; words keep their size."""

    pen: Pen
    by: float
    at: Point = (0.0, 0.0)

    def _to(self, p: Point) -> Point:
        return self.at[0] + p[0] * self.by, self.at[1] + p[1] * self.by

    def line(self, points: Sequence[Point], kind: Line = "cut", *, closed: bool = False) -> None:
        """As Pen.line, scaled."""
        self.pen.line([self._to(p) for p in points], kind, closed=closed)

    def oval(self, centre: Point, width: float, height: float, kind: Line = "cut") -> None:
        """As Pen.oval, scaled."""
        self.pen.oval(self._to(centre), width * self.by, height * self.by, kind)

    def cover(self, loops: Sequence[Sequence[Point]]) -> None:
        """As Pen.cover, scaled."""
        self.pen.cover([[self._to(p) for p in loop] for loop in loops])

    def text(self, at: Point, words: str, *, size: float = SIZE, anchor: Anchor = "start", turn: float = 0) -> None:
        """As Pen.text, at its scaled place."""
        self.pen.text(self._to(at), words, size=size, anchor=anchor, turn=turn)


@dataclass(slots=True)
class Clipped(Pen):
    """A pen that draws only what lies in a window. Words that begin in it are moved in whole."""

    pen: Pen
    corner: Point
    far: Point

    def _inside(self, p: Point) -> bool:
        return all(self.corner[i] - 1e-9 <= p[i] <= self.far[i] + 1e-9 for i in (0, 1))

    def line(self, points: Sequence[Point], kind: Line = "cut", *, closed: bool = False) -> None:
        """As Pen.line, in runs that end at the edge."""
        if all(self._inside(p) for p in points):
            self.pen.line(points, kind, closed=closed)
            return
        if kind == "solid":
            return
        run: list[Point] = []
        ends = [*points, points[0]] if closed else list(points)
        for a, b in pairwise(ends):
            part = self._part(a, b)
            if part is None or (run and run[-1] != part[0]):
                self._draw(run, kind)
                run = []
            if part is not None:
                run = [*(run or [part[0]]), part[1]]
        self._draw(run, kind)

    def _draw(self, run: list[Point], kind: Line) -> None:
        if len(run) > 1:
            self.pen.line(run, kind)

    def _part(self, a: Point, b: Point) -> tuple[Point, Point] | None:
        """The part of a run that lies in the window (after Liang and Barsky)."""
        begin, end = 0.0, 1.0
        for i in (0, 1):
            step = b[i] - a[i]
            for gap, way in ((a[i] - self.corner[i], -step), (self.far[i] - a[i], step)):
                if abs(way) < 1e-12:  # noqa: PLR2004 - runs along this edge
                    if gap < 0:
                        return None
                elif way < 0:
                    begin = max(begin, gap / way)
                else:
                    end = min(end, gap / way)
        if begin >= end:
            return None
        return _between(a, b, begin), _between(a, b, end)

    def oval(self, centre: Point, width: float, height: float, kind: Line = "cut") -> None:
        """As Pen.oval; one that crosses the edge is drawn as short runs."""
        near = (centre[0] - width / 2, centre[1] - height / 2)
        if self._inside(near) and self._inside((centre[0] + width / 2, centre[1] + height / 2)):
            self.pen.oval(centre, width, height, kind)
            return
        turn = arc((0, 0), 0.5, 0, 360, ROUND)
        self.line([(centre[0] + x * width, centre[1] + y * height) for x, y in turn], kind)

    def text(self, at: Point, words: str, *, size: float = SIZE, anchor: Anchor = "start", turn: float = 0) -> None:
        """As Pen.text, moved so that it lies in the window."""
        if not self._inside(at):
            return
        box = Extent()
        box.text(at, words, size=size, anchor=anchor, turn=turn)
        x = at[0] + max(0.0, self.corner[0] - box.left) - max(0.0, box.right - self.far[0])
        y = at[1] + max(0.0, self.corner[1] - box.top) - max(0.0, box.bottom - self.far[1])
        self.pen.text((x, y), words, size=size, anchor=anchor, turn=turn)


@dataclass(slots=True)
class Strokes(Pen):
    """A pen that keeps every line as a run of points, to lay words and covers by; it keeps no words."""

    kept: list[tuple[Line, list[Point], bool]] = field(default_factory=list)

    def line(self, points: Sequence[Point], kind: Line = "cut", *, closed: bool = False) -> None:
        """As Pen.line."""
        self.kept.append((kind, [*points, points[0]] if closed else list(points), closed))

    def oval(self, centre: Point, width: float, height: float, kind: Line = "cut") -> None:
        """As Pen.oval."""
        self.line(Oval(centre, width, height).points, kind, closed=True)

    def text(self, at: Point, words: str, *, size: float = SIZE, anchor: Anchor = "start", turn: float = 0) -> None:
        """No words."""

    def runs(self) -> list[list[Point]]:
        """All of them; a closed one ends where it began."""
        return [run for _, run, _ in self.kept]

    def closed(self, kind: Line) -> list[list[Point]]:
        """The closed ones of a kind."""
        return [run for one, run, closed in self.kept if closed and one == kind]

    @property
    def extent(self) -> Extent:
        """How far they reach."""
        found = Extent()
        for run in self.runs():
            found.line(run)
        return found


def _between(a: Point, b: Point, share: float) -> Point:
    """A point on a run; its ends are themselves, so that runs join."""
    if share in {0, 1}:
        return b if share else a
    return a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])
