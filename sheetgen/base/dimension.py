"""What a number measures, and in which unit: a length in mm, a density in g/cm³, money for a gram."""

from __future__ import annotations

import functools
import re
from dataclasses import dataclass
from typing import NamedTuple


class Dimension(NamedTuple):
    """Exponents of length (mm), mass (g), time (min), temperature (°C), money and angle (°)."""

    length: int = 0
    mass: int = 0
    time: int = 0
    temperature: int = 0
    money: int = 0
    angle: int = 0

    def times(self, other: Dimension, power: int = 1) -> Dimension:
        """The dimension of a product, or with power −1 of a quotient."""
        return Dimension(*(a + power * b for a, b in zip(self, other, strict=True)))

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
ANGLE = Dimension(angle=1)

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
    ANGLE: "an angle",
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
    ANGLE: "30°",
}


# What a bound is told in, and how many of them one of ours is.
_TOLD = {
    LENGTH: (" mm", 1), AREA: (" mm²", 1), VOLUME: (" mm³", 1), MASS: (" g", 1), TIME: (" min", 1),
    TEMPERATURE: (" °C", 1), RATE: (" °C/h", 60), DENSITY: (" g/cm³", 1000), ANGLE: ("°", 1),
}  # fmt: skip


def told(x: float, dimension: Dimension) -> str:
    """A number of ours with the unit that a craftsperson writes it in."""
    unit, times = _TOLD.get(dimension, ("", 1))
    return f"{x * times:g}{unit}"


Unit = tuple[tuple[str, int], ...]
"""Marks with their powers, sorted: mm, g/cm³. Two marks of one dimension (mm³, mL) are told apart."""

BARE: Unit = ()
DEGREES: Unit = (("°", 1),)
ANY: Unit = (("any", 1),)  # nothing goes with everything: 0 has any unit

# What each mark measures, and how many of ours (mm, g, min, °C) it is.
_MARKS: dict[str, tuple[Dimension, float]] = {
    "mm": (LENGTH, 1.0), "cm": (LENGTH, 10.0), "mL": (VOLUME, 1000.0), "g": (MASS, 1.0), "ct": (MASS, 0.2),
    "min": (TIME, 1.0), "°C": (TEMPERATURE, 1.0), "°": (ANGLE, 1.0),
}  # fmt: skip
# Figures told on a scale, in per cent or in degrees are bare numbers: the workings of a kind turn them into radians.
# An ISO ring size is a length. In a project's file 30° is an angle.
_ALIKE = {"US": "", "UK": "", "JP": "", "ISO": "mm", "°": "", "%": "", "piece": ""}
_POWERS = {"²": 2, "³": 3, "2": 2, "3": 3}


def _mark(name: str) -> tuple[Dimension, float]:
    if re.fullmatch(r"[A-Z]{3}", name):  # ISO 4217
        return MONEY, 1.0
    return _MARKS[name]


@functools.cache
def unit(text: str) -> Unit:
    """The unit that a text such as mm³/cm³ or EUR/g names. KeyError for one that is not known."""
    found: dict[str, int] = {}
    top, _, bottom = _ALIKE.get(text, text).partition("/")
    for side, sign in ((top, 1), (bottom, -1)):
        for word in filter(None, re.split("·", side)):
            name = word.rstrip("²³23")
            _mark(name)
            found[name] = found.get(name, 0) + sign * _POWERS.get(word[len(name) :], 1)
    return tuple(sorted(pair for pair in found.items() if pair[1]))


@functools.cache
def times(a: Unit, b: Unit, sign: int = 1) -> Unit:
    """The unit of a product, or with sign −1 of a quotient."""
    if ANY in {a, b}:
        return ANY
    found = dict(a)
    for name, power in b:
        found[name] = found.get(name, 0) + sign * power
    return tuple(sorted(pair for pair in found.items() if pair[1]))


# Marks of one dimension, and what the second is in the first.
_SAME = (("mm", "cm", 1), ("mm", "mL", 3), ("cm", "mL", 3), ("g", "ct", 1))


