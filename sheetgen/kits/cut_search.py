"""The lightest plan: by fillings as the linear programme has them, then by trying every way that could be lighter."""

from __future__ import annotations

from itertools import islice
from typing import TYPE_CHECKING

from sheetgen.kits.filling import MOST_WAYS, Fit, bar, ways
from sheetgen.kits.relaxed import FINE, Programme, proved, weighed

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.kits.filling import Bar, Counts, Effort
    from sheetgen.kits.relaxed import Case, Relaxed

MOST_PIECES = 300  # beyond these a plan is as the programme has it


class Search:
    """Looks for plans lighter than the best that is known; `bars` are of the best found here, `bound` of any plan.

    With `again` the programme is solved anew at every step, so that much is ruled out; else once, and steps are many.
    """

    def __init__(self, case: Case, best: int, effort: Effort, *, again: bool = True, enough: int | None = None) -> None:
        """`best` is the weight that a plan is to be under; one no heavier than `enough` is not looked for a better."""
        self.case, self.best, self.effort, self.again, self.enough = case, best, effort, again, enough
        self.bars: tuple[Bar, ...] | None = None
        self.bound = 0
        self.whole = True  # whether nothing was left untried
        self.pool: set[tuple[int, Counts]] = set()
        self.seen: dict[tuple[Counts, Counts, int | None], int] = {}

    def begin(self, demand: Counts, many: Counts, budget: int | None = None) -> Relaxed:
        """The bound, and one plan as the programme has it."""
        root = self._relaxed(demand, many, budget)
        self.bound = root.bound
        if self.bound < self.best:
            self._dive(demand, many, budget, root)
        return root

    def run(self, demand: Counts, many: Counts, budget: int | None = None) -> None:
        """Search until the best is proved, or the effort is spent."""
        root = self.begin(demand, many, budget)
        enough = self.bound if self.enough is None else self.enough
        if self.best > enough and self.bound < self.best and sum(demand) <= MOST_PIECES:
            self._below(demand, many, budget, 0, (), root)
            if self.whole:
                self.bound = self.best

    def _relaxed(self, demand: Counts, many: Counts, budget: int | None) -> Relaxed:
        return Programme(self.case, demand, many, budget, self.effort).solve(self.pool)

    def _found(self, weight: int, bars: Sequence[Bar]) -> None:
        if weight < self.best:
            self.best, self.bars = weight, tuple(bars)

    def _dive(self, demand: Counts, many: Counts, budget: int | None, relaxed: Relaxed) -> None:
        """Cut what the programme cuts whole times; where it cuts none whole, what it cuts most of once."""
        bars: list[Bar] = []
        weight = 0
        while any(demand):
            whole = [(int(x + 1e-4), k, counts) for x, k, counts in relaxed.used if x >= 1 - 1e-4]
            if not whole:
                if not relaxed.used or self.effort.spent:
                    return
                _, k, counts = max(relaxed.used)
                whole = [(1, k, counts)]
            for times, k, counts in whole:
                for _ in range(times):
                    cut = tuple(map(min, counts, demand))
                    room = self.case.kinds[k].room
                    price = self.case.rooms[room].price
                    if not any(cut) or not many[room] or (budget is not None and price > budget):
                        break
                    demand, many, budget = _less(demand, cut), _one_less(many, room), _spent(budget, price)
                    bars.append(bar(k, cut))
                    weight += weighed(self.case, k, cut)
            if any(demand):
                relaxed = self._relaxed(demand, many, budget)
        self._found(weight, bars)

    def _below(  # noqa: PLR0913, PLR0917 - what is left, and what was done
        self, demand: Counts, many: Counts, budget: int | None, weight: int, bars: tuple[Bar, ...], known: Relaxed
    ) -> None:
        if not any(demand):
            self._found(weight, bars)
            return
        here = (demand, many, budget)
        if self.seen.get(here, weight + 1) <= weight:
            return
        self.seen[here] = weight
        relaxed = known if not bars or not self.again else self._relaxed(demand, many, budget)
        self.effort.left -= 20
        if self.effort.spent:
            self.whole = False
        if (bars and self.again and weight + relaxed.bound >= self.best) or self.effort.spent:
            return
        for least, k, cut in self._ways(demand, many, budget, weight, relaxed):
            room = self.case.kinds[k].room
            if -(-least // FINE) >= self.best:
                continue
            left = (_less(demand, cut), _one_less(many, room), _spent(budget, self.case.rooms[room].price))
            self._below(*left, weight + weighed(self.case, k, cut), (*bars, bar(k, cut)), relaxed)
            if self.best <= (self.bound if self.enough is None else self.enough) or self.effort.spent:
                self.whole = False
                return

    def _ways(
        self, demand: Counts, many: Counts, budget: int | None, weight: int, relaxed: Relaxed
    ) -> list[tuple[int, int, Counts]]:
        """Ways to cut a longest piece that may lead to a lighter plan: the least that all then weighs, and what is cut.

        Those that the programme cuts come first.
        """
        whole = weight * FINE + proved(demand, many, budget, relaxed.pieces, relaxed.rooms, relaxed.money)
        most = (self.best - 1) * FINE - whole
        found = []
        for k, kind in enumerate(self.case.kinds):
            room = self.case.rooms[kind.room]
            if not many[kind.room] or (budget is not None and room.price > budget):
                continue
            gains = [p - kind.per * s * FINE for p, s in zip(relaxed.pieces, self.case.sizes, strict=True)]
            base = kind.weight * FINE + relaxed.rooms[kind.room] + relaxed.money * room.price
            # a filling misses what it weighs and takes of the room, less what its pieces were worth
            fit = Fit(self.case.sizes, demand, kind.size, self.case.over)
            near = islice(ways(fit, gains, base, most, self.effort), MOST_WAYS)
            each = [(whole + missed, k, counts) for missed, counts in near]
            self.whole = self.whole and len(each) < MOST_WAYS
            found += each
        self.whole = self.whole and not self.effort.spent
        used = {(k, counts): x for x, k, counts in relaxed.used}
        return sorted(found, key=lambda way: (-used.get(way[1:], 0.0), way[0], way[1:]))


def _less(demand: Counts, cut: Counts) -> Counts:
    return tuple(map(int.__sub__, demand, cut))


def _one_less(many: Counts, room: int) -> Counts:
    return (*many[:room], many[room] - 1, *many[room + 1 :])


def _spent(budget: int | None, price: int) -> int | None:
    return None if budget is None else budget - price
