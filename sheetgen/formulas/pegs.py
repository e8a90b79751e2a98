"""Links bent on two pegs: figure-eights (a crossed belt) and long links (an open belt), on the wire's middle."""

from __future__ import annotations

import math

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

_CROSSED = "Britannica 1911, Mechanics, eq. (32 A), its sign put right by path length"
_OPEN = "Britannica 1911, Mechanics, eq. (32 B); Wikipedia, Belt problem"
_INSIDE = "plane geometry: touching inner walls coincide in a taut chain"


def _pegs(d1: float, d2: float, gap: float, wire: float) -> tuple[float, float, float]:
    """Radii of the wire's middle round each peg, and the distance of the pegs' centres."""
    guard.above_zero(d1, "a peg", "pegs")
    guard.above_zero(d2, "a peg", "pegs")
    guard.above_zero(wire, "a wire", "wire")
    guard.not_below_zero(gap, "the gap between two pegs", "gap")
    return (d1 + wire) / 2, (d2 + wire) / 2, gap + (d1 + d2) / 2


def _crossed(r1: float, r2: float, c: float) -> tuple[float, float]:
    """Straight part between the tangent points, and how far past the half turn the belt wraps each side (radians)."""
    straight = math.sqrt(max(0.0, c * c - (r1 + r2) ** 2))
    return straight, math.asin(min(1.0, (r1 + r2) / c))


@formula("2 × √(C² − (r1 + r2)²) + (r1 + r2) × (π + 2 × asin((r1 + r2) ÷ C))", source=_CROSSED, valid="C ≥ r1 + r2")
def crossed_belt_radii(r1: float, r2: float, c: float) -> float:
    """Length of a crossed belt over two wheels of radius r1, r2 whose centres are c apart. CannotBe if they overlap."""
    guard.above_zero(r1, "a radius", "pegs")
    guard.above_zero(r2, "a radius", "pegs")
    if not (r1 + r2) * (1 - 1e-12) <= c < math.inf:
        raise CannotBe(
            f"two wheels of {guard.shown(r1)} and {guard.shown(r2)} radius overlap at {guard.shown(c)}",
            help=f"centres {guard.at_least(r1 + r2)} apart",
            field="gap",
        )
    straight, angle = _crossed(r1, r2, c)
    return 2 * straight + (r1 + r2) * (math.pi + 2 * angle)


@formula(
    "2 × √(C² − (r1 − r2)²) + r1 × (π + 2β) + r2 × (π − 2β), β = asin((r1 − r2) ÷ C)",
    source=_OPEN,
    valid="C > |r1 − r2|",
)
def open_belt_radii(r1: float, r2: float, c: float) -> float:
    """Length of an open belt over two wheels, centres c apart. CannotBe if one wheel lies inside the other."""
    guard.above_zero(r1, "a radius", "pegs")
    guard.above_zero(r2, "a radius", "pegs")
    if not abs(r1 - r2) < c < math.inf:
        raise CannotBe(
            f"one wheel lies inside the other at {guard.shown(c)} from centre to centre",
            help=f"more than {guard.shown(abs(r1 - r2))}",
            field="gap",
        )
    angle = math.asin((r1 - r2) / c)
    return 2 * math.sqrt(c * c - (r1 - r2) ** 2) + r1 * (math.pi + 2 * angle) + r2 * (math.pi - 2 * angle)


@formula(
    "r = (peg + wire) ÷ 2, C = gap + (peg 1 + peg 2) ÷ 2, then a crossed belt", source=_CROSSED, valid="gap ≥ wire"
)
def crossed_belt(d1: float, d2: float, gap: float, wire: float) -> float:
    """Wire (mm) in a figure-eight on pegs d1, d2 (mm) with a clear gap (mm). CannotBe if the gap is under the wire."""
    r1, r2, c = _pegs(d1, d2, gap, wire)
    if gap < wire * (1 - 1e-9):
        raise CannotBe(
            f"a wire of {guard.shown(wire)} does not pass between pegs {guard.shown(gap)} apart",
            help=guard.at_least(wire),
            field="gap",
        )
    return crossed_belt_radii.pure(r1, r2, c)


@formula("r = (peg + wire) ÷ 2, C = gap + (peg 1 + peg 2) ÷ 2, then an open belt", source=_OPEN)
def open_belt(d1: float, d2: float, gap: float, wire: float) -> float:
    """Wire (mm) in a long link on pegs d1, d2 (mm) with a clear gap (mm). CannotBe for impossible sizes."""
    r1, r2, c = _pegs(d1, d2, gap, wire)
    return open_belt_radii.pure(r1, r2, c)


@formula("2 × (√(straight² + wire²) − straight)", source="a strand climbs one wire thickness over its straight part")
def crossing_climb(d1: float, d2: float, gap: float, wire: float) -> float:
    """What one strand lying over the other adds (mm) to a figure-eight. CannotBe if the gap is under the wire."""
    crossed_belt.pure(d1, d2, gap, wire)
    straight, _ = _crossed(*_pegs(d1, d2, gap, wire))
    return 2 * (math.hypot(straight, wire) - straight)


@formula("wrap = 180° + 2 × asin((r1 + r2) ÷ C)", source=_CROSSED, valid="C ≥ r1 + r2")
def crossed_wrap(r1: float, r2: float, c: float) -> float:
    """Angle (degrees) that a crossed belt lies on each wheel. CannotBe if the wheels overlap."""
    crossed_belt_radii.pure(r1, r2, c)
    return math.degrees(math.pi + 2 * _crossed(r1, r2, c)[1])


@formula("inside length = gap + peg 1 + peg 2", source=_INSIDE)
def inside_pitch(d1: float, d2: float, gap: float) -> float:
    """Inside length (mm) of a link, which is what it adds to a taut chain. CannotBe for impossible sizes."""
    guard.above_zero(d1, "a peg", "pegs")
    guard.above_zero(d2, "a peg", "pegs")
    guard.not_below_zero(gap, "the gap between two pegs", "gap")
    return gap + d1 + d2


@formula("outside length = gap + peg 1 + peg 2 + 2 × wire", source=_INSIDE)
def outside_pitch(d1: float, d2: float, gap: float, wire: float) -> float:
    """Outside length (mm) of a link. CannotBe for impossible sizes."""
    guard.above_zero(wire, "a wire", "wire")
    return inside_pitch.pure(d1, d2, gap) + 2 * wire
