"""What a class costs, everybody making one piece, and with how many people its fee pays for it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.exact import percent
from sheetgen.base.spelling import counted, slug
from sheetgen.base.trouble import CannotBe, Misplaced, Trouble
from sheetgen.kits.costing import Costing, Fee, both_ways, of_making
from sheetgen.kits.costs import costed
from sheetgen.kits.money import known
from sheetgen.kits.pays import ClassCost, pays
from sheetgen.kits.rates import rates_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from decimal import Decimal

    from sheetgen.kits.money import Coin, Line
    from sheetgen.kits.rates import Rates
    from sheetgen.kits.taken import Kits
    from sheetgen.model.till import Part, Till


def of_class(one: Kits, firings: tuple[int, ...], till: Till | None, coin: Coin) -> tuple[Costing, list[Trouble]]:
    """A class with all its places taken. Nothing is sent, so that nothing is sent again.

    `firings` is how often the kiln is fired with 1, 2, … people, up to all of them. A trouble for a fee that never
    pays. Misplaced at the design where nobody says how the class is held.
    """
    plan = one.version.plan.class_plan
    if plan is None:
        told = f"nobody says how a class makes {one.design}"
        helped = 'add class: {people: 12, evenings: ["18:30-21:30"]}, here or in projects/studio.yaml'
        raise Misplaced(Trouble(told, one.worked.place, helped))
    people, evenings, loads = plan.held.people, len(plan.evenings), firings[-1]
    kits = replace(one, bags=people)
    rates = replace(rates_of(till, coin), replacements=Fraction(0))
    materials, troubles = of_making(kits, loads, coin)
    teaching, room = (
        []
        if price is None
        else [coin.line(name, f"{counted(evenings, 'evening')} × {coin.bare(price)}", evenings * price)]
        for name, price in (("Teaching", till.teaching if till else None), ("Room", till.room if till else None))
    )
    fired = loads if till and till.load is not None else 0
    used, by_packs = (
        costed(rates, people, materials=lines, wrapping=[], labour=teaching, loads=fired, room=room)
        for lines in both_ways(materials)
    )
    fee = None
    if till is not None and (amount := till.fee(kits.worked.name)) is not None:
        try:
            fee = _fee(amount, [one.used for one in materials], (teaching, room), firings, rates)
        except CannotBe as fault:
            helped = fault.help + (f", and {percent(till.tax, coin.point)} tax on it" if till.tax else "")
            told = f"{kits.design}: {fault.message}"
            troubles.append(Trouble(told, till.fee_place(kits.worked.name), helped))
    notes = [*_lacking(till, kits.worked.name, loads)]
    if plan.left:
        notes.append("the class does not get through all steps in its evenings")
    title = f"{kits.named}: a class of {people}"
    name = slug(f"{kits.worked.name} {kits.version.title} class")
    return Costing(title, name, coin, materials, used, by_packs, fee=fee, notes=tuple(notes)), troubles


def _fee(
    fee: Decimal,
    materials: Sequence[Line],
    once: tuple[Sequence[Line], Sequence[Line]],
    loads: tuple[int, ...],
    rates: Rates,
) -> Fee:
    """What is left of a fee with every number of people. A head costs its part of what the materials cost all."""
    coin, people, (teaching, room) = rates.coin, len(loads), (known(one) for one in once)
    each, a_load = known(materials), rates.load
    a_head, head_over = _over("materials", rates)
    fixed, fixed_over = _over("labour", rates)
    load, load_over = _over("firing", rates)
    lines = [
        coin.line(
            "Once, however many come",
            f"{coin.bare(teaching)}{fixed_over} + {coin.bare(room)}",
            Fraction(teaching) * fixed + Fraction(room),
        ),
        coin.line(f"All {people} heads", f"{coin.bare(each)}{head_over}", Fraction(each) * a_head),
        coin.line("For each load", f"{coin.bare(a_load)}{load_over}", Fraction(a_load) * load),
        coin.line("Fee", "as the till has it", fee),
    ]
    if rates.tax:
        told = f"{coin.bare(fee)} ÷ (1 + {percent(rates.tax, coin.point)})"
        lines.append(coin.line("Fee without its tax", told, Fraction(fee) / (1 + rates.tax)))
    amounts = [line.amount or coin.least * 0 for line in lines]
    heads = f"{coin.bare(amounts[1])} ÷ {people}"
    cost, net = ClassCost(amounts[0], Fraction(amounts[1]) / people, amounts[2], loads, heads), amounts[-1]
    left = tuple(
        coin.line(
            f"Left with {n}", f"{n} × {coin.bare(net)} − ({cost.working(n, coin)})", n * Fraction(net) - cost.of(n)
        )
        for n in range(1, people + 1)
    )
    return Fee(tuple(lines), left, pays(cost, net, coin).told)


def _over(part: Part, rates: Rates) -> tuple[Fraction, str]:
    """By how much the overhead raises a part of the cost, and that in words."""
    if not rates.overhead or part not in rates.overhead_of:
        return Fraction(1), ""
    return 1 + rates.overhead, f" × (1 + {percent(rates.overhead, rates.coin.point)})"


def _lacking(till: Till | None, design: str, loads: int) -> Iterator[str]:
    if till is None:
        yield "not reckoned, for there is no till.yaml in the private folder: teaching, firing, overhead, room, a fee"
        return
    there = {
        "teaching ('teaching an evening')": till.teaching is not None,
        "firing ('cost of a load')": till.load is not None or not loads,
        "overhead ('overhead')": bool(till.overhead),
        "the room ('room an evening')": till.room is not None,
        "a fee ('fee')": till.fee(design) is not None,
    }
    if absent := [what for what, stands in there.items() if not stands]:
        yield f"not reckoned, for {till.name} does not say it: {', '.join(absent)}"
