"""Jump rings, round and oval: wire, coil, kerf. Lengths run along the middle of the wire."""

from __future__ import annotations

import math

from sheetgen.base.spread import floor
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.units import MM_PER_METRE
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula
from sheetgen.formulas.gauges import wire_mass_per_metre

_RING = "metalsmiths' forum: length of material = (inside diameter + thickness) × π"
_AGM = "exact: arithmetic-geometric mean, Abramowitz & Stegun ch. 17 as remembered"
_STEINER = "Steiner's formula for parallel curves"
_GEOMETRY = "plane geometry"


def _ring(inside: float, d: float) -> None:
    guard.above_zero(inside, "the inside of a ring", "inside")
    guard.above_zero(d, "a wire", "wire")


def _oval(length: float, width: float) -> None:
    guard.above_zero(length, "the length of an oval", "length")
    guard.above_zero(width, "the width of an oval", "width")
    if width > length:
        raise CannotBe(
            f"an oval {guard.shown(length)} long cannot be {guard.shown(width)} wide",
            help=f"the longer side first: {guard.shown(width)} long, {guard.shown(length)} wide",
            field="width",
        )


@formula("wire = π × (inside + wire thickness)", source=_RING)
def ring_wire(inside_diameter: float, d: float) -> float:
    """Wire (mm) in one round ring. CannotBe for sizes of 0 or less. Metalsmiths' forum."""
    _ring(inside_diameter, d)
    return math.pi * (inside_diameter + d)


@formula("outside = inside + 2 × wire thickness", source=_GEOMETRY)
def ring_outside(inside_diameter: float, d: float) -> float:
    """Outside diameter (mm) of a ring. CannotBe for sizes of 0 or less."""
    _ring(inside_diameter, d)
    return inside_diameter + 2 * d


@formula("inside = outside − 2 × wire thickness", source=_GEOMETRY)
def ring_inside(outside_diameter: float, d: float) -> float:
    """Inside diameter (mm) of a ring sold by its outside. CannotBe if the wire leaves no opening."""
    guard.above_zero(d, "a wire", "wire")
    if outside_diameter <= 2 * d:
        raise CannotBe(
            f"a ring of {guard.shown(outside_diameter)} outside in {guard.shown(d)} wire has no opening",
            help=f"an outside of more than {guard.shown(2 * d)}",
            field="outside",
        )
    return outside_diameter - 2 * d


@formula("aspect ratio = inside ÷ wire thickness", source="craft magazine's article on aspect ratio, 2017")
def aspect_ratio(inside: float, d: float) -> float:
    """Inside diameter over wire thickness, both mm: what decides whether a weave fits. CannotBe for 0 or less."""
    _ring(inside, d)
    return inside / d


@formula("inside of a ring = aspect ratio × wire thickness", source="craft magazine's article on aspect ratio, 2017")
def inside_for_aspect(ratio: float, d: float) -> float:
    """Inside diameter (mm) of an aspect ratio in a wire (mm). CannotBe for 0 or less."""
    guard.above_zero(ratio, "an aspect ratio", unit="")
    guard.above_zero(d, "a wire", "wire")
    return ratio * d


@formula("perimeter of an ellipse by the arithmetic-geometric mean of its half axes", source=_AGM)
def ellipse_perimeter(length: float, width: float) -> float:
    """Perimeter (mm) of an ellipse from its two axes (mm), longer first. CannotBe if the wider way round."""
    _oval(length, width)
    a, g = length / 2, width / 2
    weight, missing = 0.5, 0.5 * (a * a - g * g)
    square = a * a
    while abs(a - g) > 1e-15 * a:
        half_gap = (a - g) / 2
        a, g = (a + g) / 2, math.sqrt(a * g)
        weight *= 2
        missing += weight * half_gap**2
    return 2 * math.pi * (square - missing) / a


@formula("perimeter = 2 × (length − width) + π × width", source=_GEOMETRY)
def stadium_perimeter(length: float, width: float) -> float:
    """Perimeter (mm) of a long oval with straight sides and round ends. CannotBe if the wider way round."""
    _oval(length, width)
    return 2 * (length - width) + math.pi * width


