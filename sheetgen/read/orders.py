"""A spreadsheet of orders to its lines: each bad line is told and left out, the others are kept.

A trouble names the number of the order, and never shows a name, a note, or a column that is not ours: in the line under
it they are dots.
"""

from __future__ import annotations

import gc
from contextlib import contextmanager
from typing import TYPE_CHECKING

from sheetgen.base.place import Place
from sheetgen.base.spelling import bare
from sheetgen.model.orders import OrderLine, Orders
from sheetgen.read.columns import columns
from sheetgen.read.kit_line import Book, one_line
from sheetgen.read.order_line import NUMBER, PRIVATE, Line
from sheetgen.read.tables import read_table
from sheetgen.read.totals import total_at

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence
    from pathlib import Path

    from sheetgen.base.record import Table
    from sheetgen.base.trouble import Troubles

NEEDED = ("order", "design", "count")
COLUMNS = (
    "order", "name", "design", "version", "count", "choices", "colourway", "leave out", "only", "gift note", "due",
)  # fmt: skip


def read_orders(path: Path, name: str, versions: Mapping[str, Sequence[str]], troubles: Troubles) -> Orders:
    """The orders of a CSV or XLSX file under the name shown to people.

    `versions`: the printed names of each design's versions by the design's name, the main one first.
    """
    with _uncollected():
        return _read(path, name, versions, troubles)


@contextmanager
def _uncollected() -> Iterator[None]:
    """Spare the search for circles among a million small things that hold none and all stay: it takes half the time."""
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()


def _read(path: Path, name: str, versions: Mapping[str, Sequence[str]], troubles: Troubles) -> Orders:
    table = read_table(path, name, troubles)
    where = columns(table, COLUMNS, NEEDED, troubles) if table else None
    if table is None or where is None:
        return Orders(())
    if not table.rows:
        place = Place(table.head.record(where.values()), table.head.first)
        troubles.add("no order stands under the names of the columns", place, "a line for each kind of kit of an order")
    designs = {bare(design): design for design in versions}
    book = Book(where, len(table.head.cells), versions, designs, troubles, PRIVATE)
    names = _names(table, where)
    found: list[OrderLine] = []
    held: list[OrderLine] = []
    lacking = {row.cell(0) for row in table.dropped if where["order"] == 0 and NUMBER.fullmatch(row.cell(0))}
    for row in table.rows:
        line = Line(book, row, names)
        if (at := total_at(row, where, table.rows)) is not None:
            troubles.add("a row of totals is not an order", row.place(at, line.record), "take it out")
            continue
        if read := line.read():
            found.append(read)
        elif line.number_told:
            lacking.add(line.number_told)
            held += [line.asks] if line.asks else []
    _compare(found, troubles)
    return Orders(tuple(found), frozenset(lacking), tuple(held))


def _names(table: Table, where: Mapping[str, int]) -> dict[str, tuple[str, int]]:
    """The name of each order by its number, and the line that it first stands on: it may stand on one line only."""
    found: dict[str, tuple[str, int]] = {}
    for row in table.rows:
        name = one_line(row.cell(where["name"])) if "name" in where else ""
        number = row.cell(where["order"])
        if name and number:
            found.setdefault(number, (name, row.first))
    return found


def _compare(lines: Sequence[OrderLine], troubles: Troubles) -> None:
    """Warn of what is right by itself and hardly meant beside another line."""
    twins: dict[tuple[object, ...], OrderLine] = {}
    spelt: dict[str, OrderLine] = {}
    for line in lines:
        same = (
            line.order,
            line.design,
            line.version,
            line.count,
            line.choices,
            line.colourway,
            line.leave_out,
            line.only,
        )
        first = twins.setdefault(same, line)
        if first is not line:
            message = f"order {line.order}: the line is the same as line {first.place.line}; both are made"
            troubles.add(message, line.place, "take one of them out, unless it is meant so", "warning")
        other = spelt.setdefault(line.order.casefold(), line)
        if other.order != line.order:
            message = f"order {line.order}: '{other.order}' on line {other.place.line} is taken for another order"
            troubles.add(message, line.place, "write one number in one way", "warning")
