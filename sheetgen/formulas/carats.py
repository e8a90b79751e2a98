"""What a cut stone weighs, from its measures."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe
from sheetgen.facts import stones as facts
from sheetgen.facts.units import GRAMS_PER_CARAT
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

if TYPE_CHECKING:
    from sheetgen.base.spread import Spread

_COURSE = "gemmology course pages on mounted diamond weight"
_POST = "a diamond forum post quoting GIA's formulas"


def _measures(*sizes: float) -> None:
    for size in sizes:
        guard.above_zero(size, "a stone's measure", "stone")


@formula("carats = diameter² × depth × 0.0061 × girdle factor", source=_COURSE, valid="round brilliant diamond")
def carats_round(diameter: float, depth: float, girdle: float) -> float:
    """Weight (ct) of a round brilliant diamond; mm, and 1 for a thin girdle. CannotBe for 0 or less."""
    _measures(diameter, depth, girdle)
    return diameter**2 * depth * facts.ROUND_WEIGHT * girdle


@formula("carats = ((length + width) ÷ 2)² × depth × 0.0062 × girdle factor", source=_COURSE, valid="oval diamond")
def carats_oval(length: float, width: float, depth: float, girdle: float) -> float:
    """Weight (ct) of an oval diamond; mm, and 1 for a thin girdle. CannotBe for 0 or less."""
    _measures(length, width, depth, girdle)
    return ((length + width) / 2) ** 2 * depth * facts.OVAL_WEIGHT * girdle


@formula("carats = length × width × depth × 0.0059 × girdle factor", source=_POST, valid="heart diamond")
def carats_heart(length: float, width: float, depth: float, girdle: float) -> float:
    """Weight (ct) of a heart-shaped diamond; mm. CannotBe for 0 or less."""
    _measures(length, width, depth, girdle)
    return length * width * depth * facts.HEART_WEIGHT * girdle


@formula("carats = length × width × depth × 0.0057 × girdle factor", source=_POST, valid="trillion diamond")
def carats_trillion(length: float, width: float, depth: float, girdle: float) -> float:
    """Weight (ct) of a trillion diamond; mm. CannotBe for 0 or less."""
    _measures(length, width, depth, girdle)
    return length * width * depth * facts.TRILLION_WEIGHT * girdle


@formula("carats = length × width × depth × factor of the nearest printed length to width", source=_POST)
def carats_emerald(length: float, width: float, depth: float, girdle: float) -> float:
    """Weight (ct) of an emerald cut diamond; mm, longer side first. CannotBe if the wider way round."""
    _measures(length, width, depth, girdle)
    if width > length:
        raise CannotBe("the width is more than the length", help="the longer side first", field="stone")
    ratio = min(facts.EMERALD_WEIGHTS, key=lambda known: abs(known - length / width))
    return length * width * depth * facts.EMERALD_WEIGHTS[ratio] * girdle


@formula("carats = diamond's carats × density ÷ 3.52", source=_COURSE, valid="the same cut in another stone")
def carats_of_species(diamond_carats: float, density: float) -> float:
    """Weight (ct) of the same cut in a stone of another density (g/cm³). CannotBe for 0 or less."""
    _measures(diamond_carats, density)
    return diamond_carats * density / facts.DIAMOND


@formula("grams = carats × 0.2", source="GNU Units 2.22, carat")
def carats_in_grams(carats: float) -> float:
    """Grams of a weight in metric carats. CannotBe for negative numbers."""
    guard.not_below_zero(carats, "a stone's weight", unit="ct")
    return carats * GRAMS_PER_CARAT


def brilliant(size: Spread, width: Spread | None, height: Spread, density: float) -> tuple[Spread, str]:
    """Weight (ct) of a stone cut as a round or oval brilliant, thin at its girdle; and how a pencil works it."""
    a, high, last = f"{size.usual:.6g}", f"{height.usual:.6g}", f"× {density:.6g} ÷ {facts.DIAMOND:g}"
    if width is None:
        worked = f"{a}² × {high} × {facts.ROUND_WEIGHT:g} {last}"
        return carats_of_species(carats_round(size, height, 1), density), worked
    worked = f"(({a} + {width.usual:.6g}) ÷ 2)² × {high} × {facts.OVAL_WEIGHT:g} {last}"
    return carats_of_species(carats_oval(size, width, height, 1), density), worked
