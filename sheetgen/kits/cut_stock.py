"""Pieces and stock in whole numbers: what a plan costs, what it loses of the drawer, what may be bought."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.kits.filling import Room

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.kits.filling import Bar, Counts

MOST_BASKETS, MOST_LOOKED = 2000, 200_000


@dataclass(frozen=True, slots=True)
class Stock:
    """Pieces (longest first) and stock, each with one cut; spools without end, of ends so many; cut and keep."""

    sizes: tuple[int, ...]
    demand: tuple[int, ...]
    spools: tuple[int, ...]
    prices: tuple[int, ...]
    ends: tuple[int, ...]
    of_ends: tuple[int, ...]
    cut: int
    keep: int | None

    @property
    def rooms(self) -> tuple[Room, ...]:
        """Spools and then ends."""
        pieces = sum(self.demand)
        spools = (Room(size, price, pieces) for size, price in zip(self.spools, self.prices, strict=True))
        return (*spools, *(Room(size, 0, many) for size, many in zip(self.ends, self.of_ends, strict=True)))

    def kept(self, left: int) -> int:
        """How much of what is left is kept."""
        return left if self.keep is not None and left >= self.keep else 0

    def weight(self, bars: Sequence[Bar]) -> tuple[int, int]:
        """What a plan costs; and the length that the drawer loses by it, then the lengths opened, as one number."""
        cost = sum(self.prices[room] for room, _ in bars if room < len(self.prices))
        return cost, sum(self.lost(room, sum(n * self.sizes[i] for i, n in cut)) for room, cut in bars)

    def lost(self, room: int, used: int) -> int:
        """What the drawer loses when so much, with its cuts, is cut from a length; and one length opened."""
        length = (*self.spools, *self.ends)[room] - self.cut
        before = self.kept(length) if room >= len(self.spools) else 0
        return (before - self.kept(max(0, length - used))) * self.heavy + 1

    @property
    def heavy(self) -> int:
        """One bit of length weighs more than all lengths opened."""
        return sum(self.demand) + 1


def baskets(stock: Stock, least: int, under: int) -> list[tuple[int, Counts]] | None:
    """How many spools of each length may be bought for a cost from `least` on and under another, the cheapest first.

    Only such as are long enough, with all ends; None where there are too many to be looked at one by one.
    """
    total = sum(map(int.__mul__, stock.sizes, stock.demand)) - sum(map(int.__mul__, stock.ends, stock.of_ends))
    found: list[tuple[int, Counts]] = []
    looked = 0

    def fill(at: int, price: int, long: int, many: Counts) -> None:
        nonlocal looked
        looked += 1
        if at == len(stock.prices):
            if price >= least and long >= total:
                found.append((price, many))
            return
        last = at + 1 == len(stock.prices)
        first = max(0, -(-(least - price) // stock.prices[at])) if last else 0
        for n in range(first, (under - 1 - price) // stock.prices[at] + 1):
            if looked > MOST_LOOKED or len(found) > MOST_BASKETS:
                return
            fill(at + 1, price + n * stock.prices[at], long + n * stock.spools[at], (*many, n))

    fill(0, 0, 0, ())
    return None if looked > MOST_LOOKED or len(found) > MOST_BASKETS else sorted(found)
