"""What a small kiln does when nobody has measured it: a range, to be replaced by the studio's own."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

_FULL = "common practice: small kilns at full power; a test report has 13 min to 538 °C, a slow kiln takes an hour"

ROOM = Fact(20, "temperature of the room", unit="°C", source="common practice", grade="common practice")
UNLOAD = Fact(50, "temperature to unload at", unit="°C", source="common practice", grade="common practice")
FULL_SLOW = Fact(10, "heating at full power, a slow kiln", unit="°C/min", source=_FULL, grade="common practice")
FULL_FAST = Fact(40, "heating at full power, a fast kiln", unit="°C/min", source=_FULL, grade="common practice")
BED_DEPTH = Fact(
    15,
    "carbon all round a piece, where its maker says nothing",
    unit="mm",
    source="common practice",
    grade="common practice",
)
APART = Fact(
    10, "kept between two pieces on a kiln shelf", unit="mm", source="common practice", grade="common practice"
)
SHELF = Fact(10, "thickness of a kiln shelf", unit="mm", source="common practice", grade="common practice")
COLD_AFTER = Fact(
    10,
    "time in which a small piece is cold on the bench",
    unit="min",
    source="common practice",
    grade="common practice",
)
