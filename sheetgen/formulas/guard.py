"""What a number must be before a formula may use it, said plainly to whoever wrote it."""

from __future__ import annotations

import math

from sheetgen.base.trouble import CannotBe

_HINT_STEP = 100  # a hint is rounded to hundredths, towards the side that works


def above_zero(value: float, what: str, field: str = "", unit: str = "mm") -> None:
    """Refuse zero, negative and endless numbers with CannotBe."""
    if not 0 < value < math.inf:
        raise CannotBe(f"{what} cannot be {shown(value, unit)}", help="it must be more than 0", field=field)


def not_below_zero(value: float, what: str, field: str = "", unit: str = "mm") -> None:
    """Refuse negative and endless numbers with CannotBe."""
    if not 0 <= value < math.inf:
        raise CannotBe(f"{what} cannot be {shown(value, unit)}", help="0 or more", field=field)


def share(value: float, what: str, field: str = "", *, zero: bool = True) -> None:
    """Refuse what is not a share of a whole (0 to 1) with CannotBe."""
    if not 0 <= value <= 1 or (value == 0 and not zero):
        raise CannotBe(
            f"{what} cannot be {shown(value * 100, '%')}",
            help="a share of the whole: between 0 % and 100 %",
            field=field,
        )


def shown(value: float, unit: str = "mm") -> str:
    """The number as a message prints it."""
    return f"{value:.4g} {unit}".strip()


def at_least(value: float, unit: str = "mm") -> str:
    """A hint: the least that works, rounded up."""
    return f"{math.ceil(value * _HINT_STEP - 1e-6) / _HINT_STEP:g} {unit} or more".replace("  ", " ")


def at_most(value: float, unit: str = "mm") -> str:
    """A hint: the most that works, rounded down."""
    return f"{math.floor(value * _HINT_STEP + 1e-6) / _HINT_STEP:g} {unit} or less".replace("  ", " ")
