"""A number in every case: the usual one, and each corner of the uncertain inputs that it hangs on, and of no others.

An uncertain input is named (`silver.shrinkage`), so the same input is the same wherever it turns up: `x − x` is 0.
Exact for what is monotonic in each input, as the trade's formulas are.
"""

from __future__ import annotations

import functools
import itertools
from typing import TYPE_CHECKING

from sheetgen.base.interval import Interval

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

_WIDENED = itertools.count()
MOST = 8  # inputs that may meet in one number before the widest view is taken of what came so far


class Cases:
    """`keys` are the names of its inputs, sorted; `ends` its 2 ** len(keys) corners, the first key slowest."""

    __slots__ = ("ends", "keys", "usual")

    def __init__(self, usual: float, keys: tuple[str, ...] = (), ends: Sequence[float] | None = None) -> None:
        self.usual, self.keys, self.ends = usual, keys, (usual,) if ends is None else ends

    @property
    def low(self) -> float:
        """The least of all cases."""
        return min(self.usual, *self.ends)

    @property
    def high(self) -> float:
        """The most of all cases."""
        return max(self.usual, *self.ends)

    @property
    def interval(self) -> Interval:
        """Low, usual and high. ValueError where one of them is no finite number."""
        return Interval(self.usual, self.low, self.high)

    def over(self, keys: tuple[str, ...]) -> Sequence[float]:
        """The corners laid out over more inputs."""
        if self.keys == keys:
            return self.ends
        if not self.keys:
            return [self.usual] * (1 << len(keys))
        return [self.ends[i] for i in _pick(self.keys, keys)]


def uncertain(name: str, value: Interval) -> Cases:
    """A named input; one whose ends are one hangs on nothing."""
    if value.low == value.high:
        return Cases(value.usual)
    return Cases(value.usual, (name,), (value.low, value.high))


@functools.lru_cache(4096)
def _pick(few: tuple[str, ...], many: tuple[str, ...]) -> list[int]:
    """Which corner over `few` inputs each corner over `many` is."""
    places = [len(many) - 1 - many.index(key) for key in few]
    found = []
    for corner in range(1 << len(many)):
        at = 0
        for place in places:
            at = at << 1 | (corner >> place & 1)
        found.append(at)
    return found


def together(args: Sequence[Cases]) -> tuple[Sequence[Cases], tuple[str, ...]]:
    """The arguments, and all the inputs they hang on; where those are too many, each argument is taken by its ends."""
    keys = _merged(tuple(a.keys for a in args if a.keys))
    if len(keys) > MOST:
        # Each is an input of its own from here on: no two hang together in a way that nothing is known of.
        args = [uncertain(f"({next(_WIDENED)})", a.interval) if a.keys else a for a in args]
        keys = _merged(tuple(a.keys for a in args if a.keys))
    return args, keys


@functools.lru_cache(4096)
def _merged(each: tuple[tuple[str, ...], ...]) -> tuple[str, ...]:
    return tuple(sorted({key for keys in each for key in keys}))


def apply(function: Callable[..., float], *args: Cases) -> Cases:
    """A function in every case."""
    usual = function(*[a.usual for a in args])
    if not any(a.keys for a in args):
        return Cases(usual)
    args_, keys = together(args)
    return Cases(usual, keys, list(map(function, *[a.over(keys) for a in args_])))
