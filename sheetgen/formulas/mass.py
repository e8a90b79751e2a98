"""What sheet, discs, clay slabs and castings weigh."""

from __future__ import annotations

import math

from sheetgen.facts.units import MM3_PER_CM3
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

_DENSITY = "definition of density"


@formula("grams = density × area × thickness ÷ 1000", source=_DENSITY)
def sheet_mass(density: float, area: float, thickness: float) -> float:
    """Mass (g) of sheet or rolled clay: g/cm³, mm², mm. CannotBe for negative sizes."""
    guard.above_zero(density, "a density", "density", "g/cm³")
    guard.not_below_zero(area, "an area", "area", "mm²")
    guard.above_zero(thickness, "a thickness", "thickness")
    return density * area * thickness / MM3_PER_CM3


@formula("grams = density × π ÷ 4 × diameter² × thickness ÷ 1000", source=_DENSITY)
def disc_mass(density: float, diameter: float, thickness: float) -> float:
    """Mass (g) of a disc: g/cm³, mm, mm. CannotBe for sizes of 0 or less."""
    guard.above_zero(diameter, "a disc", "across")
    return sheet_mass.pure(density, math.pi / 4 * diameter**2, thickness)


@formula("thickness = 1000 × grams ÷ density ÷ area", source=_DENSITY)
def sheet_thickness(density: float, area: float, mass: float) -> float:
    """Thickness (mm) that a mass (g) spreads to over an area (mm²). CannotBe for 0 or less."""
    guard.above_zero(density, "a density", "density", "g/cm³")
    guard.above_zero(area, "an area", "area", "mm²")
    guard.above_zero(mass, "a mass", "mass", "g")
    return mass * MM3_PER_CM3 / density / area


@formula("area = 1000 × grams ÷ density ÷ thickness", source=_DENSITY)
def slab_area(density: float, thickness: float, mass: float) -> float:
    """Area (mm²) that a mass (g) covers when rolled to a thickness (mm); density in g/cm³. CannotBe for 0 or less."""
    guard.above_zero(density, "a density", "density", "g/cm³")
    guard.above_zero(thickness, "a thickness", "thickness")
    guard.above_zero(mass, "a mass", "mass", "g")
    return mass * MM3_PER_CM3 / density / thickness


@formula(
    "metal = pattern × (1 + sprue) × density of metal ÷ density of pattern",
    source="casting supplier, Wax weight vs. metal weight",
)
def cast_mass(pattern: float, metal_density: float, pattern_density: float, sprue: float) -> float:
    """Metal (g) to melt for a pattern (g), `sprue` the share added. CannotBe for 0 or less."""
    guard.above_zero(pattern, "a pattern", "mass", "g")
    guard.above_zero(metal_density, "a density", "density", "g/cm³")
    guard.above_zero(pattern_density, "a pattern's density", "density", "g/cm³")
    guard.not_below_zero(sprue, "a sprue", "sprue", "")
    return pattern * (1 + sprue) * metal_density / pattern_density


@formula("new mass = old mass × new density ÷ old density", source="findings supplier's table of specific gravities")
def same_in_metal(mass: float, old_density: float, new_density: float) -> float:
    """Mass of the same piece in another metal, in the unit of `mass`. CannotBe for 0 or less."""
    guard.above_zero(mass, "a mass", "mass", "g")
    guard.above_zero(old_density, "a density", "density", "g/cm³")
    guard.above_zero(new_density, "a density", "density", "g/cm³")
    return mass * new_density / old_density
