"""A room with three sides, mm: of a kiln, of a box, or what a piece takes up in them."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Room:
    """The inside of a kiln or a box, or what a piece takes up in it, mm."""

    wide: float
    deep: float
    high: float

    @property
    def sides(self) -> tuple[float, float, float]:
        """From short to long."""
        one, two, three = sorted((self.wide, self.deep, self.high))
        return one, two, three
