"""What one unit is in another: exact by definition, as GNU Units prints them."""

from __future__ import annotations

from sheetgen.facts.fact import Fact


def _exact(value: float, name: str, unit: str) -> Fact:
    return Fact(value, name, unit=unit, source="GNU Units 2.22, definitions.units", grade="definition")


MM_PER_INCH = _exact(25.4, "inch", "mm")
MINUTES_PER_HOUR = _exact(60, "hour", "min")
MINUTES_PER_DAY = _exact(1440, "day", "min")
SECONDS_PER_MINUTE = _exact(60, "minute", "s")
MM3_PER_CM3 = _exact(1000, "cubic centimetre", "mm³")
KELVIN_ZERO = _exact(273.15, "0 °C", "K")
