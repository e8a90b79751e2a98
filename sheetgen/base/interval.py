"""A number with its low and its high end, carried to the last step."""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

# Counts: floor and ceiling with a grain of tolerance, since (5.6 - 2.4 + 0.1) / 1.1 is 2.9999999999999996 in binary.
GRAIN = 1e-9


def floor(x: float) -> int:
    """The whole number at or under x, a hair's rounding forgiven."""
    return math.floor(x + GRAIN)


def ceil(x: float) -> int:
    """The whole number at or over x, a hair's rounding forgiven."""
    return math.ceil(x - GRAIN)


@dataclass(frozen=True, slots=True)
class Interval:
    """Low, usual and high of one quantity, in one unit. Arithmetic keeps all three (interval arithmetic)."""

    usual: float
    low: float
    high: float

    def __post_init__(self) -> None:
        if not all(map(math.isfinite, (self.low, self.usual, self.high))):
            raise ValueError("an interval wants finite numbers")
        if not self.low <= self.usual <= self.high:
            raise ValueError(f"an interval wants low ≤ usual ≤ high, not {self.low}, {self.usual}, {self.high}")

    @property
    def exact(self) -> bool:
        """Whether low and high are one."""
        return self.low == self.high

    def __add__(self, other: Interval | float) -> Interval:
        return over(lambda a, b: a + b, self, other)

    def __sub__(self, other: Interval | float) -> Interval:
        return over(lambda a, b: a - b, self, other)

    def __mul__(self, other: Interval | float) -> Interval:
        return over(lambda a, b: a * b, self, other)

    def __truediv__(self, other: Interval | float) -> Interval:
        by = interval(other)
        if by.low <= 0 <= by.high:
            raise ZeroDivisionError("divided by a number that may be zero")
        return over(lambda a, b: a / b, self, by)

    def __radd__(self, other: float) -> Interval:
        return interval(other) + self

    def __rsub__(self, other: float) -> Interval:
        return interval(other) - self

    def __rmul__(self, other: float) -> Interval:
        return interval(other) * self

    def __rtruediv__(self, other: float) -> Interval:
        return interval(other) / self

    def __neg__(self) -> Interval:
        return Interval(-self.usual, -self.high, -self.low)


def interval(value: Interval | float, low: float | None = None, high: float | None = None) -> Interval:
    """An interval from a plain number, or from a usual value with its ends."""
    if isinstance(value, Interval):
        return value
    return Interval(value, value if low is None else low, value if high is None else high)


def between(low: float, high: float) -> Interval:
    """The range from low to high; its usual value is the middle."""
    return Interval((low + high) / 2, low, high)


def over(function: Callable[..., float], *args: Interval | float) -> Interval:
    """Apply `function` at the usual values and at every corner of the ranges.

    Exact for a function that is monotonic in each argument, as the trade's formulas are.
    """
    each = [interval(a) for a in args]
    usual = function(*(s.usual for s in each))
    corners = [function(*c) for c in itertools.product(*((s.low,) if s.exact else (s.low, s.high) for s in each))]
    return Interval(usual, min(usual, *corners), max(usual, *corners))