@functools.cache
def cancelled(u: Unit) -> Unit:
    """A unit in which no two marks of one dimension stand over and under the line: g·mm³/cm³ is g, EUR·g/ct is EUR."""
    found = dict(u)
    for one, other, power in _SAME:
        if found.get(one, 0) * found.get(other, 0) < 0:
            found[one] += found.pop(other) * power
    return tuple(sorted(pair for pair in found.items() if pair[1]))


@functools.cache
def dimension_of(u: Unit) -> Dimension:
    """What a unit measures."""
    found = COUNT
    for name, power in u:
        found = found.times(_mark(name)[0], power)
    return found


@functools.cache
def ours(u: Unit) -> float:
    """How many of ours (mm, g, min, °C, and their products) one of a unit is."""
    found = 1.0
    for name, power in u:
        found *= _mark(name)[1] ** power
    return found


def spelled(u: Unit) -> str:
    """A unit as it is printed beside a number."""
    raised = {1: "", 2: "²", 3: "³"}
    sides = ["·".join(n + raised.get(abs(p), f"^{abs(p)}") for n, p in u if p * sign > 0) for sign in (1, -1)]
    return sides[0] + (f"/{sides[1]}" if sides[1] else "")


def said(u: Unit) -> str:
    """What a unit measures, in words; a mixture by its unit."""
    name = _NAMES.get(dimension_of(u)) if u != ANY else "nothing"
    return name or f"a number of {spelled(u)}"


@dataclass(frozen=True, slots=True)
class Written:
    """A unit as a person writes it: how many of `unit` one of it is."""

    name: str
    factor: float
    unit: Unit
    zero: float = 0.0  # °F only: where its zero stands before the factor


# Inch and pound: exact by the international yard and pound agreement of 1959. Troy ounce, pennyweight and
# carat: exact multiples (GNU Units 2.22 prints the same).
_WRITTEN = (
    ("mm", 1, "mm"), ("cm", 10, "mm"), ("m", 1000, "mm"), ("in", 25.4, "mm"), ("ft", 304.8, "mm"), ("µm", 0.001, "mm"),
    ("mm²", 1, "mm²"), ("cm²", 100, "mm²"), ("mm³", 1, "mm³"), ("cm³", 1, "cm³"), ("mL", 1, "mL"), ("L", 1000, "mL"),
    ("g", 1, "g"), ("kg", 1000, "g"), ("mg", 0.001, "g"), ("lb", 453.59237, "g"), ("oz", 28.349523125, "g"),
    ("ozt", 31.1034768, "g"), ("dwt", 1.55517384, "g"), ("ct", 1, "ct"), ("g/cm³", 1, "g/cm³"), ("g/mL", 1, "g/mL"),
    ("s", 1 / 60, "min"), ("min", 1, "min"), ("h", 60, "min"), ("d", 1440, "min"), ("°C", 1, "°C"),
    ("°C/h", 1 / 60, "°C/min"), ("°F/h", 5 / 9 / 60, "°C/min"), ("%", 0.01, ""),
)  # fmt: skip
UNITS: dict[str, Written] = {name: Written(name, factor, unit(text)) for name, factor, text in _WRITTEN}
UNITS["°F"] = Written("°F", 5 / 9, unit("°C"), -32)
UNITS["°"] = Written("°", 1, DEGREES)
UNITS |= {
    other: UNITS[name]
    for name, others in {
        "in": '″ " inch inches', "mm²": "mm2", "cm²": "cm2", "mm³": "mm3", "cm³": "cm3", "mL": "ml", "L": "l",
        "g/cm³": "g/cm3", "g/mL": "g/ml", "µm": "μm", "h": "hour hours", "min": "minute minutes", "d": "day days",
        "°C": "C ºC", "°": "º", "°F": "F ºF", "°C/h": "C/h", "°F/h": "F/h", "ct": "carat carats",
    }.items()
    for other in others.split()
}  # fmt: skip
