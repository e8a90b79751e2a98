"""A part worked: plain values that do not change and ask nothing of whoever made them. Drawings and pages read it."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, TypeVar, cast, overload

from sheetgen.base.frozen import Frozen
from sheetgen.base.material import Clay
from sheetgen.parts.field import Field
from sheetgen.parts.figure import Aside, FigureSpec

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.base.figure import BenchSize, Figure, Rounding
    from sheetgen.base.flat import Flat, Oval
    from sheetgen.base.interval import Interval
    from sheetgen.base.material import Item
    from sheetgen.base.place import Place
    from sheetgen.base.printed import Printed
    from sheetgen.base.room import Room
    from sheetgen.base.rounding import Rounder

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Take:
    """What all pieces of a part take from stock together, in the item's unit; `each` is what one takes, at its most.

    `blank` is the length and width in mm of one blank of sheet; `spent` what is used up, where the rest comes back.
    """

    item: Item
    amount: Interval
    each: float = 0.0
    blank: tuple[float, float] | None = None
    spent: Interval | None = None


@dataclass(frozen=True, slots=True)
class Piece:
    """One part of one version, worked. `fields` and `figures` are by their names in arithmetic.

    `numbers` are fields and asides unrounded. `roles` is what each role is played by: items, parts' names, numbers.
    `places` is where each field is written, and under no name the part itself; `role_fields` the names of the fields
    and figures that play a role.
    `flat` is its template, `drilled` what is drilled of it on its host's template, `deep` what drying waits for, mm.
    `rooms` is what one of it takes up in the kiln before it shrinks, in one or several pieces; empty where no one knows.
    """

    name: str
    kind: str
    count: int
    rounder: Rounder
    fields: Mapping[str, Any] = field(default_factory=Frozen)
    numbers: Mapping[str, Interval] = field(default_factory=Frozen)
    figures: Mapping[str, Figure] = field(default_factory=Frozen)
    roles: Mapping[str, tuple[Any, ...]] = field(default_factory=Frozen)
    sizes: tuple[BenchSize, ...] = ()
    takes: tuple[Take, ...] = ()
    tools: tuple[tuple[str, float], ...] = ()
    flat: tuple[Flat, ...] = ()
    drilled: tuple[Oval, ...] = ()
    rooms: tuple[Room, ...] = ()
    deep: Interval | None = None
    hazards: tuple[str, ...] = ()
    reshaped: bool = False
    places: Mapping[str, Place] = field(default_factory=Frozen)
    role_fields: Mapping[str, tuple[str, ...]] = field(default_factory=Frozen)

    @overload
    def __getitem__(self, what: FigureSpec) -> Printed: ...
    @overload
    def __getitem__(self, what: Field[T]) -> T: ...
    def __getitem__(self, what: FigureSpec | Field[T]) -> Printed | T:
        """A figure, or a field's number, as it is printed; a field's item, words or place. KeyError for none."""
        if isinstance(what, FigureSpec):
            return self.figures[what.name].printed
        return cast("T", self.fields[what.attribute])

    def has(self, what: FigureSpec) -> bool:
        """Whether this piece has a figure."""
        return what.name in self.figures

    def interval(self, what: FigureSpec | Field[Any] | Aside) -> Interval:
        """A number unrounded: low, usual and high. KeyError where there is none."""
        if isinstance(what, FigureSpec):
            return self.figures[what.name].value
        return self.numbers[what.attribute if isinstance(what, Field) else what.name]

    def usual(self, what: FigureSpec | Field[Any] | Aside) -> float:
        """A number unrounded, at its usual value."""
        return self.interval(what).usual

    def length(self, mm: float, rounding: Rounding = "out") -> Printed:
        """A length that is no figure, printed as its neighbours are."""
        return self.rounder.length(mm, rounding)

    @property
    def title(self) -> str:
        """The part as it is named on the page."""
        return self.name.replace("_", " ").capitalize()

    def playing(self, role: str, sort: type[T]) -> T | None:
        """The first of a sort that plays a role in this part."""
        return next((one for one in self.roles.get(role, ()) if isinstance(one, sort)), None)

    @property
    def clay(self) -> Clay | None:
        """The clay it is made of, or made in."""
        return self.playing("made of", Clay) or self.playing("made in", Clay)
