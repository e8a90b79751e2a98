"""What a number measures: a length, a mass, a time, a temperature, money, or a count."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple


class Dimension(NamedTuple):
    """Exponents of length (mm), mass (g), time (min), temperature (°C) and money."""

    length: int = 0
    mass: int = 0
    time: int = 0
    temperature: int = 0
    money: int = 0

    def times(self, other: Dimension, sign: int = 1) -> Dimension:
        """The dimension of a product, or with sign -1 of a quotient."""
        return Dimension(*(a + sign * b for a, b in zip(self, other, strict=True)))

    def __str__(self) -> str:
        return _NAMES.get(self, "a mixture of units")


COUNT = Dimension()
LENGTH = Dimension(length=1)
AREA = Dimension(length=2)
VOLUME = Dimension(length=3)
MASS = Dimension(mass=1)
TIME = Dimension(time=1)
TEMPERATURE = Dimension(temperature=1)
RATE = Dimension(temperature=1, time=-1)
DENSITY = Dimension(mass=1, length=-3)
MONEY = Dimension(money=1)

_NAMES = {
    COUNT: "a bare number",
    LENGTH: "a length",
    AREA: "an area",
    VOLUME: "a volume",
    MASS: "a mass",
    TIME: "a time",
    TEMPERATURE: "a temperature",
    RATE: "a heating rate",
    DENSITY: "a density",
    MONEY: "money",
}
EXAMPLES = {
    COUNT: "6",
    LENGTH: "38 mm",
    AREA: "40 mm²",
    VOLUME: "2 mL",
    MASS: "25 g",
    TIME: "12-24 h",
    TEMPERATURE: "650 °C",
    RATE: "800 °C/h",
    DENSITY: "7 g/cm³",
}


# What a bound is told in, and how many of them one of ours is.
_TOLD = {
    LENGTH: (" mm", 1), AREA: (" mm²", 1), VOLUME: (" mm³", 1), MASS: (" g", 1), TIME: (" min", 1),
    TEMPERATURE: (" °C", 1), RATE: (" °C/h", 60), DENSITY: (" g/cm³", 1000),
}  # fmt: skip


def told(x: float, dimension: Dimension) -> str:
    """A number of ours with the unit that a craftsperson writes it in."""
    unit, times = _TOLD.get(dimension, ("", 1))
    return f"{x * times:g}{unit}"


@dataclass(frozen=True, slots=True)
class Unit:
    """A written unit: how many of ours it is, and what it measures."""

    name: str
    factor: float
    dimension: Dimension
    zero: float = 0.0  # °F only: where its zero stands before the factor


# Inch and pound: exact by the international yard and pound agreement of 1959. Troy ounce, pennyweight and
# carat: exact multiples (GNU Units 2.22 prints the same).
_UNITS = [
    Unit("mm", 1, LENGTH), Unit("cm", 10, LENGTH), Unit("m", 1000, LENGTH),
    Unit("in", 25.4, LENGTH), Unit("ft", 304.8, LENGTH), Unit("µm", 0.001, LENGTH),
    Unit("mm²", 1, AREA), Unit("cm²", 100, AREA), Unit("mm³", 1, VOLUME),
    Unit("cm³", 1000, VOLUME), Unit("mL", 1000, VOLUME), Unit("L", 1e6, VOLUME),
    Unit("g", 1, MASS), Unit("kg", 1000, MASS), Unit("mg", 0.001, MASS),
    Unit("lb", 453.59237, MASS), Unit("oz", 28.349523125, MASS),
    Unit("ozt", 31.1034768, MASS), Unit("dwt", 1.55517384, MASS), Unit("ct", 0.2, MASS),
    Unit("g/cm³", 0.001, DENSITY), Unit("g/mL", 0.001, DENSITY),
    Unit("s", 1 / 60, TIME), Unit("min", 1, TIME), Unit("h", 60, TIME), Unit("d", 1440, TIME),
    Unit("°C", 1, TEMPERATURE), Unit("°F", 5 / 9, TEMPERATURE, -32),
    Unit("°C/h", 1 / 60, RATE), Unit("°F/h", 5 / 9 / 60, RATE),
    Unit("%", 0.01, COUNT),
]  # fmt: skip
UNITS: dict[str, Unit] = {u.name: u for u in _UNITS}
UNITS |= {
    "″": UNITS["in"], '"': UNITS["in"], "inch": UNITS["in"], "inches": UNITS["in"], "mm2": UNITS["mm²"],
    "cm2": UNITS["cm²"], "mm3": UNITS["mm³"], "cm3": UNITS["cm³"], "ml": UNITS["mL"], "l": UNITS["L"],
    "g/cm3": UNITS["g/cm³"], "g/ml": UNITS["g/mL"], "μm": UNITS["µm"],
    "hour": UNITS["h"], "hours": UNITS["h"], "minutes": UNITS["min"], "minute": UNITS["min"],
    "day": UNITS["d"], "days": UNITS["d"], "C": UNITS["°C"], "F": UNITS["°F"], "C/h": UNITS["°C/h"],
    "F/h": UNITS["°F/h"], "ºC": UNITS["°C"], "ºF": UNITS["°F"], "carat": UNITS["ct"], "carats": UNITS["ct"],
}  # fmt: skip
