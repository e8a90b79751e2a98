"""A strip laid round a former: its length on the middle of its thickness, and its seam."""

from __future__ import annotations

import math

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

_BLANK = "supplier article, Measuring a ring blank: (inside diameter + thickness) × π"
_STEINER = "Steiner's formula for parallel curves"
_BEND = "public page on the K-factor of bent sheet"
_GEOMETRY = "plane geometry"


def _size(inside: float, thickness: float) -> None:
    guard.above_zero(inside, "an inside diameter", "inside")
    guard.above_zero(thickness, "a thickness", "thickness")


@formula("length = π × (inside + thickness)", source=_BLANK, valid="neutral layer in the middle: bend radius ≥ 2 × t")
def strip_round(inside_diameter: float, thickness: float) -> float:
    """Strip (mm) that closes edge to edge round an inside diameter (mm). CannotBe for sizes of 0 or less."""
    _size(inside_diameter, thickness)
    return math.pi * (inside_diameter + thickness)


@formula("length = π × (inside + thickness)", source=_BLANK, valid="neutral layer in the middle: bend radius ≥ 2 × t")
def butt(inside_diameter: float, thickness: float) -> float:
    """Strip (mm) for a butt seam, the same as `strip_round`. CannotBe for sizes of 0 or less."""
    return strip_round.pure(inside_diameter, thickness)


@formula("length = perimeter + π × thickness", source=_STEINER, valid="any former without hollows")
def round_former(perimeter: float, thickness: float) -> float:
    """Strip, wire or strand (mm) round a former of any rounded outline (mm). CannotBe for sizes of 0 or less."""
    guard.above_zero(perimeter, "a perimeter", "perimeter")
    guard.above_zero(thickness, "a thickness", "thickness")
    return perimeter + math.pi * thickness


@formula("length = π × (inside + 2 × k × thickness)", source=_BEND, valid="0 ≤ k ≤ 1")
def strip_on_neutral(inside_diameter: float, thickness: float, k: float) -> float:
    """Strip (mm) whose neutral layer lies at the share `k` of its thickness. CannotBe for a share off 0 to 1."""
    _size(inside_diameter, thickness)
    guard.share(k, "the place of the neutral layer")
    return math.pi * (inside_diameter + 2 * k * thickness)


@formula("inside = length ÷ π − thickness", source=_BLANK)
def inside_of_strip(length: float, thickness: float) -> float:
    """Inside diameter (mm) that a closed strip makes. CannotBe if the strip is too short to close round anything."""
    guard.above_zero(thickness, "a thickness", "thickness")
    inside = length / math.pi - thickness
    if not 0 < inside < math.inf:
        raise CannotBe(
            f"a strip of {guard.shown(length)} is too short to close at {guard.shown(thickness)} thick",
            help=f"longer than {guard.shown(math.pi * thickness)}",
            field="length",
        )
    return inside


@formula("length = π × (inside + thickness) + overlap + trim", source=_BLANK + "; overlap is common practice")
def overlapped(inside_diameter: float, thickness: float, overlap: float, trim: float) -> float:
    """Strip (mm) to roll when both layers of the seam are cut through in one stroke. All wet sizes.

    CannotBe for negative allowances and sizes of 0 or less.
    """
    guard.not_below_zero(overlap, "an overlap", "overlap")
    guard.not_below_zero(trim, "a trim", "trim")
    return strip_round.pure(inside_diameter, thickness) + overlap + trim


@formula("overlap = thickness ÷ tan(angle)", source=_GEOMETRY, valid="0° < angle ≤ 90°")
def bevel_overlap(thickness: float, angle: float) -> float:
    """How far (mm) two ends cut at `angle` degrees to the surface lie over each other. CannotBe off 0° to 90°."""
    guard.above_zero(thickness, "a thickness", "thickness")
    if not 0 < angle <= 90:  # noqa: PLR2004 - a right angle
        raise CannotBe(f"a bevel of {guard.shown(angle, '°')} does not cut the strip", help="up to 90°", field="angle")
    return thickness / math.tan(math.radians(angle))


