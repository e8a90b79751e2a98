"""What a drawing is drawn onto. Millimetres, x to the right, y down, as on paper."""

from __future__ import annotations

import math
from abc import ABC, abstractmethod
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Sequence

Point = tuple[float, float]
Line = Literal["cut", "fold", "meet", "centre", "fired", "thin", "solid"]
"""Line kinds, named for what they say: cut here; fold; the ends meet here; a centre; its fired size; thin; filled."""
Anchor = Literal["start", "middle", "end"]
STEPS = 128
SIZE = 3.0  # mm high: 8.5 pt, the least that a copy of a copy still reads
FIGURE = 4.24  # mm high: 12 pt, a figure that is set or checked
LETTER = 0.54  # width of a letter of the semibold face, on the mean, in heights
WIDTHS = dict.fromkeys("0123456789", 0.5) | dict.fromkeys(
    " .,:;’'ijl\u00a0\u202f", 0.27
)  # of what is not as wide as a letter
BESIDE = 0.8  # mm between a dimension's words and each of its ends, where they stand over its line


class Pen(ABC):
    """Anything a shape can be drawn onto."""

    @abstractmethod
    def line(self, points: Sequence[Point], kind: Line = "cut", *, closed: bool = False) -> None:
        """A line through points, mm."""

    @abstractmethod
    def oval(self, centre: Point, width: float, height: float, kind: Line = "cut") -> None:
        """An ellipse, its axes along the page."""

    @abstractmethod
    def text(self, at: Point, words: str, *, size: float = SIZE, anchor: Anchor = "start", turn: float = 0) -> None:
        """Words on a baseline, `size` mm high, turned by degrees clockwise."""

    def cover(self, loops: Sequence[Sequence[Point]]) -> None:  # noqa: B027 - a pen that only measures hides nothing
        """Hide what was drawn before inside closed loops; a loop in a loop is an opening."""

    def circle(self, centre: Point, diameter: float, kind: Line = "cut") -> None:
        """A circle."""
        self.oval(centre, diameter, diameter, kind)

    def box(self, corner: Point, width: float, height: float, kind: Line = "cut") -> None:
        """A rectangle from its upper left corner."""
        x, y = corner
        self.line([(x, y), (x + width, y), (x + width, y + height), (x, y + height)], kind, closed=True)

    def cross(self, centre: Point, size: float = 1.6) -> None:
        """A centre mark."""
        x, y = centre
        self.line([(x - size / 2, y), (x + size / 2, y)], "thin")
        self.line([(x, y - size / 2), (x, y + size / 2)], "thin")

    def arrow(self, tip: Point, along: Point) -> None:
        """A slender filled arrow head at `tip`, pointing the way of `along`."""
        length = math.hypot(*along) or 1
        ux, uy = along[0] / length, along[1] / length
        bx, by = tip[0] - 1.8 * ux, tip[1] - 1.8 * uy
        self.line([tip, (bx - 0.32 * uy, by + 0.32 * ux), (bx + 0.32 * uy, by - 0.32 * ux)], "solid", closed=True)

    def across(self, y: float, x1: float, x2: float, words: str, *, to: float) -> None:
        """A dimension from x1 to x2 at height y; its extension lines start at height `to` (manner of ISO 129)."""
        reach = math.copysign(1, y - to)
        for x in (x1, x2):
            self.line([(x, to + reach), (x, y + reach)], "thin")
        narrow = abs(x2 - x1) < _room(words)
        if narrow:
            self.line([(x1 - 4, y), (x2 + 4, y)], "thin")
            self.arrow((x1, y), (1, 0))
            self.arrow((x2, y), (-1, 0))
            self.text((x2 + 4.6, y + 1), words)
        else:
            self.line([(x1, y), (x2, y)], "thin")
            self.arrow((x1, y), (-1, 0))
            self.arrow((x2, y), (1, 0))
            self.text(((x1 + x2) / 2, y - 0.8), words, anchor="middle")

    def inside(self, y: float, x1: float, x2: float, words: str, *, below: float) -> None:
        """A dimension between two edges that it touches itself; one too narrow for its words stands below them."""
        if abs(x2 - x1) < _room(words) + 0.4:
            self.across(below, x1, x2, words, to=y)
            return
        self.line([(x1, y), (x2, y)], "thin")
        self.arrow((x1, y), (-1, 0))
        self.arrow((x2, y), (1, 0))
        self.text(((x1 + x2) / 2, y - 0.8), words, anchor="middle")

    def beside(self, x: float, y1: float, y2: float, words: str, *, to: float) -> None:
        """A dimension from y1 to y2 at x, however short, its words level to the right of it."""
        for y in (y1, y2):
            self.line([(to + 1, y), (x + 1, y)], "thin")
        self.line([(x, y1 - 3), (x, y2 + 3)], "thin")
        self.arrow((x, y1), (0, 1))
        self.arrow((x, y2), (0, -1))
        self.text((x + 1.4, (y1 + y2) / 2 + 1), words)

    def upright(self, x: float, y1: float, y2: float, words: str, *, to: float) -> None:
        """A dimension from y1 to y2 at x; its extension lines start at x = `to`."""
        reach = math.copysign(1, x - to)
        for y in (y1, y2):
            self.line([(to + reach, y), (x + reach, y)], "thin")
        narrow = abs(y2 - y1) < _room(words)
        if narrow:
            self.line([(x, y1 - 4), (x, y2 + 4)], "thin")
            self.arrow((x, y1), (0, 1))
            self.arrow((x, y2), (0, -1))
            self.text((x - 0.8, y1 - 4.6), words, turn=-90)
        else:
            self.line([(x, y1), (x, y2)], "thin")
            self.arrow((x, y1), (0, -1))
            self.arrow((x, y2), (0, 1))
            self.text((x - 0.8, (y1 + y2) / 2), words, anchor="middle", turn=-90)


