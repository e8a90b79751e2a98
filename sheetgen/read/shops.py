"""Shops of the studio: the least order, what delivery costs, and from which order on it is free."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from sheetgen.base.supply import Shop
from sheetgen.read.money import money

if TYPE_CHECKING:
    from sheetgen.base.place import Word
    from sheetgen.model.studio import WrittenShop
    from sheetgen.read.measures import Measures

Shops = Mapping[str, Shop] | None
"""By their names; None where the studio's file is in trouble, so that no item is in trouble for it too."""


def read_shops(written: Mapping[Word, WrittenShop], measures: Measures) -> dict[str, Shop]:
    """Every shop of the studio's file; what is wrong with one is noted."""
    return {str(name): _shop(name, shop, measures) for name, shop in written.items()}


def _shop(name: Word, written: WrittenShop, measures: Measures) -> Shop:
    words = {"a least order": written.least_order, "delivery": written.delivery, "free from": written.free_from}
    least, delivery, free = (money(word, what, measures) if word is not None else None for what, word in words.items())
    where = written.free_from
    if where is not None and written.delivery is None:
        told = f"delivery of {name} is free from {where} on, and has no price"
        measures.troubles.add(
            told, where.place, "add delivery: 6 EUR, what it costs under that".replace("EUR", measures.currency)
        )
    elif where is not None and free is not None and least is not None and free <= least:
        told = f"delivery of {name} is always free: its least order is {written.least_order}"
        measures.troubles.add(told, where.place, f"more than {written.least_order}, or take free from out")
    return Shop(str(name), least, delivery, free)
