"""What a version takes where it is made, by one or by a class: from one pot, and what is left of it comes back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact
from sheetgen.kits.pieces import blanks, lengths
from sheetgen.kits.run import as_needed
from sheetgen.kits.taken import Taken
from sheetgen.model.amounts import amounts

if TYPE_CHECKING:
    from collections.abc import Iterator
    from fractions import Fraction

    from sheetgen.kits.bought import Got
    from sheetgen.kits.taken import Kits


@dataclass(frozen=True, slots=True)
class Made:
    """Of one item: what must be there, and what of it is used up in the pieces; the rest comes back."""

    taken: Taken
    used: Fraction

    def gone(self, got: Got) -> Fraction:
        """What of it is gone: of lengths with the cuts, and with ends that are too short to keep."""
        if got.plan is None:
            return self.used
        return min(self.used, got.needed) + got.used - got.needed


def made(makers: Kits, firings: int) -> Iterator[Made]:
    """What so many makers of a version take, item by item as it names them: `makers.bags` of them, in so many firings.

    Whatever a kit of it leaves out is taken here, and nothing is sealed. Everybody cuts from a length of their own.
    """
    for line in makers.version.materials:
        item, people = line.item, makers.bags
        told = amounts(line, makers.version.slabs, makers.rounder, people)
        if told is None:
            taken = as_needed(item, people, firings)
            yield Made(taken, taken.need if taken.exactly is None else taken.exactly)
        elif line.blanks:
            taken = blanks(item, [(makers, line)], people)
            yield Made(taken, taken.need)
        elif item.unit == "mm" and item.supply.given_out != "from the pot":
            yield Made(lengths(item, [(makers, line)], people), exact(float(told.used)))
        else:
            yield Made(Taken(item, "pot", exact(float(told.have)), bags=people), exact(float(told.used)))
