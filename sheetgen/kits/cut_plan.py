"""The cheapest cutting plan in whole numbers, and the bound of what any plan costs."""

from __future__ import annotations

from bisect import bisect_left, insort
from collections import Counter
from dataclasses import dataclass
from itertools import accumulate
from typing import TYPE_CHECKING

from sheetgen.kits.cut_ends import most_kept
from sheetgen.kits.cut_search import Search
from sheetgen.kits.cut_stock import baskets
from sheetgen.kits.filling import Bar, Effort, Kind
from sheetgen.kits.relaxed import Case

if TYPE_CHECKING:
    from sheetgen.kits.cut_stock import Stock
    from sheetgen.kits.filling import Counts

MOST_LENGTHS = 80  # beyond these the linear programme would take its time
EFFORT = 4_000_000  # steps, a few seconds


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
    bound = min(cost, _by_length(stock))
    if len(stock.sizes) <= MOST_LENGTHS:
        if bound < cost:
            bound, best = _cheaper(stock, best, cost, bound)
        if best is not None:
            best = most_kept(stock, best)
    if best is None:
        return None
    return Plan(best, bound, best=stock.weight(best)[0] <= bound)


def _cheaper(stock: Stock, best: tuple[Bar, ...] | None, cost: int, bound: int) -> tuple[int, tuple[Bar, ...] | None]:
    """The bound of the cost and the best plan: by the programme, then by whatever spools could cost less.

    For so many spools of each length it is asked whether all pieces come out of them: the cheapest first, each for a
    while; then what is not settled, as long as the effort lasts.
    """
    rooms, effort = stock.rooms, Effort(EFFORT)
    case = Case(stock.sizes, rooms, tuple(Kind(r, room.size, room.price) for r, room in enumerate(rooms)))
    search = Search(case, cost, effort)
    search.begin(stock.demand, tuple(room.many for room in rooms))
    best, cost, bound = search.bars or best, search.best, max(bound, search.bound)
    open_still = baskets(stock, bound, cost)
    if open_still is None:
        return bound, best
    ruled_out: list[Counts] = []
    for share in (EFFORT // 8, EFFORT):
        trying, open_still = open_still, []
        for price, many in trying:
            if price >= cost:
                break
            if any(_no_more(many, other) for other in ruled_out):
                continue
            trial = Search(case, price + 1, Effort(min(effort.left, share)), enough=price)
            trial.pool = search.pool
            before = trial.effort.left
            if not effort.spent:
                trial.run(stock.demand, (*many, *stock.of_ends))
            effort.left -= before - trial.effort.left
            if trial.bars is not None:
                best, cost = trial.bars, trial.best
            elif trial.bound > price:
                ruled_out.append(many)
            else:
                open_still.append((price, many))
    return min([cost, *(price for price, _ in open_still)]), best


def _no_more(many: Counts, other: Counts) -> bool:
    """Whether whatever comes out of these comes out of the others: as many of each length, or longer ones."""
    return all(a <= b for a, b in zip(accumulate(many), accumulate(other), strict=True))


def _longest_first(stock: Stock, spool: int) -> tuple[Bar, ...] | None:
    """The longest piece first, into the least room that holds it: ends, then what is opened, then one more spool.

    Spools of the one length are bought, and of the next that is long enough where it is not; at last each is changed
    for the cheapest that holds what is cut from it. None where ends do not do.
    """
    rooms = stock.rooms
    bars: list[tuple[int, Counter[int]]] = []
    free: list[tuple[int, int]] = []
    for r in range(len(stock.spools), len(rooms)):
        for _ in range(rooms[r].many):
            free.append((rooms[r].size, len(bars)))
            bars.append((r, Counter()))
    free.sort()
    for i, (size, many) in enumerate(zip(stock.sizes, stock.demand, strict=True)):
        for _ in range(many):
            at = bisect_left(free, (size, 0))
            if at < len(free):
                rest, bar = free.pop(at)
            else:
                if not stock.spools or stock.spools[0] < size:  # the longest comes first
                    return None
                room = spool if stock.spools[spool] >= size else _cheapest(stock, 0, Counter({i: 1}))
                rest, bar = rooms[room].size, len(bars)
                bars.append((room, Counter()))
            bars[bar][1][i] += 1
            insort(free, (rest - size, bar))
    return tuple(Bar(_cheapest(stock, room, cut), tuple(cut.items())) for room, cut in bars if cut)


def _cheapest(stock: Stock, room: int, cut: Counter[int]) -> int:
    """The cheapest spool that holds this, if it is cut from a spool."""
    if room >= len(stock.spools):
        return room
    used = sum(n * stock.sizes[i] for i, n in cut.items())
    holding = (r for r, size in enumerate(stock.spools) if size >= used)
    return min(holding, key=lambda r: (stock.prices[r], r))


def _by_length(stock: Stock) -> int:
    """What the length of all pieces costs at least, ends being cut to the last bit."""
    total = sum(size * n for size, n in zip(stock.sizes, stock.demand, strict=True))
    rest = total - sum(size * n for size, n in zip(stock.ends, stock.of_ends, strict=True))
    if rest <= 0 or not stock.spools:
        return 0
    return min(-(-rest * price // size) for size, price in zip(stock.spools, stock.prices, strict=True))
