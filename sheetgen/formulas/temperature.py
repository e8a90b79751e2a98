"""Degrees Celsius and Fahrenheit."""

from __future__ import annotations

from sheetgen.base.trouble import CannotBe
from sheetgen.facts.units import KELVIN_ZERO
from sheetgen.formulas import guard


def not_below_cold(celsius: float) -> None:
    """Refuse what is colder than absolute zero (°C) with CannotBe."""
    if celsius < -KELVIN_ZERO:
        raise CannotBe(
            f"nothing is as cold as {guard.shown(celsius, '°C')}", help="−273.15 °C or warmer", field="temperature"
        )
