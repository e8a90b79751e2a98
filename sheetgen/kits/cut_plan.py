"""A cutting plan in whole numbers: first what it costs, then the ends that are kept and how many lengths are opened."""

from __future__ import annotations

from bisect import bisect_left, insort
from dataclasses import dataclass
from math import gcd
from typing import TYPE_CHECKING

from sheetgen.kits.cut_search import Search
from sheetgen.kits.filling import Bar, Effort, Kind, Room
from sheetgen.kits.relaxed import Case

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sheetgen.kits.filling import Counts

MOST_LENGTHS = 40  # beyond these the linear programme would take its time
EFFORT, EFFORT_FOR_ENDS = 6_000_000, 1_500_000  # steps, a few seconds
MOST_PRICES = 4_000_000


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
        cost = lost = 0
        rooms = self.rooms
        for room, counts in bars:
            cost += rooms[room].price
            length = rooms[room].size - self.cut
            used = sum(n * size for n, size in zip(counts, self.sizes, strict=True))
            lost += (self.kept(length) if room >= len(self.spools) else 0) - self.kept(max(0, length - used))
        return cost, lost * self.heavy + len(bars)

    @property
    def heavy(self) -> int:
        """One bit of length weighs more than all lengths opened."""
        return sum(self.demand) + 1


@dataclass(frozen=True, slots=True)
class Plan:
    """What is cut of each length, the bound of the cost, and whether no plan costs less."""

    bars: tuple[Bar, ...]
    bound: int
    best: bool


def lightest(stock: Stock) -> Plan | None:
    """The best plan that the effort finds; None where there is none."""
    if not any(stock.demand):
        return Plan((), 0, best=True)
    plans = [plan for spool in range(max(1, len(stock.spools))) if (plan := _longest_first(stock, spool))]
    best = min(plans, key=stock.weight, default=None)
    cost = stock.weight(best)[0] if best is not None else sum(stock.demand) * max(stock.prices, default=0) + 1
    up, down = _prices(stock.prices, cost)
    bound = up(_by_length(stock))
    if len(stock.sizes) <= MOST_LENGTHS:
        if bound < cost:
            kinds = tuple(Kind(r, room.size, room.price) for r, room in enumerate(stock.rooms))
            search = Search(Case(stock.sizes, stock.rooms, kinds), cost, Effort(EFFORT), up, down)
            search.run(stock.demand, tuple(room.many for room in stock.rooms))
            bound, best = max(bound, search.bound), search.bars or best
        if best is not None:
            best = _most_kept(stock, best)
    if best is None:
        return None
    return Plan(best, bound, best=stock.weight(best)[0] <= bound)


def _most_kept(stock: Stock, plan: tuple[Bar, ...]) -> tuple[Bar, ...]:
    """At no more cost, the plan that loses the least of the drawer and opens the fewest, as far as the effort goes."""
    cost, weight = stock.weight(plan)
    kinds = []
    for r, room in enumerate(stock.rooms):
        length = room.size - stock.cut
        lost = (stock.kept(length) if r >= len(stock.spools) else 0) * stock.heavy
        kinds.append(Kind(r, room.size, lost + 1))
        if stock.keep is not None and length > stock.keep:
            kinds.append(Kind(r, length - stock.keep, lost + 1 - length * stock.heavy, stock.heavy))
    many = tuple(min(room.many, cost // room.price) if room.price else room.many for room in stock.rooms)
    case = Case(stock.sizes, stock.rooms, tuple(kinds), over=False)
    search = Search(case, weight, Effort(EFFORT_FOR_ENDS), int, lambda weight: weight - 1)
    search.run(stock.demand, many, cost)
    if search.bars is None:
        return plan
    return tuple(Bar(kinds[k].room, counts) for k, counts in search.bars)


def _longest_first(stock: Stock, spool: int) -> tuple[Bar, ...] | None:
    """The longest piece first, into the least room that holds it: ends, then what is opened, then one more spool.

    Spools of the one length are bought, and of the next that is long enough where it is not; at last each is changed
    for the cheapest that holds what is cut from it. None where ends do not do.
    """
    rooms = stock.rooms
    bars: list[tuple[int, list[int]]] = []
    free: list[tuple[int, int]] = []
    for r in range(len(stock.spools), len(rooms)):
        for _ in range(rooms[r].many):
            free.append((rooms[r].size, len(bars)))
            bars.append((r, [0] * len(stock.sizes)))
    free.sort()
    for i, (size, many) in enumerate(zip(stock.sizes, stock.demand, strict=True)):
        for _ in range(many):
            at = bisect_left(free, (size, 0))
            if at < len(free):
                rest, bar = free.pop(at)
            else:
                long = [r for r in range(len(stock.spools)) if rooms[r].size >= size]
                if not long:
                    return None
                room = spool if spool in long else min(long, key=lambda r: rooms[r].price)
                rest, bar = rooms[room].size, len(bars)
                bars.append((room, [0] * len(stock.sizes)))
            bars[bar][1][i] += 1
            insort(free, (rest - size, bar))
    return tuple(Bar(_cheapest(stock, room, counts), tuple(counts)) for room, counts in bars if any(counts))


def _cheapest(stock: Stock, room: int, counts: Sequence[int]) -> int:
    """The cheapest spool that holds this, if it is cut from a spool."""
    if room >= len(stock.spools):
        return room
    used = sum(n * size for n, size in zip(counts, stock.sizes, strict=True))
    holding = (r for r, size in enumerate(stock.spools) if size >= used)
    return min(holding, key=lambda r: (stock.prices[r], r))


def _by_length(stock: Stock) -> int:
    """What the length of all pieces costs at least, ends being cut to the last bit."""
    total = sum(size * n for size, n in zip(stock.sizes, stock.demand, strict=True))
    rest = total - sum(size * n for size, n in zip(stock.ends, stock.of_ends, strict=True))
    if rest <= 0 or not stock.spools:
        return 0
    return min(-(-rest * price // size) for size, price in zip(stock.spools, stock.prices, strict=True))


def _prices(prices: Counts, most: int) -> tuple[Callable[[int], int], Callable[[int], int]]:
    """The next cost from one on that spools can come to, and the next below it."""
    step = gcd(*prices) or 1
    limit = most // step + 1
    if limit > MOST_PRICES:
        return lambda cost: -(-cost // step) * step, lambda cost: (cost - 1) // step * step
    reached = 1  # a bit for each cost, in steps
    for price in prices:
        shift = price // step
        while shift <= limit:
            reached |= reached << shift
            shift *= 2
        reached &= (1 << (limit + 1)) - 1

    def up(cost: int) -> int:
        steps = max(0, -(-cost // step))
        above = reached >> steps
        return (steps + (above & -above).bit_length() - 1) * step if above else most + 1

    def down(cost: int) -> int:
        below = reached & ((1 << max(0, -(-cost // step))) - 1)
        return (below.bit_length() - 1) * step if below else -1

    return up, down
