"""The least that any plan can weigh: the linear programme of all fillings, by column generation (Gilmore and Gomory).

The programme itself is worked in floats. Its bound is not: from the prices of the pieces, made whole, it is reckoned
anew in whole numbers, so that a float's dust never proves what is not so.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.kits.filling import Counts, richest

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.kits.filling import Effort, Kind, Room

FINE = 1 << 20  # steps of a whole price to one of a weight
DUST = 1e-7
_Column = tuple[float, list[tuple[int, float]], tuple[int, Counts] | None]


@dataclass(frozen=True, slots=True)
class Case:
    """Pieces (longest first, each with its cut), stock, ways to use it; whether a piece too many does no harm."""

    sizes: tuple[int, ...]
    rooms: tuple[Room, ...]
    kinds: tuple[Kind, ...]
    over: bool = True


@dataclass(frozen=True, slots=True)
class Relaxed:
    """The bound; the prices behind it, in FINE steps: of pieces, of one more of each room, of money; what is cut."""

    bound: int
    pieces: tuple[int, ...]
    rooms: tuple[int, ...]
    money: int
    used: tuple[tuple[float, int, Counts], ...]


class Programme:
    """The simplex method, revised, on what is still to be cut."""

    def __init__(self, case: Case, demand: Counts, many: Counts, budget: int | None, effort: Effort) -> None:
        """`many` of each room are left; `budget` bounds the price of all."""
        self.case, self.demand, self.many, self.budget, self.effort = case, demand, many, budget, effort
        pieces = [i for i, n in enumerate(demand) if n]
        limited = [r for r, n in enumerate(many) if n]
        self.piece_row = {i: row for row, i in enumerate(pieces)}
        self.room_row = {r: len(pieces) + row for row, r in enumerate(limited)}
        self.rows = len(pieces) + len(limited) + (budget is not None)
        right = [demand[i] for i in pieces] + [many[r] for r in limited] + ([] if budget is None else [budget])
        # a hair beside the whole numbers, so that no two rows are at their end at once
        self.x = [n + (row + 1) * DUST for row, n in enumerate(right)]
        self.inverse = [[float(i == j) for j in range(self.rows)] for i in range(self.rows)]
        heavy = 4.0 * max(abs(kind.weight) + kind.per * kind.size for kind in case.kinds) + 1
        self.weights = [heavy if row < len(pieces) else 0.0 for row in range(self.rows)]
        self.basis: list[tuple[int, Counts] | None] = [None] * self.rows
        self.tolerance = DUST * (1 + heavy)
        self.turn = 0  # whose turn it is to offer a new filling

    def solve(self, pool: set[tuple[int, Counts]]) -> Relaxed:
        """The bound and what the programme cuts; fillings that were of use are put into the pool."""
        near = [one for one in pool if self._possible(one)]
        prices = self._prices()
        for _ in range(40 + 12 * self.rows):
            entering = self._slack(prices) or self._from(near, prices) or self._new(prices, pool)
            if entering is None or not self._enter(*entering):
                break
            self.effort.left -= self.rows * self.rows // 8 + len(near) // 2
            if self.effort.spent:
                break
            prices = self._prices()
        return self._told(prices)

    def _possible(self, one: tuple[int, Counts]) -> bool:
        kind = self.case.kinds[one[0]]
        return self.many[kind.room] > 0 and all(map(int.__le__, one[1], self.demand))

    def _prices(self) -> list[float]:
        found = [0.0] * self.rows
        for weight, row in zip(self.weights, self.inverse, strict=True):
            if weight:
                found = [a + weight * b for a, b in zip(found, row, strict=True)]
        return found

    def _slack(self, prices: Sequence[float]) -> _Column | None:
        """A piece too many, or stock or money left over."""
        for row, price in enumerate(prices):
            if row < len(self.piece_row):
                if self.case.over and price < -self.tolerance:
                    return 0.0, [(row, -1.0)], None
            elif price > self.tolerance:
                return 0.0, [(row, 1.0)], None
        return None

    def _rest(self, kind: Kind, prices: Sequence[float]) -> float:
        """What a filling of a kind must be worth to be worth anything."""
        money = self.case.rooms[kind.room].price * prices[-1] if self.budget is not None else 0.0
        return kind.weight - prices[self.room_row[kind.room]] - money

    def _from(self, near: Sequence[tuple[int, Counts]], prices: Sequence[float]) -> _Column | None:
        worth = [prices[self.piece_row[i]] if i in self.piece_row else 0.0 for i in range(len(self.demand))]
        each = [[w - kind.per * s for w, s in zip(worth, self.case.sizes, strict=True)] for kind in self.case.kinds]
        rest = [self._rest(kind, prices) if self.many[kind.room] else 0.0 for kind in self.case.kinds]
        best, found = -self.tolerance, None
        for k, counts in near:
            short = rest[k] - sum(map(float.__mul__, each[k], map(float, counts)))
            if short < best:
                best, found = short, (k, counts)
        return None if found is None else self._column(*found)

    def _new(self, prices: Sequence[float], pool: set[tuple[int, Counts]]) -> _Column | None:
        kinds = self.case.kinds
        for turn in range(len(kinds)):
            k = (self.turn + turn) % len(kinds)
            kind = kinds[k]
            if not self.many[kind.room]:
                continue
            worth = [
                prices[self.piece_row[i]] - kind.per * size if i in self.piece_row else 0.0
                for i, size in enumerate(self.case.sizes)
            ]
            counts = richest(worth, self.case.sizes, self.demand, kind.size, self.effort)[1]
            value = sum(w * n for w, n in zip(worth, counts, strict=True))
            if self._rest(kind, prices) - value < -self.tolerance and any(counts):
                self.turn = k
                pool.add((k, counts))
                return self._column(k, counts)
        return None

    def _column(self, k: int, counts: Counts) -> _Column:
        kind = self.case.kinds[k]
        column = [(self.piece_row[i], float(n)) for i, n in enumerate(counts) if n]
        column.append((self.room_row[kind.room], 1.0))
        if self.budget is not None:
            column.append((self.rows - 1, float(self.case.rooms[kind.room].price)))
        return float(weighed(self.case, k, counts)), column, (k, counts)

    def _enter(self, weight: float, column: list[tuple[int, float]], one: tuple[int, Counts] | None) -> bool:
        """Take a column into the basis; False where nothing bounds it."""
        along = [sum(row[j] * a for j, a in column) for row in self.inverse]
        out = min((i for i, a in enumerate(along) if a > DUST), key=lambda i: self.x[i] / along[i], default=None)
        if out is None:
            return False
        pivot = [a / along[out] for a in self.inverse[out]]
        step = self.x[out] / along[out]
        for i, a in enumerate(along):
            if i != out and a:
                self.inverse[i] = [b - a * p for b, p in zip(self.inverse[i], pivot, strict=True)]
                self.x[i] -= a * step
        self.inverse[out], self.x[out] = pivot, step
        self.weights[out], self.basis[out] = weight, one
        return True

    def _told(self, prices: Sequence[float]) -> Relaxed:
        """The bound that these prices of the pieces prove, whatever they are."""
        case = self.case
        pieces = [int(prices[self.piece_row[i]] * FINE) if i in self.piece_row else 0 for i in range(len(case.sizes))]
        if case.over:
            pieces = [max(0, price) for price in pieces]
        money = max(0, int(-prices[-1] * FINE)) if self.budget is not None else 0
        rooms = [0] * len(case.rooms)
        for kind in case.kinds:
            if self.many[kind.room]:
                worth = [p - kind.per * s * FINE for p, s in zip(pieces, case.sizes, strict=True)]
                most = int(richest(worth, case.sizes, self.demand, kind.size, self.effort)[0])
                over = most - kind.weight * FINE - money * case.rooms[kind.room].price
                rooms[kind.room] = max(rooms[kind.room], over)
        whole = proved(self.demand, self.many, self.budget, pieces, rooms, money)
        used = [
            (x, *one) for x, one in zip(self.x, self.basis, strict=True) if one is not None and x > DUST * self.rows * 9
        ]
        return Relaxed(-(-whole // FINE), tuple(pieces), tuple(rooms), money, tuple(used))


def weighed(case: Case, k: int, counts: Counts) -> int:
    """What a filling of a kind weighs."""
    kind = case.kinds[k]
    return kind.weight + kind.per * sum(n * size for n, size in zip(counts, case.sizes, strict=True))


def proved(  # noqa: PLR0913, PLR0917 - both sides of a programme
    demand: Counts, many: Counts, budget: int | None, pieces: Sequence[int], rooms: Sequence[int], money: int
) -> int:
    """What whole prices prove of what is still to be cut, in FINE steps."""
    found = sum(map(int.__mul__, demand, pieces)) - sum(map(int.__mul__, many, rooms))
    return found - (budget or 0) * money
