"""Two-part adhesive: how much, in which parts, how long it stays open, and in how many mixes."""

from __future__ import annotations

import math

from sheetgen.base.spread import ceil, floor
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.adhesive import POT_LIFE_HALVES_PER
from sheetgen.facts.units import MM3_PER_CM3, SECONDS_PER_MINUTE
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

_GUIDE = "composites supplier's guide to measuring epoxy"
_RULE = "rule of thumb, common practice: it halves for every 10 °C"


@formula("mL = π ÷ 4 × diameter² × depth × fill ÷ 1000", source="volume of a cylinder; fill is common practice")
def seat_volume(diameter: float, depth: float, fill: float) -> float:
    """Adhesive (mL) in one round seat (mm), `fill` the share the stone leaves. CannotBe for a share off 0 to 1."""
    guard.above_zero(diameter, "a seat", "stone")
    guard.above_zero(depth, "a seat's depth", "depth")
    guard.share(fill, "the fill of a seat", "fill")
    return math.pi / 4 * diameter**2 * depth * fill / MM3_PER_CM3


@formula("mix = seats × one seat × (1 + waste), and no less than can be mixed", source="common practice")
def mix_volume(seats: float, one_seat: float, waste: float, least: float) -> float:
    """Adhesive (mL) to mix, at least `least` mL. CannotBe for negative numbers."""
    guard.not_below_zero(seats, "a number of seats", "count", "")
    guard.not_below_zero(one_seat, "a seat's volume", unit="mL")
    guard.not_below_zero(waste, "a waste", "waste", "")
    return max(least, seats * one_seat * (1 + waste))


@formula("grams = mL × density", source="definition of density")
def mix_mass(volume: float, density: float) -> float:
    """Mass (g) of a volume (mL). CannotBe for negative numbers."""
    guard.not_below_zero(volume, "a volume", unit="mL")
    guard.above_zero(density, "a density", "density", "g/cm³")
    return volume * density


@formula(
    "share of a part = its parts ÷ all parts", source=_GUIDE, valid="volume from volume parts, mass from mass parts"
)
def part_of_mix(whole: float, this: float, other: float) -> float:
    """How much of a mix is the part that has `this` parts to `other`. CannotBe for parts of 0 or less."""
    guard.above_zero(this, "a part of a mix", "ratio", "")
    guard.above_zero(other, "a part of a mix", "ratio", "")
    return whole * this / (this + other)


@formula("B by mass ÷ A by mass = (B ÷ A by volume) × (density B ÷ density A)", source=_GUIDE)
def ratio_by_mass(ratio_by_volume: float, density_b: float, density_a: float) -> float:
    """Mixing ratio by mass from the one by volume. CannotBe for 0 or less."""
    guard.above_zero(ratio_by_volume, "a mixing ratio", "ratio", "")
    guard.above_zero(density_b, "a density", "density", "g/cm³")
    guard.above_zero(density_a, "a density", "density", "g/cm³")
    return ratio_by_volume * density_b / density_a


@formula("pot life = reference × 2^(−(room − reference temperature) ÷ 10)", source=_RULE, valid="the same mass of mix")
def pot_life(reference: float, at: float, room: float) -> float:
    """Minutes a mix stays open at `room` °C if it does `reference` minutes `at` °C. CannotBe for 0 or less."""
    guard.above_zero(reference, "a pot life", "pot life", "min")
    return reference * math.pow(2, -(room - at) / POT_LIFE_HALVES_PER)


@formula("seats in one mix = pot life ÷ time for one, whole ones", source=_GUIDE)
def seats_per_mix(pot_minutes: float, seconds_each: float) -> float:
    """Seats filled (each in seconds) before the mix is closed. CannotBe if not even one is."""
    guard.above_zero(pot_minutes, "a pot life", "pot life", "min")
    guard.above_zero(seconds_each, "the time for one seat", "seconds", "s")
    seats = floor(pot_minutes * SECONDS_PER_MINUTE / seconds_each)
    if seats < 1:
        raise CannotBe(
            f"the mix is closed after {guard.shown(pot_minutes, 'min')}, before one seat is filled",
            help="a slower adhesive or a cooler room",
            field="pot life",
        )
    return seats


@formula("mixes = seats ÷ seats in one mix, rounded up", source=_GUIDE)
def mixes(seats: float, pot_minutes: float, seconds_each: float) -> float:
    """How many times adhesive is mixed for a number of seats. CannotBe if not even one seat fits a mix."""
    guard.not_below_zero(seats, "a number of seats", "count", "")
    return ceil(seats / seats_per_mix.pure(pot_minutes, seconds_each))
