"""A class list to its pupils: each bad line is told and left out, the others are kept.

A trouble tells line and column, and never shows a name, a table, or a column that is not ours: they are dots.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.place import Place
from sheetgen.base.spelling import bare
from sheetgen.model.class_list import PupilLine
from sheetgen.read.columns import columns
from sheetgen.read.kit_line import Book, KitLine, one_line
from sheetgen.read.tables import read_table

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from pathlib import Path

    from sheetgen.base.trouble import Troubles

NEEDED = ("name", "design")
COLUMNS = ("name", "design", "version", "choices", "colourway", "table")
PRIVATE = ("name", "table")
LONGEST_TABLE = 40


class Line(KitLine):
    """A pupil's line; `read` gives it, or tells all that is wrong with it."""

    def read(self) -> PupilLine | None:
        """The line, or None with troubles."""
        self.cells_are_sound()
        line = None if self.bad else self.line()
        return None if self.bad else line

    def line(self) -> PupilLine:
        """The line as far as it can be read."""
        name, table = one_line(self.cell("name")), one_line(self.cell("table"))
        if not name:
            self.add("the pupil has no name", "a name, or a number, by which the place is found", self.word("name"))
        if len(table) > LONGEST_TABLE:
            helped = f"at most {LONGEST_TABLE}: a number, or window"
            self.add(f"the table's name has {len(table)} letters", helped, self.word("table"))
        design = self.design()
        return PupilLine(
            name=name,
            design=design,
            version=self.version(design),
            choices=self.choices(),
            colourway=self.word("colourway"),
            table=table,
            place=self.row.place(self.book.where["design"], self.record),
        )


def read_pupils(
    path: Path, name: str, versions: Mapping[str, Sequence[str]], troubles: Troubles
) -> tuple[PupilLine, ...]:
    """The pupils of a CSV or XLSX file under the name shown to people, in its order.

    `versions`: the printed names of each design's versions by the design's name, the main one first.
    """
    table = read_table(path, name, troubles)
    where = columns(table, COLUMNS, NEEDED, troubles) if table else None
    if table is None or where is None:
        return ()
    if not table.rows:
        place = Place(table.head.record(where.values()), table.head.first)
        troubles.add("no pupil stands under the names of the columns", place, "a line for each pupil")
    designs = {bare(design): design for design in versions}
    book = Book(where, len(table.head.cells), versions, designs, troubles, PRIVATE)
    found = [read for row in table.rows if (read := Line(book, row).read())]
    _compare(found, troubles)
    return _at_one_spelling(found)


def _compare(pupils: Sequence[PupilLine], troubles: Troubles) -> None:
    """Warn of what is right by itself and hardly meant beside another line."""
    first: dict[str, PupilLine] = {}
    for pupil in pupils:
        other = first.setdefault(pupil.name.casefold(), pupil)
        if other is not pupil:
            told = f"the name is the same as on line {other.place.line}; there is a place for each"
            troubles.add(told, pupil.place, "take one of them out, unless they are two", "warning")
    seated = [pupil for pupil in pupils if pupil.table]
    for pupil in pupils if seated else ():
        if not pupil.table:
            told = "the pupil sits at no table, and others do"
            troubles.add(told, pupil.place, "fill in 'table'; the place is listed by itself", "warning")


def _at_one_spelling(pupils: Sequence[PupilLine]) -> tuple[PupilLine, ...]:
    """A table is one however it is spaced: as it is written first."""
    spelt: dict[str, str] = {}
    return tuple(replace(one, table=spelt.setdefault(bare(one.table), one.table)) for one in pupils)
