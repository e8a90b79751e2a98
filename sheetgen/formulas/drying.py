"""Drying: never one minute, always a range; diffusion gives the upper end."""

from __future__ import annotations

import math

from sheetgen.base.interval import Interval, between
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.times import DRYING_LEAST, DRYING_MOST
from sheetgen.formulas import guard
from sheetgen.formulas.formula import numeric

_EXPONENT = "rate-limited drying goes with thickness, diffusion with its square"


@numeric("time = reference time × (thickness ÷ reference thickness)^power", source=_EXPONENT, valid="power 1 to 2")
def drying_time(reference_time: float, thickness: float, reference_thickness: float, power: float) -> float:
    """Minutes to dry, from a piece whose time is known; thicknesses in mm. CannotBe for a power off 1 to 2."""
    guard.not_below_zero(reference_time, "a drying time", "drying", "min")
    guard.above_zero(thickness, "a thickness", "thickness")
    guard.above_zero(reference_thickness, "a thickness", "thickness")
    if not DRYING_LEAST <= power <= DRYING_MOST:
        raise CannotBe(f"drying does not go with thickness to the power {power:g}", help="1 to 2")
    return reference_time * math.pow(thickness / reference_thickness, power)


def drying_range(reference_time: Interval | float, thickness: float, reference_thickness: float) -> Interval:
    """Least to most minutes to dry, both powers tried. CannotBe for sizes of 0 or less."""
    return _as_spread(drying_time(reference_time, thickness, reference_thickness, between(DRYING_LEAST, DRYING_MOST)))


def _as_spread(value: Interval | float) -> Interval:
    return value if isinstance(value, Interval) else Interval(value, value, value)


@numeric(
    "times slower = (1 − humidity before) ÷ (1 − humidity now)", source="evaporation in still air at one temperature"
)
def humidity_slowdown(humidity: float, reference_humidity: float) -> float:
    """How many times longer drying takes at one relative humidity than at another. CannotBe off 0 to 1, or at 1."""
    guard.share(humidity, "a relative humidity", "humidity")
    guard.share(reference_humidity, "a relative humidity", "humidity")
    if humidity == 1:
        raise CannotBe("nothing dries in air that is full of water", help="less than 100 %", field="humidity")
    return (1 - reference_humidity) / (1 - humidity)
