"""What is bought, and what is left, for a theme: amounts in the studio's units, money with its sign."""

from __future__ import annotations

from collections import Counter
from functools import partial
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact
from sheetgen.base.material import Sheet
from sheetgen.base.printed import NBSP
from sheetgen.kits.buy_list import UNKNOWN
from sheetgen.kits.lists import DOT, REST, STATIONS, begun_sheets, station
from sheetgen.kits.told import amount, bare_length, sides
from sheetgen.kits.why_more import why_more
from sheetgen.model.lists_view import BuyItem, BuyShop, LeftItem, LeftPlace

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence
    from fractions import Fraction

    from sheetgen.base.rounding import Rounder
    from sheetgen.base.supply import Pack
    from sheetgen.kits.bought import Got
    from sheetgen.kits.buy_list import Shopping
    from sheetgen.kits.money import Coin, Line


SEVERAL = 2  # ends from which each is told; of one the amount says it


def shops(shopping: Shopping, rounder: Rounder) -> Iterator[BuyShop]:
    """Where something is bought; what the drawer has enough of is told apart."""
    for shop in shopping.shops:
        items = tuple(_item(one, line, shopping.coin, rounder) for one, line in shop.items if not _enough(one))
        if items:
            said = tuple((one.words, "" if one.amount is None else shopping.coin.bare(one.amount)) for one in shop.said)
            yield BuyShop(shop.name, items, said)


def enough(shopping: Shopping, rounder: Rounder) -> Iterator[BuyItem]:
    """What the drawer has enough of."""
    for shop in shopping.shops:
        yield from (_item(one, line, shopping.coin, rounder) for one, line in shop.items if _enough(one))


def _enough(one: Got) -> bool:
    return not one.packs and not one.why


def _item(one: Got, line: Line, coin: Coin, rounder: Rounder) -> BuyItem:
    def told(value: Fraction) -> str:
        return amount(value, one.unit, rounder)

    name, cost = one.taken.item.name, UNKNOWN if line.amount is None else coin.bare(line.amount)
    if one.why:
        return BuyItem(name, told(one.needed) if one.needed else "", told(one.have), (one.why,), (), cost, "")
    packs = tuple(f"{many} × {_pack(one, pack, rounder)}" for pack, many in one.packs)
    prices = tuple(_price(pack, coin) for pack, _ in one.packs)
    return BuyItem(
        name, told(one.needed), told(one.have), packs, prices, cost, told(one.left), why_more(one, rounder),
        _lost(one, rounder),
    )  # fmt: skip


def _pack(one: Got, pack: Pack, rounder: Rounder) -> str:
    """What a pack holds; of one sheet its sides, by which it is ordered."""
    item = one.taken.item
    if isinstance(item, Sheet) and item.long and item.wide and exact(item.long * item.wide) == pack.holds:
        return sides((exact(item.long), exact(item.wide)), rounder)
    return amount(pack.holds, one.unit, rounder)


def _lost(one: Got, rounder: Rounder) -> tuple[str, ...]:
    """What of lengths is used up besides the pieces, so that what is left follows from what is printed."""
    each = (("and cuts", one.sawn), ("and short ends", one.too_short))
    return tuple(f"{what} {amount(mm, 'mm', rounder)}" for what, mm in each if mm)


def _price(pack: Pack, coin: Coin) -> str:
    return UNKNOWN if pack.price is None else coin.bare(pack.price)


def places(got: Sequence[Got], rounder: Rounder) -> Iterator[LeftPlace]:
    """The drawer as it should look, place by place."""
    for name in (*(name for name, _ in STATIONS), REST):
        items = tuple(_left(one, rounder) for one in got if station(one.taken.item) == name)
        if items:
            yield LeftPlace(name, items)


def _left(one: Got, rounder: Rounder) -> LeftItem:
    before, bought, used, left = (
        amount(value, one.unit, rounder) for value in (one.have, one.bought, one.used - one.back, one.left + one.back)
    )
    if one.why:
        return LeftItem(one.taken.item.name, before, "", "", "", "")
    lost = tuple(said.replace("and", "with", 1) for said in _lost(one, rounder))
    there = begun_sheets(one, partial(sides, rounder=rounder)) or _ends(one.ends, rounder)
    if one.back:
        there = f"{amount(one.back, one.unit, rounder)} come back"
    return LeftItem(one.taken.item.name, before, bought, used, left, there, lost)


def _ends(ends: Iterable[Fraction], rounder: Rounder) -> str:
    """The ends that lie there where they are several; those of one length are said once."""
    each = Counter(bare_length(end, rounder) for end in ends)
    if each.total() < SEVERAL:
        return ""
    return f"{DOT.join(f'{n} × {said}' if n > 1 else said for said, n in each.items())}{NBSP}{rounder.unit('mm')}"
