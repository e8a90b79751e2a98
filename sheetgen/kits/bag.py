"""One bag of one kind, as its card prints it: what it holds of an item, and what of that is to spare."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact
from sheetgen.kits.spares import counted
from sheetgen.kits.taken import Held
from sheetgen.model.amounts import amounts

if TYPE_CHECKING:
    from sheetgen.kits.taken import Kits
    from sheetgen.model.worked import MaterialLine


def bag(kits: Kits, line: MaterialLine) -> Held:
    """What a card prints: of what is counted with its spares, else what to have."""
    told = amounts(line, kits.slabs, kits.rounder)
    net, have = (exact(float(told.used)), exact(float(told.have))) if told else (Fraction(0), Fraction(0))
    if line.item.unit == "piece":
        have = counted(int(net), exact(line.allowance), line.item.supply.spares).amount
    return Held(kits, have, have - net, line.item.unit)
