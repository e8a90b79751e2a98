"""What a small kiln does when nobody has measured it: a range, to be replaced by the studio's own."""

from __future__ import annotations

from sheetgen.facts.fact import Fact

_FULL = "common practice: small kilns at full power; a test report has 13 min to 538 °C, a slow kiln takes an hour"

ROOM = Fact(20, "temperature of the room", unit="°C", source="common practice", grade="common practice")
UNLOAD = Fact(50, "temperature to unload at", unit="°C", source="common practice", grade="common practice")
FULL_SLOW = Fact(10, "heating at full power, a slow kiln", unit="°C/min", source=_FULL, grade="common practice")
FULL_FAST = Fact(40, "heating at full power, a fast kiln", unit="°C/min", source=_FULL, grade="common practice")
