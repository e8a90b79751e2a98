"""The colours of a mix on its seats: by counts, by shares or by parts, whole stones, none over and none short."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import floor
from typing import Literal

from sheetgen.base.exact import percent, plain
from sheetgen.base.trouble import CannotBe

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


def _shared_out(way: Colourway, seats: int) -> Allotted:
    """The whole ones of each share, and what is over to the largest fractions; of equal ones to the first named."""
    exact = [number / way.whole * seats for _, number in way.colours]
    many = [floor(share) for share in exact]
    by_fraction = sorted(range(len(exact)), key=lambda i: many[i] - exact[i])
    for i in by_fraction[: seats - sum(many)]:
        many[i] += 1
    return tuple((name, n) for (name, _), n in zip(way.colours, many, strict=True))
