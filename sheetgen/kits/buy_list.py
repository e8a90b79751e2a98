"""The list of what is bought, by shop: needed, have, packs and their price; least order and delivery are told."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

from sheetgen.base.exact import plain
from sheetgen.formulas.price import printed
from sheetgen.kits.bought import cost_of
from sheetgen.kits.lists import number
from sheetgen.model.sheets import Sheet

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.supply import Shop
    from sheetgen.kits.bought import Got
    from sheetgen.kits.money import Coin, Line
    from sheetgen.model.sheets import Cell

BUY = ("shop", "item", "name", "unit", "needed", "have", "pack", "packs", "price", "cost", "left")
UNKNOWN = "unknown"
Row = tuple["Cell", ...]


def buy(got: Sequence[Got], coin: Coin) -> tuple[Sheet, Line]:
    """The list, and its total with delivery. Of two sizes of pack an item has two rows, its amounts on the first."""
    shops: dict[str, list[Got]] = {}
    for one in got:
        shop = one.taken.item.supply.shop
        shops.setdefault(shop.name if shop else "", []).append(one)
    rows: list[Row] = []
    lines: list[Line] = []
    for name, each in sorted(shops.items(), key=lambda one: (not one[0], one[0].casefold())):
        of_shop = [line(one, coin) for one in each]
        for one in each:
            rows += _item(name, one, coin)
        lines += of_shop
        if any(one.packs or one.why for one in each):
            shop = each[0].taken.item.supply.shop if any(one.packs for one in each) else None
            told, sent = _shop(name, shop, of_shop, coin)
            rows += told
            lines += sent
    total = coin.total(f"Total, {coin.currency}", lines)
    rows.append((None, None, _named(total, lines), None, None, None, None, None, None, total.amount, None))
    return Sheet("buy", BUY, tuple(rows)), total


def line(one: Got, coin: Coin) -> Line:
    """What an item costs; None where it is needed and has no price, or cannot be reckoned."""
    cost = sum((cost_of(pack, many) or Decimal(0) for pack, many in one.packs), Decimal(0)) if one.known else None
    working = " + ".join(f"{many} × {plain(pack.price, coin.point)}" for pack, many in one.packs if pack.price)
    return coin.line(one.taken.item.name, working, cost)


def _item(shop: str, one: Got, coin: Coin) -> Iterator[Row]:
    item = (shop, one.taken.item.id, one.taken.item.name, one.unit)
    if one.why:
        needed = number(one.needed) if one.needed else None
        yield *item, needed, number(one.have), one.why, None, None, UNKNOWN, None
        return
    amounts: tuple[Row, Row] = ((number(one.needed), number(one.have)), (number(one.left),))
    if not one.packs:
        yield *item, *amounts[0], None, 0, None, coin.least * 0, *amounts[1]
    for pack, many in one.packs:
        cost = cost_of(pack, many)
        price: Row = (UNKNOWN, UNKNOWN) if cost is None else (pack.price, printed(cost, coin.least))
        yield *item, *amounts[0], f"{plain(pack.holds)} {one.unit}", many, *price, *amounts[1]
        amounts = ((None, None), (None,))


def _shop(name: str, shop: Shop | None, lines: Sequence[Line], coin: Coin) -> tuple[list[Row], list[Line]]:
    """What a shop's part comes to, and what the studio states of it: told, and nothing more is bought for its sake."""

    def row(said: str, cost: Cell) -> Row:
        return (name, None, said, None, None, None, None, None, None, cost, None)

    whole = coin.total(f"Together at {name}" if name else "Together, no shop stated", lines)
    rows, sum_ = [row(_named(whole, lines), whole.amount)], whole.amount or Decimal(0)
    sent: list[Line] = []
    if shop is None:
        return rows, sent
    far = ", as far as prices are known" if any(one.amount is None for one in lines) else ""
    if shop.least_order is not None and sum_ < shop.least_order:
        told = f"Least order {coin.told(shop.least_order)}: {coin.told(shop.least_order - sum_)} are lacking{far}"
        rows.append(row(told, None))
    if shop.delivery is not None:
        free = shop.free_from is not None and sum_ >= shop.free_from
        told = "Delivery"
        if shop.free_from is not None:
            more = f"{coin.told(shop.free_from - sum_)} more and delivery is free{far}"
            told = f"Delivery, free from {coin.told(shop.free_from)} on" if free else f"Delivery; {more}"
        sent = [coin.line(f"Delivery by {name}", "", Decimal(0) if free else shop.delivery)]
        rows.append(row(told, sent[0].amount))
    return rows, sent


def _named(total: Line, lines: Sequence[Line]) -> str:
    """The name of a total, which says of how many items it knows no price."""
    lacking = sum(one.amount is None for one in lines)
    return f"{total.label}, without {lacking} item{'s' * (lacking > 1)}" if lacking else total.label
