"""A tool as a list names it: up to its first comma, with the sizes of it that are wanted."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.material import Tool
from sheetgen.base.printed import NBSP
from sheetgen.model.numbers import whole_cards

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.material import Item
    from sheetgen.base.rounding import Rounder


def tool_told(item: Item, sizes: Sequence[float], rounder: Rounder) -> str:
    """Its name and sizes: Slats: 3 and 5 cards; Ring former: US 8½ (17.5 mm)."""
    name = item.name.partition(",")[0]
    if isinstance(item, Tool) and len(sizes) == 1:
        name = item.singular or name
    if isinstance(item, Tool) and item.kind == "slat" and sizes and all(map(whole_cards, sizes)):
        return f"{name}: {_listed([str(whole_cards(size)) for size in sizes])}{NBSP}cards"
    own = [item.engraved_as(size) if isinstance(item, Tool) else "" for size in sizes]
    told = [rounder.length(size) for size in sizes]
    units = {said.partition(" ")[2] or one.unit for said, one in zip(own, told, strict=True)}
    if units <= {one.unit for one in told} and told:
        return f"{name}: {_listed([one.words for one in told])}{NBSP}{told[0].unit}"
    each = [_engraved(said, one.told, rounder) for said, one in zip(own, told, strict=True)]
    return f"{name}: {_listed(each)}" if each else name


def _engraved(own: str, told: str, rounder: Rounder) -> str:
    """A size of a tool as it is engraved, and in the studio's unit where that is another."""
    number, _, unit = own.partition(" ")
    if not unit or told.endswith(f"{NBSP}{unit}"):
        return told
    return f"{number.replace('.', rounder.point)}{NBSP}{unit} ({told})"


def _listed(each: list[str]) -> str:
    return " and ".join([", ".join(each[:-1]), each[-1]] if len(each) > 1 else each)
