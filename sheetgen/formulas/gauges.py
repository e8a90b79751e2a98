"""Gauge names to millimetres, and what wire of a diameter weighs."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.spread import GRAIN
from sheetgen.base.trouble import CannotBe
from sheetgen.facts import gauges as facts
from sheetgen.facts.units import MM_PER_INCH, MM_PER_METRE
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

if TYPE_CHECKING:
    from collections.abc import Mapping

_AWG = "ASTM B258 as quoted in GNU Units 2.22"
_SOLID = "definition of density"


@formula("diameter = 0.127 mm × 92^((36 − gauge) ÷ 39)", source=_AWG, valid="0000 (−3) to 40")
def awg(n: float) -> float:
    """Diameter (mm) of an American wire gauge; 0000 is −3, 00 is −1. CannotBe off 0000 to 40. ASTM B258."""
    if not facts.AWG_FIRST <= n <= facts.AWG_LAST:
        near = "0000 (−3)" if n < facts.AWG_FIRST else f"{facts.AWG_LAST:g}"
        raise CannotBe(f"there is no {guard.shown(n, 'AWG')} here", help=f"the nearest is {near} AWG", field="gauge")
    return facts.AWG_UNIT * math.pow(facts.AWG_RATIO, (facts.AWG_UNIT_NUMBER - n) / facts.AWG_STEPS)


@formula("gauge = 36 − 39 × log(diameter ÷ 0.127 mm) ÷ log 92", source=_AWG)
def awg_number(d: float) -> float:
    """American gauge of a diameter (mm), whole or between two. CannotBe for 0 or less."""
    guard.above_zero(d, "a wire", "wire")
    return facts.AWG_UNIT_NUMBER - facts.AWG_STEPS * math.log(d / facts.AWG_UNIT) / math.log(facts.AWG_RATIO)


def swg(n: float) -> float:
    """Diameter (mm) of a British standard wire gauge. CannotBe for what the table lacks. BS 3737:1964."""
    gauge = round(n) if math.isfinite(n) else -1
    if gauge != n or gauge not in facts.SWG_INCHES:
        near = min(facts.SWG_INCHES, key=lambda known: abs(known - n) if math.isfinite(n) else known)
        raise CannotBe(
            f"the table has no {guard.shown(n, 'SWG')}",
            help=f"the nearest is {near} SWG, {facts.SWG_INCHES[near] * MM_PER_INCH:.4g} mm",
            field="gauge",
        )
    return facts.SWG_INCHES[gauge] * MM_PER_INCH


def swg_nearest(d: float) -> int:
    """British gauge whose diameter is nearest to `d` (mm). CannotBe for 0 or less. BS 3737:1964."""
    guard.above_zero(d, "a wire", "wire")
    return min(facts.SWG_INCHES, key=lambda n: abs(facts.SWG_INCHES[n] * MM_PER_INCH - d))


@formula("thickness = cards × one card", source="two suppliers' slat and card charts", valid="for slats; cards vary")
def cards(n: float, card: float) -> float:
    """Thickness (mm) of `n` cards of `card` mm. CannotBe for 0 or less."""
    guard.above_zero(n, "a number of cards", "thickness", "cards")
    guard.above_zero(card, "a card's thickness", "card")
    return n * card


@formula("cards = thickness ÷ one card, to the nearest whole one", source="two suppliers' slat and card charts")
def card_count(thickness: float, card: float) -> float:
    """Whole cards nearest to a thickness (mm), halves up. CannotBe for 0 or less."""
    guard.above_zero(thickness, "a thickness", "thickness")
    guard.above_zero(card, "a card's thickness", "card")
    return math.floor(thickness / card + 0.5 + GRAIN)


@formula(
    "grams per metre = density × π ÷ 4 × diameter²", source=_SOLID, valid="density g/cm³, diameter mm: units cancel"
)
def wire_mass_per_metre(density: float, d: float) -> float:
    """What a metre of round wire weighs (g/m). CannotBe for 0 or less."""
    guard.above_zero(density, "a density", "density", "g/cm³")
    guard.above_zero(d, "a wire", "wire")
    return density * math.pi / 4 * d**2


@formula("grams = density × π ÷ 4 × diameter² × length in metres", source=_SOLID)
def wire_mass(density: float, d: float, length: float) -> float:
    """What a length (mm) of round wire weighs (g). CannotBe for 0 or less."""
    guard.not_below_zero(length, "a length", "length")
    return wire_mass_per_metre.pure(density, d) * length / MM_PER_METRE


@formula("metres per gram = 1 ÷ grams per metre", source=_SOLID)
def wire_metres_per_gram(density: float, d: float) -> float:
    """How much round wire a gram makes (m/g). CannotBe for 0 or less."""
    return 1 / wire_mass_per_metre.pure(density, d)


def alloy_density(shares: Mapping[float, float]) -> float:
    """Density of an alloy from {density g/cm³: parts by mass}: 1 ÷ ρ = Σ share ÷ ρ.

    CannotBe for nothing or negative parts. Assumes no change of volume: good for sterling and gold-silver-copper,
    2.4 % low for brass. Printers' metals page on alloys.
    """
    for density, parts in shares.items():
        guard.above_zero(density, "a density", "density", "g/cm³")
        guard.not_below_zero(parts, "a part of an alloy", unit="")
    whole = sum(shares.values())
    guard.above_zero(whole, "the parts of an alloy together", unit="")
    return whole / sum(parts / density for density, parts in shares.items())
