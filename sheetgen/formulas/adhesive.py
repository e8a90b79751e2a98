"""Two-part adhesive: how much, in which parts, how long it stays open, and in how many mixes."""

from __future__ import annotations

import math

from sheetgen.facts.adhesive import POT_LIFE_HALVES_PER
from sheetgen.formulas.formula import formula, numeric

_RULE = "rule of thumb, common practice: it halves for every 10 °C"


seat_volume = formula(
    "seat_volume(diameter, depth, fill)", "π ÷ 4 × diameter² × depth × fill",
    about="Adhesive (mm³) in one round seat (mm), of which the stone leaves a share to fill.",
    source="volume of a cylinder; fill is common practice",
    valid="diameter > 0 and depth > 0 and fill ≥ 0 and fill ≤ 1",
)  # fmt: skip

mix_volume = formula(
    "mix_volume(seats, one, waste, least)", "max(least, seats × one × (1 + waste))",
    about="Adhesive (mL) to mix for a number of seats, at least so much.", source="common practice",
    valid="seats ≥ 0 and one ≥ 0 and waste ≥ 0 and least ≥ 0",
)  # fmt: skip


@numeric("factor = 2^((reference temperature − room) ÷ 10)", source=_RULE, units="°C, °C -> ")
def pot_factor(at: float, room: float) -> float:
    """How many times as long as `at` °C a mix stays open at `room` °C."""
    return math.pow(2, (at - room) / POT_LIFE_HALVES_PER)