def _room(words: str) -> float:
    """What a dimension's words, which stand over its line, need between its ends, mm; two arrow heads need 4 mm."""
    return max(4.0, 2 * BESIDE + SIZE * sum(WIDTHS.get(letter, LETTER) for letter in words))


@dataclass(slots=True)
class Moved(Pen):
    """A pen whose paper lies elsewhere."""

    pen: Pen
    by: Point

    def _at(self, p: Point) -> Point:
        return p[0] + self.by[0], p[1] + self.by[1]

    def line(self, points: Sequence[Point], kind: Line = "cut", *, closed: bool = False) -> None:
        """As Pen.line, moved."""
        right, down = self.by
        self.pen.line([(x + right, y + down) for x, y in points], kind, closed=closed)

    def oval(self, centre: Point, width: float, height: float, kind: Line = "cut") -> None:
        """As Pen.oval, moved."""
        self.pen.oval(self._at(centre), width, height, kind)

    def cover(self, loops: Sequence[Sequence[Point]]) -> None:
        """As Pen.cover, moved."""
        self.pen.cover([[self._at(p) for p in loop] for loop in loops])

    def text(self, at: Point, words: str, *, size: float = SIZE, anchor: Anchor = "start", turn: float = 0) -> None:
        """As Pen.text, moved."""
        self.pen.text(self._at(at), words, size=size, anchor=anchor, turn=turn)


@dataclass(slots=True)
class Extent(Pen):
    """A measure of how much paper a drawing takes; words are reckoned by the mean width of a letter."""

    left: float = math.inf
    top: float = math.inf
    right: float = -math.inf
    bottom: float = -math.inf

    def _reach(self, left: float, top: float, right: float, bottom: float) -> None:
        self.left, self.right = min(self.left, left), max(self.right, right)
        self.top, self.bottom = min(self.top, top), max(self.bottom, bottom)

    @property
    def width(self) -> float:
        """Across, mm."""
        return max(0.0, self.right - self.left)

    @property
    def height(self) -> float:
        """Down, mm."""
        return max(0.0, self.bottom - self.top)

    def line(self, points: Sequence[Point], kind: Line = "cut", *, closed: bool = False) -> None:  # noqa: ARG002
        """As Pen.line."""
        if points:
            xs, ys = zip(*points, strict=True)
            self._reach(min(xs), min(ys), max(xs), max(ys))

    def oval(self, centre: Point, width: float, height: float, kind: Line = "cut") -> None:  # noqa: ARG002
        """As Pen.oval."""
        x, y = centre
        self._reach(x - width / 2, y - height / 2, x + width / 2, y + height / 2)

    def text(self, at: Point, words: str, *, size: float = SIZE, anchor: Anchor = "start", turn: float = 0) -> None:
        """As Pen.text."""
        long = LETTER * size * len(words)
        start = {"start": 0.0, "middle": -long / 2, "end": -long}[anchor]
        if not turn:
            self._reach(at[0] + start, at[1] - 0.8 * size, at[0] + (start + long), at[1] + 0.25 * size)
            return
        c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
        box = [(x, y) for x in (start, start + long) for y in (-0.8 * size, 0.25 * size)]
        self.line([(at[0] + x * c - y * s, at[1] + x * s + y * c) for x, y in box])


@dataclass(slots=True)
class Recorder(Pen):
    """A pen that remembers, for tests and for second opinions."""

    lines: list[tuple[Line, list[Point], bool]] = field(default_factory=list)
    ovals: list[tuple[Line, Point, float, float]] = field(default_factory=list)
    texts: list[tuple[Point, str]] = field(default_factory=list)

    def line(self, points: Sequence[Point], kind: Line = "cut", *, closed: bool = False) -> None:
        """As Pen.line."""
        self.lines.append((kind, list(points), closed))

    def oval(self, centre: Point, width: float, height: float, kind: Line = "cut") -> None:
        """As Pen.oval."""
        self.ovals.append((kind, centre, width, height))

    def text(self, at: Point, words: str, *, size: float = SIZE, anchor: Anchor = "start", turn: float = 0) -> None:  # noqa: ARG002
        """As Pen.text."""
        self.texts.append((at, words))

    def replay(self, pen: Pen) -> None:
        """Its lines and ovals on another pen."""
        for kind, points, closed in self.lines:
            pen.line(points, kind, closed=closed)
        for kind, centre, width, height in self.ovals:
            pen.oval(centre, width, height, kind)


def arc(centre: Point, radius: float, start: float, end: float, steps: int = STEPS) -> list[Point]:
    """Points on an arc, angles in degrees clockwise from the right."""
    angles = [math.radians(start + (end - start) * i / steps) for i in range(steps + 1)]
    return [(centre[0] + radius * math.cos(a), centre[1] + radius * math.sin(a)) for a in angles]
