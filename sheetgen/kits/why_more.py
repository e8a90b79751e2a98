"""Why more is bought than is needed: a least number, whole packs, lengths that pieces do not fill, or the price."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING

from sheetgen.kits.bought import cost_of
from sheetgen.kits.told import amount

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.rounding import Rounder
    from sheetgen.base.supply import Pack
    from sheetgen.kits.bought import Got


def why_more(got: Got, rounder: Rounder) -> str:
    """In a few words; nothing where fewer packs would not hold what is needed, and no other size holds less."""
    return "; ".join(_reasons(got, rounder)) if got.packs and not got.why else ""


def _reasons(got: Got, rounder: Rounder) -> Iterator[str]:
    sealed, have = got.taken.pack, got.have
    if sealed is not None:
        have = have // sealed.holds * sealed.holds
        if ceil(sum((one.each - one.spare) * one.kits.bags for one in got.taken.held) / sealed.holds) < (
            got.taken.need / sealed.holds
        ):
            yield "a sealed pack or more for each kit"
    lacking = got.needed - have
    for pack, many in got.packs:
        if got.bought - pack.holds < lacking:
            continue
        if many == pack.at_least > 1:
            yield f"fewer than {many} are not sold"
        elif got.plan is not None:
            yield "the pieces do not come out of fewer lengths"
        break
    else:
        if got.plan is None and (other := _less(got, lacking)) is not None:
            named = " + ".join(_told(pack, many, got.unit, rounder) for pack, many in got.packs)
            yield f"{named} costs no more than {_told(*other, got.unit, rounder)}"


def _less(got: Got, lacking: Fraction) -> tuple[Pack, int] | None:
    """Packs of one size that would do and hold less; None where there are none, or nobody knows what they cost."""
    each = ((pack, max(ceil(lacking / pack.holds), pack.at_least)) for pack in got.taken.item.supply.packs)
    smaller = [
        (pack, many) for pack, many in each if pack.holds * many < got.bought and cost_of(pack, many) is not None
    ]
    return min(smaller, key=lambda one: Fraction(cost_of(*one) or 0), default=None) if got.known else None


def _told(pack: Pack, many: int, unit: str, rounder: Rounder) -> str:
    return f"{many} × {amount(pack.holds, unit, rounder)}"
