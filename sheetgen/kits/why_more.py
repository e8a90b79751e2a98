"""Why more is bought than is needed: a least number, whole packs, lengths that pieces do not fill, or the price."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING

from sheetgen.kits.bought import cost_of, of_longest
from sheetgen.kits.told import amount

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

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
            yield _lengths(got, rounder)
        break
    else:
        if got.plan is None and (other := _less(got, lacking)) is not None:
            named = " + ".join(_told(pack, many, got.unit, rounder) for pack, many in got.packs)
            yield f"{named} costs no more than {_told(*other, got.unit, rounder)}"


def _lengths(got: Got, rounder: Rounder) -> str:
    """Of lengths why there are so many: no fewer do, or fewer cost more.

    What comes out of so many spools comes out of as many of the longest: no other size can do with fewer.
    """
    longest = max(got.taken.item.supply.packs, key=lambda pack: pack.holds)
    none = "the pieces do not come out of fewer lengths"
    many = sum(many for _, many in got.packs)
    if all(pack == longest for pack, _ in got.packs):
        return none
    other = of_longest(got.taken)
    fewer = sum(n for _, n in other.packs) if other else many
    if fewer >= many:
        return none
    told, (cost, theirs) = _told(longest, fewer, got.unit, rounder), map(_cost, (got.packs, ((longest, fewer),)))
    if cost is None or theirs is None:
        return f"less length than {told}"
    return f"cheaper than {told}" if cost < theirs else f"costs no more than {told}"


def _cost(packs: Iterable[tuple[Pack, int]]) -> Decimal | None:
    each = [cost_of(*one) for one in packs]
    return None if None in each else sum(filter(None, each), Decimal(0))


def _less(got: Got, lacking: Fraction) -> tuple[Pack, int] | None:
    """Packs of one size that would do and hold less; None where there are none, or nobody knows what they cost."""
    each = ((pack, max(ceil(lacking / pack.holds), pack.at_least)) for pack in got.taken.item.supply.packs)
    smaller = [
        (pack, many) for pack, many in each if pack.holds * many < got.bought and cost_of(pack, many) is not None
    ]
    return min(smaller, key=lambda one: Fraction(cost_of(*one) or 0), default=None) if got.known else None


def _told(pack: Pack, many: int, unit: str, rounder: Rounder) -> str:
    return f"{many} × {amount(pack.holds, unit, rounder)}"
