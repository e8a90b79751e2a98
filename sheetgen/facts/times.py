"""Drying, firing and cooling: what their times hang on."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

_TEXTBOOK = "solution pages to two drying problems in transport-process textbooks"

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
DIFFUSIVITY_FAST = Fact(
    1.29e-8, "diffusivity of water in a clay body, most", unit="m²/s", source=_TEXTBOOK, grade="seen"
)
DIFFUSIVITY_SLOW = Fact(
    5e-10, "diffusivity of water in a clay body, least", unit="m²/s", source=_TEXTBOOK, grade="seen"
)
DRY = Fact(
    0.95,
    "share of the water gone when a piece counts as dry",
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
    source="coin size as remembered, not read",
    grade="memory",
)

# Saturation pressure of water vapour over water, Hyland and Wexler's polynomial; checked against PsychroLib's values.
_ASHRAE = "Hyland-Wexler equation of the ASHRAE handbook as remembered; agrees with values of PsychroLib 2.5.0"
VAPOUR = tuple(
    Fact(value, f"vapour pressure of water, term {name}", unit="ln Pa, K", source=_ASHRAE, grade="memory")
    for name, value in {
        "1/T": -5.8002206e3,
        "1": 1.3914993,
        "T": -4.8640239e-2,
        "T²": 4.1764768e-5,
        "T³": -1.4452093e-8,
        "ln T": 6.5459673,
    }.items()
)
