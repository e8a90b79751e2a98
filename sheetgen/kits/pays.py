"""With how many people a class pays: every number up to the places, since a load more can make it a loss again."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from itertools import groupby
from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.kits.money import Coin

ORDINALS = {2: "second", 3: "third", 4: "fourth", 5: "fifth", 6: "sixth"}


@dataclass(frozen=True, slots=True)
class ClassCost:
    """What a class costs: once (room, teaching, the teacher's piece), for each head, load of the kiln and spare set.

    `loads` and `spares` are how many with 1, 2, … people, up to the places that there are; `spares` may be left out.
    A head costs its part of what all cost, not rounded: `heads` says so in a working, 104.24 ÷ 12.
    """

    once: Decimal
    head: Decimal | Fraction
    load: Decimal
    loads: tuple[int, ...]
    heads: str = ""
    spare: Decimal = Decimal(0)
    spares: tuple[int, ...] = ()

    def __post_init__(self) -> None:
        if min(self.once, self.head, self.load, self.spare, *self.loads, *self.spares, 0) < 0:
            raise CannotBe("no cost of a class is under 0", help="0 or more", field="class")
        if not self.loads:
            raise CannotBe("a class wants places", help="1 or more", field="people")

    def of(self, people: int) -> Fraction:
        """What it costs with so many."""
        more = ((self.loads[people - 1], self.load), (self._spares(people), self.spare))
        return Fraction(self.once) + people * Fraction(self.head) + sum(many * Fraction(each) for many, each in more)

    def working(self, people: int, coin: Coin) -> str:
        """How that is worked."""
        many = f"{people} × {self.heads or coin.bare(self.head)}"
        more = ((self.loads[people - 1], self.load), (self._spares(people), self.spare))
        return " + ".join([coin.bare(self.once), many, *(f"{n} × {coin.bare(each)}" for n, each in more if n)])

    def why(self, people: int) -> str:
        """What there is one more of than with one person fewer: a second load; nothing where it is neither."""
        now, before = self.loads[people - 1], self.loads[people - 2]
        if now != before:
            return f" (a {ORDINALS[now]} load)" if now in ORDINALS else f" ({now} loads)"
        now, before = self._spares(people), self._spares(people - 1)
        if now != before:
            return f" (a {ORDINALS[now]} spare set)" if now in ORDINALS else f" ({now} spare sets)"
        return ""

    def _spares(self, people: int) -> int:
        return self.spares[people - 1] if self.spares else 0


@dataclass(frozen=True, slots=True)
class Pays:
    """Every number of people with which the class pays for itself, and that in words."""

    people: tuple[int, ...]
    told: str


def pays(cost: ClassCost, fee: Decimal, coin: Coin) -> Pays:
    """With how many a class pays at a fee, less its tax. CannotBe for a fee that no number of people makes enough."""
    if Fraction(fee) <= Fraction(cost.head):
        told = f"a fee of {coin.told(fee)} never pays, whatever the number: a head costs {coin.told(cost.head)}"
        raise CannotBe(told, help=f"more than {coin.told(cost.head)}", field="fee")
    places = len(cost.loads)
    good = tuple(n for n in range(1, places + 1) if n * Fraction(fee) >= cost.of(n))
    if not good:
        short = cost.of(places) - places * Fraction(fee)
        return Pays((), f"does not pay, not with {places} either: {coin.told(short)} are short")
    words: list[str] = []
    for paying, run in groupby(range(good[0], places + 1), key=good.__contains__):
        each = list(run)
        if not paying:
            words.append(f"not with {_spelled(each, 'or')}{cost.why(each[0])}")
        elif each[-1] < places or len(each) == 1:
            words.append(f"with {_spelled(each, 'and')}")
        else:
            words.append(f"from {each[0]} on")
    last = f", and {words[-1]}" if len(words) > 1 else words[-1]
    return Pays(good, f"pays {', '.join(words[:-1])}{last}")


def _spelled(each: Sequence[int], joined: str) -> str:
    if len(each) > 2:  # noqa: PLR2004 - a pair is joined
        return f"{each[0]} to {each[-1]}"
    return f" {joined} ".join(map(str, each))
