"""What a table holds by the names of its columns: orders, or the pupils of a class."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import bare
from sheetgen.base.trouble import Troubles
from sheetgen.read import orders, pupils
from sheetgen.read.tables import read_table

if TYPE_CHECKING:
    from pathlib import Path

ORDERS, CLASS = "orders", "class"
UNKNOWN = ""


def held_in(path: Path) -> str:
    """Orders where a column stands there that only they have; else a class, where one does that is a class list's.

    What is wrong with the table is told by whoever reads it whole.
    """
    table = read_table(path, path.name, Troubles())
    there = {bare(cell) for cell in table.head.cells} if table else set()
    of_class = {bare(name) for name in pupils.COLUMNS}
    if there & ({bare(name) for name in orders.COLUMNS} - of_class):
        return ORDERS
    return CLASS if there & of_class else UNKNOWN
