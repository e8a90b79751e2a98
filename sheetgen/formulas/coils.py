"""Coils and flat spirals: the wire in them."""

from __future__ import annotations

import math

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

_HELIX = "length of a helix on the mean diameter"
_SPIRAL = "arc length of Archimedes' spiral"


@formula("wire = turns × √((π × (inside + wire))² + pitch²)", source=_HELIX)
def coil_wire(inside: float, wire: float, pitch: float, turns: float) -> float:
    """Wire (mm) in a coil; a close coil has a pitch of one wire. CannotBe if the turns would overlap."""
    guard.above_zero(inside, "the inside of a coil", "inside")
    guard.above_zero(wire, "a wire", "wire")
    guard.not_below_zero(turns, "a number of turns", "turns", "")
    if pitch < wire * (1 - 1e-9):
        raise CannotBe(
            f"turns of {guard.shown(wire)} wire cannot lie {guard.shown(pitch)} apart",
            help=guard.at_least(wire),
            field="pitch",
        )
    return turns * math.hypot(math.pi * (inside + wire), pitch)


@formula("length = turns × pitch + wire thickness", source=_HELIX)
def coil_length(wire: float, pitch: float, turns: float) -> float:
    """Length (mm) of a coil from end to end. CannotBe for sizes of 0 or less."""
    guard.above_zero(wire, "a wire", "wire")
    guard.above_zero(pitch, "a pitch", "pitch")
    guard.not_below_zero(turns, "a number of turns", "turns", "")
    return turns * pitch + wire


def _spiral(radius: float, growth: float) -> float:
    """Length of r = growth × angle from its centre out to a radius."""
    return (radius * math.hypot(radius, growth) / growth + growth * math.asinh(radius / growth)) / 2


@formula("wire = ∫ √(r² + (pitch ÷ 2π)²) dθ, r from (inside + wire) ÷ 2, one pitch more a turn", source=_SPIRAL)
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


@formula(
    "across = 2 × (start + turns × (wire + gap)) + wire − (wire + gap) ÷ 2", source=_SPIRAL, valid="1 turn or more"
)
def spiral_across(inside: float, wire: float, gap: float, turns: float) -> float:
    """Width (mm) of a flat spiral through its outer end. CannotBe for less than one turn and negative sizes."""
    guard.not_below_zero(inside, "the inside of a spiral", "inside")
    guard.above_zero(wire, "a wire", "wire")
    guard.not_below_zero(gap, "the gap between turns", "gap")
    if not 1 <= turns < math.inf:
        raise CannotBe("a spiral wants a whole turn at least", help="1 turn or more", field="turns")
    start = (inside + wire) / 2 if inside else 0.0
    end = start + turns * (wire + gap)
    return 2 * end - (wire + gap) / 2 + wire


@formula(
    "turns = ((across − wire + (wire + gap) ÷ 2) ÷ 2 − start) ÷ (wire + gap)", source=_SPIRAL, valid="1 turn or more"
)
def spiral_turns(inside: float, wire: float, gap: float, across: float) -> float:
    """Turns of a flat spiral of a width (mm) through its outer end. CannotBe if that is less than one turn."""
    guard.not_below_zero(inside, "the inside of a spiral", "inside")
    guard.above_zero(wire, "a wire", "wire")
    guard.not_below_zero(gap, "the gap between turns", "gap")
    pitch = wire + gap
    start = (inside + wire) / 2 if inside else 0.0
    turns = ((across - wire + pitch / 2) / 2 - start) / pitch
    if not 1 - 1e-9 <= turns < math.inf:
        raise CannotBe(
            f"a spiral {guard.shown(across)} across has less than one turn",
            help=guard.at_least(spiral_across.pure(inside, wire, gap, 1)),
            field="across",
        )
    return turns
