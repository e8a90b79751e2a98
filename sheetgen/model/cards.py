"""The cards and labels of a run, one after the other as they are printed. No repr shows a name or a note."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.model.kit_cards_view import KitCard, Label, OrderHead


@dataclass(frozen=True, slots=True)
class Card:
    """A card: the number of its order, which of its kits it is, what is of its kind, and the order's gift note.

    `due` is the order's day as year-month-day, or nothing.
    """

    order: str
    which: str
    kit: KitCard
    note: str = field(default="", repr=False)
    due: str = ""


@dataclass(frozen=True, slots=True)
class BagLabel:
    """A label: what is of its order, what is of its bag, and where its code leads, or nothing."""

    head: OrderHead
    label: Label
    url: str
