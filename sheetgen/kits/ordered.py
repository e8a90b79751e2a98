"""Orders as they are packed: which kits go to whom, each kind of kit known once; no repr names anybody."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import datetime as dt

    from sheetgen.kits.taken import Kits


@dataclass(frozen=True, slots=True)
class Part:
    """So many kits of one kind in an order. `kits.bags` is the whole run's number, `count` this order's."""

    kits: Kits
    count: int


@dataclass(frozen=True, slots=True)
class Order:
    """An order with all its parts. `due` is the earliest of its lines; `name` and `gift_note` are private."""

    number: str
    name: str = field(repr=False)
    gift_note: str = field(repr=False)
    due: dt.date | None
    parts: tuple[Part, ...]


@dataclass(frozen=True, slots=True)
class Run:
    """The orders of a run as they are packed, by due date and then by number, and every kind of kit in them once."""

    orders: tuple[Order, ...]
    kinds: tuple[Kits, ...]
