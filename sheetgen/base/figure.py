"""One worked-out number: its label, value, unit, ends, working and print; and how it is rounded for the page."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from sheetgen.base.interval import Interval
    from sheetgen.base.printed import Printed

Rounding = Literal[
    "bench", "bench up", "bench most", "bench down", "millimetre", "millimetre up", "millimetre most",
    "centimetre most", "most", "tenth", "out", "fine", "whole", "whole up", "mass up", "length up", "short",
]  # fmt: skip
"""How the page may round a figure, and whether what comes after it is worked from the print."""
ROUNDINGS: dict[Rounding, str] = {
    "bench": "cut: to the studio's bench step, as a hand can cut",
    "bench up": "cut: to the bench step, up",
    "bench down": "cut: to the bench step, down",
    "bench most": "cut: its high end, up, so that it is enough however the pieces vary",
    "millimetre": "cut or marked: to 1 mm, as a hand marks wire",
    "millimetre up": "cut or marked: to 1 mm, up, as a hand cuts wire and trims it",
    "millimetre most": "cut: its high end, to 1 mm, up, as a hand cuts wire and trims it",
    "centimetre most": "cut: its high end, to 10 mm, up, as a hand cuts cord that is knotted and trimmed",
    "tenth": "cut, marked or set: to 0.1 mm, what a hand can mark and a template draws",
    "out": "comes out: to 0.1 mm",
    "most": "comes out: its high end, up",
    "fine": "comes out: to two decimals, as a thickness or a tool; a range of lengths to 0.1 mm, its ends outwards",
    "whole": "comes out: a count",
    "whole up": "comes out: a count, up",
    "mass up": "comes out: a mass, up, so that what is bought is enough",
    "length up": "comes out: a length, up, so that what is bought is enough",
    "short": "comes out: a time that must not be overrun, both its ends down",
}
CUT: frozenset[Rounding] = frozenset(
    {
        "bench", "bench up", "bench most", "bench down", "millimetre", "millimetre up", "millimetre most",
        "centimetre most", "tenth",
    }
)  # fmt: skip
TO_ITS_MOST: frozenset[Rounding] = frozenset({"bench most", "millimetre most", "centimetre most", "most"})


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure of one part. `value` in `unit` (mm, g, min, °C, or a bare count), nothing rounded."""

    part: str
    name: str
    label: str
    value: Interval
    unit: str
    working: str
    rounding: Rounding
    printed: Printed

    @property
    def key(self) -> str:
        """The name it goes by in arithmetic and in figures.json."""
        return f"{self.part}.{self.name}" if self.part else self.name


@dataclass(frozen=True, slots=True)
class BenchSize:
    """One size as the bench needs it: the figure made, what it is when finished, what the made one fires to, mm.

    `counted` is what is counted to make it, where that is no length.
    """

    label: str
    figure: str
    made: Printed
    finished: Interval | None = None
    fires: Interval | None = None
    tool: str = ""
    counted: str = ""
