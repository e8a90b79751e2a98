"""An XLSX workbook to its rows; with publish/workbook.py one of the two modules that know openpyxl.

The values as kept in the file are read; nothing is worked, run or fetched. openpyxl takes a while to import: import
this where a workbook is read.
"""

from __future__ import annotations

import datetime as dt
import io
import re
import warnings
import zipfile
from itertools import islice
from typing import TYPE_CHECKING, Any

from openpyxl import load_workbook
from openpyxl.cell.read_only import EMPTY_CELL

from sheetgen.base.place import Place, Source
from sheetgen.base.record import Row

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.trouble import Troubles

BETWEEN = "│"
MOST_FILES = 2_000
LARGEST_SHEET = 48_000_000
"""Bytes of one sheet or of the words shared by all, unpacked."""
LARGEST_PART = 8_000_000
"""Bytes of what else there is: styles, the list of sheets, a picture."""
LARGEST = 100_000_000
MOST_TAGS = 4_000_000
MOST_COLUMNS = 200
MOST_SHEETS = 500
"""Each is opened before the first is known; all may be one part of the packet."""
UNWORKED = "#N/A"
"""What stands for a formula without a result, as for one that has failed."""
LAST_ROW = 1_048_576  # of a sheet, by the spreadsheet programs' own bound
SAVE = "open it in a spreadsheet program and save it anew as XLSX, or as CSV in UTF-8"
BIG = re.compile(r"xl/(worksheets/[^/]+|sharedStrings)\.xml", re.IGNORECASE)
# ECMA-376 part 2 (Open Packaging Conventions), requirement M1.18: a document type declaration is an error.
ENCODINGS = ("ascii", "utf-16-le", "utf-16-be")
DECLARED = tuple("<!DOCTYPE".encode(encoding) for encoding in ENCODINGS)
OF_A_SHEET = tuple("sheetId".encode(encoding) for encoding in ENCODINGS)
# ECMA-376 part 1, 22.9.2.19 (ST_Xstring): a sign that XML cannot hold, such as the end of a line.
ESCAPED = re.compile("_x(000[0-9A-Fa-f]|001[0-9A-Fa-f])_")
PADDED = re.compile('(?:"([^"]*)")?(0+)')  # a format such as 0000 or "Q-"0000
CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\x85\u2028\u2029]")


TOO_MUCH = (
    "the workbook unpacks to more than a table ever holds",
    "delete lines and sheets that are not wanted, or save the one sheet as CSV in UTF-8",
)


class _Refused(Exception):
    """Why a workbook is not read, and what would help."""

    def __init__(self, message: str, helped: str = SAVE) -> None:
        super().__init__(message)
        self.message = message
        self.helped = helped


def workbook_rows(raw: bytes, name: str, troubles: Troubles) -> list[Row]:
    """The rows of the first sheet that hold something; the cells are text as people typed it.

    A broken or a hostile file is a trouble at the file, and what was read before stands.
    """
    found: list[Row] = []
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # of what openpyxl does not keep: pictures, lists to choose from
            found.extend(_rows(raw, name, troubles))
    except _Refused as fault:
        troubles.add(fault.message, Place(Source(name)), fault.helped)
    except Exception as fault:  # noqa: BLE001 - a broken file breaks openpyxl in ways of its own
        troubles.add(f"the workbook cannot be read ({type(fault).__name__})", Place(Source(name)), SAVE)
    return found


def _rows(raw: bytes, name: str, troubles: Troubles) -> Iterator[Row]:
    _told(_sound(raw), name, troubles)
    sheets = _sheets(raw, values=True)
    if len(sheets) > 1:
        message = f"the workbook has {len(sheets)} sheets; the first is read"
        helped = "put the table first, and what else there is into a file of its own"
        troubles.add(message, Place(Source(name)), helped, "warning")
    formulas = _formulas(raw)
    before: object = None
    for number, cells in enumerate(sheets[0].iter_rows(max_col=MOST_COLUMNS), 1):
        if number > LAST_ROW:
            raise _Refused(f"the sheet has more than {LAST_ROW} lines")
        if cells is before:  # of lines that the file leaves out
            continue
        before = cells
        texts = ["" if cell is EMPTY_CELL else _text(cell) for cell in cells]
        for column in formulas.get(number, ()):
            if cells[column].value is None and cells[column].data_type == "n":
                texts[column] = UNWORKED
        while texts and not texts[-1]:
            texts.pop()
        if texts:
            yield _row(name, number, texts)


def _sheets(raw: bytes, *, values: bool) -> list[Any]:
    """The sheets that are not hidden, with the values of their formulas or with the formulas."""
    book = load_workbook(io.BytesIO(raw), read_only=True, data_only=values, keep_links=False)
    found: list[Any] = [sheet for sheet in book.worksheets if sheet.sheet_state == "visible"]
    if not found:
        raise _Refused("the workbook has no sheet to read")
    for sheet in found:
        sheet.reset_dimensions()  # what a file says of its own size need not be so
    return found


