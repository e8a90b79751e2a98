"""With how many people a class pays: every number up to the places, since a load more can make it a loss again."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby
from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from collections.abc import Sequence
    from decimal import Decimal

    from sheetgen.kits.money import Coin

ORDINALS = {2: "second", 3: "third", 4: "fourth", 5: "fifth", 6: "sixth"}


@dataclass(frozen=True, slots=True)
class ClassCost:
    """What a class costs: once (room, teaching), for each head, and for each load of the kiln.

    `loads` is how many with 1, 2, … people, up to the places that there are. A head costs its part of what all cost,
    not rounded: `heads` says so in a working, 104.24 ÷ 12.
    """

    once: Decimal
    head: Decimal | Fraction
    load: Decimal
    loads: tuple[int, ...]
    heads: str = ""

    def __post_init__(self) -> None:
        if min(self.once, self.head, self.load) < 0 or min(self.loads, default=0) < 0:
            raise CannotBe("no cost of a class is under 0", help="0 or more", field="class")
        if not self.loads:
            raise CannotBe("a class wants places", help="1 or more", field="people")

    def of(self, people: int) -> Fraction:
        """What it costs with so many."""
        return Fraction(self.once) + people * Fraction(self.head) + self.loads[people - 1] * Fraction(self.load)

    def working(self, people: int, coin: Coin) -> str:
        """How that is worked."""
        many, loads = f"{people} × {self.heads or coin.bare(self.head)}", self.loads[people - 1]
        return f"{coin.bare(self.once)} + {many}" + (f" + {loads} × {coin.bare(self.load)}" if loads else "")


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
            words.append(f"not with {_spelled(each, 'or')}{_why(cost.loads, each[0])}")
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


def _why(loads: Sequence[int], people: int) -> str:
    now = loads[people - 1]
    if now == loads[people - 2]:
        return ""
    return f" (a {ORDINALS[now]} load)" if now in ORDINALS else f" ({now} loads)"
