"""Stones scattered over an area: how many cover a share of it, and how many can be there at most."""

from __future__ import annotations

import math

from sheetgen.base.spread import floor
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

_GROEMER = "Groemer's theorem of 1960, as MathWorld prints it, put for the area that the centres may take"


@formula("stones = share × area ÷ (π ÷ 4 × stone²), whole ones", source="areas")
def stones_for_share(area: float, share: float, stone: float) -> float:
    """Whole round stones (mm) that cover no more than a share of an area (mm²). CannotBe for a share off 0 to 1."""
    guard.not_below_zero(area, "an area", "across", "mm²")
    guard.share(share, "a share covered", "share")
    guard.above_zero(stone, "a stone", "stone")
    return floor(share * area / (math.pi / 4 * stone**2))


@formula("share = stones × π ÷ 4 × stone² ÷ area", source="areas")
def share_covered(area: float, stones: float, stone: float) -> float:
    """The share of an area (mm²) that so many round stones (mm) cover. CannotBe for an area of 0 or less."""
    guard.above_zero(area, "an area", "across", "mm²")
    guard.not_below_zero(stones, "a number of stones", "number", "")
    guard.above_zero(stone, "a stone", "stone")
    return stones * math.pi / 4 * stone**2 / area


@formula(
    "stones ≤ 2 × area ÷ (√(3) × spacing²) + perimeter ÷ (2 × spacing) + 1, whole ones",
    source=_GROEMER,
    valid="an area without hollows; no layout need reach it",
)
def most_scattered(area: float, perimeter: float, spacing: float) -> float:
    """No more centres than this stand `spacing` (mm) apart on an area (mm², mm round). CannotBe for 0 or less."""
    guard.not_below_zero(area, "an area", "across", "mm²")
    guard.not_below_zero(perimeter, "a perimeter", "across")
    guard.above_zero(spacing, "a spacing", "gap")
    return floor(2 * area / (math.sqrt(3) * spacing**2) + perimeter / (2 * spacing) + 1)
