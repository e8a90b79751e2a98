"""Drying: never one minute, always a range; diffusion gives the upper end."""

from __future__ import annotations

import math

from sheetgen.base.spread import Spread, between
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.times import DRYING_LEAST, DRYING_MOST, VAPOUR
from sheetgen.facts.units import KELVIN_ZERO, MM2_PER_M2, SECONDS_PER_MINUTE
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula
from sheetgen.formulas.temperature import not_below_cold

_TERZAGHI = "soil-mechanics course notes: Terzaghi's consolidation equation, the same as that of drying"
_EXPONENT = "rate-limited drying goes with thickness, diffusion with its square"


@formula("time = reference time × (thickness ÷ reference thickness)^power", source=_EXPONENT, valid="power 1 to 2")
def drying_time(reference_time: float, thickness: float, reference_thickness: float, power: float) -> float:
    """Minutes to dry, from a piece whose time is known; thicknesses in mm. CannotBe for a power off 1 to 2."""
    guard.not_below_zero(reference_time, "a drying time", "drying", "min")
    guard.above_zero(thickness, "a thickness", "thickness")
    guard.above_zero(reference_thickness, "a thickness", "thickness")
    if not DRYING_LEAST <= power <= DRYING_MOST:
        raise CannotBe(f"drying does not go with thickness to the power {power:g}", help="1 to 2")
    return reference_time * math.pow(thickness / reference_thickness, power)


def drying_range(reference_time: Spread | float, thickness: float, reference_thickness: float) -> Spread:
    """Least to most minutes to dry, both powers tried. CannotBe for sizes of 0 or less."""
    return _as_spread(drying_time(reference_time, thickness, reference_thickness, between(DRYING_LEAST, DRYING_MOST)))


def _as_spread(value: Spread | float) -> Spread:
    return value if isinstance(value, Spread) else Spread(value, value, value)


@formula("U = 1 − Σ 2 ÷ M² × e^(−M² × T), M = π × (2m + 1) ÷ 2", source=_TERZAGHI, valid="T 0 or more")
def dried_share(time_factor: float) -> float:
    """Average share of the water gone at a time factor T. CannotBe for negative T. Terzaghi."""
    guard.not_below_zero(time_factor, "a time factor", unit="")
    if time_factor == 0:
        return 0.0
    left, m = 0.0, 0
    while True:
        square = (math.pi * (2 * m + 1) / 2) ** 2
        term = 2 / square * math.exp(-square * time_factor)
        left += term
        m += 1
        if term < 1e-15 * max(left, 1e-300) or square * time_factor > 700 or m > 100_000:  # noqa: PLR2004 - to the last digit
            return 1 - left


def time_factor(dried: float) -> float:
    """Time factor T at which an average share of the water is gone, by halving. CannotBe off 0 to 1. Terzaghi."""
    guard.share(dried, "a share of the water", "dried")
    if dried == 1:
        raise CannotBe("the last of the water is never quite gone", help="95 % counts as dry", field="dried")
    low, high = 0.0, 1.0
    while dried_share.pure(high) < dried:
        high *= 2
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if dried_share.pure(middle) < dried else (low, middle)
    return (low + high) / 2


@formula("minutes = T × depth² ÷ diffusivity", source=_TERZAGHI, valid="depth: half the thickness if both faces dry")
def diffusion_minutes(factor: float, depth: float, diffusivity: float) -> float:
    """Minutes to a time factor; depth in mm, diffusivity in m²/s. CannotBe for 0 or less. Terzaghi."""
    guard.not_below_zero(factor, "a time factor", unit="")
    guard.above_zero(depth, "a thickness", "thickness")
    guard.above_zero(diffusivity, "a diffusivity", unit="m²/s")
    return factor * depth**2 / MM2_PER_M2 / diffusivity / SECONDS_PER_MINUTE


@formula(
    "ln p = sum of Hyland and Wexler's terms",
    source="ASHRAE handbook, checked with PsychroLib 2.5.0",
    valid="0 to 200 °C",
)
def vapour_pressure(celsius: float) -> float:
    """Saturation pressure (Pa) of water vapour over water. CannotBe below freezing and above 200 °C."""
    not_below_cold(celsius)
    if not 0 <= celsius <= 200:  # noqa: PLR2004 - the equation's own range
        raise CannotBe(
            f"no vapour pressure is known here at {guard.shown(celsius, '°C')}", help="0 to 200 °C", field="temperature"
        )
    kelvin = celsius + KELVIN_ZERO
    inverse, one, first, second, third, log = VAPOUR
    return math.exp(
        inverse / kelvin + one + first * kelvin + second * kelvin**2 + third * kelvin**3 + log * math.log(kelvin)
    )


@formula(
    "times slower = (1 − humidity before) ÷ (1 − humidity now)", source="evaporation in still air at one temperature"
)
def humidity_slowdown(humidity: float, reference_humidity: float) -> float:
    """How many times longer drying takes at one relative humidity than at another. CannotBe off 0 to 1, or at 1."""
    guard.share(humidity, "a relative humidity", "humidity")
    guard.share(reference_humidity, "a relative humidity", "humidity")
    if humidity == 1:
        raise CannotBe("nothing dries in air that is full of water", help="less than 100 %", field="humidity")
    return (1 - reference_humidity) / (1 - humidity)
