"""What a theme gets of each list of a run, in the order in which a person works."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.printed import NBSP
from sheetgen.base.spelling import counted
from sheetgen.kits.buy_paper import enough, places, shops
from sheetgen.kits.cut_paper import cut_items
from sheetgen.kits.pick_paper import stations
from sheetgen.kits.taken import held_told
from sheetgen.model.lists_view import (
    BuyList,
    CheckKit,
    CheckList,
    CheckOrder,
    CutList,
    LeftList,
    ListHead,
    PickList,
)

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.kits.check_list import Checked
    from sheetgen.kits.run_lists import Lists
    from sheetgen.model.view import Html

DOES = {
    "pick": "Tick an item when it is fetched, and a row when it lies in its bags.",
    "cut": "Cut each line from its left; a box is a piece, or a spool where it says so. Tag bundles by their letters.",
    "check": "Look into every bag. Tick a box a bag, the cards, the sheets, the note; then the order.",
    "buy": "Needed for the run, less what lies in the drawer. Tick what is ordered.",
    "left": "The drawer as it should look afterwards. Count, write what is there, and copy it into stock.",
}
OF_A_CLASS = {
    "pick": "Tick an item when it is fetched, and a row when it lies where the tables have it.",
    "buy": "Needed for the class, less what lies in the drawer. Tick what is ordered.",
    "left": "The drawer afterwards, with what comes back. Count, write what is there, and copy it into stock.",
}


def on_paper(lists: Lists, bars: Sequence[Sequence[Html]]) -> Iterator[tuple[str, object]]:
    """Each list that has something on it by its name, as a theme gets it; `bars` are drawn of `lists.cuttings`."""
    heads, rounder = {name: _head(name, lists) for name in DOES}, lists.rounder
    yield "pick", PickList(heads["pick"], tuple(stations(lists, rounder)))
    if lists.cuttings:
        unit = "inches" if rounder.inches else "mm"
        yield "cut", CutList(heads["cut"], unit, tuple(cut_items(lists.cuttings, bars, rounder)))
    if lists.checked:
        yield "check", CheckList(heads["check"], tuple(map(_order, lists.checked)))
    shopping = lists.shopping
    total = shopping.coin.bare(shopping.total.amount or 0)
    yield (
        "buy",
        BuyList(
            heads["buy"], shopping.coin.currency, tuple(shops(shopping, rounder)), tuple(enough(shopping, rounder)),
            shopping.named, total,
        ),
    )  # fmt: skip
    yield "left", LeftList(heads["left"], tuple(places(lists.got, rounder)))


def _head(name: str, lists: Lists) -> ListHead:
    many = held_told(lists.run)
    does = DOES | ({} if any(one.posted for one in lists.run) else OF_A_CLASS)
    if lists.checked:
        many = f"{counted(len(lists.checked), 'order')}, {many}"
    each = tuple(f"{one.bags}{NBSP}×{NBSP}{one.told}" for one in lists.run)
    return ListHead(name.capitalize(), does[name], each, many, lists.studio.language, lists.studio.name)


def _order(one: Checked) -> CheckOrder:
    kits = tuple(CheckKit(packed.count, packed.kit, packed.bags) for packed in one.packed)
    leaves = counted(one.sheets, "sheet") if one.sheets else ""
    each = ((sum(packed.count for packed in one.packed if packed.slip is slip), slip) for slip in (False, True))
    cards = " and ".join(counted(many, "slip" if slip else "card") for many, slip in each if many)
    ask = ", ".join(dict.fromkeys(name for packed in one.packed for name in packed.ask))
    return CheckOrder(one.number, one.due.isoformat() if one.due else "", kits, cards, leaves, one.note, ask)
