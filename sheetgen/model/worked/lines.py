"""A line of what is taken from stock, and of the tools."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.base.interval import Interval
    from sheetgen.base.material import Item


@dataclass(frozen=True, slots=True)
class MaterialLine:
    """One line of what is taken from stock: net amount, in the item's unit, and allowance as a share of it.

    `least` must be in the hand at once, however little is used up: a piece at the thickness it is first rolled to.
    `blanks` of sheet: how many, and length and width in mm of each; `off_roll` the same of what is cut off a roll,
    along it and across. `filling`: of a firing box, the same for every load and for however many have their pieces in
    it. `spent` is what is used up of the net amount; None: all of it.
    """

    item: Item
    net: Interval | None
    allowance: float = 0.0
    working: str = ""
    use: str = ""
    least: float = 0.0
    blanks: tuple[tuple[int, float, float], ...] = ()
    off_roll: tuple[tuple[int, float, float], ...] = ()
    filling: bool = False
    spent: Interval | None = None

    @property
    def needed(self) -> float:
        """Enough for the highest need, with its allowance; 0 for what is taken as needed."""
        return max(self.net.high, self.least) * (1 + self.allowance) if self.net is not None else 0.0


@dataclass(frozen=True, slots=True)
class ToolLine:
    """One tool, with the sizes in mm that the parts of the step need of it."""

    item: Item
    sizes: tuple[float, ...] = ()
