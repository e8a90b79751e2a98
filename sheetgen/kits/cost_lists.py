"""A costing told: lines for a terminal, in two columns, and lists for a spreadsheet."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.exact import percent
from sheetgen.base.spelling import counted
from sheetgen.model.sheets import Sheet

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.kits.costing import Costing
    from sheetgen.kits.costs import Price
    from sheetgen.kits.money import Coin, Line
    from sheetgen.kits.sold import Sold
    from sheetgen.model.sheets import Cell

COLUMNS = ("line", "working", "amount", "currency")
UNKNOWN = "unknown"
AMOUNT, MARGIN = 12, 4  # letters of a column of a terminal, and between
Row = tuple["Cell", ...]


def sheets(costing: Costing) -> list[Sheet]:
    """By the used share, by packs bought, what lies in the drawer for the difference, and what is asked for it."""
    coin = costing.coin
    drawer = [*(one.rest for one in costing.materials), costing.rest]
    found = [
        _sheet("used", [*costing.used.lines, costing.used.cost], coin),
        _sheet("bought", [*costing.bought.lines, costing.bought.cost], coin),
        _sheet("drawer", drawer, coin),
    ]
    priced = [row for sold in costing.sold for row in _price_rows(sold, coin)]
    if priced:
        found.append(Sheet("price", COLUMNS, tuple(priced)))
    if costing.fee is not None:
        fee = costing.fee
        rows = [*_rows([*fee.lines, *fee.left], coin), (f"The class {fee.told}", None, None, None)]
        found.append(Sheet("fee", COLUMNS, tuple(rows)))
    return found


def _sheet(name: str, lines: Sequence[Line], coin: Coin) -> Sheet:
    return Sheet(name, COLUMNS, tuple(_rows(lines, coin)))


def _rows(lines: Sequence[Line], coin: Coin) -> list[Row]:
    return [
        (line.label, line.working or None, UNKNOWN if line.amount is None else line.amount, coin.currency)
        for line in lines
    ]


def _price_rows(sold: Sold, coin: Coin) -> Iterator[Row]:
    if not (sold.prices or sold.apart):
        return
    yield sold.title, None, None, None
    yield from _rows(_own(sold), coin)
    for price in sold.prices:
        yield from _rows(_shown(price), coin)
        yield from ((what, working, share, None) for what, working, share in _comes_to(price, coin))


def _own(sold: Sold) -> list[Line]:
    """A kind's own lines, where its run has others."""
    return [*sold.cost.lines, sold.cost.cost] if sold.apart else []


def _shown(price: Price) -> Sequence[Line]:
    """Its lines; where there is no tax, without all that is said of it."""
    by, tax, _, tag = price.lines[:4]
    return price.lines if tax.amount else (by, tag)


def _comes_to(price: Price, coin: Coin) -> Iterator[tuple[str, str, str]]:
    """What the price on its step comes to."""
    yield "Markup it comes to", price.markup_working, percent(price.markup, coin.point)
    yield "Margin it comes to", price.margin_working, percent(price.margin, coin.point)


def told(costing: Costing) -> Iterator[str]:
    """Every line with its working; both amounts stand beside each other."""
    coin = costing.coin
    page = _Page(coin, max(len(line.label) for line in (*costing.used.lines, costing.used.cost)) + MARGIN)
    yield f"{costing.title}, in {coin.currency}"
    yield page.row("", ("used share", "bought"), "")
    for used, bought in zip(costing.used.lines, costing.bought.lines, strict=True):
        working = used.working if used.working == bought.working else f"{used.working}; bought: {bought.working}"
        yield page.row(used.label, (page.amount(used), page.amount(bought)), working)
    lacking = sum(line.amount is None for line in costing.used.lines)
    without = f", without {counted(lacking, 'item')}" if lacking else ""
    totals = (page.amount(costing.used.cost), page.amount(costing.bought.cost))
    yield page.row(f"Cost{without}", totals, "the sum of the lines above")
    for sold in costing.sold:
        yield from _sold(sold, page)
    yield from _fee(costing, page)
    yield from _drawer(costing, page)
    if lacking:
        told = counted(lacking, "item")
        yield f"note: {told} of which no price is known: what is worked from the cost is without {told} too"
    yield from (f"note: {note}" for note in costing.notes)


@dataclass(frozen=True, slots=True)
class _Page:
    """The columns of a terminal: names so many letters wide."""

    coin: Coin
    wide: int

    def row(self, name: str, amounts: Sequence[str], working: str) -> str:
        """A name, its amounts to the right of their columns, and how they were worked."""
        shown = "".join(f"{amount:>{AMOUNT}}" for amount in amounts)
        return f"{name:<{self.wide}}{shown}{'':{MARGIN}}{working}".rstrip()

    def line(self, line: Line) -> str:
        """A line of one amount, under a title."""
        return self.row(f"  {line.label}", (self.amount(line),), line.working)

    def amount(self, line: Line) -> str:
        """As it is printed."""
        return UNKNOWN if line.amount is None else self.coin.bare(line.amount)


def _sold(sold: Sold, page: _Page) -> Iterator[str]:
    if not (sold.prices or sold.apart):
        return
    coin, whole = page.coin, sold.cost.cost.amount or 0
    yield ""
    yield f"{sold.title}, by the used share{', its part of the run' if sold.apart else ''}"
    if sold.apart:
        yield from map(page.line, sold.cost.lines)
        yield page.row(f"  Cost of {sold.cost.pieces}", (coin.bare(whole),), "the sum of the lines above")
    if sold.cost.pieces > 1:
        told = f"{coin.bare(whole)} ÷ {sold.cost.pieces}, and not rounded in what follows"
        yield page.row("  Cost of one", (coin.bare(sold.cost.each),), told)
    for price in sold.prices:
        yield from map(page.line, _shown(price))
        for what, working, share in _comes_to(price, coin):
            yield page.row(f"  {what}", (share,), working)


def _fee(costing: Costing, page: _Page) -> Iterator[str]:
    if costing.fee is None:
        return
    yield ""
    yield "The fee, against the cost by the used share"
    yield from map(page.line, (*costing.fee.lines, *costing.fee.left))
    yield f"  The class {costing.fee.told}"


def _drawer(costing: Costing, page: _Page) -> Iterator[str]:
    rest = costing.rest.amount or page.coin.least * 0
    yield ""
    worth = f"{page.coin.told(abs(rest))} {'less' if rest < 0 else 'more'} than before"
    yield f"What then lies in the drawer is worth {worth}, bought less used:"
    yield from (page.line(one.rest) for one in costing.materials if one.rest.amount != 0)
