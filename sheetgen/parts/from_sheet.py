"""A blank of sheet metal: how many come out of the sheet as it is sold, and so how much of it one takes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.buying import grid_count
from sheetgen.parts.kind import working_number

if TYPE_CHECKING:
    from sheetgen.base.material import Sheet


@dataclass(frozen=True, slots=True)
class Blank:
    """A rectangle `long` by `wide` mm to be cut from a sheet, `gap` mm between two and `edge` mm kept at the sides.

    `field` is the one to mend if it does not come out of the sheet.
    """

    sheet: Sheet
    long: float
    wide: float
    field: str
    gap: float = 0.0
    edge: float = 0.0

    @property
    def needed(self) -> tuple[float, float]:
        """Length and width (mm) of the piece of sheet that one blank is cut from."""
        return self.long + 2 * self.edge, self.wide + 2 * self.edge

    @property
    def share(self) -> float:
        """Sheet (mm²) that one takes.

        Where stock says how long and wide the sheet is sold, its area over the blanks that it gives in rows, since
        what is left beside the rows is no use to them; else the blank's own area. CannotBe for one larger than the
        sheet.
        """
        sheet = self.sheet
        if not (sheet.long and sheet.wide):
            return (self.long + self.gap) * (self.wide + self.gap)
        room = (sheet.long - 2 * self.edge, sheet.wide - 2 * self.edge)
        n = grid_count.pure(*room, self.long, self.wide, self.gap) if min(room) > 0 else 0
        if n < 1:
            wanted = " × ".join(f"{side:.4g}" for side in self.needed)
            message = f"wants a piece of {wanted} mm, and {sheet.name} is sold {sheet.long:g} × {sheet.wide:g} mm"
            raise CannotBe(message, "a smaller piece, or a larger sheet", self.field)
        return sheet.long * sheet.wide / n

    @property
    def worked(self) -> str:
        """How that is worked."""
        sheet = self.sheet
        a, b, gap, edges = (working_number(n) for n in (self.long, self.wide, self.gap, 2 * self.edge))
        more = f" + {gap}" if self.gap else ""
        sides = [f"({side}{more})" if more else side for side in (a, b)]
        if not (sheet.long and sheet.wide):
            return " × ".join(sides)
        high, across = working_number(sheet.long), working_number(sheet.wide)
        less = f" − {edges}" if self.edge else ""
        rooms = [f"({room}{less}{more})" if less or more else room for room in (high, across)]
        ways = (f"down({rooms[0]} ÷ {x}) × down({rooms[1]} ÷ {y})" for x, y in (sides, sides[::-1]))
        return f"{high} × {across} ÷ max({', '.join(ways)})"
