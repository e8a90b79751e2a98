"""A run of kits: what each kind of bag holds of each item, and what all bags together take of it.

What is posted lies in bags: a bag is rounded up once, by itself, as its card prints it, and together is the sum of the
bags. Where nothing is posted, in a class or for one who makes a piece, everything but cut lengths and blanks is one
pot, however stock says that it is given out: summed first, as the teacher's sheet sums it, and rounded once. The lists
of a class, its tables, its cost and its teacher's sheets all take what is said here. Amounts are exact, in the item's
unit.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact
from sheetgen.kits.bag import bag
from sheetgen.kits.kit_lines import lines_of
from sheetgen.kits.pieces import blanks, lengths
from sheetgen.kits.sealed import in_best_packs
from sheetgen.kits.taken import Kits, Taken
from sheetgen.model.amounts import Taker, in_pot

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
    if any(line.filling for _, line in lines) or not any(kits.posted for kits, _ in lines):
        return _from_pot(item, lines, bags)
    if item.supply.given_out == "sealed" and item.supply.packs:
        return in_best_packs(item, lines, bags)
    if item.unit == "mm":
        return lengths(item, lines, bags)
    held = tuple(bag(kits, line) for kits, line in lines)
    return Taken(item, "bags", _together(held), held, bags=bags)


def _from_pot(item: Item, lines: Sequence[tuple[Kits, MaterialLine]], bags: int) -> Taken:
    """One pot for all, some of which may come back; of a length everybody cuts from one of his own, if it is cut.

    What is left of such a piece is an end in somebody's hands, and no list takes it back.
    """
    if item.unit == "mm" and item.supply.given_out != "from the pot":
        return lengths(item, lines, bags)
    pot = in_pot([Taker(line, kits.version.slabs, kits.bags) for kits, line in lines], lines[0][0].rounder)
    return Taken(item, "pot", exact(float(pot.have)), bags=bags, used=exact(float(pot.used)))


def as_needed(item: Item, makers: int, firings: int) -> Taken:
    """By what a pack does, one person to a kit, in so many firings: not rounded, for what is begun lies in the drawer.

    Nothing where stock does not say.
    """
    does, packs = item.supply.a_pack_does, item.supply.packs
    if does is None or not packs:
        return Taken(item, "as needed", Fraction(0), bags=makers)
    need = Fraction(firings if does.of == "firings" else makers, does.many) * packs[0].holds
    return Taken(item, "as needed", need, bags=makers)


def _together(held: Iterable[Held]) -> Fraction:
    return sum((one.together for one in held), Fraction(0))