@formula("length = π × (inside + thickness) + thickness ÷ tan(angle)", source=_GEOMETRY)
def bevelled(inside_diameter: float, thickness: float, angle: float) -> float:
    """Strip (mm) whose two bevelled ends lie on each other. CannotBe as `bevel_overlap`."""
    return strip_round.pure(inside_diameter, thickness) + bevel_overlap.pure(thickness, angle)


@formula("inside = former + 2 × turns × sheet", source=_GEOMETRY)
def inside_over(former: float, sheet: float, turns: float) -> float:
    """Inside diameter (mm) of clay on a former wrapped in release sheet. CannotBe for negative sizes."""
    guard.above_zero(former, "a former", "former")
    guard.not_below_zero(sheet, "a release sheet", "release sheet")
    guard.not_below_zero(turns, "a number of turns", "turns", "")
    return former + 2 * turns * sheet


@formula("former = inside − 2 × turns × sheet", source=_GEOMETRY)
def former_for(inside: float, sheet: float, turns: float) -> float:
    """Former (mm) that leaves the wanted inside once wrapped. CannotBe if the sheet alone fills the inside."""
    guard.above_zero(inside, "an inside diameter", "inside")
    guard.not_below_zero(sheet, "a release sheet", "release sheet")
    guard.not_below_zero(turns, "a number of turns", "turns", "")
    former = inside - 2 * turns * sheet
    if former <= 0:
        raise CannotBe(
            f"{guard.shown(turns, '')} turns of {guard.shown(sheet)} sheet fill an inside of {guard.shown(inside)}",
            help=f"a sheet thinner than {guard.shown(inside / 2 / turns)}",
            field="release sheet",
        )
    return former


@formula("length = angle in radians × (radius + k × thickness)", source=_BEND, valid="0 ≤ k ≤ 1")
def bend_allowance(angle_deg: float, radius: float, thickness: float, k: float) -> float:
    """Metal (mm) taken up by a bend of `angle_deg` on an inside radius (mm). CannotBe for negative sizes."""
    guard.not_below_zero(angle_deg, "a bend", "angle", "°")
    guard.not_below_zero(radius, "a bend radius", "radius")
    guard.above_zero(thickness, "a thickness", "thickness")
    guard.share(k, "the place of the neutral layer")
    return math.radians(angle_deg) * (radius + k * thickness)


@formula("k = (length ÷ angle in radians − radius) ÷ thickness", source=_BEND)
def neutral_layer(allowance: float, angle_deg: float, radius: float, thickness: float) -> float:
    """Where the neutral layer lies, as a share of the thickness, from a measured bend. CannotBe for sizes of 0."""
    guard.above_zero(angle_deg, "a bend", "angle", "°")
    guard.above_zero(thickness, "a thickness", "thickness")
    return (allowance / math.radians(angle_deg) - radius) / thickness


@formula("k = thicknesses taken up ÷ (π ÷ 2)", source="Machinery's Handbook, 90° bend lengths as remembered, not read")
def neutral_of_right_angle(thicknesses: float) -> float:
    """The neutral layer's share of thickness behind a handbook's 90° bend figure. CannotBe if negative."""
    guard.not_below_zero(thicknesses, "a bend figure", unit="thicknesses")
    return thicknesses / (math.pi / 2)


@formula(
    "length = 2 × √(drop² − radius²) + radius × (π + 2 × asin(radius ÷ drop))",
    source="Wikipedia, Belt problem: an open belt whose second wheel is a point",
    valid="drop > radius",
)
def hung_over(radius: float, drop: float) -> float:
    """Strip (mm) over a rod whose two ends meet `drop` under its middle, on its own middle. CannotBe if inside."""
    guard.above_zero(radius, "a radius", "former")
    if not radius < drop < math.inf:
        raise CannotBe(
            f"two ends cannot meet {guard.shown(drop)} under the middle of a loop of {guard.shown(radius)} radius",
            help=f"more than {guard.shown(radius)}",
            field="meeting",
        )
    return 2 * math.sqrt(drop**2 - radius**2) + radius * (math.pi + 2 * math.asin(radius / drop))
