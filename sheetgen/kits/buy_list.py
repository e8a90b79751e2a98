"""The list of what is bought, by shop: needed, have, packs and their price; least order and delivery are told."""

from __future__ import annotations

from dataclasses import dataclass
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


@dataclass(frozen=True, slots=True)
class Said:
    """What is told under the rows of a shop; with an amount where it costs or comes to one."""

    words: str
    amount: Decimal | None = None


@dataclass(frozen=True, slots=True)
class AtShop:
    """What is bought in one shop, each item with its line of money, and what it comes to there."""

    name: str
    items: tuple[tuple[Got, Line], ...]
    said: tuple[Said, ...]


@dataclass(frozen=True, slots=True)
class Shopping:
    """What is bought in every shop, and all of it with delivery."""

    shops: tuple[AtShop, ...]
    total: Line
    named: str
    coin: Coin


def shopping(got: Sequence[Got], coin: Coin) -> Shopping:
    """By shop in the order of their names; what no shop sells comes last."""
    each: dict[str, list[Got]] = {}
    for one in got:
        shop = one.taken.item.supply.shop
        each.setdefault(shop.name if shop else "", []).append(one)
    lines: list[Line] = []
    shops: list[AtShop] = []
    for name, there in sorted(each.items(), key=lambda one: (not one[0], one[0].casefold())):
        of_shop = [line(one, coin) for one in there]
        lines += of_shop
        said: list[Said] = []
        if any(one.packs or one.why for one in there):
            shop = there[0].taken.item.supply.shop if any(one.packs for one in there) else None
            said, sent = _shop(name, shop, of_shop, coin)
            lines += sent
        shops.append(AtShop(name, tuple(zip(there, of_shop, strict=True)), tuple(said)))
    total = coin.total(f"Total, {coin.currency}", lines)
    return Shopping(tuple(shops), total, _named(total, lines), coin)


def buy(found: Shopping) -> Sheet:
    """The list as a spreadsheet takes it. Of two sizes of pack an item has two rows, its amounts on the first."""
    rows: list[Row] = []
    for shop in found.shops:
        for one, _ in shop.items:
            rows += _item(shop.name, one, found.coin)
        rows += [_row(shop.name, said.words, said.amount) for said in shop.said]
    rows.append(_row(None, found.named, found.total.amount))
    return Sheet("buy", BUY, tuple(rows))


def _row(shop: str | None, said: str, cost: Cell) -> Row:
    return (shop, None, said, None, None, None, None, None, None, cost, None)


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


def _shop(name: str, shop: Shop | None, lines: Sequence[Line], coin: Coin) -> tuple[list[Said], list[Line]]:
    """What a shop's part comes to, and what the studio states of it: told, and nothing more is bought for its sake."""
    whole = coin.total(f"Together at {name}" if name else "Together, no shop stated", lines)
    said, sum_ = [Said(_named(whole, lines), whole.amount)], whole.amount or Decimal(0)
    sent: list[Line] = []
    if shop is None:
        return said, sent
    far = ", as far as prices are known" if any(one.amount is None for one in lines) else ""
    if shop.least_order is not None and sum_ < shop.least_order:
        lacking = coin.told(shop.least_order - sum_)
        said.append(Said(f"Least order {coin.told(shop.least_order)}: {lacking} are lacking{far}"))
    if shop.delivery is not None:
        free = shop.free_from is not None and sum_ >= shop.free_from
        told = "Delivery"
        if shop.free_from is not None:
            more = f"{coin.told(shop.free_from - sum_)} more and delivery is free{far}"
            told = f"Delivery, free from {coin.told(shop.free_from)} on" if free else f"Delivery; {more}"
        sent = [coin.line(f"Delivery by {name}", "", Decimal(0) if free else shop.delivery)]
        said.append(Said(told, sent[0].amount))
    return said, sent


def _named(total: Line, lines: Sequence[Line]) -> str:
    """The name of a total, which says of how many items it knows no price."""
    lacking = sum(one.amount is None for one in lines)
    return f"{total.label}, without {lacking} item{'s' * (lacking > 1)}" if lacking else total.label
