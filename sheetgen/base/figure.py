"""One worked-out number: its label, value, unit, ends and working; and how it is rounded for the page."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, Self

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.spread import Spread

Rounding = Literal[
    "bench", "bench up", "bench most", "bench down", "most", "tenth", "fine", "whole", "whole up", "mass up",
    "length up", "short",
]  # fmt: skip
"""How the page may round a figure.

`bench`: to the studio's bench step, what a hand can cut; `tenth`: to 0.1 mm, what a hand can mark; `fine`: as it is, to
two decimals (a thickness, a tool); `whole`: a count; `mass up`, `length up`: up, so that what is bought is enough;
`bench most`, `most`: the high end of the range, up, so that it is enough however the pieces vary; `short`: a time that
must not be overrun, both its ends down.
"""


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure of one part. `value` in `unit` (mm, g, min, °C, or a bare count), nothing rounded."""

    part: str
    name: str
    label: str
    value: Spread
    unit: str
    working: str
    rounding: Rounding = "fine"

    @property
    def key(self) -> str:
        """The name it goes by in arithmetic and in figures.json."""
        return f"{self.part}.{self.name}" if self.part else self.name


@dataclass(frozen=True, slots=True)
class Made:
    """One size of a part as the bench needs it: what it is when finished, which figure is made, what that fires to.

    `fires` takes the size as made, in mm, and gives the fired range; None where nothing shrinks. `counted` is what is
    counted to make it, where that is no length.
    """

    label: str
    figure: str
    finished: Spread | None = None
    fires: Callable[[float], Spread] | None = None
    tool: str = ""
    counted: str = ""


class Size(float):
    """A size as printed: the rounded number in mm, and its words."""

    words: str

    def __new__(cls, value: float, words: str) -> Self:
        """`words` is what the sheet prints for `value`."""
        size = super().__new__(cls, value)
        size.words = words
        return size
