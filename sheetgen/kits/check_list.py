"""The list by which a second pair of eyes checks orders: bags and sheets of each, and no name."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.kits.kit_cards import short_names
from sheetgen.kits.kit_lines import BOXED, bags_are_empty, sent_for
from sheetgen.kits.lists import DOT
from sheetgen.model.sheets import Sheet

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Mapping, Sequence

    from sheetgen.kits.ordered import Order, Run
    from sheetgen.kits.taken import Kits
    from sheetgen.model.sheets import Cell

CHECK = ("order", "line", "kit", "bags", "sheets", "note", "due")
BAG = "bag"
"""A kit in one bag without a name."""


@dataclass(frozen=True, slots=True)
class Packed:
    """So many kits of one kind in an order, and the bags of each; with a part that is sent alone goes a `slip`.

    `ask` is what is in it of which the carrier must be asked first.
    """

    kit: str
    count: int
    bags: tuple[str, ...]
    slip: bool = False
    ask: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Checked:
    """An order as it is checked: `sheets` are its leaves of paper, `note` says whether a gift note is with it."""

    number: str
    due: dt.date | None
    packed: tuple[Packed, ...]
    sheets: int
    note: bool


def bags_of(kits: Kits) -> tuple[str, ...]:
    """The bags of one kit by their names, those that hold something; one without a name where the design says none.

    Tools that lie in its box are checked as a bag is.
    """
    kit = kits.version.kit
    full = [bag.name for bag in (kit.bags if kit else ()) if any(_goes_in(kits, item.id) for item in bag.items)]
    tools = [BOXED] if kit and any(_goes_in(kits, tool.id) for tool in kit.in_the_box) else []
    return tuple((full or ([] if (kits.only and tools) or bags_are_empty(kits) else [BAG])) + tools)


def asked_of(kits: Kits) -> tuple[str, ...]:
    """What is sent in these kits of which the carrier, and the local rules, must be asked first."""
    kit = kits.version.kit
    items = [*(item for bag in kit.bags for item in bag.items), *kit.in_the_box] if kit else []
    return short_names(one for one in items if one.supply.post and _goes_in(kits, one.id))


def _goes_in(kits: Kits, item: str) -> bool:
    """Whether an item is sent, itself or in another colour."""
    sent = sent_for(kits, item)
    return bool(kits.only & sent) if kits.only else bool(sent - kits.leave_out)


def checked(run: Run, leaves: Mapping[str, int]) -> tuple[Checked, ...]:
    """Each order with its bags; `leaves` of paper by its number, 0 where it has none."""
    return tuple(_checked(order, leaves.get(order.number, 0)) for order in run.orders)


def _checked(order: Order, leaves: int) -> Checked:
    packed = tuple(
        Packed(part.kits.told, part.count, bags_of(part.kits), bool(part.kits.only), asked_of(part.kits))
        for part in order.parts
    )
    return Checked(order.number, order.due, packed, leaves, bool(order.gift_note))


def check(orders: Sequence[Checked]) -> Sheet:
    """A row for each part of an order; of its sheets, note and date the first tells."""
    rows: list[tuple[Cell, ...]] = []
    for order in orders:
        rest: tuple[Cell, ...] = (order.sheets, "yes" if order.note else "no", order.due)
        for line, one in enumerate(order.packed, 1):
            rows.append((order.number, line, f"{one.count} × {one.kit}", DOT.join(one.bags), *rest))
            rest = (None, None, None)
    return Sheet("check", CHECK, tuple(rows))
