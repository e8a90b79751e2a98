"""Price by markup and by margin, exactly; money in print is rounded once a line, halves away from zero."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from math import ceil, floor
from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from sheetgen.base.exact import Exact

CENT = Decimal("0.01")


def price_by_markup(cost: Exact, markup: Exact) -> Fraction:
    """Price = cost × (1 + markup). CannotBe for a negative number."""
    _not_below_zero(cost, "cost")
    _not_below_zero(markup, "markup")
    return Fraction(cost) * (1 + Fraction(markup))


def price_by_margin(cost: Exact, margin: Exact) -> Fraction:
    """Price = cost ÷ (1 − margin). CannotBe for a negative number, and for a margin of 100 % or more."""
    _not_below_zero(cost, "cost")
    _not_below_zero(margin, "margin")
    if margin >= 1:
        told = f"a margin of {float(margin * 100):g} % leaves nothing for the cost"
        raise CannotBe(told, help="less than 100 %; a markup may be more", field="margin")
    return Fraction(cost) / (1 - Fraction(margin))


def markup_of(price: Exact, cost: Exact) -> Fraction:
    """Markup = (price − cost) ÷ cost. CannotBe without a cost."""
    if cost <= 0:
        raise CannotBe("without a cost there is no markup", help="a cost above 0", field="cost")
    return (Fraction(price) - Fraction(cost)) / Fraction(cost)


def margin_of(price: Exact, cost: Exact) -> Fraction:
    """Margin = (price − cost) ÷ price. CannotBe without a price."""
    if price <= 0:
        raise CannotBe("without a price there is no margin", help="a price above 0", field="price")
    return (Fraction(price) - Fraction(cost)) / Fraction(price)


def printed(amount: Exact, step: Decimal = CENT) -> Decimal:
    """The amount as a line prints it: to the nearest step, halves away from zero. CannotBe for a step of 0."""
    steps = floor(abs(Fraction(amount)) / _step(step) + Fraction(1, 2))
    return (steps * step).quantize(step).copy_sign(1 if amount >= 0 or not steps else -1)


def rounded_up(amount: Exact, step: Decimal) -> Decimal:
    """The amount up to the next whole step, as a price tag wants it. CannotBe for a step of 0."""
    return (ceil(Fraction(amount) / _step(step)) * step).quantize(step)


def _step(step: Decimal) -> Fraction:
    if step <= 0:
        raise CannotBe(f"money cannot go in steps of {step}", help="more than 0", field="price step")
    return Fraction(step)


def _not_below_zero(amount: Exact, name: str) -> None:
    if amount < 0:
        raise CannotBe(f"a {name} cannot be under 0", help="0 or more", field=name)
