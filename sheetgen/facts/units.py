"""What one unit is in another: exact by definition, as GNU Units prints them."""

from __future__ import annotations

from sheetgen.facts.fact import Fact


def _exact(value: float, name: str, unit: str) -> Fact:
    return Fact(value, name, unit=unit, source="GNU Units 2.22, definitions.units", grade="definition")


MM_PER_INCH = _exact(25.4, "inch", "mm")
MM_PER_FOOT = _exact(304.8, "foot", "mm")
MM_PER_METRE = _exact(1000, "metre", "mm")
GRAMS_PER_POUND = _exact(453.59237, "pound", "g")
GRAMS_PER_TROY_OUNCE = _exact(31.1034768, "troy ounce", "g")
GRAMS_PER_PENNYWEIGHT = _exact(1.55517384, "pennyweight", "g")
GRAMS_PER_MOMME = _exact(3.75, "momme", "g")
GRAMS_PER_CARAT = _exact(0.2, "carat", "g")
PIECES_PER_DOZEN = _exact(12, "dozen", "pieces")
PIECES_PER_GROSS = _exact(144, "gross", "pieces")
PIECES_PER_GREAT_GROSS = _exact(1728, "great gross", "pieces")
MINUTES_PER_HOUR = _exact(60, "hour", "min")
MINUTES_PER_DAY = _exact(1440, "day", "min")
SECONDS_PER_MINUTE = _exact(60, "minute", "s")
MM3_PER_CM3 = _exact(1000, "cubic centimetre", "mm³")
MM2_PER_M2 = _exact(1e6, "square metre", "mm²")
DEGREES_PER_HALF_TURN = _exact(180, "half turn", "°")
FAHRENHEIT_ZERO = _exact(32, "freezing point of water", "°F")
FAHRENHEIT_STEP = _exact(1.8, "degree Celsius", "°F")
KELVIN_ZERO = _exact(273.15, "0 °C", "K")
