"""The lists of a run, and what a terminal says of them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import counted
from sheetgen.kits.bought import bought
from sheetgen.kits.buy_list import shopping
from sheetgen.kits.cut_list import cuttings
from sheetgen.kits.lists import in_order
from sheetgen.kits.run import taken
from sheetgen.kits.run_lists import Lists

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.trouble import Trouble
    from sheetgen.kits.check_list import Checked
    from sheetgen.kits.money import Coin
    from sheetgen.kits.taken import Kits


def lists_of(
    run: Sequence[Kits], coin: Coin, checked: Sequence[Checked] = ()
) -> tuple[Lists, list[str], list[Trouble]]:
    """All lists; a summary in lines; a trouble for each item that what is wanted does not come out of."""
    got, troubles = bought(in_order(taken(run)))
    lists = Lists(tuple(run), tuple(got), cuttings(got), shopping(got, coin), tuple(checked))
    told = [f"{kits.bags} × {kits.told}" for kits in run]
    for one in got:
        if one.plan is not None and not one.plan.best:
            told.append(f"{one.taken.item.name}: {one.plan.told(coin.currency, coin.point)}")
        if one.why:
            told.append(f"{one.taken.item.name}: not reckoned ({one.why})")
    unknown = sum(not one.known for one in got)
    without = f", without {counted(unknown, 'item')}" if unknown else ""
    items = sum(bool(one.packs) for one in got)
    sum_ = coin.told(lists.shopping.total.amount or 0)
    told.append(f"to buy: {items} of {counted(len(got), 'item')}, {sum_} with delivery{without}")
    return lists, told, troubles
