"""A flat piece as it is cut, at true size in mm: its outline with the holes in it, where it lies on its template."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.outline import Outline
from sheetgen.base.pen import Extent, arc

if TYPE_CHECKING:
    from sheetgen.base.pen import Line, Pen, Point

ROUND = 72  # runs that an oval is taken for where its line is followed


@dataclass(frozen=True, slots=True)
class Oval:
    """A circle or an oval: its middle, its width and its height."""

    centre: Point
    width: float
    height: float

    @property
    def points(self) -> tuple[Point, ...]:
        """Points along its line; the last joins the first."""
        turn = arc((0, 0), 0.5, 0, 360, ROUND)[:-1]
        return tuple((self.centre[0] + x * self.width, self.centre[1] + y * self.height) for x, y in turn)

    @property
    def area(self) -> float:
        """Enclosed area, mm²."""
        return math.pi / 4 * self.width * self.height


Shape = Oval | Outline


@dataclass(slots=True)
class Around(Extent):
    """How far an outline reaches; of a traced one, where the origin of its drawing lies, and how many times larger."""

    traced: tuple[Point, float] | None = None


@dataclass(frozen=True, slots=True)
class Flat:
    """One outline of a template. `times`: how many of it one piece takes; `thickness`: what its clay is rolled to, mm.

    `line` is `cut`, or `fold` for a guide that is cut elsewhere. `what` tells it from other outlines of its part. An
    open line, such as the middle of a wire, has `closed` false. Of a strip closed on itself `meets` is how far across
    the ends meet: what lies beyond is cut away. `traced` tells of a drawing that the outline was traced from where its
    origin lies, and how many times larger the outline is.
    """

    outline: Shape
    holes: tuple[Shape, ...] = ()
    times: int = 1
    thickness: float | None = None
    what: str = ""
    line: Line = "cut"
    closed: bool = True
    meets: float | None = None
    traced: tuple[Point, float] | None = None

    def draw(self, pen: Pen) -> None:
        """Outline and holes."""
        for shape in (self.outline, *self.holes):
            _drawn(shape, pen, self.line, closed=self.closed)

    @property
    def extent(self) -> Around:
        """How far it reaches."""
        found = Around(traced=self.traced)
        self.draw(found)
        return found

    @property
    def runs(self) -> list[list[Point]]:
        """Its lines, outline first, each as a run of points; a closed one ends where it began."""
        runs = [list(shape.points) for shape in (self.outline, *self.holes)]
        return [[*run, run[0]] for run in runs] if self.closed else runs


def _drawn(shape: Shape, pen: Pen, line: Line, *, closed: bool) -> None:
    if isinstance(shape, Oval):
        pen.oval(shape.centre, shape.width, shape.height, line)
    else:
        pen.line(shape.points, line, closed=closed)


def box(width: float, height: float, at: Point = (0.0, 0.0)) -> Outline:
    """A rectangle from its upper left corner."""
    x, y = at
    return Outline(((x, y), (x + width, y), (x + width, y + height), (x, y + height)))


def disc(diameter: float, centre: Point | None = None) -> Oval:
    """A circle; its upper left corner at (0, 0) unless its middle is given."""
    return Oval(centre or (diameter / 2, diameter / 2), diameter, diameter)
