"""A class's pots, each summed and rounded once, given out to its tables: what stands on all of them is the pot."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact, shared_out
from sheetgen.base.interval import GRAIN
from sheetgen.kits.colours import dealt
from sheetgen.kits.kit_lines import lines_of, mixed_together, pot_of
from sheetgen.model.amounts import at_once

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.kits.colours import Allotted
    from sheetgen.kits.taken import Kits, Taken

TENTHS = 10  # of a gram or millilitre: what a scale or syringe of the bench shows
Pots = dict[str, Fraction]
"""By the item's name in stock, in its unit."""


def poured(kinds: Sequence[Kits], taken: Sequence[Taken], groups: Sequence[Sequence[Kits]]) -> list[Pots]:
    """What stands of each pot where each group of sets is made: the last may be without any.

    Of what is counted each group has what its seats take, and what is to spare goes by largest remainder; of the rest
    each has its share, by a scale or ruler. All together are the pot.
    """
    nets = _nets(kinds, groups)
    found: list[Pots] = [{} for _ in groups]
    for one in taken:
        if one.way != "pot" or _filling(kinds, one):
            continue
        weights = [net.get(one.item.id, Fraction(0)) for net in nets]
        for pot, much in zip(found, _parts(one, weights), strict=True):
            pot[one.item.id] = much
    return found


def _filling(kinds: Sequence[Kits], one: Taken) -> bool:
    """Whether it fills the firing box, and stands by the kiln."""
    lines = (line for kits in kinds for line in kits.version.materials)
    return any(line.filling and line.item.id == one.item.id for line in lines)


def _parts(one: Taken, weights: Sequence[Fraction]) -> list[Fraction]:
    """A pot by weights."""
    if one.item.unit == "piece":
        own = [ceil(weight - Fraction(GRAIN)) for weight in weights]
        over = int(one.need) - sum(own)
        if over >= 0:
            return [Fraction(a + b) for a, b in zip(own, shared_out(over, weights), strict=True)]
    step = Fraction(1, TENTHS) if one.item.unit in {"g", "mL"} else Fraction(1)
    return [step * many for many in shared_out(int(one.need / step), weights)]


def _nets(kinds: Sequence[Kits], groups: Sequence[Sequence[Kits]]) -> list[Pots]:
    """What each group's sets take before it is rounded; of what is counted, without what is to spare."""
    found: list[Pots] = [{} for _ in groups]
    for kits in kinds:
        mates = mixed_together(kits, kinds)
        if mates and mates[0] is kits:
            for net, hand in zip(found, _dealt(mates, groups), strict=True):
                for name, many in hand:
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


def _dealt(mates: Sequence[Kits], groups: Sequence[Sequence[Kits]]) -> list[Allotted]:
    """The stones of a mix on the seats of each group."""
    mixed = {id(one) for one in mates}
    hands = [sum(one.colourway.seats for one in group if one.colourway and id(one) in mixed) for group in groups]
    return dealt(pot_of(mates), hands)
