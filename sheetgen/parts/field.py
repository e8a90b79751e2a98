"""What a file may give for a part: a length, a count, an item of stock, each with its bounds and its default."""

from __future__ import annotations

from typing import TYPE_CHECKING, Generic, TypeVar

from sheetgen.base.bend import Bend
from sheetgen.base.dimension import COUNT, DENSITY, LENGTH, MASS, TEMPERATURE, TIME, Dimension
from sheetgen.base.material import Item
from sheetgen.base.outline import Outline
from sheetgen.base.spot import Neighbour, Spot

if TYPE_CHECKING:
    from sheetgen.base.printed import Printed

T = TypeVar("T")
Sort = Dimension | type[Item] | type[Outline] | type[Bend] | type[Spot] | type[Neighbour] | tuple[str, ...]


class Field(Generic[T]):
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
        role: str = "",
    ) -> None:
        self.sort, self.about, self.default, self.optional, self.role = sort, about, default, optional, role
        self.above, self.at_least, self.at_most, self.whole = above, at_least, at_most, whole

    def __set_name__(self, owner: type, name: str) -> None:
        self.attribute = name
        self.name = name.rstrip("_").replace("_", " ")

    @property
    def required(self) -> bool:
        """Whether a file must give it."""
        return self.default is None and not self.optional


# fmt: off
def length(about: str, *, default: str | None = None, above: float | None = None, at_least: float | None = None, at_most: float | None = None, role: str = "") -> Field[Printed]:  # noqa: PLR0913 - what a field may say of itself, most of it by name
    """A length, mm."""
    return Field(LENGTH, about, default=default, above=above, at_least=at_least, at_most=at_most, role=role)


def maybe_length(about: str, *, above: float | None = None, at_least: float | None = None, role: str = "") -> Field[Printed | None]:
    """A length that may be left out, mm."""
    return Field(LENGTH, about, optional=True, above=above, at_least=at_least, role=role)


def count(about: str, *, default: str | None = None, at_least: float = 1, at_most: float | None = 10_000) -> Field[Printed]:
    """A whole number of things."""
    return Field(COUNT, about, default=default, at_least=at_least, at_most=at_most, whole=True)


def maybe_count(about: str, *, at_least: float = 1, at_most: float | None = 10_000) -> Field[Printed | None]:
    """A whole number of things that may be left out."""
    return Field(COUNT, about, optional=True, at_least=at_least, at_most=at_most, whole=True)


def ratio(about: str, *, default: str | None = None, at_least: float = 0, at_most: float = 1) -> Field[Printed]:
    """A share, 0 to 1 or in percent."""
    return Field(COUNT, about, default=default, at_least=at_least, at_most=at_most)


def maybe_ratio(about: str, *, at_least: float = 0, at_most: float = 1) -> Field[Printed | None]:
    """A share that may be left out, 0 to 1 or in percent."""
    return Field(COUNT, about, optional=True, at_least=at_least, at_most=at_most)


def maybe_number(about: str, *, at_least: float = 0, at_most: float = 10_000) -> Field[Printed | None]:
    """A number, whole or not, that may be left out."""
    return Field(COUNT, about, optional=True, at_least=at_least, at_most=at_most)


def time(about: str, *, default: str | None = None, above: float | None = None) -> Field[Printed]:
    """A time, min."""
    return Field(TIME, about, default=default, above=above)


def temperature(about: str, *, default: str | None = None, at_least: float, at_most: float) -> Field[Printed]:
    """A temperature, °C."""
    return Field(TEMPERATURE, about, default=default, at_least=at_least, at_most=at_most)


def one_of(about: str, *words: str, role: str = "") -> Field[str]:
    """One of a few words; the first is the default."""
    return Field(tuple(words), about, default=words[0], role=role)


def maybe_mass(about: str, *, above: float | None = None) -> Field[Printed | None]:
    """A mass that may be left out, g."""
    return Field(MASS, about, optional=True, above=above)


def mass(about: str, *, default: str | None = None, above: float | None = None, at_least: float | None = None) -> Field[Printed]:
    """A mass, g."""
    return Field(MASS, about, default=default, above=above, at_least=at_least)


def density(about: str, *, default: str) -> Field[Printed]:
    """A density, g/cm³."""
    return Field(DENSITY, about, default=default, above=0)


ItemT = TypeVar("ItemT", bound=Item)


def item(sort: type[ItemT], about: str, *, role: str = "") -> Field[ItemT]:
    """An item of stock."""
    return Field(sort, about, role=role)


def maybe_item(sort: type[ItemT], about: str, *, role: str = "") -> Field[ItemT | None]:
    """An item of stock that may be left out."""
    return Field(sort, about, optional=True, role=role)


def bends(about: str) -> Field[tuple[Bend, ...]]:
    """A form of bent wire: straights and arcs one after another."""
    return Field(Bend, about, at_least=0)


def spot(about: str) -> Field[Spot | None]:
    """A spot in the front view, as `5 mm, 12 mm`: to the right and down."""
    return Field(Spot, about, optional=True)


def neighbour(about: str, *, role: str = "") -> Field[Neighbour | None]:
    """Another part of the project."""
    return Field(Neighbour, about, optional=True, role=role)


def outline(about: str) -> Field[Outline | None]:
    """A closed outline, as an SVG path in mm."""
    return Field(Outline, about, optional=True)
# fmt: on
