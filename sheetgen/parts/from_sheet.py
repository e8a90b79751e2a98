"""What parts of sheet metal share: how many come out of the sheet as it is sold, and so how much of it one takes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.buying import grid_count
from sheetgen.parts.kind import working_number

if TYPE_CHECKING:
    from sheetgen.base.material import Sheet
    from sheetgen.base.spread import Spread


def sheet_for_one(sheet: Sheet, long: Spread | float, wide: Spread | float, gap: float, field: str) -> float:
    """Sheet (mm²) that one blank of `long` by `wide` mm takes, `gap` mm between two.

    Where stock says how long and wide the sheet is sold, its area over the blanks that it gives in rows, since what is
    left beside the rows is no use to them; else the blank's own area. CannotBe for a blank larger than the sheet.
    """
    a, b = _largest(long), _largest(wide)
    if not (sheet.long and sheet.wide):
        return (a + gap) * (b + gap)
    n = grid_count.pure(sheet.long, sheet.wide, a, b, gap)
    if n < 1:
        message = f"wants a blank of {a:.4g} × {b:.4g} mm, and {sheet.name} is sold {sheet.long:g} × {sheet.wide:g} mm"
        raise CannotBe(message, "a smaller piece, or a larger sheet", field)
    return sheet.long * sheet.wide / n


def sheet_worked(sheet: Sheet, long: Spread | float, wide: Spread | float, gap: float) -> str:
    """How that area is worked."""
    a, b, g = working_number(_largest(long)), working_number(_largest(wide)), working_number(gap)
    if not (sheet.long and sheet.wide):
        return f"({a} + {g}) × ({b} + {g})" if gap else f"{a} × {b}"
    high, across = working_number(sheet.long), working_number(sheet.wide)

    def rows(room: str, piece: str) -> str:
        return f"down(({room} + {g}) ÷ ({piece} + {g}))" if gap else f"down({room} ÷ {piece})"

    ways = f"max({rows(high, a)} × {rows(across, b)}, {rows(high, b)} × {rows(across, a)})"
    return f"{high} × {across} ÷ {ways}"


def _largest(size: Spread | float) -> float:
    return size if isinstance(size, int | float) else size.high
