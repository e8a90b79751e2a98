"""Kiln time: ramps, holds and cooling. A full ramp belongs to a kiln: take it as a range."""

from __future__ import annotations

import math

from sheetgen.base.trouble import CannotBe
from sheetgen.facts.units import MINUTES_PER_HOUR
from sheetgen.formulas import guard
from sheetgen.formulas.formula import numeric
from sheetgen.formulas.temperature import not_below_cold

_NEWTON = "Newton's law of cooling; the time constant is measured"


@numeric("minutes = (to − from) ÷ rate × 60", source="definition of a rate")
def ramp_minutes(start: float, to: float, rate: float) -> float:
    """Minutes from one temperature to a hotter one (°C) at a rate (°C/h). CannotBe if it goes down."""
    not_below_cold(start)
    guard.above_zero(rate, "a heating rate", "rate", "°C/h")
    if to < start:
        raise CannotBe(
            f"a ramp does not heat from {guard.shown(start, '°C')} to {guard.shown(to, '°C')}",
            help="the cooler one first",
            field="temperature",
        )
    return (to - start) / rate * MINUTES_PER_HOUR


@numeric("minutes = time constant × ln((hot − room) ÷ (cool − room))", source=_NEWTON, valid="the door stays shut")
def cooling_minutes(hot: float, cool: float, room: float, constant: float) -> float:
    """Minutes to cool in a shut kiln, °C and a time constant in min. CannotBe for what never gets so cool."""
    guard.above_zero(constant, "a kiln's time constant", "cooling", "min")
    if not room < cool:
        raise CannotBe(
            f"a kiln never quite cools to {guard.shown(cool, '°C')} in a room of {guard.shown(room, '°C')}",
            help=f"warmer than {guard.shown(room, '°C')}",
            field="temperature",
        )
    if hot <= cool:
        return 0.0
    return constant * math.log((hot - room) / (cool - room))


@numeric("time constant = minutes ÷ ln((hot − room) ÷ (cool − room))", source=_NEWTON)
def cooling_constant(hot: float, cool: float, room: float, minutes: float) -> float:
    """A kiln's time constant (min) from one measured cooling. CannotBe for what does not cool."""
    guard.above_zero(minutes, "a time", "minutes", "min")
    if not room < cool < hot:
        raise CannotBe(
            "cooling goes from hot towards the room", help="room below cool, cool below hot", field="temperature"
        )
    return minutes / math.log((hot - room) / (cool - room))
