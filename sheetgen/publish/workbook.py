"""Lists to an XLSX workbook; with read/workbook.py one of the two modules that know openpyxl.

Text is text: a cell of it is typed as a string, whatever it begins with, and marked so that it stays one when somebody
edits it. The same lists give the same bytes. openpyxl takes a while to import: import this where lists are written.
"""

from __future__ import annotations

import datetime as dt
import io
import re
import zipfile
from typing import TYPE_CHECKING, Any

from openpyxl import Workbook
from openpyxl.cell import WriteOnlyCell
from openpyxl.styles import Alignment, Font
from openpyxl.utils import get_column_letter
from openpyxl.writer.excel import ExcelWriter

from sheetgen.publish.tables import STARTS, held, plain

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.model.sheets import Cell, Sheet

NARROWEST, WIDEST = 8, 60  # of a column, in letters
LONGEST_NAME = 28  # of a sheet: 31 by the spreadsheet programs, less a number where two are called alike
NOT_IN_A_NAME = re.compile(r"[\[\]:*?/\\]")
MADE = dt.datetime(2000, 1, 1)  # noqa: DTZ001 - a day for every file, so that its bytes hang on its lists alone
BOLD = Font(name="Calibri", size=11, bold=True)  # the face that a workbook has else
ZIPPED = (1980, 1, 1, 0, 0, 0)
# ECMA-376 part 1, 22.9.2.19 (ST_Xstring): what looks like an escape has its first sign escaped.
LIKE_ESCAPE = re.compile("_(?=x[0-9A-Fa-f]{4}_)")


def xlsx_bytes(sheets: Sequence[Sheet]) -> bytes:
    """A workbook with a sheet for each list: the head bold and always in sight, columns as wide as what they hold.

    Raises ValueError for a number that is not finite.
    """
    for number in (value for sheet in sheets for row in sheet.rows for value in row):
        if number is not None and not isinstance(number, str):
            plain(number)  # before a page is begun, which openpyxl could not leave unfinished
    book = Workbook(write_only=True)
    book.properties.creator = "sheetgen"
    book.properties.created = book.properties.modified = MADE
    for sheet in sheets:
        _put(book.create_sheet(_name(sheet.name)), sheet)
    laid = io.BytesIO()
    with zipfile.ZipFile(laid, "w", zipfile.ZIP_DEFLATED) as archive:
        ExcelWriter(book, archive).save()
    return _undated(laid)


def _name(name: str) -> str:
    """A name that a sheet may have."""
    return NOT_IN_A_NAME.sub(" ", held(name)).replace("\n", " ")[:LONGEST_NAME].strip(" '") or "List"


def _put(page: Any, sheet: Sheet) -> None:  # noqa: ANN401 - its type is not whole in the stubs
    page.freeze_panes = "A2"
    for at in range(len(sheet.head)):
        column = [row[at] for row in (sheet.head, *sheet.rows) if at < len(row)]
        page.column_dimensions[get_column_letter(at + 1)].width = min(WIDEST, max(NARROWEST, *map(_width, column)) + 2)
    head = [_cell(page, name) for name in sheet.head]
    for cell in filter(None, head):
        cell.font = BOLD
    page.append(head)
    for row in sheet.rows:
        page.append([_cell(page, value) for value in row])


def _width(value: Cell) -> int:
    """The letters of the longest line."""
    return max(map(len, str("" if value is None else value).split("\n")))


def _cell(page: Any, value: Cell) -> Any:  # noqa: ANN401
    if value is None or value == "":
        return None
    if not isinstance(value, str):
        cell: Any = WriteOnlyCell(page)
        cell.value = value
        if isinstance(value, dt.date):
            cell.number_format = "yyyy-mm-dd"
        return cell
    text = held(value).replace("\r", "\n")
    cell = WriteOnlyCell(page, LIKE_ESCAPE.sub("_x005F_", text))
    cell.data_type = "s"  # and no formula or error, which openpyxl would make of it
    cell.quotePrefix = value[0] in STARTS
    if "\n" in text:
        cell.alignment = Alignment(wrap_text=True, vertical="top")
    return cell


def _undated(laid: io.BytesIO) -> bytes:
    """The same packet with one date on all its parts."""
    whole = io.BytesIO()
    with zipfile.ZipFile(laid) as was, zipfile.ZipFile(whole, "w", zipfile.ZIP_DEFLATED) as archive:
        for part in was.infolist():
            entry = zipfile.ZipInfo(part.filename, ZIPPED)
            entry.create_system = 3  # as on every machine
            entry.external_attr = 0o600 << 16
            archive.writestr(entry, was.read(part), zipfile.ZIP_DEFLATED)
    return whole.getvalue()
