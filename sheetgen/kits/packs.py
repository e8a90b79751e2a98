"""Packs to buy: the cheapest of all sizes and their least numbers that hold what is needed, by counting every way."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from math import ceil, gcd, lcm
from typing import TYPE_CHECKING

from sheetgen.base.exact import plain
from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sheetgen.base.exact import Exact
    from sheetgen.base.supply import Pack

MOST_STEPS = 2_000_000
"""Of what packs hold, up to the need: seconds of counting. No drawer comes near."""


@dataclass(frozen=True, slots=True)
class Buying:
    """What is bought of one item: packs with their numbers, the largest first; `cost` is None if a price is not known.

    `have` lay in the drawer and goes first; `left` lies there afterwards. All amounts in the item's unit.
    """

    need: Fraction
    have: Fraction
    packs: tuple[tuple[Pack, int], ...]

    @property
    def holds(self) -> Fraction:
        """What all packs hold together."""
        return sum((pack.holds * many for pack, many in self.packs), Fraction(0))

    @property
    def left(self) -> Fraction:
        """What lies in the drawer when all that is needed is gone."""
        return self.have + self.holds - self.need

    @property
    def cost(self) -> Decimal | None:
        """What leaves the till for packs of the item: None where one of them has no price."""
        if any(pack.price is None for pack, _ in self.packs):
            return None
        return sum((pack.price * many for pack, many in self.packs if pack.price is not None), Decimal(0))

    def told(self, unit: str, point: str = ".") -> str:
        """The packs in a row of the list, the smallest first: 1 × 50 g + 5 × 100 g."""
        each = (f"{many} × {plain(pack.holds, point)} {unit}".rstrip() for pack, many in reversed(self.packs))
        return " + ".join(each)


def to_buy(need: Exact, have: Exact, packs: Sequence[Pack]) -> Buying:
    """The cheapest packs that hold need less have; at one price the most content, then the fewest packs.

    Where a price is not known it is the fewest packs, then the least content. Need, have and packs in one unit.
    CannotBe without a pack to buy, for a negative amount, or for sizes that have no common step worth counting in.
    """
    need, have = Fraction(need), Fraction(have)
    if need < 0 or have < 0:
        raise CannotBe("an amount cannot be under 0", help="0 or more", field="have" if have < 0 else "need")
    if need <= have:
        return Buying(need, have, ())
    if not packs:
        raise CannotBe("there is no pack to buy", help="packs: [{holds: 25 g, price: 38 EUR}]", field="packs")
    largest_first = sorted(dict.fromkeys(packs), key=lambda pack: -pack.holds)
    step = common_step(pack.holds for pack in largest_first)
    sizes = [int(pack.holds / step) for pack in largest_first]
    wanted = ceil((need - have) / step)
    at, surely = _surely(largest_first, sizes, wanted)
    wanted -= surely * sizes[at]
    begun = [replace(pack, at_least=1) if surely and i == at else pack for i, pack in enumerate(largest_first)]
    # What can be left out is left out: no more lies over than one pack, or the least number of one size, holds.
    most = wanted + max(size * pack.at_least for size, pack in zip(sizes, begun, strict=True))
    if most * len(sizes) > MOST_STEPS:
        told = f"{plain(need)} cannot be counted out in steps of {plain(step)}"
        raise CannotBe(told, help="sizes of packs in rounder numbers", field="packs")
    taken = _cheapest(begun, sizes, wanted, most)
    taken[at] += surely
    return Buying(need, have, tuple((pack, many) for pack, many in zip(largest_first, taken, strict=True) if many))


def common_step(numbers: Iterable[Exact]) -> Fraction:
    """The largest step that every number is a whole multiple of."""
    each = [Fraction(number) for number in numbers]
    below = lcm(*(one.denominator for one in each))
    return Fraction(gcd(*(int(one * below) for one in each)), below)


def _surely(packs: Sequence[Pack], sizes: Sequence[int], wanted: int) -> tuple[int, int]:
    """Which size costs least for what it holds, and how many of it are bought in any case: of a large need nearly all.

    Of as many packs of other sizes as this one has steps, some together hold a whole multiple of it (a sum of some of n
    whole numbers is a multiple of n), and so many of this one cost no more and are no more. So few others are bought.
    """
    known = all(pack.price is not None for pack in packs)
    prices = [Fraction(pack.price or 0) if known else Fraction(1) for pack in packs]
    at = min(range(len(packs)), key=lambda i: (prices[i] / sizes[i], -sizes[i]))
    others = [i for i in range(len(packs)) if i != at]
    least = sum(sizes[i] * packs[i].at_least for i in others)
    most_of_others = least + (sizes[at] - 1) * max((sizes[i] for i in others), default=0)
    surely = (wanted - most_of_others) // sizes[at]
    return at, surely if surely >= packs[at].at_least else 0


def _cheapest(packs: Sequence[Pack], sizes: Sequence[int], wanted: int, most: int) -> list[int]:
    """How many of each size; contents in whole steps up to `most`.

    A way is weighed in one whole number: its cost, then its packs. `best[i][c]` is the lightest way to c with the sizes
    before i, `begun[i][c]` with the least number of size i or more.
    """
    known = all(pack.price is not None for pack in packs)
    coin = common_step(pack.price or 1 for pack in packs)
    apart = most + 1  # more than any way has packs
    weights = [(int(Fraction(pack.price or 1) / coin) * apart if known else 0) + 1 for pack in packs]
    never = (most + 1) * max(weights) * 2
    best, begun = [[0] + [never] * most], list[list[int]]()
    for pack, size, weight in zip(packs, sizes, weights, strict=True):
        before, least = best[-1], size * pack.at_least
        with_it = [never] * least
        for content in range(least, most + 1):
            first = before[content - least] + weight * pack.at_least
            with_it.append(min(first, with_it[content - size] + weight))
        begun.append(with_it)
        best.append(list(map(min, before, with_it)))
    content = min(
        (c for c in range(wanted, most + 1) if best[-1][c] < never),
        key=lambda c: (best[-1][c] // apart, -c, best[-1][c]) if known else (best[-1][c], c, 0),
    )
    taken = [0] * len(packs)
    for i in reversed(range(len(packs))):
        if best[i + 1][content] == best[i][content]:
            continue
        pack, size, weight = packs[i], sizes[i], weights[i]
        while begun[i][content] != best[i][content - size * pack.at_least] + weight * pack.at_least:
            content, taken[i] = content - size, taken[i] + 1
        content, taken[i] = content - size * pack.at_least, taken[i] + pack.at_least
    return taken
