"""Cost and price in decimal money: rounded once a printed line, totals of the printed lines."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal
from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe
from sheetgen.facts.units import MINUTES_PER_HOUR
from sheetgen.formulas import guard
from sheetgen.formulas.formula import numeric

if TYPE_CHECKING:
    from collections.abc import Iterable

_KEYSTONE = "university marketing dictionary, keystone markup"
CENT = Decimal("0.01")
ONE = Decimal(1)


@numeric("margin = markup ÷ (1 + markup)", source=_KEYSTONE)
def margin_of_markup(markup: float) -> float:
    """Share of the price that is not cost, from the share added to the cost. CannotBe for a negative markup."""
    guard.not_below_zero(markup, "a markup", "markup", "")
    return markup / (1 + markup)


@numeric("markup = margin ÷ (1 − margin)", source=_KEYSTONE, valid="margin less than 1")
def markup_of_margin(margin: float) -> float:
    """Share added to the cost, from the share of the price that is not cost. CannotBe at 100 % or more."""
    _margin(margin)
    return margin / (1 - margin)


def price_by_markup(cost: Decimal, markup: Decimal) -> Decimal:
    """Price = cost × (1 + markup). CannotBe for negative money."""
    guard.not_below_zero(float(cost), "a cost", "cost", "")
    guard.not_below_zero(float(markup), "a markup", "markup", "")
    return cost * (ONE + markup)


def price_by_margin(cost: Decimal, margin: Decimal) -> Decimal:
    """Price = cost ÷ (1 − margin). CannotBe at a margin of 100 % or more."""
    guard.not_below_zero(float(cost), "a cost", "cost", "")
    _margin(float(margin))
    return cost / (ONE - margin)


def keystone(cost: Decimal) -> Decimal:
    """Price = 2 × cost: a markup of 100 %, a margin of 50 %. University marketing dictionary."""
    return price_by_markup(cost, ONE)


def labour_cost(minutes: float, rate_per_hour: Decimal) -> Decimal:
    """Labour = minutes ÷ 60 × rate. CannotBe for negative time or money."""
    guard.not_below_zero(minutes, "a time", "minutes", "min")
    guard.not_below_zero(float(rate_per_hour), "an hourly rate", "rate", "")
    return money(minutes) / money(MINUTES_PER_HOUR) * rate_per_hour


def overhead_cost(base: Decimal, share: Decimal) -> Decimal:
    """Overhead = base × share; whether the base is labour alone or also material is for the caller to state."""
    guard.not_below_zero(float(share), "an overhead", "overhead", "")
    return base * share


def bought_cost(packs: int, pack_price: Decimal) -> Decimal:
    """Whole packs × price: what leaves the till. CannotBe for negative numbers."""
    guard.not_below_zero(packs, "a number of packs", "pack", "")
    guard.not_below_zero(float(pack_price), "a price", "price", "")
    return packs * pack_price


def used_cost(used: float, pack: float, pack_price: Decimal) -> Decimal:
    """Used share of a pack × its price: what the piece cost. CannotBe for an empty pack."""
    guard.not_below_zero(used, "what is used", "need", "")
    guard.above_zero(pack, "a pack", "pack", "")
    return money(used) / money(pack) * pack_price


def class_cost(fixed: Decimal, kit: Decimal, people: int) -> Decimal:
    """Class = fixed once + people × kit. CannotBe for negative numbers."""
    guard.not_below_zero(people, "a number of people", "people", "")
    return fixed + people * kit


def break_even(fixed: Decimal, fee: Decimal, kit: Decimal) -> int:
    """Fewest people whose fees pay for a class: fixed ÷ (fee − kit), rounded up. CannotBe if no number ever does."""
    if fee <= kit:
        raise CannotBe(f"a fee of {fee} never pays for a kit of {kit}", help=f"a fee of more than {kit}", field="fee")
    return int((fixed / (fee - kit)).to_integral_value(ROUND_CEILING))


def printed(amount: Decimal, step: Decimal = CENT) -> Decimal:
    """The amount as a line prints it: to the nearest step, halves up. CannotBe for a step of 0 or less."""
    guard.above_zero(float(step), "a rounding step", "rounding", "")
    steps = (amount / step).to_integral_value(ROUND_HALF_UP)
    return (steps * step).quantize(step)


def rounded_up(amount: Decimal, step: Decimal) -> Decimal:
    """The amount up to the next whole step, as a price tag wants it. CannotBe for a step of 0 or less."""
    guard.above_zero(float(step), "a rounding step", "rounding", "")
    return ((amount / step).to_integral_value(ROUND_CEILING) * step).quantize(step)


def total(amounts: Iterable[Decimal], step: Decimal = CENT) -> Decimal:
    """The sum of the lines as printed, so that a reader who adds them up gets it too."""
    return sum((printed(amount, step) for amount in amounts), Decimal(0))


def money(number: float) -> Decimal:
    """A measured number as a decimal, by its shortest writing."""
    return Decimal(repr(float(number)))


def _margin(margin: float) -> None:
    guard.not_below_zero(margin, "a margin", "margin", "")
    if margin >= 1:
        raise CannotBe(
            f"a margin of {guard.shown(margin * 100, '%')} leaves nothing for the cost",
            help="less than 100 %; a markup may be more",
            field="margin",
        )
