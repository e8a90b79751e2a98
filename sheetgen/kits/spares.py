"""What goes into a bag or a pot: the net amount and what is to spare, rounded up once, as its card prints it."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact, percent
from sheetgen.base.rounding import up_for_buying
from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from sheetgen.base.supply import Spares

NONE = Fraction(0)


@dataclass(frozen=True, slots=True)
class Bag:
    """Of one item, and one colour of it: what the piece takes, what is to spare, by what rule. In the item's unit."""

    net: Fraction
    spare: Fraction
    why: str

    @property
    def amount(self) -> Fraction:
        """What is in it, as its card prints it."""
        return self.net + self.spare


def counted(net: int, allowance: Fraction, spares: Spares | None = None, point: str = ".") -> Bag:
    """Things that are counted, of one colour: the larger of spares and allowance, never both.

    A pot is the same with the pieces' nets summed. CannotBe for a negative number.
    """
    _not_negative(net, allowance)
    allowed, spared = ceil(net * (1 + allowance)) - net, spares.of(net) if spares else 0
    told = f"allowance {percent(allowance, point)}" if allowance else "no allowance"
    if spares is None:
        why = told
    elif spared >= allowed:
        why = f"spares {spares}" + (
            f", not less than the allowance of {percent(allowance, point)}" if allowance else ""
        )
    else:
        why = f"{told}, more than spares {spares}"
    return Bag(Fraction(net), Fraction(max(allowed, spared)), why)


def weighed(net: Fraction, allowance: Fraction, at_once: Fraction = NONE, point: str = ".") -> Bag:
    """What is weighed or measured off, rounded up to what a scale or ruler shows. CannotBe for a negative number.

    Of clay no less than must be in the hand `at_once`: its largest slab, or a piece that is rolled thicker first.
    """
    wanted, why = _wanted(net, allowance, at_once, point)
    return Bag(net, exact(float(up_for_buying(float(wanted)))) - net, why)


def sealed(net: Fraction, allowance: Fraction, pack: Fraction, at_once: Fraction = NONE, point: str = ".") -> Bag:
    """Whole packs as they were bought, unopened. CannotBe for an empty pack or a negative number."""
    wanted, why = _wanted(net, allowance, at_once, point)
    if pack <= 0:
        raise CannotBe("a pack holds something", help="more than nothing", field="packs")
    packs = ceil(wanted / pack)
    return Bag(net, packs * pack - net, f"{packs} sealed, {why}")


def _wanted(net: Fraction, allowance: Fraction, at_once: Fraction, point: str) -> tuple[Fraction, str]:
    """The larger of what is used with its allowance and what is wanted at once, and which it is."""
    _not_negative(net, allowance)
    allowed = net * (1 + allowance)
    return (
        (at_once, "as much as is rolled at once")
        if at_once > allowed
        else (allowed, f"allowance {percent(allowance, point)}")
    )


def _not_negative(net: Fraction | int, allowance: Fraction) -> None:
    if net < 0 or allowance < 0:
        field = "allowance" if allowance < 0 else "amount"
        raise CannotBe(f"an {field} cannot be under 0", help="0 or more", field=field)
