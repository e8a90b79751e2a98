"""Gauge names to millimetres, and what wire of a diameter weighs."""

from __future__ import annotations

import math

from sheetgen.base.trouble import CannotBe
from sheetgen.facts import gauges as facts
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula, numeric

_AWG = "ASTM B258 as quoted in GNU Units 2.22"
_SOLID = "definition of density"


@numeric("diameter = 0.127 mm × 92^((36 − gauge) ÷ 39)", source=_AWG, valid="0000 (−3) to 40")
def awg(n: float) -> float:
    """Diameter (mm) of an American wire gauge; 0000 is −3, 00 is −1. CannotBe off 0000 to 40. ASTM B258."""
    if not facts.AWG_FIRST <= n <= facts.AWG_LAST:
        near = "0000 (−3)" if n < facts.AWG_FIRST else f"{facts.AWG_LAST:g}"
        raise CannotBe(f"there is no {guard.shown(n, 'AWG')} here", help=f"the nearest is {near} AWG", field="gauge")
    return facts.AWG_UNIT * math.pow(facts.AWG_RATIO, (facts.AWG_UNIT_NUMBER - n) / facts.AWG_STEPS)


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


wire_grams = formula(
    "wire_grams(thick, long, density)", "π ÷ 4 × thick² × long × density ÷ 1000 mm³/cm³",
    about="Mass (g) of round wire from its thickness and length (mm) and its density (g/cm³).", source=_SOLID,
    valid="thick > 0 and long ≥ 0 and density > 0",
)  # fmt: skip
