"""The bytes of a table to its text, in whichever encoding a spreadsheet program saved it."""

from __future__ import annotations

import codecs
import re
from typing import TYPE_CHECKING

from sheetgen.base.place import Place, Source

if TYPE_CHECKING:
    from sheetgen.base.trouble import Troubles

# Byte-order marks, the longer before those that they begin with (Unicode Standard 15.0, table 2-4 and section 23.8).
MARKS = (
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF32_LE, "utf-32-le"),
    (codecs.BOM_UTF32_BE, "utf-32-be"),
    (codecs.BOM_UTF16_LE, "utf-16-le"),
    (codecs.BOM_UTF16_BE, "utf-16-be"),
)
# What else is given for a table: how it begins, what it is.
OTHERS = (
    (b"\xd0\xcf\x11\xe0", "an old workbook, or one with a password"),
    (b"%PDF", "a PDF"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"{\\rtf", "a text document"),
    (b"<", "a web page or XML"),
)
SAVE = "save it as XLSX, or as CSV in UTF-8"
PRIVATE = re.compile("[\ue000-\uf8ff]")  # of no alphabet: the program marks its own pages with them
CONTROL = re.compile("[\x01-\x08\x0b\x0c\x0e-\x1f\x7f\x85\u2028\u2029]")
LOST = "\ufffd"


def table_text(raw: bytes, name: str, troubles: Troubles) -> str | None:
    """The text of a CSV, its lines ended by line feeds; None when it is no text, with a trouble."""
    for begins, what in OTHERS:
        if raw.startswith(begins):
            troubles.add(f"the file is {what}, not a table", Place(Source(name)), SAVE)
            return None
    text = _decoded(raw, name, troubles)
    if text is None:
        return None
    if "\0" in text:
        head = text[: text.index("\0")]
        place = Place(Source(name), head.count("\n") + 1, len(head) - head.rfind("\n"))
        troubles.add("the file is not text", place, SAVE)
        return None
    return CONTROL.sub(" ", text.replace("\r\n", "\n").replace("\r", "\n"))


def encoding_of(raw: bytes) -> str:
    """How a table that can be read is written, its mark left aside."""
    for mark, encoding in MARKS:
        if raw.startswith(mark):
            return encoding
    if bare := _without_mark(raw[:4096]):
        return bare
    try:
        raw.decode("utf-8")
    except UnicodeDecodeError:
        return "cp1252"
    return "utf-8"


def _decoded(raw: bytes, name: str, troubles: Troubles) -> str | None:
    for mark, encoding in MARKS:
        if raw.startswith(mark):
            return _as(encoding, raw[len(mark) :], name, troubles)
    if bare := _without_mark(raw[:4096]):
        return _as(bare, raw, name, troubles)
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError as fault:
        # Letters of two bytes and more are hardly ever met by chance: where there are some, it is UTF-8 with a fault.
        if re.search("[^\x00-\x7f\ufffd]", raw.decode("utf-8", "replace")):
            message = "the file is partly in UTF-8 and partly in another encoding"
            troubles.add(message, _spot(raw, fault.start, name), "save the whole of it once more as CSV in UTF-8")
            return None
        return _as("cp1252", raw, name, troubles)


def _as(encoding: str, raw: bytes, name: str, troubles: Troubles) -> str | None:
    try:
        return raw.decode(encoding)
    except UnicodeDecodeError as fault:
        told = "UTF-8 nor Windows-1252" if encoding == "cp1252" else f"whole {encoding[:6].upper()} nor anything else"
        troubles.add(f"the file is neither {told}", _spot(raw, fault.start, name), SAVE)
        return None


def _without_mark(sample: bytes) -> str:
    """UTF-16 without its mark: in most tables every other byte of the first lines is nought."""
    first, second = sample[::2].count(0), sample[1::2].count(0)
    few, many = len(sample) // 20, len(sample) // 5
    if first <= few and second > many:
        return "utf-16-le"
    return "utf-16-be" if second <= few and first > many else ""


def _spot(raw: bytes, at: int, name: str) -> Place:
    """Where a byte stands; the line itself is not shown."""
    head = raw[:at]
    return Place(Source(name), head.count(b"\n") + 1, at - head.rfind(b"\n"))
