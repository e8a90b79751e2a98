"""One bag of one kind, as its card prints it: what it holds of an item, what of that is to spare, and why."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact
from sheetgen.kits.spares import counted, weighed
from sheetgen.kits.taken import Held
from sheetgen.model.amounts import amounts, at_once

if TYPE_CHECKING:
    from sheetgen.kits.taken import Kits
    from sheetgen.model.worked import MaterialLine


def bag(kits: Kits, line: MaterialLine) -> Held:
    """What a card prints: of what is counted with its spares, else what to have."""
    told = amounts(line, kits.version.slabs, kits.rounder)
    net, have = (exact(float(told.used)), exact(float(told.have))) if told else (Fraction(0), Fraction(0))
    allowance, point = exact(line.allowance), kits.rounder.point
    if line.item.unit == "piece":
        filled = counted(int(net), allowance, line.item.supply.spares, point)
        return Held(kits, filled.amount, filled.spare, "piece", why=filled.why)
    slab = exact(at_once(kits.version.slabs, line.item.name))
    worked = exact(line.net.high) if line.net else net
    return Held(kits, have, have - net, line.item.unit, why=weighed(worked, allowance, slab, point).why)
