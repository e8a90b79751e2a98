"""What a material costs a run: by the share that is used up and by the packs that are bought, and what lies over."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from sheetgen.kits.money import Coin, Line


@dataclass(frozen=True, slots=True)
class Supply:
    """Of one item and in its unit: what a run uses up, and how much of it comes out of the drawer.

    `bought` says which packs or spools are bought (none: ""), which hold and cost so much together; the cost is None
    where a price is not known. `today` is what a pack holds and costs today, for what comes out of the drawer.
    """

    label: str
    unit: str
    used: Fraction
    drawer: Fraction = Fraction(0)
    bought: str = ""
    holds: Fraction = Fraction(0)
    cost: Decimal | None = Decimal(0)
    today: tuple[Fraction, Decimal] | None = None

    def __post_init__(self) -> None:
        if not 0 <= self.drawer <= self.used:
            told = "no more comes out of the drawer than is used"
            raise CannotBe(told, help="0 or more, and no more than is used", field="have")
        if self.used - self.drawer > self.holds:
            raise CannotBe(f"less {self.label} is bought than is used", help="more packs", field="packs")


@dataclass(frozen=True, slots=True)
class Priced:
    """The used share, what is bought, and how much richer the drawer is afterwards (poorer: under 0)."""

    used: Line
    bought: Line
    rest: Line


class Sets(NamedTuple):
    """Those of all sets for which something is told, where they share what is used."""

    these: int = 1
    all: int = 1


def priced(supply: Supply, coin: Coin, sets: Sets | None = None) -> Priced:
    """Three lines of one material: what these `sets` use of it, of all that is bought.

    The rest is bought less used as both are printed: they agree to the cent.
    """
    fresh, share, workings = supply.used - supply.drawer, Fraction(0), list[str]()
    unknown = (fresh > 0 and supply.cost is None) or (supply.drawer > 0 and supply.today is None)
    if fresh and supply.cost is not None:
        share += fresh / supply.holds * Fraction(supply.cost)
        workings.append(_share(fresh, supply.holds, supply.cost, supply.unit, coin))
    if supply.drawer and supply.today is not None:
        holds, price = supply.today
        share += supply.drawer / holds * Fraction(price)
        workings.append(f"{_share(supply.drawer, holds, price, supply.unit, coin)} from the drawer")
    if sets is not None and sets.these < sets.all and workings:
        share *= Fraction(sets.these, sets.all)
        workings = [f"{sets.these} ÷ {sets.all} × ({' + '.join(workings)})"]
    working = "its price is not known" if unknown else " + ".join(workings) or "none of it is used up"
    used = coin.line(supply.label, working, None if unknown else share)
    bought = coin.line(supply.label, supply.bought or "nothing to buy", supply.cost if supply.holds else Decimal(0))
    if used.amount is None or bought.amount is None:
        return Priced(used, bought, coin.line(supply.label, "its price is not known", None))
    rest = coin.line(
        supply.label,
        f"{coin.bare(bought.amount)} bought − {coin.bare(used.amount)} used",
        bought.amount - used.amount,
    )
    return Priced(used, bought, rest)


def _share(amount: Fraction, holds: Fraction, cost: Decimal, unit: str, coin: Coin) -> str:
    of = f"{coin.number(amount)} ÷ {coin.number(holds)}"
    return f"{of} {unit} × {coin.bare(cost)}" if unit else f"{of} × {coin.bare(cost)}"
