"""Pieces out of spools and kept ends: the cheapest plan, then the most length kept, then the fewest opened.

A cut is lost after each piece but the last that ends the stock: Σ (piece + cut) ≤ length + cut. What is left is
max(0, length − Σ (piece + cut)), and is kept from `keep` on. A kept end costs nothing. Lengths are exact, in mm.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import lcm
from typing import TYPE_CHECKING

from sheetgen.base.exact import plain
from sheetgen.base.trouble import CannotBe
from sheetgen.kits.cut_plan import lightest
from sheetgen.kits.cut_stock import Stock
from sheetgen.kits.packs import common_step

if TYPE_CHECKING:
    from collections.abc import Sequence


@dataclass(frozen=True, slots=True)
class Wanted:
    """So many pieces of one length, and whose they are."""

    length: Fraction
    many: int
    label: str = ""


@dataclass(frozen=True, slots=True)
class Spool:
    """A length that is sold, and its price if it is known."""

    length: Fraction
    price: Decimal | None = None


@dataclass(frozen=True, slots=True)
class Cut:
    """One length of stock: bought, or an end that was kept; its pieces with their labels, the longest first."""

    length: Fraction
    bought: Spool | None
    pieces: tuple[tuple[Fraction, str], ...]
    left: Fraction
    kept: bool


@dataclass(frozen=True, slots=True)
class CuttingPlan:
    """Every length that is opened, kept ends first, and every end that stays in the drawer untouched.

    `cost` is None where a price is not known: then the plan buys the least length. `least` is what no plan does
    without: in money, in mm where a price is not known. With one length of spool, `least_spools` says it in spools.
    """

    cuts: tuple[Cut, ...]
    untouched: tuple[Fraction, ...]
    cost: Decimal | None
    least: Fraction
    best: bool
    least_spools: int | None

    @property
    def spools(self) -> tuple[Cut, ...]:
        """What is bought."""
        return tuple(cut for cut in self.cuts if cut.bought)

    @property
    def bought(self) -> Fraction:
        """The length of all spools that are bought."""
        return sum((cut.length for cut in self.spools), Fraction(0))

    @property
    def ends(self) -> tuple[Fraction, ...]:
        """The ends that lie in the drawer afterwards, the longest first."""
        return tuple(sorted([*self.untouched, *(cut.left for cut in self.cuts if cut.kept)], reverse=True))

    def told(self, currency: str = "", point: str = ".") -> str:
        """How many spools, and where it is not proved that this is best, what no plan does with less than."""
        if self.best:
            return f"{len(self.spools)}"
        if self.least_spools is not None:
            return f"{len(self.spools)}; no plan does with under {self.least_spools}"
        if self.cost is None:
            found, least, unit = plain(self.bought, point), plain(self.least, point), "mm"
        else:
            found, least, unit = plain(self.cost, point), plain(self.least, point), currency
        return f"{found} {unit}; no plan does with under {least} {unit}".replace(" ;", ";").rstrip()


def cutting_plan(
    wanted: Sequence[Wanted],
    spools: Sequence[Spool],
    ends: Sequence[Fraction] = (),
    cut: Fraction = Fraction(0),
    keep: Fraction | None = None,
) -> CuttingPlan:
    """The best plan that was found; `best` where no plan costs less. Ends from `keep` on are kept; None: none are.

    Proved up to 10 lengths and 60 pieces, and wherever the bound is met. CannotBe for what cannot be cut, at its field.
    """
    _check(wanted, spools, ends, cut, keep)
    labels: dict[Fraction, list[str]] = {}
    for one in sorted(wanted, key=lambda one: -one.length):
        if one.many:
            labels.setdefault(one.length, []).extend([one.label] * one.many)
    for each in labels.values():
        each.reverse()  # they are dealt from the end
    lengths = list(labels)
    kept_ends = Counter(sorted(ends, reverse=True))
    known = all(spool.price is not None for spool in spools)
    offered = sorted(dict.fromkeys(spools), key=lambda spool: (-spool.length, spool.price or 0))
    prices = [Fraction(spool.price or 0) if known else spool.length for spool in offered]
    coin = common_step(prices) if prices else Fraction(1)
    fine = lcm(*(x.denominator for x in (*lengths, *ends, *(one.length for one in offered), cut, keep or Fraction(0))))
    stock = Stock(
        tuple(int((length + cut) * fine) for length in lengths),
        tuple(map(len, labels.values())),
        tuple(int((spool.length + cut) * fine) for spool in offered),
        tuple(int(price / coin) for price in prices),
        tuple(int((end + cut) * fine) for end in kept_ends),
        tuple(kept_ends.values()),
        int(cut * fine),
        None if keep is None else int(keep * fine),
    )
    plan = lightest(stock)
    if plan is None:
        told = "these pieces do not come out of what there is"
        raise CannotBe(told, help="a spool to buy, as long as the longest piece", field="packs")
    cuts = []
    for room, of_each in plan.bars:
        bought = offered[room] if room < len(offered) else None
        length = bought.length if bought else list(kept_ends)[room - len(offered)]
        pieces = [(lengths[i], labels[lengths[i]].pop()) for i, n in sorted(of_each) for _ in range(n)]
        left = max(Fraction(0), length - sum((one + cut for one, _ in pieces), Fraction(0)))
        cuts.append(Cut(length, bought, tuple(pieces), left, keep is not None and left >= keep and left > 0))
    cuts.sort(key=lambda made: (made.bought is not None, -made.length, [-length for length, _ in made.pieces]))
    untouched = kept_ends - Counter(made.length for made in cuts if made.bought is None)
    cost = sum((made.bought.price or Decimal(0) for made in cuts if made.bought), Decimal(0))
    single = -(-plan.bound // stock.prices[0]) if len(offered) == 1 else None
    return CuttingPlan(
        tuple(cuts), tuple(untouched.elements()), cost if known else None, plan.bound * coin, plan.best, single
    )


def _check(
    wanted: Sequence[Wanted], spools: Sequence[Spool], ends: Sequence[Fraction], cut: Fraction, keep: Fraction | None
) -> None:
    """Refuse what cannot be cut, at the field to mend."""
    if cut < 0:
        raise CannotBe(f"a cut of {plain(cut)} mm", help="0 or more", field="saw cut")
    for spool in spools:
        if spool.length <= 0:
            raise CannotBe(f"a spool of {plain(spool.length)} mm", help="more than 0", field="packs")
        if spool.price is not None and spool.price <= 0:
            raise CannotBe(f"a spool cannot cost {spool.price}", help="its price, or none if unknown", field="price")
    if any(end <= 0 for end in ends):
        raise CannotBe("an end of no length", help="more than 0, or leave it out", field="have")
    longest = max([*(spool.length for spool in spools), *ends], default=Fraction(0))
    if keep is not None and not 0 <= keep <= max((spool.length for spool in spools), default=keep):
        told = f"ends kept from {plain(keep)} mm on, of spools of {plain(longest)} mm"
        raise CannotBe(told, help="0 or more, and no longer than a spool", field="keep ends from")
    for one in wanted:
        if one.many < 0 or one.length <= 0:
            told = f"{one.many} pieces of {plain(one.length)} mm"
            raise CannotBe(told, help="a length and a number", field="many" if one.many < 0 else "length")
        if one.many and one.length > longest:
            whose = f" of {one.label}" if one.label else ""
            told = f"{plain(one.length)} mm{whose} is longer than any length there is ({plain(longest)} mm)"
            raise CannotBe(told, help=f"a spool of {plain(one.length)} mm or more, or a shorter piece", field="length")
