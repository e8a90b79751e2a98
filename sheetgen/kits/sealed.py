"""What is given out in whole packs, unopened: in which pack, for all bags of a run, and what each bag holds of it."""

from __future__ import annotations

from fractions import Fraction
from itertools import islice, product
from math import prod
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact
from sheetgen.kits.kit_lines import lines_of
from sheetgen.kits.spares import sealed
from sheetgen.kits.taken import Held, Taken
from sheetgen.model.amounts import amounts, at_once

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.material import Item
    from sheetgen.base.supply import Pack
    from sheetgen.kits.taken import Kits
    from sheetgen.model.worked import MaterialLine

    Lines = Sequence[tuple[Kits, MaterialLine]]

MOST_WAYS = 32


def in_best_packs(item: Item, lines: Lines, bags: int) -> Taken:
    """Of one size for all bags: the one by which the run costs least, or where a price lacks takes least.

    Least numbers are for what is bought, and so is what they cost.
    """

    def weight(one: Taken) -> tuple[Fraction, Fraction]:
        pack = one.pack
        if pack is None or pack.price is None or not known:
            return one.need, one.need
        return max(one.need / pack.holds, Fraction(pack.at_least)) * Fraction(pack.price), one.need

    known = all(pack.price is not None for pack in item.supply.packs)
    return min((_in_packs(item, lines, bags, pack) for pack in item.supply.packs), key=weight)


def in_each_pack(kits: Kits, run: Sequence[Taken]) -> list[tuple[Taken, ...]]:
    """What one kit by itself takes, its `run`; then the same with what is sealed in whatever packs there are of it.

    A run gives out one size to all its kits, so that a kit may hold another than by itself. Of very many ways only
    those are given in which one thing comes otherwise.
    """
    each = [list(_ways(kits, one)) for one in run]
    if prod(map(len, each)) <= MOST_WAYS:
        return list(product(*each))
    alone = tuple(one[0] for one in each)
    others = ((*alone[:at], way, *alone[at + 1 :]) for at, ways in enumerate(each) for way in ways[1:])
    return [alone, *islice(others, MOST_WAYS)]


def _ways(kits: Kits, one: Taken) -> Iterator[Taken]:
    """It as it is; then, where it is sealed, in every other pack of which a bag holds another amount."""
    yield one
    known = {one.need}
    lines = [
        (kits, line) for line in lines_of(kits, (kits,)) if line.item.id == one.item.id and line.net and not line.blanks
    ]
    for pack in one.item.supply.packs if one.way == "sealed" else ():
        other = _in_packs(one.item, lines, one.bags, pack)
        if other.need not in known:
            known.add(other.need)
            yield other


def _in_packs(item: Item, lines: Lines, bags: int, pack: Pack) -> Taken:
    """Of each kind of bag so many of a pack as it needs."""
    held = []
    for kits, line in lines:
        least = exact(max(line.least * (1 + line.allowance), at_once(kits.version.slabs, item.name)))
        net, share = exact(line.net.high if line.net else 0.0), exact(line.allowance)
        one = sealed(net, share, pack.holds, least, kits.rounder.point)
        used = amounts(line, kits.version.slabs, kits.rounder)
        net = min(exact(float(used.used)) if used else Fraction(0), one.amount)
        held.append(Held(kits, one.amount, one.amount - net, item.unit, why=one.why))
    need = sum((one.together for one in held), Fraction(0))
    return Taken(item, "sealed", need, tuple(held), pack=pack, bags=bags)
