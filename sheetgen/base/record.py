"""One line of a table as a source by itself: a trouble shows it, with what is private hidden."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.place import Place, Source, Word

if TYPE_CHECKING:
    from collections.abc import Container

HIDDEN = "·"


def letters(number: int) -> str:
    """The letters over column `number` (from 1) of a sheet: A to Z, then AA, AB and so on."""
    found = ""
    while number > 0:
        number, last = divmod(number - 1, 26)
        found = chr(ord("A") + last) + found
    return found


@dataclass(frozen=True, slots=True)
class Record(Source):
    """The text of one line of a table, which a quoted cell may carry over several lines of the file.

    `first` is the number of its first line. `between` is the sign that parts the cells of a workbook's line: there a
    place is told as C4.
    """

    first: int = 1
    between: str = ""

    @property
    def by_line(self) -> bool:
        """It is."""
        return True

    def line(self, number: int) -> str:
        """Line `number` of the file, empty outside of the record."""
        return Source.line(self, number - self.first + 1)

    def spot(self, line: int, column: int) -> str:
        """Line and column, or the cell of a workbook."""
        if not self.between:
            return f"{line}:{column}"
        return f"{letters(self.text.count(self.between, 0, column - 1) + 1)}{line}"


@dataclass(frozen=True, slots=True)
class Row:
    """A line of a table: its cells as text without the white space around, and where each stands.

    `text` is the line as written and `ends` where each cell of it begins and ends; `first` is its number in the file.
    """

    name: str
    first: int
    text: str
    ends: tuple[tuple[int, int], ...]
    cells: tuple[str, ...]
    between: str = ""

    def cell(self, column: int) -> str:
        """What stands in a column (from 0); empty past the last."""
        return self.cells[column] if column < len(self.cells) else ""

    def record(self, shown: Container[int]) -> Record:
        """The line for a trouble: only the columns in `shown` can be read, the others are dots."""
        kept: list[str] = []
        at = 0
        for column, (start, end) in enumerate(self.ends):
            if start < end and column not in shown:
                kept += self.text[at:start], re.sub(r"[^\n]", HIDDEN, self.text[start:end])
                at = end
        return Record(self.name, "".join((*kept, self.text[at:])), self.first, self.between)

    def word(self, column: int, record: Record) -> Word:
        """A cell as a word of a record of this row."""
        place = self.place(column, record)
        if column >= len(self.ends):
            return Word("", place)
        start, end = self.ends[column]
        raw = self.text[start:end] if self.text.startswith('"', start) and not self.between else ""
        return Word(self.cells[column], place, raw)

    def place(self, column: int, record: Record) -> Place:
        """Where a cell stands; past the last cell, the end of the line."""
        start, end = self.ends[column] if column < len(self.ends) else (len(self.text), len(self.text))
        if "\n" not in self.text:
            return Place(record, self.first, start + 1, max(1, end - start))
        line = self.text.count("\n", 0, start)
        line_end = self.text.find("\n", start, end)
        width = (end if line_end < 0 else line_end) - start
        return Place(record, self.first + line, start - self.text.rfind("\n", 0, start), max(1, width))


@dataclass(frozen=True, slots=True)
class Table:
    """A table as its file has it: the line that names the columns, and the lines under it that hold something.

    `dropped` are those that cannot be taken apart and are told; only the cells before what is amiss are theirs.
    """

    name: str
    head: Row
    rows: tuple[Row, ...]
    dropped: tuple[Row, ...] = ()
