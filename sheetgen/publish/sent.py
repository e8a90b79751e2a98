"""Lines added to the private list of what was sent: what stands there stays as it is, to the byte."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe
from sheetgen.model.sent import COLUMNS, FILE, Sent, SentList
from sheetgen.model.sheets import Sheet
from sheetgen.publish.tables import csv_bytes, field

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.model.sheets import Cell

TELLING = ("leave out", "only")
"""Columns that an older file may lack, without which a line would say something else."""
ENDS = ("\r\n", "\n", "\r")


def added_to(there: SentList, new: Sequence[Sent]) -> bytes:
    """The whole file with new lines at its end, in its own encoding, with its own columns and the sign between them.

    CannotBe where a line could be lost in one that cannot be taken apart, wants a column that is not there, or cannot
    be written in its encoding.
    """
    rows = [_cells(one) for one in new]
    if not there.there:
        return csv_bytes(Sheet("sent", COLUMNS, tuple(tuple(row[column] for column in COLUMNS) for row in rows)))
    if not there.whole:
        helped = "mend the lines that are told first: a quotation mark that is not closed would swallow what is added"
        raise CannotBe(f"nothing can be added to {FILE}", help=helped, field="sent")
    for column in TELLING:
        if column not in there.columns and any(row[column] for row in rows):
            told = f"{FILE} has no column '{column}', and a line to be added would stand there as a whole kit"
            raise CannotBe(told, f"write '{column}' at the end of its first line, and run the orders once more", "sent")
    text = there.there.decode(there.encoding)
    end = next((one for one in ENDS if one in text), "\r\n")
    lines = [there.sign.join(_field(row.get(column), there.sign) for column in there.columns) + end for row in rows]
    before = "" if text.endswith(("\n", "\r")) else end
    try:
        return there.there + (before + "".join(lines)).encode(there.encoding)
    except UnicodeEncodeError:
        helped = "save it once as CSV in UTF-8"
        raise CannotBe(f"{FILE} is in an encoding that lacks a letter of what is added", helped, "sent") from None


def _field(cell: Cell, sign: str) -> str:
    told = field(cell)
    return f'"{told}"' if sign in told and not told.startswith('"') else told


def _cells(one: Sent) -> dict[str, Cell]:
    kit = one.kit
    named = (one.order, one.date, kit.design, kit.version, kit.chosen, kit.colourway, kit.left_out, kit.alone)
    return dict(zip(COLUMNS, (*named, one.count, one.code, one.revision), strict=True))
