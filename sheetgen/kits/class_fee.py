"""The fee of a class, held against what the class costs: with every number of people, or with those on its list."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.exact import percent
from sheetgen.kits.costing import Fee
from sheetgen.kits.money import known
from sheetgen.kits.pays import ClassCost, pays

if TYPE_CHECKING:
    from collections.abc import Mapping
    from decimal import Decimal

    from sheetgen.kits.class_run import ClassRun
    from sheetgen.kits.rates import Rates
    from sheetgen.model.till import Part


class Once(NamedTuple):
    """What a class costs however many come: teaching, room, the teacher's piece."""

    teaching: Decimal
    room: Decimal
    piece: Decimal


class Spares(NamedTuple):
    """What all spare sets cost, and how many there are with 1, 2, … people."""

    cost: Decimal
    many: tuple[int, ...]


def fee_by_heads(  # noqa: PLR0913, PLR0917 - all that a fee is held against
    fee: Decimal, heads: Decimal, once: Once, spares: Spares, loads: tuple[int, ...], rates: Rates
) -> Fee:
    """What is left of a fee with every number of people. A head costs its part of what the materials cost all."""
    coin, people, a_load = rates.coin, len(loads), rates.load
    a_head, head_over = _over("materials", rates)
    fixed, fixed_over = _over("labour", rates)
    load, load_over = _over("firing", rates)
    told = [f"{coin.bare(once.teaching)}{fixed_over}", coin.bare(once.room)]
    told += [f"{coin.bare(once.piece)}{head_over}"] if once.piece else []
    lines = [
        coin.line(
            "Once, however many come",
            " + ".join(told),
            Fraction(once.teaching) * fixed + Fraction(once.room) + Fraction(once.piece) * a_head,
        ),
        coin.line(f"All {people} heads", f"{coin.bare(heads)}{head_over}", Fraction(heads) * a_head),
        coin.line("For each load", f"{coin.bare(a_load)}{load_over}", Fraction(a_load) * load),
    ]
    if spares.cost:
        each = f" ÷ {spares.many[-1]}" if spares.many[-1] > 1 else ""
        whole = Fraction(spares.cost) * a_head / spares.many[-1]
        lines.append(coin.line("For each spare set", f"{coin.bare(spares.cost)}{head_over}{each}", whole))
    amounts = [line.amount or coin.least * 0 for line in lines]
    lines.append(coin.line("Fee", "as the till has it", fee))
    if rates.tax:
        working = f"{coin.bare(fee)} ÷ (1 + {percent(rates.tax, coin.point)})"
        lines.append(coin.line("Fee without its tax", working, Fraction(fee) / (1 + rates.tax)))
    a_spare = amounts[3] if spares.cost else coin.least * 0
    a_head_costs, said = Fraction(amounts[1]) / people, f"{coin.bare(amounts[1])} ÷ {people}"
    cost = ClassCost(amounts[0], a_head_costs, amounts[2], loads, said, a_spare, spares.many if spares.cost else ())
    net = lines[-1].amount or coin.least * 0
    left = tuple(
        coin.line(
            f"Left with {n}", f"{n} × {coin.bare(net)} − ({cost.working(n, coin)})", n * Fraction(net) - cost.of(n)
        )
        for n in range(1, people + 1)
    )
    return Fee(tuple(lines), left, pays(cost, net, coin).told)


def fee_as_it_is(run: ClassRun, fees: Mapping[str, Decimal], cost: Decimal, rates: Rates) -> Fee:
    """What is left of the fees of those on a list, against what the class costs; `fees` go by the design's folder.

    With how many it would pay is not told: what a head costs hangs on who stays away.
    """
    coin, many = rates.coin, Counter(one.kits.worked.name for one in run.pupils)
    titles = {one.kits.worked.name: one.kits.design for one in run.pupils}
    lines = [
        coin.line(f"Fees, {titles[design]}", f"{n} × {coin.bare(fees[design])}", n * fees[design])
        for design, n in many.items()
    ]
    whole = coin.total("Fees", lines)
    lines += [whole] if len(lines) > 1 else []
    net = known([whole])
    if rates.tax:
        working = f"{coin.bare(net)} ÷ (1 + {percent(rates.tax, coin.point)})"
        lines.append(coin.line("Fees without their tax", working, Fraction(net) / (1 + rates.tax)))
        net = known(lines[-1:])
    people = len(run.pupils)
    left = coin.line(f"Left with these {people}", f"{coin.bare(net)} − {coin.bare(cost)}", net - cost)
    rest = coin.told(abs(known([left])))
    told = f"pays, and {rest} are left" if net >= cost else f"does not pay: {rest} are short"
    return Fee(tuple(lines), (left,), told)


def _over(part: Part, rates: Rates) -> tuple[Fraction, str]:
    """By how much the overhead raises a part of the cost, and that in words."""
    if not rates.overhead or part not in rates.overhead_of:
        return Fraction(1), ""
    return 1 + rates.overhead, f" × (1 + {percent(rates.overhead, rates.coin.point)})"
