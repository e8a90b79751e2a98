"""A row of totals in a table, as people and their programs write one: it asks for nothing."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.read.order_cells import CannotRead, count

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.base.record import Row

LABEL = re.compile(
    r"((grand |sub-?)?totals?|sums?|(al)?together|in all|(ins)?gesamt|summe)(?![-_/#]?\w)", re.IGNORECASE
)
"""How its label begins: common practice. What goes on with a letter, or a hyphen, is another word or a number."""
FIGURE = re.compile(r"(=.*|[-+−(]?([^\W\d_]{3} ?|[€$£] ?)?[0-9][0-9.,' \u00a0\u202f]*([^\W\d_]{1,10}|[€$£])?\)?)")
"""What else stands in it: a number, with a unit or a currency, or a formula whose result is not known."""
FEWEST = 2
"""Lines from which a number by itself that is the sum of all counts is no chance."""


def total_at(row: Row, where: Mapping[str, int], rows: Sequence[Row]) -> int | None:
    """The column by which a row of the `rows` of a table is known for one of totals; None for any other.

    Its first word says so and all else are numbers; or it is the last, and the sum of all counts is all that it has.
    """
    filled = {at for at in where.values() if row.cell(at)}
    first = next(at for at, cell in enumerate(row.cells) if cell)
    if LABEL.match(row.cells[first]):
        beside = filled - {first}
        asks = beside & {where["order"], where["design"]}
        return None if asks or not all(FIGURE.fullmatch(row.cell(at)) for at in beside) else first
    if row is not rows[-1] or len(rows) <= FEWEST or filled != {where["count"]}:
        return None
    whole = sum(_many(one.cell(where["count"])) for one in rows[:-1])
    return where["count"] if _many(row.cell(where["count"])) == whole else None


def _many(cell: str) -> int:
    try:
        return count(cell)
    except CannotRead:
        return 0
