"""What is used of an item, bought in packs or cut from spools, as money reckons with it."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact, plain
from sheetgen.base.material import Sheet
from sheetgen.kits.cutting import Spool
from sheetgen.kits.material import Supply
from sheetgen.kits.packs import Buying, to_buy

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.supply import Pack
    from sheetgen.kits.bought import Got
    from sheetgen.kits.cutting import CuttingPlan

Today = tuple[Fraction, Decimal] | None
"""What so much of an item costs today; None where a price is not known."""


def supply(got: Got, used: Fraction, point: str = ".") -> Supply:
    """What a run buys of an item, and what is used of it: as much as is needed, or less where some comes back.

    A pack that is begun is not given out sealed, nor is a sheet reckoned with that is: it does not go first.
    """
    item, taken = got.taken.item, got.taken
    offered, have = item.supply.packs, got.have
    if got.plan is not None:
        cut = from_cutting(item.name, got.plan, [Spool(pack.holds, pack.price) for pack in offered], point)
        whole = Buying(got.needed, got.have, got.packs)  # with the spools of a least number that stay whole
        return replace(
            cut,
            used=used,
            drawer=min(used, cut.drawer),
            bought=whole.told("mm", point),
            holds=whole.holds,
            cost=whole.cost,
        )
    if taken.pack is not None:
        offered, have = (taken.pack,), have // taken.pack.holds * taken.pack.holds
    elif isinstance(item, Sheet) and item.long and item.wide and taken.way == "blanks":
        have = have // exact(item.long * item.wide) * exact(item.long * item.wide)
    unit = "" if got.unit == "piece" else got.unit
    return from_packs(item.name, unit, Buying(used, have, got.packs), offered, point)


def from_packs(label: str, unit: str, buying: Buying, packs: Sequence[Pack], point: str = ".") -> Supply:
    """All that is needed is used up. The drawer goes first, at the price that this run pays, or would."""
    drawer = min(buying.need, buying.have)
    like = buying if buying.packs or not packs else to_buy(drawer, 0, packs)
    today = None if like.cost is None or not like.holds else (like.holds, like.cost)
    return Supply(label, unit, buying.need, drawer, buying.told(unit, point), buying.holds, buying.cost, today)


def from_cutting(label: str, plan: CuttingPlan, spools: Sequence[Spool], point: str = ".") -> Supply:
    """Of every length that is opened all is used up but the end that is kept: pieces, cuts and what is too short."""
    gone = [(cut, cut.length - (cut.left if cut.kept else 0)) for cut in plan.cuts]
    used = sum((long for _, long in gone), Fraction(0))
    drawer = sum((long for cut, long in gone if cut.bought is None), Fraction(0))
    bought = " + ".join(
        f"{many} × {plain(spool.length, point)} mm"
        for spool in spools
        if (many := sum(cut.bought == spool for cut in plan.cuts))
    )
    today: Today = None
    if plan.cost is not None and plan.bought:
        today = (plan.bought, plan.cost)
    elif plan.cost is not None:
        each = [(spool.length, spool.price) for spool in spools if spool.price is not None]
        today = min(each, key=lambda one: Fraction(one[1]) / one[0], default=None)
    return Supply(label, "mm", used, drawer, bought, plan.bought, plan.cost, today)
