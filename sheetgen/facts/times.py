"""Drying, firing and cooling: what their times hang on."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

DRYING_LEAST = Fact(
    1,
    "drying time grows with thickness to the power, least",
    unit="power",
    source="rate-limited drying, textbook physics as remembered",
    grade="memory",
)
DRYING_MOST = Fact(
    2,
    "drying time grows with thickness to the power, most",
    unit="power",
    source="diffusion-limited drying, Terzaghi's equation in soil-mechanics course notes",
    grade="seen",
)
DRYING_THICKNESS = Fact(
    1,
    "thickness that a drying time is taken to mean where its maker says none, four cards",
    unit="mm",
    source="common practice",
    grade="common practice",
)
USUAL_HUMIDITY = Fact(
    0.5,
    "relative humidity that a maker's drying time is taken to mean",
    unit="share",
    source="common practice",
    grade="common practice",
)
COOLING_FAST = Fact(
    60, "time constant of a small kiln, least", unit="min", source="as remembered, not read; measure it", grade="memory"
)
COOLING_SLOW = Fact(
    120, "time constant of a small kiln, most", unit="min", source="as remembered, not read; measure it", grade="memory"
)
TORCH_MASS = Fact(
    25, "heaviest piece fired by torch", unit="g", source="two teachers' torch-firing pages", grade="seen"
)
TORCH_ACROSS = Fact(
    25.75,
    "widest piece fired by torch, a 2-euro coin",
    unit="mm",
    source="a summary of the European regulation on euro coins: 25.75 mm; the coin by a teacher's torch-firing page",
    grade="seen",
)
SHORTEST_DRYING = Fact(
    15,
    "shortest drying of unfired clay, on a warm plate",
    unit="min",
    source="common practice",
    grade="common practice",
)
CLASS_CLOCK = Fact(
    5, "step of the clock that a class is held by", unit="min", source="common practice", grade="common practice"
)
BEGINNERS_TAKE = Fact(
    1.5,
    "how many times as long as a practised hand a beginner takes",
    unit="times",
    source="common practice",
    grade="common practice",
)
LONG_WAIT = Fact(
    90,
    "shortest wait that nobody sits beside: a session ends with it",
    unit="min",
    source="common practice",
    grade="common practice",
)
DAYS_BETWEEN = Fact(
    7,
    "days from one evening of a class to the next, where the studio does not say",
    unit="days",
    source="common practice",
    grade="common practice",
)
