"""What a file may give for a part: a length, a count, an item of stock, each with its bounds and its default."""

from __future__ import annotations

from typing import TYPE_CHECKING, Generic, Self, TypeVar, cast, overload

from sheetgen.base.bend import Bend
from sheetgen.base.dimension import COUNT, LENGTH, MASS, TEMPERATURE, TIME, Dimension
from sheetgen.base.material import Item
from sheetgen.base.outline import Outline
from sheetgen.base.spot import Neighbour, Spot

if TYPE_CHECKING:
    from sheetgen.base.spread import Spread
    from sheetgen.parts.kind import Part

T = TypeVar("T")
Sort = Dimension | type[Item] | type[Outline] | type[Bend] | type[Spot] | type[Neighbour] | tuple[str, ...]


class Given(Generic[T]):
    """A field of a part as the file gives it: read by name, with its bounds and its default."""

    def __init__(  # noqa: PLR0913 - what a field may say of itself, all by name
        self,
        sort: Sort,
        about: str,
        *,
        default: str | None = None,
        optional: bool = False,
        above: float | None = None,
        at_least: float | None = None,
        at_most: float | None = None,
        whole: bool = False,
    ) -> None:
        self.sort, self.about, self.default, self.optional = sort, about, default, optional
        self.above, self.at_least, self.at_most, self.whole = above, at_least, at_most, whole

    def __set_name__(self, owner: type, name: str) -> None:
        self.attribute = name
        self.name = name.rstrip("_").replace("_", " ")

    @overload
    def __get__(self, part: None, owner: type) -> Self: ...
    @overload
    def __get__(self, part: Part, owner: type) -> T: ...
    def __get__(self, part: Part | None, owner: type) -> Self | T:
        if part is None:
            return self
        return cast("T", part.bench.given(part, self))

    @property
    def required(self) -> bool:
        """Whether a file must give it."""
        return self.default is None and not self.optional


# fmt: off
def length(about: str, *, default: str | None = None, above: float | None = None, at_least: float | None = None, at_most: float | None = None) -> Given[Spread]:
    """A length, mm."""
    return Given(LENGTH, about, default=default, above=above, at_least=at_least, at_most=at_most)


def maybe_length(about: str, *, above: float | None = None, at_least: float | None = None) -> Given[Spread | None]:
    """A length that may be left out, mm."""
    return Given(LENGTH, about, optional=True, above=above, at_least=at_least)


def count(about: str, *, default: str | None = None, at_least: float = 1, at_most: float | None = 10_000) -> Given[Spread]:
    """A whole number of things."""
    return Given(COUNT, about, default=default, at_least=at_least, at_most=at_most, whole=True)


def maybe_count(about: str, *, at_least: float = 1, at_most: float | None = 10_000) -> Given[Spread | None]:
    """A whole number of things that may be left out."""
    return Given(COUNT, about, optional=True, at_least=at_least, at_most=at_most, whole=True)


def ratio(about: str, *, default: str | None = None, at_least: float = 0, at_most: float = 1) -> Given[Spread]:
    """A share, 0 to 1 or in percent."""
    return Given(COUNT, about, default=default, at_least=at_least, at_most=at_most)


def maybe_ratio(about: str, *, at_least: float = 0, at_most: float = 1) -> Given[Spread | None]:
    """A share that may be left out, 0 to 1 or in percent."""
    return Given(COUNT, about, optional=True, at_least=at_least, at_most=at_most)


def maybe_number(about: str, *, at_least: float = 0, at_most: float = 10_000) -> Given[Spread | None]:
    """A number, whole or not, that may be left out."""
    return Given(COUNT, about, optional=True, at_least=at_least, at_most=at_most)


def time(about: str, *, default: str | None = None, above: float | None = None) -> Given[Spread]:
    """A time, min."""
    return Given(TIME, about, default=default, above=above)


def temperature(about: str, *, default: str | None = None, at_least: float, at_most: float) -> Given[Spread]:
    """A temperature, °C."""
    return Given(TEMPERATURE, about, default=default, at_least=at_least, at_most=at_most)


def one_of(about: str, *words: str) -> Given[str]:
    """One of a few words; the first is the default."""
    return Given(tuple(words), about, default=words[0])


def maybe_mass(about: str, *, above: float | None = None) -> Given[Spread | None]:
    """A mass that may be left out, g."""
    return Given(MASS, about, optional=True, above=above)


ItemT = TypeVar("ItemT", bound=Item)


def item(sort: type[ItemT], about: str) -> Given[ItemT]:
    """An item of stock."""
    return Given(sort, about)


def maybe_item(sort: type[ItemT], about: str) -> Given[ItemT | None]:
    """An item of stock that may be left out."""
    return Given(sort, about, optional=True)


def bends(about: str) -> Given[tuple[Bend, ...]]:
    """A form of bent wire: straights and arcs one after another."""
    return Given(Bend, about, at_least=0)


def spot(about: str) -> Given[Spot | None]:
    """A spot in the front view, as `5 mm, 12 mm`: to the right and down."""
    return Given(Spot, about, optional=True)


def neighbour(about: str) -> Given[Neighbour | None]:
    """Another part of the project."""
    return Given(Neighbour, about, optional=True)


def outline(about: str) -> Given[Outline | None]:
    """A closed outline, as an SVG path in mm."""
    return Given(Outline, about, optional=True)
# fmt: on
