"""Different lengths out of equal stock: a lower bound, and heuristics that say when they are at it."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.interval import GRAIN, ceil
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import guard

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

# How hard the heuristics try: no facts of the trade, and no result hangs on them being exact.
MOST_FILLINGS = 2000
MOST_LENGTHS = 60
MOST_LEARNED = 500
LONGER_IS_DEARER = 1.02


@dataclass(frozen=True, slots=True)
class Plan:
    """Which pieces come out of which length of stock, and the fewest that any plan could use."""

    bars: tuple[tuple[float, ...], ...]
    bound: int

    @property
    def best(self) -> bool:
        """Whether no plan can do with fewer: it is at the lower bound. If not, it may or may not be the best."""
        return len(self.bars) == self.bound


def lower_bound(pieces: Sequence[float], stock: float, kerf: float = 0.0) -> int:
    """Fewest lengths of stock by length alone, all mm: Σ (piece + kerf) ÷ (stock + kerf), rounded up.

    CannotBe for a piece longer than the stock.
    """
    _check(pieces, stock, kerf)
    return ceil(sum(piece + kerf for piece in pieces) / (stock + kerf))


def first_fit_decreasing(pieces: Sequence[float], stock: float, kerf: float = 0.0) -> Plan:
    """A heuristic: longest piece first, into the first stock with room. All mm. CannotBe as `lower_bound`."""
    bound = lower_bound(pieces, stock, kerf)
    bars: list[list[float]] = []
    room: list[float] = []
    for piece in sorted(pieces, reverse=True):
        into = next((i for i, left in enumerate(room) if left >= piece + kerf - GRAIN), len(bars))
        if into == len(bars):
            bars.append([])
            room.append(stock + kerf)
        bars[into].append(piece)
        room[into] -= piece + kerf
    return Plan(tuple(map(tuple, bars)), bound)


def fullest_first(pieces: Sequence[float], stock: float, kerf: float = 0.0) -> Plan:
    """A heuristic: fill each stock as full as can be from what is left. All mm. CannotBe as `lower_bound`."""
    bound = lower_bound(pieces, stock, kerf)
    worth = {piece: piece + kerf for piece in pieces}
    left = Counter(pieces)
    bars: list[tuple[float, ...]] = []
    while left:
        bar = _richest(left, stock + kerf, kerf, worth)
        used = Counter(bar)
        times = min(left[piece] // n for piece, n in used.items())
        bars += [bar] * times
        left -= Counter({piece: n * times for piece, n in used.items()})
    return Plan(tuple(bars), bound)


def learned_worth(pieces: Sequence[float], stock: float, kerf: float = 0.0, rounds: int = 60) -> Plan:
    """A heuristic: plan again and again, lengths that left waste behind growing dearer and so being used sooner.

    All mm. Stops at the lower bound or after `rounds` plans. CannotBe as `lower_bound`.
    """
    bound = lower_bound(pieces, stock, kerf)
    wanted = Counter(pieces)
    worth = {piece: piece + kerf for piece in wanted}
    best = first_fit_decreasing(pieces, stock, kerf)
    for _ in range(rounds):
        if best.best:
            break
        left, bars = Counter(wanted), list[tuple[float, ...]]()
        while left:
            bar = _richest(left, stock + kerf, kerf, worth)
            bars.append(bar)
            used = Counter(bar)
            left -= used
            filled = sum(bar) + kerf * len(bar)
            for piece, n in used.items():
                weight = n / (wanted[piece] + left[piece])
                worth[piece] += weight * ((piece + kerf) ** LONGER_IS_DEARER * (stock + kerf) / filled - worth[piece])
        best = min(best, Plan(tuple(bars), bound), key=lambda plan: len(plan.bars))
    return best


def cutting_plan(pieces: Sequence[float], stock: float, kerf: float = 0.0) -> Plan:
    """The best of three heuristics; `Plan.best` says whether none can be better. CannotBe as `lower_bound`."""
    plans = [first_fit_decreasing(pieces, stock, kerf)]
    if len(set(pieces)) <= MOST_LENGTHS:
        plans.append(fullest_first(pieces, stock, kerf))
        if not any(plan.best for plan in plans) and len(pieces) <= MOST_LEARNED:
            plans.append(learned_worth(pieces, stock, kerf))
    return min(plans, key=lambda plan: len(plan.bars))


def _richest(left: Counter[float], room: float, kerf: float, worth: Mapping[float, float]) -> tuple[float, ...]:
    """The filling worth most, found by depth-first search, the search itself bounded."""
    lengths = sorted(left, key=lambda piece: (-worth[piece] / (piece + kerf), -piece))[:MOST_LENGTHS]
    best: tuple[float, tuple[float, ...]] = (-1.0, ())
    looked = 0

    def fill(at: int, rest: float, value: float, chosen: tuple[float, ...]) -> None:
        nonlocal best, looked
        looked += 1
        if value > best[0] + GRAIN:
            best = (value, chosen)
        if at >= len(lengths) or looked > MOST_FILLINGS:
            return
        size, each = lengths[at] + kerf, worth[lengths[at]]
        if value + rest * each / size <= best[0] + GRAIN:
            return
        for n in range(min(left[lengths[at]], int((rest + GRAIN) // size)), -1, -1):
            fill(at + 1, rest - n * size, value + n * each, chosen + (lengths[at],) * n)

    fill(0, room, 0.0, ())
    return best[1]


def _check(pieces: Sequence[float], stock: float, kerf: float) -> None:
    guard.above_zero(stock, "a length of stock", "stock")
    guard.not_below_zero(kerf, "a saw cut", "kerf")
    for piece in pieces:
        guard.above_zero(piece, "a piece", "length")
        if piece > stock + GRAIN:
            raise CannotBe(
                f"a piece of {guard.shown(piece)} is longer than the stock of {guard.shown(stock)}",
                help=guard.at_most(stock),
                field="length",
            )
