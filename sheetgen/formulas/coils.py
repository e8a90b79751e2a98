"""Coils and flat spirals: the wire in them."""

from __future__ import annotations

import math

from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula, numeric

_HELIX = "length of a helix on the mean diameter"
_SPIRAL = "arc length of Archimedes' spiral"


coil_wire = formula(
    "coil_wire(inside, wire, pitch, turns)", "turns × √((π × (inside + wire))² + pitch²)",
    about="Wire (mm) in a coil; a close coil has a pitch of one wire (mm).", source=_HELIX,
    valid="inside > 0 and wire > 0 and pitch ≥ wire and turns ≥ 0",
)  # fmt: skip

coil_length = formula(
    "coil_long(wire, pitch, turns)", "turns × pitch + wire", about="Length (mm) of a coil from end to end.",
    source=_HELIX, valid="wire > 0 and pitch > 0 and turns ≥ 0",
)  # fmt: skip


def _spiral(radius: float, growth: float) -> float:
    """Length of r = growth × angle from its centre out to a radius."""
    return (radius * math.hypot(radius, growth) / growth + growth * math.asinh(radius / growth)) / 2


@numeric(
    "wire = ∫ √(r² + (pitch ÷ 2π)²) dθ, r from (inside + wire) ÷ 2, one pitch more a turn", source=_SPIRAL,
    units="mm, mm, mm,  -> mm",
)  # fmt: skip
def spiral_wire(inside: float, wire: float, gap: float, turns: float) -> float:
    """Wire (mm) in a flat spiral round an opening (0: from its centre), with a gap between turns; all mm.

    CannotBe for negative sizes.
    """
    guard.not_below_zero(inside, "the inside of a spiral", "inside")
    guard.above_zero(wire, "a wire", "wire")
    guard.not_below_zero(gap, "the gap between turns", "gap")
    guard.not_below_zero(turns, "a number of turns", "turns", "")
    start = (inside + wire) / 2 if inside else 0.0
    growth = (wire + gap) / (2 * math.pi)
    return _spiral(start + turns * (wire + gap), growth) - _spiral(start, growth)


spiral_across = formula(
    "spiral_across(end, pitch, wire)", "2 × end − pitch ÷ 2 + wire",
    about="Width (mm) of a flat spiral through its outer end, from the radius there, to the middle of the wire (mm).",
    source=_SPIRAL, valid="wire > 0 and pitch ≥ wire and end ≥ pitch",
)  # fmt: skip

spiral_turns = formula(
    "spiral_turns(across, wire, pitch, start)", "((across − wire + pitch ÷ 2) ÷ 2 − start) ÷ pitch",
    about="Turns of a flat spiral of a width (mm) through its outer end, from the radius where it starts (mm).",
    source=_SPIRAL, valid="wire > 0 and pitch ≥ wire and start ≥ 0 and across ≥ 2 × start + 3 × pitch ÷ 2 + wire",
)  # fmt: skip
