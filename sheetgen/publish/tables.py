"""Lists to CSV, for a spreadsheet program to open. Nothing that somebody typed can run there.

A text that begins with a sign of `STARTS` would be worked as a formula. In CSV an apostrophe is put before it, and
stays to be seen, since a CSV cannot say that a cell is text; likewise where a program that parts cells at semicolons,
tabs or line ends alone would begin a cell. In XLSX (publish/workbook.py) the text stands as it is, and its cell is
marked as text. Numbers are numbers, also below nought.
"""

from __future__ import annotations

import datetime as dt
import re
from decimal import Decimal
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.model.sheets import Cell, Sheet

STARTS = "=+-@\t\r\n＝＋－＠"  # the last four are how = + - @ are typed on some keyboards; programs take them alike
# What neither holds: control characters, halves of a pair, the two that are no characters (XML 1.0, 2.2).
CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f]")
NO_TEXT = re.compile("[\ud800-\udfff\ufffe\uffff]")
QUOTED = re.compile('[",;\t\r\n]|^ | $')
# After apostrophes of its own too: so the one that is put there can be told from them (read/sent.py).
RISKY = re.compile(rf'(?:^|(?<=[;\t\r\n]))([ "]*)(?=\'*[{re.escape(STARTS)}])')


def csv_bytes(sheet: Sheet) -> bytes:
    """The list by RFC 4180, with commas; in UTF-8 with its mark, by which spreadsheet programs know it.

    Raises ValueError for a number that is not finite.
    """
    lines: dict[int, str] = {}  # kits that are alike have the same rows, thousands of times
    for row in (sheet.head, *sheet.rows):
        if id(row) not in lines:
            lines[id(row)] = ",".join(map(field, row)) + "\r\n"
    return ("\ufeff" + "".join(lines[id(row)] for row in (sheet.head, *sheet.rows))).encode()


def held(text: str) -> str:
    """The text without signs that neither a CSV nor XML can hold; line ends are line feeds."""
    return NO_TEXT.sub("\ufffd", CONTROL.sub(" ", text.replace("\r\n", "\n")))


def field(cell: Cell) -> str:
    """A cell as a line of a CSV has it, in quotes where they are needed, whichever sign parts the cells."""
    if cell is None:
        return ""
    text = RISKY.sub(r"\1'", held(cell)) if isinstance(cell, str) else plain(cell)
    return '"' + text.replace('"', '""') + '"' if QUOTED.search(text) else text


def plain(cell: float | Decimal | dt.date) -> str:
    """A number or a date as every program reads it: a point, no groups, no exponent; by ISO 8601."""
    if isinstance(cell, dt.date):
        return cell.isoformat()
    number = Decimal(f"{cell:.15g}") if isinstance(cell, float) else Decimal(cell)
    if not number.is_finite():
        raise ValueError(f"{cell} cannot stand in a list")
    return f"{number:f}"
