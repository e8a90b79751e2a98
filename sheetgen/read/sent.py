"""The private list of what was sent, as its file has it; each bad line is told and the others are read.

The file may have been saved by a spreadsheet program. What is told shows only the columns that are ours.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.paths import leads_out
from sheetgen.base.place import Place, Source
from sheetgen.model.fingerprint import CODE, LONG, SIGNS
from sheetgen.model.sent import COLUMNS, Sent, SentKit, SentList
from sheetgen.read.columns import columns
from sheetgen.read.order_cells import CannotRead, choices, count, due
from sheetgen.read.table_text import encoding_of
from sheetgen.read.tables import read_table

if TYPE_CHECKING:
    from collections.abc import Mapping
    from pathlib import Path

    from sheetgen.base.record import Row
    from sheetgen.base.trouble import Troubles

NEEDED = ("order", "date", "design", "version", "choices", "colourway", "fingerprint")
ITSELF = "put the list itself there, or name its folder with --private"
PARTS = "\t;,|"
# What publish/tables.py puts before a text that a spreadsheet program would work as a formula.
APOSTROPHE = re.compile(r"(?:^|(?<=[;\t\r\n]))([ \"]*)'(?='*[=+\-@\t\r\n＝＋－＠])")
EXPONENT = re.compile(r"[0-9][.,]?[0-9]*E\+?[0-9]+", re.IGNORECASE)


def read_sent(path: Path, name: str, troubles: Troubles) -> SentList | None:
    """The list under the name shown to people; of no file an empty one. None for a file that is no such list."""
    if not path.exists() and not path.is_symlink():
        return SentList()
    if path.is_symlink() and leads_out(path, path.parent):
        troubles.add("the list of what was sent is a link to a file elsewhere", Place(Source(name)), ITSELF)
        return None
    table = read_table(path, name, troubles)
    where = columns(table, COLUMNS, NEEDED, troubles) if table else None
    if table is None or where is None:
        return None
    if table.head.between:
        told = "the list of what was sent is a workbook, and lines cannot be added to one"
        troubles.add(told, Place(Source(name)), "save it as CSV under this name")
        return None
    lines = [line for row in table.rows if (line := _Line(row, where, troubles).read()) is not None]
    there = path.read_bytes()
    ours = {at: column for column, at in where.items()}
    own = tuple(ours.get(at, "") for at in range(len(table.head.cells)))
    return SentList(tuple(lines), there, own, _sign(table.head), encoding_of(there), whole=not table.dropped)


def _sign(head: Row) -> str:
    """What parts the cells of the first line."""
    between = head.text[head.ends[0][1] : head.ends[1][0]]
    return next(sign for sign in PARTS if sign in between)


def _items(cell: str) -> tuple[str, ...]:
    return tuple(item for one in cell.split(";") if (item := one.strip()))


class _Line:
    """One line of the list; `read` gives it, or tells all that is wrong with it."""

    def __init__(self, row: Row, where: Mapping[str, int], troubles: Troubles) -> None:
        self.row, self.where, self.troubles = row, where, troubles
        self.record = row.record(frozenset(where.values()))
        self.bad = False
        self.order = self.cell("order")

    def cell(self, column: str) -> str:
        at = self.where.get(column)
        return "" if at is None else APOSTROPHE.sub(r"\1", self.row.cell(at))

    def add(self, column: str, message: str, helped: str) -> None:
        order = f"order {self.order}: " if self.order else ""
        it = self.cell(column)[:60]
        self.troubles.add(
            f"{order}{message.replace('{it}', repr(it))}", self.row.place(self.where[column], self.record), helped
        )
        self.bad = True

    def read(self) -> Sent | None:
        """The line, or None with troubles."""
        for column in ("order", "design", "version"):
            if not self.cell(column):
                self.add(column, f"the {column} is missing", "write it as it was sent; the order's sheets tell it")
        day = many = None
        chosen: tuple[tuple[str, str], ...] = ()
        try:
            day = due(self.cell("date"))
            if day is None:
                self.add("date", "the date is missing", "the day on which it was sent, such as 2026-12-01")
        except CannotRead as fault:
            self.add("date", fault.message, fault.helped)
        try:
            many = count(self.cell("count") or "1")
        except CannotRead as fault:
            self.add("count", fault.message, fault.helped)
        try:
            cell = self.cell("choices")
            chosen = tuple((cell[slice(*one)], cell[slice(*value)]) for one, value in choices(cell))
        except CannotRead as fault:
            self.add("choices", fault.message, fault.helped)
        code = self.cell("fingerprint").upper()
        only = _items(self.cell("only"))
        if not CODE.fullmatch(code) and (code or not only):  # with a part that is sent alone goes no sheet
            self._no_code(code)
        if self.bad or day is None or many is None:
            return None
        without = _items(self.cell("leave out"))
        kit = SentKit(self.cell("design"), self.cell("version"), chosen, self.cell("colourway"), without, only)
        return Sent(self.order, day, kit, many, code, self.cell("revision"))

    def _no_code(self, code: str) -> None:
        helped = "it stands in the foot of the sheet that was sent"
        if not code:
            self.add("fingerprint", "the fingerprint is missing", helped)
        elif EXPONENT.fullmatch(code):
            told = "the fingerprint {it} was taken for a number by a spreadsheet program"
            self.add("fingerprint", told, f"format the column as text, and write its {LONG} signs anew: {helped}")
        else:
            self.add("fingerprint", f"{{it}} is not {LONG} signs of {SIGNS}", helped)
