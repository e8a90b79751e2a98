"""Numbers that are counted with: exact fractions from what was written or worked, and their words in a working."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from math import floor
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

Exact = Fraction | Decimal | int
_FINEST = 9  # decimals: what is printed is rounded to fewer, and a float's dust lies beyond


def exact(number: Exact | float) -> Fraction:
    """A number as it is written: 0.1 is a tenth, and 1.05 × 360 no hair over 378."""
    return Fraction(repr(round(number, _FINEST))) if isinstance(number, float) else Fraction(number)


def plain(number: Exact, point: str = ".", places: int = 4) -> str:
    """The number in a working, without needless zeros; of one that no decimal writes so many places."""
    whole = Fraction(round(Fraction(number) * 10**places), 10**places)
    text = f"{Decimal(whole.numerator) / Decimal(whole.denominator):f}"
    return text.replace("-", "−").replace(".", point)


def percent(share: Exact, point: str = ".", places: int = 2) -> str:
    """A share of the whole as a page prints it: 5 %."""
    return f"{plain(Fraction(share) * 100, point, places)} %"


def shared_out(whole: int, weights: Sequence[Fraction]) -> list[int]:
    """So many whole ones by weight: of each share its whole ones, and what is over to the largest fractions.

    Of equal fractions the first has it. The weights come to more than nothing.
    """
    shares = [Fraction(weight) / sum(weights) * whole for weight in weights]
    many = [floor(share) for share in shares]
    by_fraction = sorted(range(len(shares)), key=lambda i: many[i] - shares[i])
    for i in by_fraction[: whole - sum(many)]:
        many[i] += 1
    return many
