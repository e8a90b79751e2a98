"""Room, edge and weight by which a piece holds and may be worn: common practice, or a safety standard."""

from __future__ import annotations

from sheetgen.facts.fact import Fact
from sheetgen.facts.units import MM_PER_INCH

_PRACTICE = "common practice"


def _practice(value: float, name: str, unit: str = "mm") -> Fact:
    return Fact(value, name, unit=unit, source=_PRACTICE, grade="common practice")


CLOSE = _practice(0.1, "room round a wire in which a ring binds")
LEAST_EDGE = _practice(1, "finished metal outside a hole that something hangs from, least")
LEAST_RIM = _practice(1, "finished clay left round and between the openings of a disc or dome, least")
LEAST_RIM_SHAPE = _practice(0.5, "finished clay left beside the hole of a cut shape, least")
ROUNDED = _practice(0.1, "what rounding for the bench may take from an edge that was asked")
LOOSE = _practice(0.75, "share of a bundle that many wires fill", "share")
EAR = _practice(8, "heaviest earring, each side", "g")
SWALLOWED = Fact(
    1.25 * MM_PER_INCH, "cylinder across: what goes in can choke a small child", unit="mm",
    source="16 CFR 1501, which counts in inches; a test laboratory's page on it: 1.25 in across", grade="seen",
)  # fmt: skip
