"""A file with a table, CSV or XLSX, to its rows: each cell knows where it stands."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.place import Place, Source
from sheetgen.base.record import Row, Table, letters
from sheetgen.read.signs import PRIVATE
from sheetgen.read.table_lines import MOST_CELLS, line_rows
from sheetgen.read.table_text import LOST, table_text

if TYPE_CHECKING:
    from collections.abc import Iterable
    from pathlib import Path

    from sheetgen.base.trouble import Troubles

LARGEST = 40_000_000
MOST_ROWS = 100_000
MOST_COLUMNS = 200
"""Of a CSV; of a workbook no more are looked at."""
SPLIT_HELP = "put a cell that holds a comma, a semicolon or a tab between quotation marks"


def read_table(path: Path, name: str, troubles: Troubles) -> Table | None:
    """The table of a file under the name shown to people; None when there is none to read, with a trouble.

    What a trouble shows of a line is hidden here: which columns are nobody's secret only the reader of them knows.
    A sign of no alphabet is U+FFFD, as one that was lost in saving.
    """
    before = len(troubles)
    dropped: list[Row] = []
    raw = _bytes(path, name, troubles)
    if raw is None:
        return None
    if raw.startswith(b"PK\x03\x04"):
        from sheetgen.read.workbook import workbook_rows  # noqa: PLC0415 - a CSV does not wait for what reads these

        rows: Iterable[Row] = workbook_rows(raw, name, troubles)
    else:
        text = table_text(raw, name, troubles)
        if text is None:
            return None
        rows = line_rows(text, name, troubles, dropped)
    found: list[Row] = []
    cells = 0
    for row in rows:
        cells += len(row.cells)
        if cells > MOST_CELLS:
            message = f"the table has more than {MOST_CELLS} cells; this line and those after it are not read"
            troubles.add(message, Place(row.record(()), row.first), "take out the columns that hold nothing")
            break
        if len(found) > MOST_ROWS:
            message = f"the table has more than {MOST_ROWS} lines; those after this one are not read"
            troubles.add(message, Place(row.record(()), row.first), "divide it into several files")
            break
        found.append(_of_alphabets(row) if PRIVATE.search(row.text) else row)
    if not found:
        if len(troubles) == before:
            troubles.add("the file is empty", Place(Source(name)), "its first line names the columns")
        return None
    head, *lines = found
    if (width := len(head.cells)) > MOST_COLUMNS:
        message = f"the first line names {width} columns, and a table has {MOST_COLUMNS} at most"
        troubles.add(message, Place(head.record(()), head.first), "take out those that are not wanted")
        return None
    kept = tuple(_within(head, lines, troubles, dropped))
    return Table(name, head, kept, tuple(dropped))


def _bytes(path: Path, name: str, troubles: Troubles) -> bytes | None:
    place = Place(Source(name))
    try:
        if not path.is_file():
            there = path.exists()
            troubles.add(
                "is not a file" if there else "there is no such file", place, "a CSV or XLSX file is wanted here"
            )
            return None
        if (size := path.stat().st_size) > LARGEST:
            troubles.add(
                f"the file is {size / 1e6:.0f} MB long",
                place,
                f"at most {LARGEST / 1e6:.0f} MB; is this the right file?",
            )
            return None
        return path.read_bytes()
    except (OSError, ValueError) as fault:
        why = fault.strerror if isinstance(fault, OSError) else "its name is none"
        troubles.add(f"the file cannot be read: {why}", place, "is it there, and may you read it?")
        return None


def _of_alphabets(row: Row) -> Row:
    """The row without signs that cannot be printed and would pass for marks of the program's own."""
    return replace(row, text=PRIVATE.sub(LOST, row.text), cells=tuple(PRIVATE.sub(LOST, cell) for cell in row.cells))


def _within(head: Row, rows: Iterable[Row], troubles: Troubles, dropped: list[Row]) -> Iterable[Row]:
    """The rows that have no more cells than the head: of others nobody knows which cell belongs to which column."""
    width = len(head.cells)
    unnamed: set[int] = set()
    for row in rows:
        if any(row.cells[width:]):
            cells = len(row.cells)
            if row.between:
                unnamed.add(next(n for n in range(width, cells) if row.cells[n]))
            else:
                message = f"the line has {cells} cells, and the first line names {width} columns"
                place = Place(row.record(()), row.first)
                troubles.add(message, place, SPLIT_HELP)
                dropped.append(row)
                continue
        unnamed.update(n for n, cell in enumerate(row.cells[:width]) if cell and not head.cells[n])
        yield row
    if unnamed:
        first = min(unnamed)
        message = f"column {letters(first + 1) if head.between else first + 1} has no name and is not read"
        troubles.add(message, head.place(first, head.record(())), "name it in the first line, or empty it", "warning")
