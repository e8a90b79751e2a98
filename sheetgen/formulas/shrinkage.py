"""Firing shrinkage: wet sizes from fired sizes, and what is left of the clay's mass and volume.

`s` is linear shrinkage as a share of the wet size. It belongs to a clay and its schedule.
"""

from __future__ import annotations

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

_BY_DEFINITION = "definition: shrinkage is measured on the wet size"
_BALANCE = "conservation of mass: the metal stays, water and binder go"


def _check(s: float) -> None:
    if s < 0:
        raise CannotBe(
            f"a shrinkage of {guard.shown(s * 100, '%')} would mean that the clay grows in the fire",
            help="0 % or more, as the clay's packet prints it",
            field="shrinkage",
        )
    if not s < 1:
        raise CannotBe(
            f"a shrinkage of {guard.shown(s * 100, '%')} would leave nothing of the piece",
            help="less than 100 %; silver clays shrink by 8 to 30 %",
            field="shrinkage",
        )


@formula("wet = fired ÷ (1 − s)", source=_BY_DEFINITION, valid="0 ≤ s < 1")
def wet_size(fired: float, s: float) -> float:
    """Length to make in wet clay, in the unit of `fired` (mm). CannotBe unless 0 ≤ s < 1. By definition of s."""
    _check(s)
    guard.not_below_zero(fired, "a fired size")
    return fired / (1 - s)


@formula("fired = wet × (1 − s)", source=_BY_DEFINITION, valid="0 ≤ s < 1")
def fired_size(wet: float, s: float) -> float:
    """Length after firing, in the unit of `wet` (mm). CannotBe unless 0 ≤ s < 1. By definition of s."""
    _check(s)
    guard.not_below_zero(wet, "a wet size")
    return wet * (1 - s)


@formula("s = (wet − fired) ÷ wet", source=_BY_DEFINITION, valid="fired ≤ wet")
def shrinkage(wet: float, fired: float) -> float:
    """Shrinkage measured on a test strip, both lengths in mm. CannotBe if the strip grew. By definition of s."""
    guard.above_zero(wet, "the wet length of a test strip", "wet")
    guard.above_zero(fired, "the fired length of a test strip", "fired")
    if fired > wet:
        raise CannotBe(
            f"the fired strip ({guard.shown(fired)}) is longer than the wet one ({guard.shown(wet)})",
            help="wet size first, fired size second",
            field="fired",
        )
    return (wet - fired) / wet


@formula("enlargement = 1 ÷ (1 − s)", source=_BY_DEFINITION, valid="0 ≤ s < 1")
def enlargement(s: float) -> float:
    """How many times the fired size a drawing is enlarged to be cut wet. CannotBe unless 0 ≤ s < 1."""
    _check(s)
    return 1 / (1 - s)


@formula("± fired × (high − low) ÷ 2 ÷ (1 − middle)", source=_BY_DEFINITION, valid="low ≤ high")
def fired_error(fired: float, s_low: float, s_high: float) -> float:
    """Half the spread (mm) of the fired size if cut for the middle shrinkage. CannotBe if upside down."""
    _check(s_low)
    _check(s_high)
    if s_low > s_high:
        raise CannotBe("the lower shrinkage is above the higher one", help="low first, high second", field="shrinkage")
    return fired * (s_high - s_low) / 2 / (1 - (s_low + s_high) / 2)


@formula("1 − s = (1 − drying) × (1 − firing)", source=_BY_DEFINITION, valid="0 ≤ s < 1, each on its own stage")
def two_stage(s_dry: float, s_fire: float) -> float:
    """Whole shrinkage on the wet size, from wet to dry and then from dry to fired. CannotBe unless 0 ≤ s < 1."""
    _check(s_dry)
    _check(s_fire)
    return 1 - (1 - s_dry) * (1 - s_fire)


@formula("fired volume ÷ wet volume = (1 − s plane)² × (1 − s thickness)", source=_BY_DEFINITION, valid="0 ≤ s < 1")
def volume_ratio(s_plane: float, s_thickness: float) -> float:
    """Share of the wet volume left after firing. CannotBe unless 0 ≤ s < 1. By definition of s."""
    _check(s_plane)
    _check(s_thickness)
    return (1 - s_plane) ** 2 * (1 - s_thickness)


@formula("fired mass = wet mass × metal share", source=_BALANCE)
def fired_mass(wet_mass: float, metal_share: float) -> float:
    """Mass after firing, in the unit of `wet_mass` (g). CannotBe unless the share is 0 to 1."""
    guard.not_below_zero(wet_mass, "a mass of clay", unit="g")
    guard.share(metal_share, "the share of metal in the clay", "metal share", zero=False)
    return wet_mass * metal_share


@formula("wet mass = fired mass ÷ metal share", source=_BALANCE)
def wet_mass(fired: float, metal_share: float) -> float:
    """Clay to weigh out (g) for a fired mass in g. CannotBe unless the share is 0 to 1."""
    guard.not_below_zero(fired, "a mass of metal", unit="g")
    guard.share(metal_share, "the share of metal in the clay", "metal share", zero=False)
    return fired / metal_share


@formula("fired density = wet density × metal share ÷ ((1 − s plane)² × (1 − s thickness))", source=_BALANCE)
def fired_density(wet_density: float, metal_share: float, s_plane: float, s_thickness: float) -> float:
    """Density of the fired, still porous metal in g/cm³. CannotBe for densities and shares that cannot be."""
    guard.above_zero(wet_density, "the density of wet clay", "density", "g/cm³")
    guard.share(metal_share, "the share of metal in the clay", "metal share", zero=False)
    return wet_density * metal_share / volume_ratio.pure(s_plane, s_thickness)


@formula("relative density = fired density ÷ density of the solid metal", source=_BALANCE, valid="at most 1")
def compactness(fired: float, solid_density: float) -> float:
    """Share of solid metal in a fired piece; both densities in g/cm³. CannotBe above 1: no more metal than solid."""
    guard.above_zero(solid_density, "the density of solid metal", "density", "g/cm³")
    if fired > solid_density * (1 + 1e-9):
        raise CannotBe(
            f"the fired piece would be denser ({guard.shown(fired, 'g/cm³')}) than solid metal "
            f"({guard.shown(solid_density, 'g/cm³')})",
            help="check the wet density, the share of metal and the shrinkage: one of them is too high",
            field="shrinkage",
        )
    return fired / solid_density


@formula("wet density × metal share ÷ volume ratio ÷ density of solid metal", source=_BALANCE, valid="at most 1")
def relative_density(
    wet_density: float, metal_share: float, s_plane: float, s_thickness: float, solid_density: float
) -> float:
    """Share of solid metal after firing; densities in g/cm³. CannotBe above 1, the check on a clay's figures."""
    return compactness.pure(fired_density.pure(wet_density, metal_share, s_plane, s_thickness), solid_density)
