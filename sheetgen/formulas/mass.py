"""What sheet, discs, clay slabs and castings weigh."""

from __future__ import annotations

import math

from sheetgen.facts.units import MM3_PER_CM3
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula, numeric

_DENSITY = "definition of density"


sheet_mass = formula(
    "sheet_mass(area, thickness, density)", f"area × thickness × density ÷ {MM3_PER_CM3:g} mm³/cm³",
    about="Mass (g) of sheet or rolled clay: mm², mm, g/cm³.", source=_DENSITY,
    valid="area ≥ 0 and thickness > 0 and density > 0",
)  # fmt: skip

disc_mass = formula(
    "disc_mass(diameter, thickness, density)", f"π ÷ 4 × diameter² × thickness × density ÷ {MM3_PER_CM3:g} mm³/cm³",
    about="Mass (g) of a disc: mm, mm, g/cm³.", source=_DENSITY, valid="diameter > 0 and thickness > 0 and density > 0",
)  # fmt: skip


slab_area = formula(
    "slab_area(mass, thickness, density)", f"{MM3_PER_CM3:g} mm³/cm³ × mass ÷ density ÷ thickness",
    about="Area (mm²) that a mass (g) covers when rolled to a thickness (mm); density in g/cm³.", source=_DENSITY,
    valid="mass > 0 and thickness > 0 and density > 0",
)  # fmt: skip


@numeric(
    "ball = ∛(6 × 1000 mm³/cm³ × mass ÷ (π × density))", source="volume of a ball", units="g, g/cm³ -> mm",
)  # fmt: skip
def ball_across(mass: float, density: float) -> float:
    """Diameter (mm) of a ball of a mass (g); density in g/cm³. CannotBe for 0 or less."""
    guard.above_zero(mass, "a mass", "mass", "g")
    guard.above_zero(density, "a density", "density", "g/cm³")
    return math.cbrt(6 * MM3_PER_CM3 * mass / (math.pi * density))
