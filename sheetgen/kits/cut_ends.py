"""Of plans that cost the same, the one that keeps the most length in ends, and then opens the fewest lengths."""

from __future__ import annotations

from math import prod
from typing import TYPE_CHECKING

from sheetgen.kits.cut_search import Search
from sheetgen.kits.cut_stock import baskets
from sheetgen.kits.filling import Bar, Effort, Kind, bar, fillings
from sheetgen.kits.relaxed import Case

if TYPE_CHECKING:
    from sheetgen.kits.cut_stock import Stock
    from sheetgen.kits.filling import Counts

EFFORT = 300_000
MOST_FILLINGS = 400_000  # of all lengths, counted one by one

Chain = tuple["Chain", Bar] | None
"""What was cut, the last first."""


def most_kept(stock: Stock, plan: tuple[Bar, ...]) -> tuple[Bar, ...]:
    """A plan that costs no more and leaves the drawer no poorer: exact for a few pieces, else what is soon found."""
    cost, weight = stock.weight(plan)
    bought = [many for _, many in baskets(stock, cost, cost + 1) or ()]
    lengths = sum(stock.of_ends) + max((sum(many) for many in bought), default=0)
    if not bought or lengths * len(bought) * prod((n + 1) * (n + 2) // 2 for n in stock.demand) > MOST_FILLINGS:
        return _soon_found(stock, plan, cost, weight)
    found = [one for many in bought if (one := _one_by_one(stock, many))]
    return min([plan, *found], key=stock.weight)


def _one_by_one(stock: Stock, many: Counts) -> tuple[Bar, ...] | None:
    """The best plan with so many spools of each length: one length of stock after the other, every filling of each."""
    rooms = stock.rooms
    order = [r for r, n in enumerate((*many, *stock.of_ends)) for _ in range(n)]
    room_left = sum(rooms[r].size for r in order)
    states: dict[Counts, tuple[int, Chain]] = {stock.demand: (0, None)}
    for r in order:
        room_left -= rooms[r].size
        after: dict[Counts, tuple[int, Chain]] = {}
        for demand, (weight, chain) in states.items():
            wanted = sum(map(int.__mul__, demand, stock.sizes))
            for counts, used in fillings(stock.sizes, demand, rooms[r].size):
                if wanted - used > room_left:
                    continue
                left = tuple(map(int.__sub__, demand, counts))
                now = weight + (stock.lost(r, used) if used else 0)
                if left not in after or after[left][0] > now:
                    after[left] = (now, (chain, bar(r, counts)) if used else chain)
        states = after
    done = states.get((0,) * len(stock.sizes))
    return None if done is None else _unrolled(done[1])


def _unrolled(chain: Chain) -> tuple[Bar, ...]:
    found = []
    while chain is not None:
        chain, cut = chain
        found.append(cut)
    return tuple(found)


def _soon_found(stock: Stock, plan: tuple[Bar, ...], cost: int, weight: int) -> tuple[Bar, ...]:
    """What the programme cuts when it is to lose least of the drawer, and some steps of trying beyond it."""
    kinds = []
    for r, room in enumerate(stock.rooms):
        length = room.size - stock.cut
        kinds.append(Kind(r, room.size, stock.lost(r, length)))
        if stock.keep is not None and length > stock.keep:
            emptied = stock.lost(r, length) - length * stock.heavy
            kinds.append(Kind(r, length - stock.keep, emptied, stock.heavy))
    many = tuple(min(room.many, cost // room.price) if room.price else room.many for room in stock.rooms)
    case = Case(stock.sizes, stock.rooms, tuple(kinds), over=False)
    search = Search(case, weight, Effort(EFFORT), again=False)
    search.run(stock.demand, many, cost)
    if search.bars is None:
        return plan
    return tuple(one._replace(room=kinds[one.room].room) for one in search.bars)
