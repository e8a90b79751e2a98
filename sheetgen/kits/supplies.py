"""What a run takes of an item, bought in packs or cut from spools, as money reckons with it."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.exact import plain
from sheetgen.kits.material import Supply
from sheetgen.kits.packs import to_buy

if TYPE_CHECKING:
    from collections.abc import Sequence
    from decimal import Decimal

    from sheetgen.base.supply import Pack
    from sheetgen.kits.cutting import CuttingPlan, Spool
    from sheetgen.kits.packs import Buying

Today = tuple[Fraction, "Decimal"] | None
"""What so much of an item costs today; None where a price is not known."""


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
