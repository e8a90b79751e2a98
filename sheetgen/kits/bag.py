"""One bag of one kind, as its card prints it: what it holds of an item, what of that is to spare, and why."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact, plain
from sheetgen.base.rounding import INCH
from sheetgen.kits.spares import counted, weighed
from sheetgen.kits.taken import Held
from sheetgen.model.amounts import amounts, at_once

if TYPE_CHECKING:
    from sheetgen.base.rounding import Rounder
    from sheetgen.kits.taken import Kits
    from sheetgen.model.worked import MaterialLine

PLACES = 2


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
    why = weighed(worked, allowance, slab, point).why
    if worked * (1 + allowance) > slab and net * (1 + allowance) != have:
        rounded_apart = weighed(net, allowance, slab, point).amount != have
        why += f" on {_before_rounding(worked, line.item.unit, kits.rounder)}" if rounded_apart else ""
        why += ", rounded up"
    return Held(kits, have, have - net, line.item.unit, why=why)


def _before_rounding(worked: Fraction, unit: str, rounder: Rounder) -> str:
    """What the share is taken of, for who follows it with a pencil: what is printed of it is rounded already."""
    if unit == "mm" and rounder.inches:
        return rounder.decimal(float(worked) / INCH, PLACES)
    return plain(worked, rounder.point, PLACES)
