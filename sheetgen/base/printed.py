"""A number as the page prints it: rounded, with its words and unit. Drawings measure by it, notes and pages say it."""

from __future__ import annotations

from typing import Self

NBSP = "\u00a0"


def whole(words: str) -> str:
    """Words that stay on one line."""
    return words.replace(" ", NBSP)


class Printed(float):
    """The rounded number (mm, g, min …); `words` as printed without a unit; `unit` as printed beside them."""

    words: str
    unit: str

    def __new__(cls, value: float, words: str, unit: str = "") -> Self:
        """`words` is what the sheet prints for `value`, in `unit`."""
        made = super().__new__(cls, value)
        made.words, made.unit = words, unit
        return made

    def __getnewargs__(self) -> tuple[float, str, str]:  # type: ignore[override]  # it is made from more than a float
        """What a copy is made from."""
        return float(self), self.words, self.unit

    @property
    def told(self) -> str:
        """Number and unit, never parted."""
        return f"{self.words}{NBSP}{self.unit}" if self.unit else self.words

    @property
    def plain(self) -> str:
        """The same for a terminal: a space may part it."""
        return self.told.replace(NBSP, " ").replace("\u202f", "")
