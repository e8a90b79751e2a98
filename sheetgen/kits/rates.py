"""What a studio reckons its costs with, as its till says it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.exact import percent
from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from decimal import Decimal

    from sheetgen.kits.money import Coin
    from sheetgen.model.till import Part, Till


@dataclass(frozen=True, slots=True)
class Rates:
    """What the studio reckons with; shares as fractions of a whole: 20 % is 1/5."""

    coin: Coin
    hour: Decimal
    load: Decimal
    overhead: Fraction = Fraction(0)
    overhead_of: tuple[Part, ...] = ()
    replacements: Fraction = Fraction(0)
    tax: Fraction = Fraction(0)
    step: Decimal | None = None

    def __post_init__(self) -> None:
        for name, number in (
            ("rate an hour", self.hour), ("cost of a load", self.load), ("overhead", self.overhead),
            ("replacements", self.replacements), ("tax", self.tax), ("price step", self.step or 0),
        ):  # fmt: skip
            if number < 0:
                raise CannotBe(f"{name} cannot be under 0", help="0 or more", field=name)
        if self.overhead and not self.overhead_of:
            asked = "of labour, or of materials and labour?"
            raise CannotBe(f"overhead of {percent(self.overhead)}: of what?", help=asked, field="overhead")
        if self.tax > 1:
            told = f"a tax of {percent(self.tax)}"
            raise CannotBe(told, help="a rate that is added to the price, such as 19 %", field="tax")


def rates_of(till: Till | None, coin: Coin) -> Rates:
    """What a studio's till says; what it does not say costs nothing, and whoever asks says so."""
    if till is None:
        return Rates(coin, coin.least * 0, coin.least * 0)
    return Rates(
        coin,
        till.hour or coin.least * 0,
        till.load or coin.least * 0,
        till.overhead,
        till.overhead_of,
        till.replacements,
        till.tax,
        till.step,
    )
