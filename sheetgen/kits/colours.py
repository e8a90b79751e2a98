"""The colours of a mix on its seats: by counts, by shares or by parts, whole stones, none over and none short."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from sheetgen.base.exact import percent, plain, shared_out
from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from collections.abc import Sequence

By = Literal["counts", "shares", "parts"]
Allotted = tuple[tuple[str, int], ...]
"""Each colour and how many of it, in the order that the colourway names them."""


@dataclass(frozen=True, slots=True)
class Colourway:
    """A mix as it is written: each colour with its count, its share of the whole, or its part."""

    by: By
    colours: tuple[tuple[str, Fraction], ...]

    def __post_init__(self) -> None:
        if not self.colours:
            raise CannotBe("a colourway wants a colour", help="clear: 7, smoke: 5", field="colourways")
        named = [name for name, _ in self.colours]
        if twice := next((name for name in named if named.count(name) > 1), None):
            raise CannotBe(f"'{twice}' stands twice in one colourway", help="each colour once", field="colourways")
        for name, number in self.colours:
            if number <= 0 or (self.by == "counts" and number.denominator != 1):
                wanted = "a whole number from 1 on" if self.by == "counts" else "more than 0"
                raise CannotBe(f"'{name}' cannot be {plain(number)}", help=wanted, field="colourways")
        if self.by == "shares" and self.whole != 1:
            told = f"the shares come to {percent(self.whole)}"
            raise CannotBe(told, help="100 %, or parts such as 7 : 5", field="colourways")

    @property
    def whole(self) -> Fraction:
        """All counts, shares or parts together."""
        return sum((number for _, number in self.colours), Fraction(0))


def in_a_bag(way: Colourway, seats: int) -> Allotted:
    """How many of each colour go on the seats of one piece, or into its bag.

    CannotBe for counts that do not fill the seats.
    """
    if way.by == "counts" and way.whole != seats:
        parts = Colourway("parts", way.colours)
        ratio = " : ".join(plain(number) for _, number in way.colours)
        shared = ", ".join(f"{name} {many}" for name, many in _shared_out(parts, seats))
        helped = f"{seats} in all; or as parts, {ratio}, which are {shared} here"
        raise CannotBe(f"{plain(way.whole)} counted, {seats} seats", help=helped, field="colourways")
    return _shared_out(way, seats)


def in_bags(way: Colourway, seats: int, bags: int) -> Allotted:
    """How many of each colour go into so many bags: each bag is allotted by itself."""
    return tuple((name, many * bags) for name, many in in_a_bag(way, seats))


def in_a_pot(way: Colourway, seats: int, pieces: int) -> Allotted:
    """How many of each colour stand on the table for so many pieces: all their seats are allotted once.

    What is counted is counted for each piece.
    """
    return in_bags(way, seats, pieces) if way.by == "counts" else _shared_out(way, seats * pieces)


def dealt(pot: Allotted, hands: Sequence[int]) -> list[Allotted]:
    """A pot of whole stones given out to hands of so many seats, so that each has its seats filled.

    Seat by seat goes the colour of which most is due; of equal ones the first named. `hands` come to the pot.
    """
    whole = sum(many for _, many in pot)
    given = dict.fromkeys((name for name, _ in pot), 0)
    found = []
    for hand in hands:
        before = dict(given)
        for _ in range(hand):
            seat = sum(given.values()) + 1
            due = {name: many * seat - given[name] * whole for name, many in pot if given[name] < many}
            given[max(due, key=lambda name: due[name])] += 1
        found.append(tuple((name, given[name] - before[name]) for name, _ in pot))
    return found


def _shared_out(way: Colourway, seats: int) -> Allotted:
    many = shared_out(seats, [number for _, number in way.colours])
    return tuple((name, n) for (name, _), n in zip(way.colours, many, strict=True))
