"""Three amounts of a material in print, each rounded once: what is used up, what to have, what comes back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.interval import ceil
from sheetgen.base.printed import Printed
from sheetgen.base.rounding import INCH, up_for_buying, up_for_weighing

if TYPE_CHECKING:
    from sheetgen.base.rounding import Rounder

THIN = "\u202f"
METRE = 1000  # mm
CM2, TENTH_IN2 = 100.0, INCH**2 / 10  # mm²: what an area is told in whole ones of


@dataclass(frozen=True, slots=True)
class Amounts:
    """Of one item and in its unit, each rounded once, as it is printed: have less used is back, to the digit.

    `used` is left in the pieces, or is waste that cannot come back. `have` must be there when work begins. `back` goes
    into the drawer again.
    """

    used: Printed
    have: Printed
    back: Printed

    @property
    def listed(self) -> str:
        """What to have, as a list prints it; of what is counted the spare ones stand apart."""
        counted = not self.have.unit and self.back
        return f"{self.used.words}{THIN}+{THIN}{self.back.words}" if counted else self.have.told

    @property
    def posted(self) -> Amounts:
        """The same in a kit that is posted: all that is in its bag is used, for nothing of it comes back."""
        return Amounts(self.have, self.have, Printed(0, "0", self.back.unit))


def amount_told(have: float, spare: float, unit: str, rounder: Rounder) -> tuple[str, str]:
    """What a bag holds, rounded already, in print, and besides it what is to spare of what is counted, or nothing.

    Of what is weighed or measured all is used: a person who makes one piece tells no spare gram from the others.
    """
    told = in_print(have - spare, have, unit, rounder)
    return (told.used.told, f"+ {told.back.told} to spare") if unit == "piece" and told.back else (told.have.told, "")


def rounded(used: float, have: float, unit: str, rounder: Rounder) -> Amounts:
    """Both up to what a scale or ruler shows. Used is told finer, as the figures of the pieces are; never over have."""
    if unit == "piece":
        used, have = ceil(used), ceil(have)
    elif unit == "mm":
        used, have = rounder.rounded(used, "millimetre up"), _to_buy(have, rounder)
    elif unit == "mm²":
        step = TENTH_IN2 if rounder.inches else CM2
        used, have = ceil(used / step) * step, ceil(have / step) * step
    else:
        used, have = up_for_weighing(used), up_for_buying(have)
    return in_print(min(used, have), have, unit, rounder)


def _to_buy(mm: float, rounder: Rounder) -> float:
    """A length to buy: quarters of an inch; or millimetres and fives of them, and from a metre on hundredths of it."""
    if rounder.inches:
        return rounder.rounded(mm, "length up")
    rounded = up_for_buying(mm)
    return rounded if rounded < METRE else ceil(rounded / 10) * 10


def in_print(used: float, have: float, unit: str, rounder: Rounder) -> Amounts:
    """Three rounded numbers in print, all in the unit of what to have, so that they can be taken from each other."""
    factor, places, name = _unit(have, unit, rounder)
    printed = []
    for value in (round(one, 9) for one in (used, have, have - used)):
        words = rounder.words(value, unit, "length up") if name == "in" else rounder.decimal(value / factor, places)
        printed.append(Printed(value, words, name))
    return Amounts(*printed)


def _unit(have: float, unit: str, rounder: Rounder) -> tuple[float, int, str]:
    """How much of the item's unit one in print is, its decimals, and its name."""
    if unit == "piece":
        return 1, 0, ""
    if unit == "mm²":
        return (INCH**2, 1, "in²") if rounder.inches else (CM2, 0, "cm²")
    if unit == "mm" and not rounder.inches:
        return (METRE, 4, "m") if have >= METRE else (1, 1, "mm")
    return 1, 1, rounder.unit(unit)
