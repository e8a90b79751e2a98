"""Domes from flat discs: the blank, the ball it belongs to, and holes. Sizes are of the middle of the sheet."""

from __future__ import annotations

import math

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

_ATKINS = "Atkins, Practical Sheet and Plate Metal Work: disc radius = hypotenuse of half-diameter and depth"
_SPHERE = "Archimedes, On the Sphere and Cylinder: a cap's area is that of a disc of its apex-to-rim line"
_LAMBERT = "Lambert's equal-area projection"
_GEOMETRY = "solid geometry"


def _cap(across: float, rise: float) -> None:
    guard.above_zero(across, "a dome's width", "across")
    guard.not_below_zero(rise, "a dome's rise", "rise")
    if rise > across / 2 * (1 + 1e-9):
        raise CannotBe(
            f"a rise of {guard.shown(rise)} on {guard.shown(across)} across is past half a ball",
            help=f"{guard.at_most(across / 2)}, or {guard.at_least(2 * rise)} across",
            field="rise",
        )


@formula("disc = √(across² + (2 × rise)²)", source=_ATKINS, valid="to half a ball; equal area, no thinning")
def cap_blank(across: float, rise: float) -> float:
    """Disc (mm) for a dome, rim to rim and rim to crown in mm. CannotBe past half a ball. Atkins."""
    _cap(across, rise)
    return math.hypot(across, 2 * rise)


@formula("radius = (across² ÷ 4 + rise²) ÷ (2 × rise)", source=_GEOMETRY, valid="rise more than 0, to half a ball")
def cap_radius(across: float, rise: float) -> float:
    """Radius (mm) of the ball that a dome is part of. CannotBe for a flat dome or past half a ball."""
    _cap(across, rise)
    guard.above_zero(rise, "a dome's rise", "rise")
    return (across**2 / 4 + rise**2) / (2 * rise)


@formula("disc = 4 × radius × atan(2 × rise ÷ across)", source=_GEOMETRY, valid="the most: bent, not stretched")
def meridian_blank(across: float, rise: float) -> float:
    """Disc (mm) whose radius is the dome's arc from crown to rim, the upper bound. CannotBe past half a ball."""
    _cap(across, rise)
    if rise == 0:
        return across
    return 4 * cap_radius.pure(across, rise) * math.atan(2 * rise / across)


@formula("area = π × (across² ÷ 4 + rise²)", source=_SPHERE, valid="to half a ball")
def cap_area(across: float, rise: float) -> float:
    """Area (mm²) of a dome, one face. CannotBe past half a ball. Archimedes."""
    _cap(across, rise)
    return math.pi * (across**2 / 4 + rise**2)


@formula("growth = √(1 + 4 × rise² ÷ across²)", source="uniform stretch with the rim held, a bounding model")
def hole_growth(across: float, rise: float) -> float:
    """How many times a hole grows if the rim is held and the sheet stretches. CannotBe past half a ball."""
    _cap(across, rise)
    return math.sqrt(1 + 4 * rise**2 / across**2)


@formula("share of the thickness left = 1 ÷ (1 + 4 × rise² ÷ across²)", source="uniform stretch with the rim held")
def stretched_thickness(across: float, rise: float) -> float:
    """Share of the sheet's thickness left if the rim is held. CannotBe past half a ball."""
    _cap(across, rise)
    return 1 / (1 + 4 * rise**2 / across**2)


def _hole(hole: float, across: float, rise: float) -> None:
    _cap(across, rise)
    guard.above_zero(hole, "a hole", "hole")
    if hole >= across:
        raise CannotBe(
            f"a hole of {guard.shown(hole)} leaves nothing of a dome {guard.shown(across)} across",
            help=f"less than {guard.shown(across)}",
            field="hole",
        )


@formula("punch = 4 × radius × sin(asin(hole ÷ (2 × radius)) ÷ 2)", source=_LAMBERT, valid="the sheet keeps its area")
def hole_punched(hole: float, across: float, rise: float) -> float:
    """Hole (mm) to punch in the flat disc for a wanted hole in the dome's crown. CannotBe if wider than the dome."""
    _hole(hole, across, rise)
    if rise == 0:
        return hole
    radius = cap_radius.pure(across, rise)
    return 4 * radius * math.sin(math.asin(min(1.0, hole / (2 * radius))) / 2)


@formula("punch = hole ÷ √(1 + 4 × rise² ÷ across²)", source="uniform stretch with the rim held, a bounding model")
def hole_stretched(hole: float, across: float, rise: float) -> float:
    """Hole (mm) to punch for a wanted hole if the rim is held and the sheet stretches. CannotBe as hole_punched."""
    _hole(hole, across, rise)
    return hole / hole_growth.pure(across, rise)


@formula("middle of the sheet = former's radius + thickness ÷ 2", source=_GEOMETRY)
def radius_over_former(former_radius: float, thickness: float) -> float:
    """Ball radius (mm) of the sheet's middle over a former. CannotBe for sizes of 0 or less."""
    guard.above_zero(former_radius, "a former's radius", "former")
    guard.above_zero(thickness, "a thickness", "thickness")
    return former_radius + thickness / 2


@formula("middle of the sheet = cup's radius − thickness ÷ 2", source=_GEOMETRY)
def radius_in_cup(cup_radius: float, thickness: float) -> float:
    """Ball radius (mm) of the sheet's middle in a cup. CannotBe if the sheet fills the cup."""
    guard.above_zero(thickness, "a thickness", "thickness")
    guard.above_zero(cup_radius - thickness / 2, "what the sheet leaves of the cup's radius", "thickness")
    return cup_radius - thickness / 2


@formula("rise = radius − √(radius² − across² ÷ 4)", source=_GEOMETRY, valid="to half a ball")
def rise_on_ball(radius: float, across: float) -> float:
    """Rise (mm) of a dome of a width (mm) on a ball. CannotBe if wider than the ball."""
    guard.above_zero(radius, "a ball's radius", "former")
    guard.above_zero(across, "a dome's width", "across")
    if across > 2 * radius * (1 + 1e-9):
        raise CannotBe(
            f"a dome {guard.shown(across)} across is wider than the ball ({guard.shown(2 * radius)})",
            help=guard.at_most(2 * radius),
            field="across",
        )
    return radius - math.sqrt(max(0.0, radius**2 - across**2 / 4))


@formula("across = 2 × √(2 × radius × rise − rise²)", source=_GEOMETRY, valid="to half a ball")
def across_on_ball(radius: float, rise: float) -> float:
    """Width (mm) of a dome of a rise (mm) on a ball. CannotBe past half a ball."""
    guard.above_zero(radius, "a ball's radius", "former")
    guard.above_zero(rise, "a dome's rise", "rise")
    if rise > radius * (1 + 1e-9):
        raise CannotBe(
            f"a rise of {guard.shown(rise)} is past half a ball of {guard.shown(radius)} radius",
            help=guard.at_most(radius),
            field="rise",
        )
    return 2 * math.sqrt(2 * radius * rise - rise**2)


@formula(
    "on the middle of the sheet = outside × (radius − thickness ÷ 2) ÷ radius", source=_GEOMETRY, valid="rim cut square"
)
def middle_of_sheet(outside: float, across: float, rise: float, thickness: float) -> float:
    """Width or rise (mm) on the sheet's middle, from `outside`, one of the dome's outside sizes (mm).

    CannotBe if the sheet is thicker than the ball.
    """
    radius = cap_radius.pure(across, rise)
    return outside * radius_in_cup.pure(radius, thickness) / radius