def _formulas(raw: bytes) -> dict[int, list[int]]:
    """By line, from 1, the columns with a formula, from 0."""
    with zipfile.ZipFile(io.BytesIO(raw)) as archive:
        sheets = [archive.read(one) for one in archive.namelist() if BIG.fullmatch(one)]
    if not any(re.search(rb"<(\w+:)?f[\s/>]", sheet) for sheet in sheets):
        return {}
    rows = islice(_sheets(raw, values=False)[0].iter_rows(max_col=MOST_COLUMNS), LAST_ROW)  # the last may say any
    held = ((n, [at for at, cell in enumerate(cells) if cell.data_type == "f"]) for n, cells in enumerate(rows, 1))
    return {n: columns for n, columns in held if columns}


def _told(names: list[str], name: str, troubles: Troubles) -> None:
    if any(one.startswith("xl/externalLinks/") for one in names):
        message = "the workbook asks other files for values; they are not opened, and the values kept in it are read"
        helped = "look whether they are still right, or paste them in as values"
        troubles.add(message, Place(Source(name)), helped, "warning")


def _sound(raw: bytes) -> list[str]:
    """The names of the parts, when none unpacks to more than is ever wanted and none declares entities."""
    try:
        with zipfile.ZipFile(io.BytesIO(raw)) as archive:
            parts = archive.infolist()
            names = [part.filename for part in parts]
            if len(parts) > MOST_FILES:
                raise _Refused(f"the workbook is a packet of {len(parts)} files")
            if "mimetype" in names or "[Content_Types].xml" not in names:
                raise _Refused("the file is a packet, and not an XLSX workbook")
            if sum(part.file_size for part in parts) > LARGEST:
                raise _Refused(*TOO_MUCH)
            for part in parts:
                _bounded(archive, part)
            return names
    except (zipfile.BadZipFile, EOFError, OSError, RuntimeError) as fault:  # RuntimeError: a password, an odd packing
        raise _Refused("the workbook is broken, or has a password") from fault


def _bounded(archive: zipfile.ZipFile, part: zipfile.ZipInfo) -> None:
    """Read one part through in pieces, whatever it says of its own size."""
    most = LARGEST_SHEET if BIG.fullmatch(part.filename) else LARGEST_PART
    media = part.filename.startswith("xl/media/")  # pictures, which are not read
    size = tags = sheets = 0
    before = b""
    with archive.open(part) as unpacked:
        while piece := unpacked.read(1 << 18):
            size += len(piece)
            tags += piece.count(b"<")
            sheets += 0 if media else sum(map(piece.count, OF_A_SHEET))
            if size > most or tags > MOST_TAGS:
                raise _Refused(*TOO_MUCH)
            if sheets > MOST_SHEETS and not BIG.fullmatch(part.filename):
                raise _Refused(f"the workbook has more than {MOST_SHEETS} sheets", TOO_MUCH[1])
            if not media and any(declared in before + piece for declared in DECLARED):
                raise _Refused("the workbook declares XML of its own, which none may")
            before = piece[-32:]


def _row(name: str, number: int, texts: list[str]) -> Row:
    """A row whose text is a line for people: cells beside each other, none over several lines."""
    lines = [text.replace("\n", " ").replace(BETWEEN, "|") for text in texts]
    ends, at = [], 0
    for line in lines:
        ends.append((at, at + len(line)))
        at += len(line) + 1
    return Row(name, number, BETWEEN.join(lines), tuple(ends), tuple(texts), BETWEEN)


def _text(cell: Any) -> str:  # noqa: ANN401 - openpyxl's cells of several kinds
    """A value as somebody would type it: 12 and not 12.0, a date by ISO 8601, 0042 where the cell shows noughts."""
    value = cell.value
    if value is None:
        return ""
    if isinstance(value, str):
        if "_x" in value:
            value = ESCAPED.sub(lambda found: chr(int(found[1], 16)), value)
        return CONTROL.sub(" ", value.replace("\r\n", "\n").replace("\r", "\n")).strip()
    if isinstance(value, int) and (padded := PADDED.fullmatch(cell.number_format)):
        return f"{padded[1] or ''}{value:0{len(padded[2])}d}"
    if isinstance(value, float):
        return f"{value:.15g}"  # as many digits as a sheet keeps
    if isinstance(value, dt.datetime):
        clock = value.time().isoformat("minutes")
        return value.date().isoformat() + ("" if clock == "00:00" else f" {clock}")
    return str(value).upper() if isinstance(value, bool) else str(value)
