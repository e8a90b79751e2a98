"""The lists of a run without orders, and what a terminal says of them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import counted
from sheetgen.kits import lists
from sheetgen.kits.bought import bought
from sheetgen.kits.buy_list import buy
from sheetgen.kits.run import taken

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.trouble import Trouble
    from sheetgen.kits.money import Coin
    from sheetgen.kits.taken import Kits
    from sheetgen.model.sheets import Sheet


def lists_of(run: Sequence[Kits], coin: Coin) -> tuple[list[Sheet], list[str], list[Trouble]]:
    """Pick, cut, buy and left; a summary in lines; a trouble for each item that what is wanted does not come out of."""
    needs = taken(run)
    got, troubles = bought(needs)
    to_buy, total = buy(got, coin)
    told = [f"{kits.bags} × {kits.named}" for kits in run]
    for one in got:
        if one.plan is not None and not one.plan.best:
            told.append(f"{one.taken.item.name}: {one.plan.told(coin.currency, coin.point)}")
        if one.why:
            told.append(f"{one.taken.item.name}: not reckoned ({one.why})")
    unknown = sum(not one.known for one in got)
    without = f", without {counted(unknown, 'item')}" if unknown else ""
    items = sum(bool(one.packs) for one in got)
    told.append(
        f"to buy: {items} of {counted(len(got), 'item')}, {coin.told(total.amount or 0)} with delivery{without}"
    )
    return [lists.pick(needs), lists.cut(got), to_buy, lists.left(got)], told, troubles
