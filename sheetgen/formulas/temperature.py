"""Degrees Celsius and Fahrenheit."""

from __future__ import annotations

from sheetgen.base.trouble import CannotBe
from sheetgen.facts.units import FAHRENHEIT_STEP, FAHRENHEIT_ZERO, KELVIN_ZERO
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

_UNITS = "GNU Units 2.22"


def not_below_cold(celsius: float) -> None:
    """Refuse what is colder than absolute zero (°C) with CannotBe."""
    if celsius < -KELVIN_ZERO:
        raise CannotBe(
            f"nothing is as cold as {guard.shown(celsius, '°C')}", help="−273.15 °C or warmer", field="temperature"
        )


@formula("°C = (°F − 32) ÷ 1.8", source=_UNITS)
def celsius_of(fahrenheit: float) -> float:
    """Degrees Celsius of degrees Fahrenheit. CannotBe below absolute zero. Exact."""
    celsius = (fahrenheit - FAHRENHEIT_ZERO) / FAHRENHEIT_STEP
    not_below_cold(celsius)
    return celsius


@formula("°F = °C × 1.8 + 32", source=_UNITS)
def fahrenheit_of(celsius: float) -> float:
    """Degrees Fahrenheit of degrees Celsius. CannotBe below absolute zero. Exact."""
    not_below_cold(celsius)
    return celsius * FAHRENHEIT_STEP + FAHRENHEIT_ZERO


@formula("°C apart = °F apart ÷ 1.8", source=_UNITS)
def celsius_step(fahrenheit_step: float) -> float:
    """A difference or a rate in °C from one in °F. Exact."""
    return fahrenheit_step / FAHRENHEIT_STEP