@formula("wire = ellipse's inside perimeter + π × wire thickness", source=_STEINER)
def oval_wire_ellipse(length: float, width: float, d: float) -> float:
    """Wire (mm) in a ring whose inside is an ellipse. CannotBe for impossible sizes. Steiner's formula."""
    guard.above_zero(d, "a wire", "wire")
    return ellipse_perimeter.pure(length, width) + math.pi * d


@formula("wire = 2 × (length − width) + π × (width + wire thickness)", source=_STEINER)
def oval_wire_stadium(length: float, width: float, d: float) -> float:
    """Wire (mm) in a ring with straight sides and round ends. CannotBe for impossible sizes. Steiner's formula."""
    guard.above_zero(d, "a wire", "wire")
    return stadium_perimeter.pure(length, width) + math.pi * d


@formula("inside once closed = inside − saw cut ÷ π", source=_GEOMETRY)
def closed_inside(inside: float, kerf: float) -> float:
    """Inside diameter (mm) of a ring whose saw cut (mm) is closed tight. CannotBe if the cut takes all of it."""
    guard.above_zero(inside, "the inside of a ring", "inside")
    guard.not_below_zero(kerf, "a saw cut", "kerf")
    if kerf >= math.pi * inside:
        raise CannotBe(
            f"a saw cut of {guard.shown(kerf)} is more than the ring has round its inside",
            help=f"less than {guard.shown(math.pi * inside)}",
            field="kerf",
        )
    return inside - kerf / math.pi


@formula("rings = coil length ÷ wire thickness, whole ones", source="a close coil: one wire thickness a turn")
def rings_from_coil(coil_length: float, wire: float) -> float:
    """How many rings a close coil (mm) gives. CannotBe for 0 or less."""
    guard.not_below_zero(coil_length, "a coil", "length")
    guard.above_zero(wire, "a wire", "wire")
    return floor(coil_length / wire)


@formula("coil length = rings × wire thickness", source="a close coil: one wire thickness a turn")
def coil_for_rings(count: float, wire: float) -> float:
    """Length (mm) of a close coil of `count` rings. CannotBe for 0 or less."""
    guard.not_below_zero(count, "a number of rings", "count", "")
    guard.above_zero(wire, "a wire", "wire")
    return count * wire


@formula("wire = rings × wire of one ring + tails", source=_RING + "; tails are common practice")
def wire_for_rings(count: float, one_ring: float, tails: float) -> float:
    """Wire (mm) to wind `count` rings with tails to hold. CannotBe for negative numbers."""
    guard.not_below_zero(count, "a number of rings", "count", "")
    guard.above_zero(one_ring, "the wire of one ring", "wire")
    guard.not_below_zero(tails, "a tail", "tail")
    return count * one_ring + tails


@formula("extra = √(turn² + pitch²) − turn", source="length of a helix")
def helix_extra(turn: float, pitch: float) -> float:
    """What the slope of a coil adds to one turn (mm). CannotBe for negative numbers."""
    guard.above_zero(turn, "a turn", "inside")
    guard.not_below_zero(pitch, "a pitch", "pitch")
    return math.hypot(turn, pitch) - turn


@formula("mass = (π × (inside + wire thickness) − saw cut) × grams per metre ÷ 1000", source="definition of density")
def ring_mass(inside: float, d: float, kerf: float, density: float) -> float:
    """What one sawn ring weighs (g); mm and g/cm³. CannotBe if the cut takes the whole ring."""
    metal = ring_wire.pure(inside, d) - kerf
    guard.above_zero(metal, "what the saw leaves of a ring", "kerf")
    return metal * wire_mass_per_metre.pure(density, d) / MM_PER_METRE


@formula("former = inside ÷ (1 + springback)", source="input: measured on a trial coil", valid="0 ≤ springback < 1")
def former_before_springback(inside: float, springback: float) -> float:
    """Rod (mm) that leaves the wanted inside when the coil opens by a measured share. CannotBe off 0 to 1."""
    guard.above_zero(inside, "the inside of a ring", "inside")
    guard.share(springback, "a springback", "springback")
    return inside / (1 + springback)
