"""Firing shrinkage: wet sizes from fired sizes, and what is left of the clay's mass and volume.

`s` is linear shrinkage as a share of the wet size. It belongs to a clay and its schedule.
"""

from __future__ import annotations

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula, numeric

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


wet_size = formula(
    "wet(fired, s)", "fired ÷ (1 − s)", about="Length to make in wet clay, in the unit of `fired` (mm).",
    source=_BY_DEFINITION, valid="0 ≤ s and s < 1 and fired ≥ 0",
)  # fmt: skip

fired_size = formula(
    "fired(wet, s)", "wet × (1 − s)", about="Length after firing, in the unit of `wet` (mm).", source=_BY_DEFINITION,
    valid="0 ≤ s and s < 1 and wet ≥ 0",
)  # fmt: skip

two_stage = formula(
    "dried_and_fired(s_drying, s_firing)", "1 − (1 − s_drying) × (1 − s_firing)",
    about="Shrinkage on the wet size of clay that shrinks in drying first, and in the fire by a share of its dry size.",
    source=_BY_DEFINITION, valid="0 ≤ s_drying and s_drying < 1 and 0 ≤ s_firing and s_firing < 1",
)  # fmt: skip


@numeric("s = (wet − fired) ÷ wet", source=_BY_DEFINITION, valid="fired ≤ wet")
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


@numeric("fired volume ÷ wet volume = (1 − s plane)² × (1 − s thickness)", source=_BY_DEFINITION, valid="0 ≤ s < 1")
def volume_ratio(s_plane: float, s_thickness: float) -> float:
    """Share of the wet volume left after firing. CannotBe unless 0 ≤ s < 1. By definition of s."""
    _check(s_plane)
    _check(s_thickness)
    return (1 - s_plane) ** 2 * (1 - s_thickness)


fired_mass = formula(
    "fired_mass(wet, share)", "wet × share", about="Mass after firing, in the unit of `wet` (g).", source=_BALANCE,
    valid="wet ≥ 0 and 0 < share and share ≤ 1",
)  # fmt: skip


wet_mass = formula(
    "wet_mass(fired, share)", "fired ÷ share",
    about="Clay to weigh out (g) for a fired mass (g) and the share of metal.", source=_BALANCE,
    valid="fired ≥ 0 and 0 < share and share ≤ 1",
)  # fmt: skip


@numeric("fired density = wet density × metal share ÷ ((1 − s plane)² × (1 − s thickness))", source=_BALANCE)
def fired_density(wet_density: float, metal_share: float, s_plane: float, s_thickness: float) -> float:
    """Density of the fired, still porous metal in g/cm³. CannotBe for densities and shares that cannot be."""
    guard.above_zero(wet_density, "the density of wet clay", "density", "g/cm³")
    guard.share(metal_share, "the share of metal in the clay", "metal share", zero=False)
    return wet_density * metal_share / volume_ratio.pure(s_plane, s_thickness)


@numeric("relative density = fired density ÷ density of the solid metal", source=_BALANCE, valid="at most 1")
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


@numeric("wet density × metal share ÷ volume ratio ÷ density of solid metal", source=_BALANCE, valid="at most 1")
def relative_density(
    wet_density: float, metal_share: float, s_plane: float, s_thickness: float, solid_density: float
) -> float:
    """Share of solid metal after firing; densities in g/cm³. CannotBe above 1, the check on a clay's figures."""
    return compactness.pure(fired_density.pure(wet_density, metal_share, s_plane, s_thickness), solid_density)
