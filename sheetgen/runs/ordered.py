"""A run of orders: each order of its lines, whole or held back, in the order in which they are packed."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.spelling import in_turn
from sheetgen.kits.ordered import Order, Part, Run

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.kits.taken import Kits
    from sheetgen.model.orders import OrderLine, Orders
    from sheetgen.runs.kinds import Key, Kinds


def run_of(orders: Orders, kinds: Kinds) -> tuple[Run, tuple[str, ...]]:
    """The orders that can be packed, and the numbers of those held back: a parcel that lacks a part is no order.

    By due date, those without one last, and then by number.
    """
    keys = [(line, kinds.key(line)) for line in orders.lines]
    for line in orders.asked:
        kinds.key(line)  # it is held back: only what is wrong with it is wanted
    held = {str(line.order) for line, key in keys if key is None} | orders.lacking
    by_number: dict[str, list[tuple[OrderLine, Key]]] = {}
    many: Counter[Key] = Counter()
    for line, key in keys:
        if key is not None and line.order not in held:
            by_number.setdefault(str(line.order), []).append((line, key))
            many[key] += line.count
    counted = {key: replace(kits, bags=many[key]) for key, kits in kinds.found.items() if many[key]}
    packed = [_order(number, each, counted) for number, each in by_number.items()]
    packed.sort(key=lambda order: (order.due or dt.date.max, in_turn(order.number)))
    return Run(tuple(packed), tuple(sorted(counted.values(), key=_on_lists))), tuple(sorted(held, key=in_turn))


def _on_lists(kits: Kits) -> tuple[object, ...]:
    """Where a kind stands on every list: by design and version, as a person counts; whole kits before single parts.

    Items stand so too (`kits/lists.py`): plugs of US 5 to US 9 lie in the order of the bags that they go into.
    """
    way = kits.colourway.name if kits.colourway else ""
    return kits.design, bool(kits.only), in_turn(kits.version.title), kits.choices, way, kits.told


def _order(number: str, lines: Sequence[tuple[OrderLine, Key]], kinds: dict[Key, Kits]) -> Order:
    """An order of its lines: two of one kind are one part."""
    many: Counter[Key] = Counter()
    for line, key in lines:
        many[key] += line.count
    notes = dict.fromkeys(line.gift_note for line, _ in lines if line.gift_note)
    due = min((line.due for line, _ in lines if line.due), default=None)
    return Order(number, lines[0][0].name, "\n".join(notes), due, tuple(Part(kinds[key], n) for key, n in many.items()))
