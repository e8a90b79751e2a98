"""What a material comes to in print: what is used up of it, what to have, and what comes back."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.interval import GRAIN, ceil
from sheetgen.base.material import Adhesive, Clay
from sheetgen.base.printed import NBSP, Printed
from sheetgen.model.in_print import Amounts, in_print, rounded

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sheetgen.base.rounding import Rounder
    from sheetgen.model.drawing import SlabLayout
    from sheetgen.model.worked import MaterialLine


class Taker(NamedTuple):
    """So many people who all take the same line from a pot, on the slabs that are drawn of their version."""

    line: MaterialLine
    slabs: Sequence[SlabLayout]
    people: int


def amounts(line: MaterialLine, slabs: Sequence[SlabLayout], rounder: Rounder, people: int = 1) -> Amounts | None:
    """Of what one version takes, on the slabs that are drawn of it; None for what is taken as needed.

    For several `people` it is one pot.
    """
    if line.net is None:
        return None
    if line.blanks:
        return _blanks(line, rounder, people)
    return in_pot([Taker(line, slabs, people)], rounder)


def in_pot(takers: Sequence[Taker], rounder: Rounder) -> Amounts:
    """Of one item, which all take by amount and from one pot: each number is summed first and then rounded once.

    All roll at the same time, so that everybody's slab is there. One filling of a firing box serves them all.
    """
    used = _summed((_used(one.line), one) for one in takers)
    have = _summed((max(one.line.needed, _slab(one.line, one.slabs)), one) for one in takers)
    return rounded(used, max(have, _with_spares(takers[0].line, used)), takers[0].line.item.unit, rounder)


def _summed(each: Iterable[tuple[float, Taker]]) -> float:
    """What all take together, if one of them takes so much."""
    own, fillings = 0.0, [0.0]
    for amount, taker in each:
        if taker.line.filling:
            fillings.append(amount)
        else:
            own += amount * taker.people
    return own + max(fillings)


def in_bags(line: MaterialLine, slabs: Sequence[SlabLayout], rounder: Rounder, bags: int) -> Amounts | None:
    """In so many bags, each packed by itself: a bag is rounded as its card prints it, and the total is their sum."""
    one = amounts(line, slabs, rounder)
    if one is None or line.blanks or line.filling:
        return amounts(line, slabs, rounder, bags)
    return in_print(one.used * bags, one.have * bags, line.item.unit, rounder)


def worked(line: MaterialLine, slabs: Sequence[SlabLayout]) -> str:
    """How what to have is worked: of sheet by its blanks, of clay by its largest slab where that takes more.

    Of what is counted by those to spare, where they are more than the allowance.
    """
    if line.blanks:
        return " + ".join(f"{n} × ({long:.6g} × {wide:.6g})" for n, long, wide in line.blanks)
    if by_slab(line, slabs):
        return f"max({line.working}, {_slab(line, slabs):.6g})"
    spares, used = line.item.supply.spares, ceil(_used(line))
    if spares is not None and _with_spares(line, used) > line.needed:
        return f"{used} + {spares.many} × up({used} ÷ {spares.per})"
    return line.working


def by_slab(line: MaterialLine, slabs: Sequence[SlabLayout]) -> bool:
    """Whether the largest slab decides what to have of it."""
    return line.net is not None and _slab(line, slabs) > line.needed + GRAIN


def at_once(slabs: Sequence[SlabLayout], clay: str) -> float:
    """The most clay, g, that rolling a clay's slabs as they are drawn takes: each, and what the earlier ones kept."""
    masses, kept = [0.0], 0.0
    for layout in slabs:
        if layout.clay == clay and layout.used:
            areas = [wide * long for wide, long in layout.used]
            masses.append(kept + layout.rolled * max(areas) / sum(areas))
            kept += layout.cut
    return max(masses)


def _slab(line: MaterialLine, slabs: Sequence[SlabLayout]) -> float:
    return at_once(slabs, line.item.name) if isinstance(line.item, Clay) else 0.0


def _with_spares(line: MaterialLine, used: float) -> float:
    """Of what is counted so many with those to spare, as stock says; of all else nothing."""
    spares = line.item.supply.spares
    return ceil(used) + spares.of(ceil(used)) if spares is not None and used else 0


def _used(line: MaterialLine) -> float:
    """What is used up before it is rounded, by common practice.

    Clay: what the pieces weigh wet, for offcuts are gathered and go back into the wrap; what dries and sticks of them
    is not told apart. Wire, cord, and sheet by the area: what is cut off for the pieces, trims too; the allowance is
    left of the length, and whether its end is worth keeping is for the cutting plan. Liquids, and what is taken by the
    gram: what the steps take. Stones, beads, findings: as many as there are seats and places, at their most; spare
    ones go back. Adhesive: all of the mix at its most, with what stays on card and stick; what is to spare stays in
    its tubes. Where the line says what is `spent`: of metal for a casting the pieces, for sprue and button are melted
    again; of the filling of a firing box nothing, for it is used again and topped up.
    """
    spent = line.net if line.spent is None else line.spent
    if spent is None:
        return 0.0
    return spent.high if line.item.unit == "piece" or isinstance(line.item, Adhesive) else spent.usual


def _blanks(line: MaterialLine, rounder: Rounder, people: int) -> Amounts:
    """Of sheet that is cut into blanks: each is used whole, for what falls off round its piece is scrap to melt."""
    sides = [(n * people, _side(long, rounder), _side(wide, rounder)) for n, long, wide in line.blanks]
    unit = rounder.unit("mm")
    told = [f"{n} of {long.words} × {wide.words}" for n, long, wide in sides]
    whole = Printed(sum(n * long * wide for n, long, wide in sides), f"{NBSP}{unit}, ".join(told), unit)
    return Amounts(whole, whole, Printed(0, "0", rounder.unit("mm²")))


def _side(mm: float, rounder: Rounder) -> Printed:
    return rounder.length(mm, "bench up")
