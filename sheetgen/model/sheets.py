"""A list as a spreadsheet takes it: a name, the names of its columns, and rows of plain values."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from decimal import Decimal

Cell = str | int | float | Decimal | dt.date | None


@dataclass(frozen=True, slots=True)
class Sheet:
    """One list. Numbers are given as numbers and finite, text as text, whatever it begins with; None is an empty cell.

    No row is longer than the head.
    """

    name: str
    head: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]
