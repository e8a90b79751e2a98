"""What a run takes against what lies in the drawer: packs to buy, lengths and sheets to open, and what is left."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact, plain
from sheetgen.base.material import Sheet
from sheetgen.base.packing import pack as lay
from sheetgen.base.trouble import CannotBe, Trouble
from sheetgen.kits.cutting import Spool, cutting_plan
from sheetgen.kits.lying import spread
from sheetgen.kits.packs import to_buy

if TYPE_CHECKING:
    from collections.abc import Sequence
    from decimal import Decimal

    from sheetgen.base.supply import Pack
    from sheetgen.kits.cutting import CuttingPlan
    from sheetgen.kits.lying import Spread
    from sheetgen.kits.taken import Taken


@dataclass(frozen=True, slots=True)
class Got:
    """Of one item: what is needed, what the drawer has, what is bought, and what is left; all in `unit`.

    `why` says why it cannot be reckoned what is bought; then nothing is. `plan` is how lengths are cut, `sheets` how
    blanks lie on each sheet. `ends` are the lengths that lie in the drawer afterwards.
    """

    taken: Taken
    unit: str
    needed: Fraction
    have: Fraction
    left: Fraction
    packs: tuple[tuple[Pack, int], ...] = ()
    plan: CuttingPlan | None = None
    sheets: tuple[Spread, ...] = ()
    ends: tuple[Fraction, ...] = ()
    why: str = ""

    @property
    def bought(self) -> Fraction:
        """What all packs hold together."""
        return sum((pack.holds * many for pack, many in self.packs), Fraction(0))

    @property
    def used(self) -> Fraction:
        """What is gone from the drawer and the packs, with cuts and what is too short to keep."""
        return self.have + self.bought - self.left

    @property
    def back(self) -> Fraction:
        """What of a pot comes back into the drawer, besides what is left there."""
        pot, used = self.taken.way == "pot", self.taken.used
        return self.needed - used if pot and used is not None else Fraction(0)

    @property
    def sawn(self) -> Fraction:
        """The length that is lost in cuts, mm."""
        cuts = self.plan.cuts if self.plan else ()
        return sum((one.length - one.left - sum(length for length, _ in one.pieces) for one in cuts), Fraction(0))

    @property
    def too_short(self) -> Fraction:
        """The length of all ends that are too short to keep, mm."""
        return sum((one.left for one in self.plan.cuts if not one.kept), Fraction(0)) if self.plan else Fraction(0)

    @property
    def known(self) -> bool:
        """Whether every price is known."""
        return not self.why and all(pack.price is not None for pack, _ in self.packs)


def bought(taken: Sequence[Taken]) -> tuple[list[Got], list[Trouble]]:
    """What there is to buy of each item; a trouble, at its place in stock, where what is wanted does not come out."""
    found, troubles = [], []
    for one in taken:
        try:
            found.append(_got(one))
        except CannotBe as fault:
            troubles.append(Trouble(f"{one.item.name}: {fault.message}", one.item.place, fault.help))
    return found, troubles


def _got(taken: Taken) -> Got:
    supply = taken.item.supply
    if taken.way == "as needed" and (supply.a_pack_does is None or not supply.packs):
        return _not_reckoned(taken, "taken as needed, and stock does not say what a pack does")
    if taken.way == "cut":
        return _cut(taken)
    if taken.way == "blanks":
        return _blanks(taken)
    have, packs = taken.have, supply.packs
    if taken.pack is not None:  # a pack that is begun is not given out sealed
        have, packs = have // taken.pack.holds * taken.pack.holds, (taken.pack,)
    if taken.need > have and not packs:
        return _not_reckoned(taken, "stock names no pack")
    buying = to_buy(taken.need, have, packs)
    return Got(taken, taken.item.unit, taken.need, taken.have, taken.have + buying.holds - taken.need, buying.packs)


def _not_reckoned(taken: Taken, why: str) -> Got:
    return Got(taken, taken.item.unit, taken.need, taken.have, taken.have, why=why)


def _cut(taken: Taken) -> Got:
    """Lengths, by the best plan; of a spool of which so many must be taken, the others stay whole.

    Where stock does not say which ends are kept, those are that do for the run's shortest piece. That is common
    practice: the rest of a spool goes back into the drawer, and what nothing comes out of does not.
    """
    supply = taken.item.supply
    ends = () if taken.beside else supply.ends
    lengths = [*(pack.holds for pack in supply.packs), *ends]
    longest = max(lengths, default=Fraction(0))
    for one in taken.wanted:
        if one.length > longest and supply.packs:
            there = ", ".join(f"{plain(length)} mm" for length in sorted(set(lengths)))
            told = f"{plain(one.length)} mm, {one.label}, is longer than every length there is of it ({there})"
            raise CannotBe(told, help=f"a spool of {plain(one.length)} mm or more, or a shorter piece", field="packs")
    # A plan knows no least numbers: one without those spools may come out cheaper than one that must take too many.
    offers = dict.fromkeys((supply.packs, tuple(pack for pack in supply.packs if pack.at_least == 1)))
    found = [plan for packs in offers if (plan := _planned(taken, packs, ends)) is not None]
    known = all(one.known for one in found)
    return min(found, key=lambda one: _weight(one, known=known), default=_not_reckoned(taken, "stock names no pack"))


def of_longest(taken: Taken) -> Got | None:
    """The same pieces out of spools of the longest size alone, and the ends that lie there."""
    supply = taken.item.supply
    longest = max(supply.packs, key=lambda pack: pack.holds)
    return _planned(taken, (longest,), () if taken.beside else supply.ends)


def _weight(one: Got, *, known: bool) -> Fraction:
    """By what is chosen: the cost, or the length that is bought where a price is not known."""
    each = ((Fraction(pack.price or 0) if known else pack.holds) * many for pack, many in one.packs)
    return sum(each, Fraction(0))


def _planned(taken: Taken, offered: Sequence[Pack], ends: tuple[Fraction, ...]) -> Got | None:
    """The pieces out of these spools and ends; None where they do not come out of them."""
    supply, spools = taken.item.supply, {Spool(pack.holds, pack.price): pack for pack in offered}
    shortest = min([*(one.length for one in taken.wanted), *(spool.length for spool in spools)])
    keep = shortest if supply.keep_from is None else supply.keep_from
    longest = max([*ends, *(spool.length for spool in spools)], default=Fraction(0))
    if any(one.length > longest for one in taken.wanted) or (spools and keep > max(one.length for one in spools)):
        return None
    try:
        plan = cutting_plan(taken.wanted, list(spools), ends, supply.saw_cut, keep)
    except CannotBe:
        if offered:
            raise
        return None  # the ends are not enough, and there is nothing to buy
    packs, untouched = [], list[Fraction]()
    for spool, pack in spools.items():
        if many := sum(cut.bought == spool for cut in plan.cuts):
            packs.append((pack, max(many, pack.at_least)))
            untouched += [pack.holds] * (pack.at_least - many)
    left = tuple(sorted([*plan.ends, *untouched], reverse=True))
    return Got(taken, "mm", taken.need, sum(ends, Fraction(0)), sum(left, Fraction(0)), tuple(packs), plan, ends=left)


def _blanks(taken: Taken) -> Got:
    """Whole sheets, by laying the blanks out on them; a sheet that is begun in the drawer is not reckoned with."""
    item, supply = taken.item, taken.item.supply
    if not isinstance(item, Sheet) or item.long is None or item.wide is None or not supply.packs:
        return _not_reckoned(taken, "the sides of a sheet are not in stock")
    cut, sides = float(supply.saw_cut), (item.long, item.wide)
    each = [one for one in taken.blanks for _ in range(one.many)]
    try:
        pieces = [(float(one.long) + cut, float(one.wide) + cut) for one in each]
        pages = lay(pieces, (sides[0] + cut, sides[1] + cut), turn=True)
    except ValueError:
        largest = max(each, key=lambda one: max(one.long, one.wide))
        told = f"a blank of {largest.sides} for {largest.label} is larger than a sheet, {sides[0]:g} × {sides[1]:g} mm"
        raise CannotBe(told, help="a larger sheet, or a smaller piece", field="long") from None
    whole = exact(sides[0]), exact(sides[1])
    sheets = tuple(spread(((each[one.piece], one) for one in page), whole, supply.saw_cut) for page in pages)
    area = exact(sides[0] * sides[1])
    need = len(sheets) * area
    of_it = tuple(pack for pack in supply.packs if pack.holds % area == 0) or supply.packs
    buying = to_buy(need, taken.have // area * area, of_it)
    left = taken.have + buying.holds - need
    return Got(taken, item.unit, need, taken.have, left, buying.packs, sheets=sheets)


def cost_of(pack: Pack, many: int) -> Decimal | None:
    """What so many packs cost; None where the price is not known."""
    return None if pack.price is None else pack.price * many
