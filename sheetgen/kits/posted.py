"""A run of kits packed and wrapped, and what each kind of kit in it costs by its part of the run."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.exact import exact, plain
from sheetgen.base.spelling import begun
from sheetgen.facts.units import MINUTES_PER_HOUR
from sheetgen.kits.costs import Task, costed
from sheetgen.kits.kit_lines import lines_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.material import Item
    from sheetgen.kits.bought import Got
    from sheetgen.kits.costs import Costed
    from sheetgen.kits.material import Priced
    from sheetgen.kits.money import Coin, Line
    from sheetgen.kits.rates import Rates
    from sheetgen.kits.taken import Kits, Taken
    from sheetgen.model.till import Till


def wrapping(till: Till | None, coin: Coin, run: Sequence[Kits], of: int) -> list[Line]:
    """What these kits are wrapped in, of a run of so many: what is for the run, by their part of it.

    With a part that is sent alone goes no sheet, and none is paid for.
    """
    if till is None:
        return []
    kits, with_sheets = sum(one.bags for one in run), sum(one.bags for one in run if not one.only)
    each = [
        coin.line(begun(name), f"{many} × {coin.bare(price)}", many * price)
        for many, prices in ((kits, till.wrapping_a_kit), (with_sheets, till.wrapping_with_sheets))
        for name, price in prices
        if many
    ]
    part = f"{kits} ÷ {of} × " if kits < of else "1 × "
    return each + [
        coin.line(f"{begun(name)}, the run", f"{part}{coin.bare(price)}", Fraction(price) * kits / of)
        for name, price in till.wrapping_a_run
    ]


def packing(till: Till | None, rates: Rates, kits: int, of: int) -> list[Task | Line]:
    """The work of packing them, likewise."""
    if till is None:
        return []
    a_run = till.packing_a_run
    found: list[Task | Line] = [Task("Packing, a kit", till.packing_a_kit, kits)]
    if kits == of:
        return [*found, Task("Packing, the run", a_run)]
    if a_run:
        hour, coin = exact(MINUTES_PER_HOUR), rates.coin
        told = f"{kits} ÷ {of} × {coin.number(a_run)} min ÷ {coin.number(hour)} × {coin.bare(rates.hour)}"
        found.append(coin.line("Packing, the run", told, a_run / hour * Fraction(rates.hour) * kits / of))
    return found


def each_kind(
    run: Sequence[Kits], got: Sequence[Got], materials: Sequence[Priced], till: Till | None, rates: Rates
) -> Iterator[tuple[Kits, Costed]]:
    """Each kind of a run with the cost of its kits, by the used share: its part of each line of the run."""
    of = sum(kits.bags for kits in run)
    for kits in run:
        lines = []
        for one, line in zip(got, materials, strict=True):
            weights = [_weight(one.taken, other, run) for other in run]
            part, whole = _weight(one.taken, kits, run), sum(weights, Fraction(0))
            if part:
                lines.append(_part(line.used, part, whole, rates.coin))
        yield (
            kits,
            costed(
                rates,
                kits.bags,
                materials=lines,
                wrapping=wrapping(till, rates.coin, [kits], of),
                labour=packing(till, rates, kits.bags, of),
                loads=0,
            ),
        )


def _part(line: Line, part: Fraction, whole: Fraction, coin: Coin) -> Line:
    """A part of a line that is printed."""
    if line.amount is None:
        return line
    if part == whole:
        return coin.line(line.label, "all of it", line.amount)
    told = f"{plain(part, coin.point)} ÷ {plain(whole, coin.point)} of {coin.bare(line.amount)}"
    return coin.line(line.label, told, Fraction(line.amount) * part / whole)


def _weight(taken: Taken, kits: Kits, run: Sequence[Kits]) -> Fraction:
    """How much of an item goes to a kind: what its bags hold; where that is told by pieces, or in no bag, its need."""
    if taken.held and all(held.unit == taken.item.unit for held in taken.held):
        return sum((held.together for held in taken.held if held.kits is kits), Fraction(0))
    return sum(_needs(taken.item, kits, run), Fraction(0))


def _needs(item: Item, kits: Kits, run: Sequence[Kits]) -> Iterator[Fraction]:
    """Of what these kits take: nothing of what an order leaves out, or of what is in no bag of theirs."""
    for line in lines_of(kits, run):
        if line.item.id != item.id:
            continue
        if line.net is not None:
            yield exact(line.needed) * kits.bags
        else:
            does = item.supply.a_pack_does
            yield Fraction(kits.firings if does is not None and does.of == "firings" else kits.bags)
