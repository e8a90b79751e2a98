"""A template given as texts: each worked from a finished part's printed numbers, so that it is drawn as it is told."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.cases import Cases
from sheetgen.base.flat import Flat, Oval, box
from sheetgen.base.interval import interval
from sheetgen.base.material import Item
from sheetgen.base.outline import Outline
from sheetgen.base.reckoning import holds, reckon, settle
from sheetgen.base.spelling import plain
from sheetgen.base.trouble import CannotBe, Misplaced, Trouble
from sheetgen.parts.field import Field
from sheetgen.parts.figure import Aside, FigureSpec, Flag, Inline

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from sheetgen.base.flat import Shape
    from sheetgen.base.pen import Point
    from sheetgen.base.reckoning import Source
    from sheetgen.base.tree import Node
    from sheetgen.parts.kind import Part
    from sheetgen.parts.piece import Piece

LARGEST = 2000.0  # mm: larger than any piece
SMALLEST = 0.01  # mm²
PER_RUN = 2.0  # degrees of an arc to one straight run: at 50 mm that is 0.008 mm off the arc


@dataclass(frozen=True, slots=True)
class Arc:
    """Round a middle from the point before it on, in degrees as a clock goes."""

    degrees: str
    around: tuple[str, str]


@dataclass(frozen=True, slots=True)
class Hole:
    """A disc or an oval: one size or two; in the middle of the outline unless `at` says where."""

    sizes: tuple[str, ...]
    at: tuple[str, str] | None = None
    when: str = ""


@dataclass(frozen=True, slots=True)
class Template:
    """`shape` is disc, rectangle, oval or points. Every number is a text of the kind, mm."""

    shape: str
    sizes: tuple[str, ...] = ()
    points: tuple[tuple[str, str] | Arc, ...] = ()
    holes: tuple[Hole, ...] = ()
    thickness: str = ""
    times: int = 1
    what: str = ""

    def texts(self) -> Iterator[tuple[str, str, str]]:
        """Every number with its unit and the condition under which it is asked for."""
        yield from ((text, "mm", "") for text in (*self.sizes, *filter(None, [self.thickness])))
        for point in self.points:
            if isinstance(point, Arc):
                yield point.degrees, "", ""
            yield from ((text, "mm", "") for text in (point.around if isinstance(point, Arc) else point))
        for hole in self.holes:
            yield from ((text, "mm", hole.when) for text in (*hole.sizes, *(hole.at or ())))


def drawn_from(templates: Sequence[Template], kind: Callable[[], type[Part]]) -> Callable[[Piece], Iterator[Flat]]:
    """What draws the templates of a kind."""

    def flat(piece: Piece) -> Iterator[Flat]:
        for one in templates:
            try:
                yield _flat(one, _Printed(piece, kind()))
            except (ArithmeticError, ValueError) as fault:
                message = f"{piece.title.lower()}: its outline cannot be drawn: {fault}"
                helped = getattr(fault, "help", "") or "check the sizes of this part against each other"
                raise Misplaced(Trouble(message, piece.places.get(""), helped)) from None

    return flat


def _flat(one: Template, source: _Printed) -> Flat:
    shape = _shape(one, source)
    holes = [_hole(hole, shape, source) for hole in one.holes if source.holds(hole.when)]
    thickness = source.number(one.thickness) if one.thickness else None
    around = Outline(tuple(shape.points))
    if not all(around.holds(point) for hole in holes for point in hole.points):
        raise CannotBe(
            "a hole in it reaches over its edge", "0 mm, 0 mm is its upper left corner, right and down are more"
        )
    if isinstance(shape, Outline):
        left, top = (min(p[i] for p in shape.points) for i in (0, 1))
        holes = [Oval((h.centre[0] - left, h.centre[1] - top), h.width, h.height) for h in holes]
        shape = shape.placed()
    return Flat(shape, tuple(holes), times=one.times, thickness=thickness, what=one.what)


def _shape(one: Template, source: _Printed) -> Shape:
    sizes = [_size(text, source) for text in one.sizes]
    if one.shape in {"disc", "oval"}:
        wide, high = sizes[0], sizes[-1]
        return Oval((wide / 2, high / 2), wide, high)
    if one.shape == "rectangle":
        return box(sizes[0], sizes[1])
    points: list[Point] = []
    for point in one.points:
        if isinstance(point, Arc):
            points += _arc(points[-1], _point(point.around, source), source.number(point.degrees))
        else:
            points.append(_point(point, source))
    # A point twice is one corner: an arc may end where the outline began.
    near = [p for i, p in enumerate(points) if i == 0 or math.dist(p, points[i - 1]) > 1e-9]  # noqa: PLR2004 - a hair
    if len(near) > 1 and math.dist(near[0], near[-1]) < 1e-9:  # noqa: PLR2004 - a hair
        near.pop()
    found = Outline(tuple(near))
    if len(near) < 3 or found.area < SMALLEST:  # noqa: PLR2004 - a triangle at least
        raise CannotBe("it encloses nothing")
    if (crossing := found.crossing()) is not None:
        raise CannotBe(f"it crosses itself near {crossing[0]:.1f}, {crossing[1]:.1f}")
    return found


def _arc(start: Point, middle: Point, degrees: float) -> list[Point]:
    if abs(degrees) > 360:  # noqa: PLR2004 - once round
        raise CannotBe(f"an arc of {degrees:g} degrees goes more than once round")
    runs = max(1, math.ceil(abs(degrees) / PER_RUN))
    x, y = start[0] - middle[0], start[1] - middle[1]
    turns = [math.radians(degrees * i / runs) for i in range(1, runs + 1)]
    return [
        (middle[0] + x * math.cos(t) - y * math.sin(t), middle[1] + x * math.sin(t) + y * math.cos(t)) for t in turns
    ]


def _hole(hole: Hole, shape: Shape, source: _Printed) -> Oval:
    sizes = [_size(text, source) for text in hole.sizes]
    if hole.at:
        centre = _point(hole.at, source)
    elif isinstance(shape, Oval):
        centre = shape.centre
    else:
        ends = [(min(p[i] for p in shape.points), max(p[i] for p in shape.points)) for i in (0, 1)]
        centre = (sum(ends[0]) / 2, sum(ends[1]) / 2)
    return Oval(centre, sizes[0], sizes[-1])


def _size(text: str, source: _Printed) -> float:
    size = source.number(text)
    if size <= 0:
        raise CannotBe(f"'{text}' comes to {size:g} mm")
    return size


def _point(texts: tuple[str, str], source: _Printed) -> Point:
    x, y = map(source.number, texts)
    return x, y


class _Printed:
    """The numbers of a finished part, each as it is printed."""

    key = ""

    def __init__(self, piece: Piece, kind: type[Part]) -> None:
        self.piece, self.kind = piece, kind

    def number(self, text: str) -> float:
        """A text of the kind, worked. CannotBe for what no sheet of paper holds."""
        found = reckon(settle(self.kind.texts.numbers[text], self), self).usual
        if not abs(found) <= LARGEST:
            raise CannotBe(f"'{text}' reaches too far", f"sizes are in mm; at most {LARGEST:g}")
        return found

    def holds(self, condition: str) -> bool:
        """Whether a condition of the kind holds."""
        return not condition or holds(self.kind.texts.conditions[condition], self)

    def cases(self, path: str) -> Cases:
        """A number without its range."""
        head, _, rest = path.partition(".")
        owner = self.kind.names[head]
        if isinstance(owner, FigureSpec):
            return Cases(getattr(self.piece.interval(owner), rest) if rest else float(self.piece[owner]))
        if isinstance(owner, Aside):
            return Cases(getattr(self.piece.interval(owner), rest or "usual"))
        value = self.piece.fields.get(head)
        if isinstance(value, Item):
            below, _, end = rest.partition(".")
            return Cases(getattr(interval(getattr(value, below)), end or "usual"))
        if value is None:
            raise CannotBe(f"'{path}' is not given")
        return Cases(getattr(self.piece.interval(owner), rest) if rest else float(value))

    def given(self, path: str) -> bool:
        """Whether a name stands for something here."""
        head, _, rest = path.partition(".")
        owner = self.kind.names.get(head)
        if isinstance(owner, Flag):
            return self.holds(owner.says)
        if isinstance(owner, FigureSpec):
            return self.piece.has(owner)
        if isinstance(owner, Aside | Inline):
            return True
        value = self.piece.fields.get(head)
        if isinstance(value, Item) and rest:
            return getattr(value, rest.split(".", maxsplit=1)[0]) is not None
        return value is not None

    def true(self, path: str) -> bool:
        """Whether a name holds as a condition: given, and not nothing."""
        if not self.given(path):
            return False
        owner = self.kind.names.get(path.split(".", maxsplit=1)[0])
        of_words = isinstance(owner, Field) and not isinstance(self.piece.fields[owner.attribute], float)
        if isinstance(owner, Flag | Inline) or (of_words and "." not in path):
            return True
        return self.cases(path).usual != 0

    def word(self, path: str) -> str:
        """A field's word, or its item's id."""
        value = self.piece.fields[path]
        return plain(value.id) if isinstance(value, Item) else plain(str(value))

    def tree(self, path: str) -> Node | None:
        """What an inline stands for."""
        owner = self.kind.names.get(path)
        return self.kind.texts.numbers[owner.says] if isinstance(owner, Inline) else None

    def owned(self, kind: str) -> Sequence[float]:
        """None: a tool is chosen in a figure."""
        raise CannotBe(f"a {kind} is chosen in a figure, and not in an outline")

    def series(self, path: str) -> Sequence[Source]:  # noqa: ARG002 - an outline sums nothing
        """None."""
        return ()

    def told(self, mm: float) -> str:
        """A length in print."""
        return self.piece.length(mm).told
