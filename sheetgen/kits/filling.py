"""Filling one length of stock: whole numbers only, a piece counted with the cut that follows it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

Counts = tuple[int, ...]
"""How many of each length, the longest first."""
MOST_FILLINGS = 20_000
MOST_WAYS = 3000


class Room(NamedTuple):
    """A length of stock with one cut more, its price, and how many there are."""

    size: int
    price: int
    many: int


class Kind(NamedTuple):
    """A way to use a room: how full it may be, what it weighs by itself, and what each bit that is cut from it does."""

    room: int
    size: int
    weight: int
    per: int = 0


class Bar(NamedTuple):
    """One length of stock, and which pieces are cut from it and how many of each."""

    room: int
    cut: tuple[tuple[int, int], ...]


def bar(room: int, counts: Counts) -> Bar:
    """What a filling is, without the lengths that it has none of."""
    return Bar(room, tuple((i, n) for i, n in enumerate(counts) if n))


@dataclass(slots=True)
class Effort:
    """How much is still looked at: counted and not timed, so that the same pieces give the same plan."""

    left: int

    @property
    def spent(self) -> bool:
        """Whether it is time to stop."""
        return self.left <= 0


def richest(
    values: Sequence[float], sizes: Sequence[int], limits: Sequence[int], room: int, effort: Effort
) -> tuple[float, Counts]:
    """The most that a filling is worth and that filling; of whole values, exact, or no less where the search is cut."""
    order = [i for i, value in enumerate(values) if value > 0 and limits[i] and sizes[i] <= room]
    order.sort(key=lambda i: -values[i] / sizes[i])
    if not order:
        return 0, (0,) * len(sizes)
    worth, long, most = [values[i] for i in order], [sizes[i] for i in order], [limits[i] for i in order]
    shortest = [min(long[at:]) for at in range(len(order))]
    best: float = 0
    found: list[int] = []
    picked = [0] * len(order)
    looked = 0

    def fill(at: int, rest: int, value: float) -> None:
        nonlocal best, found, looked
        looked += 1
        if value > best:
            best, found = value, picked[:at]
        if at == len(order) or looked > MOST_FILLINGS:
            return
        if (best - value) * long[at] >= rest * worth[at] or rest < shortest[at]:
            return
        for n in range(min(most[at], rest // long[at]), -1, -1):
            picked[at] = n
            fill(at + 1, rest - n * long[at], value + n * worth[at])
        picked[at] = 0

    fill(0, room, 0)
    effort.left -= looked
    counts = [0] * len(sizes)
    for i, n in zip(order, found, strict=False):
        counts[i] = n
    upper = best if looked <= MOST_FILLINGS else max(best, room * worth[0] // long[0] + 1)
    return upper, tuple(counts)


class Fit(NamedTuple):
    """Pieces with their cuts, how many are wanted, and a room; only fillings that leave no room for a piece: `full`."""

    sizes: tuple[int, ...]
    demand: Counts
    room: int
    full: bool


def ways(fit: Fit, gains: Sequence[int], base: int, most: int, effort: Effort) -> Iterator[tuple[int, Counts]]:
    """Every filling with one of the longest piece whose base less its gains is at most `most`: that, and the filling.

    All are whole. Where the effort is spent, some are left out.
    """
    sizes, demand, room, full = fit
    first = next(i for i, n in enumerate(demand) if n)
    last = len(sizes)
    counts = [0] * last
    best: list[tuple[int, int]] = [(0, 1)] * (
        last + 1
    )  # what a bit of length gains at most with the pieces from one on
    for i in reversed(range(first, last)):
        best[i] = best[i + 1]
        if demand[i] and gains[i] * best[i][1] > best[i][0] * sizes[i]:
            best[i] = (gains[i], sizes[i])

    def fill(at: int, rest: int, missed: int) -> Iterator[tuple[int, Counts]]:
        effort.left -= 1
        gain, long = best[at]
        if (missed - most) * long > rest * gain or effort.spent:
            return
        if at == last:
            each = zip(sizes, counts, demand, strict=True)
            if not full or not any(size <= rest and n < wanted for size, n, wanted in each):
                yield missed, tuple(counts)
            return
        for n in range(min(demand[at], rest // sizes[at]), (at == first) - 1, -1):
            counts[at] = n
            yield from fill(at + 1, rest - n * sizes[at], missed - n * gains[at])
        counts[at] = 0

    yield from fill(first, room, base)


def fillings(sizes: Sequence[int], demand: Counts, room: int) -> Iterator[tuple[Counts, int]]:
    """Every filling, the empty one too, and how full it is."""
    counts = [0] * len(sizes)

    def fill(at: int, used: int) -> Iterator[tuple[Counts, int]]:
        if at == len(sizes):
            yield tuple(counts), used
            return
        for n in range(min(demand[at], (room - used) // sizes[at]) + 1):
            counts[at] = n
            yield from fill(at + 1, used + n * sizes[at])
        counts[at] = 0

    yield from fill(0, 0)
