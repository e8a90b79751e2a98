"""Amounts as a list on paper says them, in the studio's units and with its decimal sign; a CSV has the bare numbers."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.exact import plain
from sheetgen.base.printed import NBSP
from sheetgen.base.rounding import INCH

if TYPE_CHECKING:
    from collections.abc import Sequence
    from fractions import Fraction

    from sheetgen.base.rounding import Rounder

METRE = 1000  # mm: from here on a length is told in metres
CM2 = 100  # mm²


def amount(value: Fraction, unit: str, rounder: Rounder) -> str:
    """An amount with its unit, exact: long lengths in m, sheet in cm²; of inches to 1/64, of square ones to a tenth."""
    if unit == "piece" or not value:
        return plain(value, rounder.point)
    if unit == "mm" and (rounder.inches or value < METRE):
        return length(value, rounder)
    if unit == "mm²" and rounder.inches:
        return f"{rounder.decimal(float(value) / INCH**2, 1)}{NBSP}in²"
    told, name = {"mm": (value / METRE, "m"), "mm²": (value / CM2, "cm²")}.get(unit, (value, unit))
    return f"{plain(told, rounder.point)}{NBSP}{name}"


def length(mm: Fraction, rounder: Rounder) -> str:
    """A length as it is measured off, with its unit."""
    return f"{bare_length(mm, rounder)}{NBSP}{rounder.unit('mm')}"


def bare_length(mm: Fraction, rounder: Rounder) -> str:
    """The same without its unit, for a row of them."""
    return rounder.words(float(mm), "mm", "length up") if rounder.inches else plain(mm, rounder.point)


def sides(each: Sequence[Fraction], rounder: Rounder) -> str:
    """The sides of a piece, or its one length, with the unit said once."""
    return f"{f'{NBSP}×{NBSP}'.join(bare_length(side, rounder) for side in each)}{NBSP}{rounder.unit('mm')}"
