"""A class's pots, each summed and rounded once, given out to its tables: what stands on all of them is the pot."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.exact import exact, shared_out
from sheetgen.base.interval import GRAIN
from sheetgen.kits.colours import Colourway, dealt, in_a_bag
from sheetgen.kits.kit_lines import lines_of, mixed_together, pot_of
from sheetgen.model.amounts import at_once

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.material import Item
    from sheetgen.kits.colours import Allotted
    from sheetgen.kits.taken import Kits, Taken

TENTHS = 10  # of a gram or millilitre: what a scale or syringe of the bench shows
Pots = dict[str, Fraction]
"""By the item's name in stock, in its unit."""


class Part(NamedTuple):
    """What stands of a pot somewhere, and how much of that, of what is counted, is to spare."""

    much: Fraction
    spare: Fraction


def poured(
    kinds: Sequence[Kits], pots: Sequence[Taken], groups: Sequence[Sequence[Kits]]
) -> list[dict[str, tuple[Taken, Part]]]:
    """What stands of each pot where each group of sets is made, by the item's name in stock; a group may have none.

    Each has what its sets take, up to what a scale or ruler shows, and what is over goes by largest remainder. All
    together are the pot.
    """
    nets = _nets(kinds, groups)
    found: list[dict[str, tuple[Taken, Part]]] = [{} for _ in groups]
    for one in pots:
        weights = [net.get(one.item.id, Fraction(0)) for net in nets]
        for group, part in zip(found, _parts(one, weights), strict=True):
            if part.much:
                group[one.item.id] = one, part
    return found


def colours_of_each(kinds: Sequence[Kits], groups: Sequence[Sequence[Kits]]) -> list[list[Allotted]]:
    """How many of each colour go on the seats of each set of each group; nothing for a design in one colour.

    What is counted is counted for each piece; of a mix each has what falls to him of the pot.
    """
    found = [[_alone(kits) for kits in group] for group in groups]
    for kits in kinds:
        mates = mixed_together(kits, kinds)
        if mates and mates[0] is kits:
            mixed = {id(one) for one in mates}
            for own, hands, group in zip(found, in_hands(mates, groups), groups, strict=True):
                own[:] = [hand if id(one) in mixed else old for old, hand, one in zip(own, hands, group, strict=True)]
    return found


def colours_of(kits: Kits) -> dict[str, Item]:
    """Every colour in which a set may come, the design's own too, by its name in stock."""
    ways = [*kits.version.colourways, *filter(None, (kits.colourway,))]
    return {item.id: item for way in ways for item in (way.of, *way.items)}


def _alone(kits: Kits) -> Allotted:
    """What one set has of each colour, no other beside it; its own on all seats where it comes in others too."""
    if kits.colourway:
        return in_a_bag(Colourway(kits.colourway.by, kits.colourway.colours), kits.colourway.seats)
    return ((way.of.id, way.seats),) if (way := next(iter(kits.version.colourways), None)) else ()


def _parts(one: Taken, weights: Sequence[Fraction]) -> list[Part]:
    """A pot by weights."""
    if not any(weights):
        return [Part(Fraction(0), Fraction(0)) for _ in weights]
    counted = one.item.unit == "piece"
    step = Fraction(1, TENTHS) if one.item.unit in {"g", "mL"} else Fraction(1)
    whole = int(one.need / step)
    own = [ceil(weight / step - Fraction(GRAIN)) for weight in weights]
    over = whole - sum(own)
    if over < 0:  # less is over in all than each has by being rounded up
        own, over = shared_out(whole, weights), 0
        while not all(own[at] for at, weight in enumerate(weights) if weight):  # nobody who takes some has none
            step, whole = step / TENTHS, int(one.need / step * TENTHS)
            own = shared_out(whole, weights)
    more = shared_out(over, weights)
    parts = [Part(step * (a + b), Fraction(b if counted else 0)) for a, b in zip(own, more, strict=True)]
    # a pot in inches is no whole number of millimetres: its rest stands with the first that has some of it
    first = next(i for i, weight in enumerate(weights) if weight)
    parts[first] = parts[first]._replace(much=parts[first].much + one.need - step * whole)
    return parts


def _nets(kinds: Sequence[Kits], groups: Sequence[Sequence[Kits]]) -> list[Pots]:
    """What each group's sets take before it is rounded; of what is counted, without what is to spare."""
    found: list[Pots] = [{} for _ in groups]
    for kits in kinds:
        mates = mixed_together(kits, kinds)
        if mates and mates[0] is kits:
            for net, hands in zip(found, in_hands(mates, groups), strict=True):
                for name, many in (one for hand in hands for one in hand):
                    net[name] = net.get(name, Fraction(0)) + many
        for line in lines_of(replace(kits, colourway=None) if mates else kits, kinds):
            item, way = line.item, kits.colourway
            if line.net is None or (mates and way and item.id == way.of.id):
                continue
            counted = item.unit == "piece"
            each = exact(line.net.high if counted else max(line.needed, at_once(kits.version.slabs, item.name)))
            for net, group in zip(found, groups, strict=True):
                net[item.id] = net.get(item.id, Fraction(0)) + each * sum(one is kits for one in group)
    return found


def in_hands(mates: Sequence[Kits], groups: Sequence[Sequence[Kits]]) -> list[list[Allotted]]:
    """The stones of a mix on the seats of each set of each group; none on those of a set that is not of the mix.

    The pot is dealt once, group by group, so that a group has what its sets have. One set may so have a stone more of a
    colour than it would have by itself.
    """
    mixed = {id(one) for one in mates}
    seats = [[one.colourway.seats if one.colourway and id(one) in mixed else 0 for one in group] for group in groups]
    hands = iter(dealt(pot_of(mates), [many for group in seats for many in group]))
    return [[next(hands) for _ in group] for group in groups]
