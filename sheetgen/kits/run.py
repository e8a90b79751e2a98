"""A run of kits: what each kind of bag holds of each item, and what all bags together take of it.

A bag is rounded up once, by itself, as its card prints it, and together is the sum of the bags. A pot is summed first
and rounded once. Amounts are exact, in the item's unit.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact
from sheetgen.base.interval import GRAIN
from sheetgen.base.rounding import up_for_buying
from sheetgen.kits.bag import bag
from sheetgen.kits.kit_lines import lines_of
from sheetgen.kits.pieces import blanks, lengths
from sheetgen.kits.sealed import in_best_packs
from sheetgen.kits.taken import Kits, Taken
from sheetgen.model.amounts import at_once

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.base.material import Item
    from sheetgen.kits.taken import Held
    from sheetgen.model.worked import MaterialLine


def taken(run: Sequence[Kits]) -> tuple[Taken, ...]:
    """What a run takes of each item, in the order in which its versions name them; nothing of what is left out."""
    lines: dict[str, list[tuple[Kits, MaterialLine]]] = {}
    for kits in run:
        for line in lines_of(kits, run):
            lines.setdefault(line.item.id, []).append((kits, line))
    return tuple(one for each in lines.values() for one in _of_item(each))


def _of_item(lines: Sequence[tuple[Kits, MaterialLine]]) -> Iterator[Taken]:
    """Of one item some kits may take blanks, some an amount and some what they need: each is told."""
    whole = [(kits, line) for kits, line in lines if line.blanks]
    amount = [(kits, line) for kits, line in lines if line.net is not None and not line.blanks]
    loose = [(kits, line) for kits, line in lines if line.net is None]
    if whole:
        yield blanks(whole[0][1].item, whole, sum(kits.bags for kits, _ in whole))
    if amount:
        yield replace(_by_amount(amount), beside=bool(whole))
    if loose:
        bags, firings = (sum(getattr(kits, many) for kits, _ in loose) for many in ("bags", "firings"))
        yield replace(as_needed(loose[0][1].item, bags, firings), beside=bool(whole or amount))


def _by_amount(lines: Sequence[tuple[Kits, MaterialLine]]) -> Taken:
    item = lines[0][1].item
    bags = sum(kits.bags for kits, _ in lines)
    given = item.supply.given_out
    poured = given == "from the pot" and not all(kits.posted for kits, _ in lines)
    if poured or any(line.filling for _, line in lines):
        return Taken(item, "pot", _pot(item, lines), bags=bags)
    if given == "sealed" and item.supply.packs:
        return in_best_packs(item, lines, bags)
    if item.unit == "mm":
        return lengths(item, lines, bags)
    held = tuple(bag(kits, line) for kits, line in lines)
    return Taken(item, "bags", _together(held), held, bags=bags)


def _pot(item: Item, lines: Sequence[tuple[Kits, MaterialLine]]) -> Fraction:
    """Summed first, then rounded once; one filling of a firing box serves all."""
    hands = [
        (max(line.needed, at_once(kits.version.slabs, item.name)) * (1 if line.filling else kits.bags), line.filling)
        for kits, line in lines
    ]
    whole = sum(n for n, filling in hands if not filling) + max((n for n, filling in hands if filling), default=0.0)
    if item.unit != "piece":
        return exact(float(up_for_buying(whole)))
    net = ceil(sum(line.net.high * kits.bags for kits, line in lines if line.net) - GRAIN)
    spares = item.supply.spares.of(net) if item.supply.spares else 0
    return Fraction(max(ceil(whole - GRAIN), net + spares))


def as_needed(item: Item, makers: int, firings: int) -> Taken:
    """By what a pack does, one person to a kit, in so many firings. Nothing where stock does not say."""
    does, packs = item.supply.a_pack_does, item.supply.packs
    if does is None or not packs:
        return Taken(item, "as needed", Fraction(0), bags=makers)
    need = Fraction(firings if does.of == "firings" else makers, does.many) * packs[0].holds
    rounded = Fraction(ceil(need)) if item.unit in {"piece", "mm"} else exact(float(up_for_buying(float(need))))
    return Taken(item, "as needed", rounded, bags=makers, exactly=need)


def _together(held: Iterable[Held]) -> Fraction:
    return sum((one.together for one in held), Fraction(0))
