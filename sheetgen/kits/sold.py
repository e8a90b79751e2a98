"""What one of a kind costs, and what it is sold for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.kits.costs import priced_by

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.kits.costs import Costed, Price
    from sheetgen.kits.rates import Rates
    from sheetgen.kits.taken import Kits
    from sheetgen.model.till import Till


@dataclass(frozen=True, slots=True)
class Sold:
    """What one of a kind costs, by its part of a run's lines, and its prices. `apart`: the run has other kinds too."""

    title: str
    cost: Costed
    prices: tuple[Price, ...]
    apart: bool = False


def sold_as(title: str, cost: Costed, till: Till, rates: Rates, *, apart: bool = False) -> Sold:
    """By markup and by margin, so far as they are stated; nothing is a price for what costs nothing."""
    prices = tuple(_prices(cost, till, rates)) if cost.cost.amount else ()
    return Sold(title, cost, prices, apart)


def sold_of(kind: Kits, cost: Costed, till: Till, rates: Rates, *, apart: bool) -> Sold:
    """One of a kind of a run; a part that is sent alone is not sold."""
    if kind.only:
        return Sold(f"{kind.told}: a part", cost, (), apart)
    return sold_as(f"{kind.told}: a kit", cost, till, rates, apart=apart)


def _prices(cost: Costed, till: Till, rates: Rates) -> Iterator[Price]:
    if till.markup is not None:
        yield priced_by(cost, "markup", till.markup, rates)
    if till.margin is not None:
        yield priced_by(cost, "margin", till.margin, rates)
