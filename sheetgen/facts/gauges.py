"""Wire gauges and clay cards: what a thickness name is in millimetres or inches."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

_AWG = "ASTM B258 as quoted in GNU Units 2.22"
_SWG = "GNU Units 2.22, brwiregauge, after BS 3737:1964"

AWG_UNIT = Fact(0.127, "AWG 36, diameter (0.005 in)", unit="mm", source=_AWG, grade="library")
AWG_RATIO = Fact(92, "AWG 0000 over AWG 36, diameters", unit="ratio", source=_AWG, grade="library")
AWG_STEPS = Fact(39, "AWG steps from 0000 to 36", unit="steps", source=_AWG, grade="library")
AWG_UNIT_NUMBER = Fact(36, "AWG number of 0.005 in", unit="gauge", source=_AWG, grade="library")
AWG_FIRST = Fact(-3, "AWG 0000 as a number", unit="gauge", source=_AWG, grade="library")
AWG_LAST = Fact(
    40, "finest AWG number that was checked", unit="gauge", source="fluids 1.3.1, t_from_gauge", grade="library"
)

# BS 3737:1964 (withdrawn), inches. 28 is 0.0148; one library prints 0.0149.
_SWG_INCHES = (
    "0.324 0.300 0.276 0.252 0.232 0.212 0.192 0.176 0.160 0.144 0.128 0.116 0.104 0.092 0.080 0.072 0.064 0.056 0.048 "
    "0.040 0.036 0.032 0.028 0.024 0.022 0.020 0.018 0.0164 0.0148 0.0136 0.0124 0.0116 0.0108 0.0100 0.0092 0.0084 "
    "0.0076 0.0068 0.0060 0.0052 0.0048"
)
SWG_INCHES = {
    n: Fact(float(inches), f"SWG {n}", unit="in", source=_SWG, grade="library")
    for n, inches in enumerate(_SWG_INCHES.split())
}

CARD = Fact(0.25, "one card of a slat chart", unit="mm", source="two suppliers' slat and card charts", grade="seen")
