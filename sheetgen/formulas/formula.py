"""A formula that states itself and its source, and that works on plain numbers and on spreads alike."""

from __future__ import annotations

import functools
from typing import TYPE_CHECKING, overload

from sheetgen.base.spread import Spread, over

if TYPE_CHECKING:
    from collections.abc import Callable

ALL: list[Formula] = []


class Formula:
    """A pure function of numbers with its statement, its validity and its source."""

    def __init__(self, function: Callable[..., float], says: str, source: str, valid: str) -> None:
        if not says.strip() or not source.strip():
            raise ValueError("a formula wants its statement and its source")
        functools.update_wrapper(self, function)
        self.pure = function
        self.name = function.__name__
        self.about = (function.__doc__ or "").strip().splitlines()[0]
        self.says, self.source, self.valid = says, source, valid
        ALL.append(self)

    @overload
    def __call__(self, *args: float) -> float: ...  # type: ignore[overload-overlap]  # a spread only from a spread
    @overload
    def __call__(self, *args: Spread | float) -> Spread: ...
    def __call__(self, *args: Spread | float) -> Spread | float:
        """A number from numbers; a spread as soon as one argument is a spread."""
        if any(isinstance(a, Spread) for a in args):
            return over(self.pure, *args)
        return self.pure(*args)


def formula(says: str, *, source: str, valid: str = "") -> Callable[[Callable[..., float]], Formula]:
    """Declare a formula. The function raises CannotBe where it does not hold."""

    def declare(function: Callable[..., float]) -> Formula:
        return Formula(function, says, source, valid)

    return declare
