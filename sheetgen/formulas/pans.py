"""Round blanks of pans and cones: areas that stay the same."""

from __future__ import annotations

import math

from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

_ATKINS = "Atkins, Practical Sheet and Plate Metal Work"
_HODGSON = "Hodgson, Machines and Tools Employed in the Working of Sheet Metals"


@formula("disc radius² = radius² + 2 × radius × depth", source=_ATKINS, valid="straight sides, equal area")
def pan_blank(across: float, depth: float) -> float:
    """Disc (mm) for a round pan with straight sides. CannotBe for sizes of 0 or less. Atkins."""
    guard.above_zero(across, "a pan's width", "across")
    guard.not_below_zero(depth, "a pan's depth", "depth")
    radius = across / 2
    return 2 * math.sqrt(radius**2 + 2 * radius * depth)


@formula("area = π × (R + r) × √(depth² + (R − r)²) + π × r²", source=_HODGSON)
def cone_cup_area(mouth: float, base: float, depth: float) -> float:
    """Area (mm²) of a cup with slanting sides and a flat base; diameters in mm. CannotBe for sizes of 0 or less."""
    guard.above_zero(mouth, "a cup's mouth", "across")
    guard.not_below_zero(base, "a cup's base", "base")
    guard.not_below_zero(depth, "a cup's depth", "depth")
    slant = math.hypot(depth, (mouth - base) / 2)
    return math.pi * (mouth + base) / 2 * slant + math.pi * base**2 / 4


@formula("disc = √(4 × area ÷ π)", source=_HODGSON, valid="equal area")
def disc_of_area(area: float) -> float:
    """Disc (mm) of an area (mm²). CannotBe for 0 or less."""
    guard.above_zero(area, "an area", unit="mm²")
    return math.sqrt(4 * area / math.pi)


@formula("depth = across ÷ π", source=_ATKINS, valid="half a ball")
def neutral_circle_depth(across: float) -> float:
    """Depth (mm) below the rim of a half ball's circle that neither grows nor shrinks in hollowing. Atkins.

    CannotBe for 0 or less.
    """
    guard.above_zero(across, "a bowl's width", "across")
    return across / math.pi
