"""What a class costs, everybody making one piece, and with how many people its fee pays for it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.exact import percent
from sheetgen.base.spelling import counted, slug
from sheetgen.base.trouble import CannotBe, Misplaced, Trouble
from sheetgen.kits.costing import Costing, Fee, both_ways, of_making
from sheetgen.kits.costs import costed
from sheetgen.kits.material import Priced, Sets
from sheetgen.kits.money import known
from sheetgen.kits.pays import ClassCost, pays
from sheetgen.kits.rates import rates_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from decimal import Decimal

    from sheetgen.kits.money import Coin
    from sheetgen.kits.rates import Rates
    from sheetgen.kits.taken import Kits
    from sheetgen.model.class_list import Besides
    from sheetgen.model.till import Part, Till

TEACHERS, SPARE = "The teacher’s piece", "Spare sets"


def of_class(
    one: Kits, firings: tuple[int, ...], besides: Besides, till: Till | None, coin: Coin
) -> tuple[Costing, list[Trouble]]:
    """A class with all its places taken. Nothing is sent, so that nothing is sent again.

    `firings` is how often the kiln is fired with 1, 2, … pieces, up to those of all people and of the teacher: a spare
    set is fired in place of a piece that is lost. A trouble for a fee that never pays. Misplaced at the design
    where nobody says how the class is held.
    """
    plan = one.version.plan.class_plan
    if plan is None:
        told = f"nobody says how a class makes {one.design}"
        helped = 'add class: {people: 12, evenings: ["18:30-21:30"]}, here or in projects/studio.yaml'
        raise Misplaced(Trouble(told, one.worked.place, helped))
    people, evenings, loads = plan.held.people, len(plan.evenings), firings[besides.teacher :]
    sets = people + besides.teacher + besides.spare(people)
    rates = replace(rates_of(till, coin), replacements=Fraction(0))
    heads, troubles = of_making(replace(one, bags=sets), loads[-1], coin, Sets(people, sets))
    extras = dict(_extras(heads, people, besides, coin))
    teaching, room = (
        []
        if price is None
        else [coin.line(name, f"{counted(evenings, 'evening')} × {coin.bare(price)}", evenings * price)]
        for name, price in (("Teaching", till.teaching if till else None), ("Room", till.room if till else None))
    )
    fired = loads[-1] if till and till.load is not None else 0
    materials = (*heads, *extras.values())
    used, by_packs = (
        costed(rates, people, materials=lines, wrapping=[], labour=teaching, loads=fired, room=room)
        for lines in both_ways(materials)
    )
    fee = None
    if till is not None and (amount := till.fee(one.worked.name)) is not None:
        mine, spare = (known([extras[name].used]) if name in extras else coin.least * 0 for name in (TEACHERS, SPARE))
        once = Once(known(teaching), known(room), mine)
        spares = Spares(spare, tuple(besides.spare(n) for n in range(1, people + 1)))
        try:
            fee = _fee(amount, known([one.used for one in heads]), once, spares, loads, rates)
        except CannotBe as fault:
            helped = fault.help + (f", and {percent(till.tax, coin.point)} tax on it" if till.tax else "")
            told = f"{one.design}: {fault.message}"
            troubles.append(Trouble(told, till.fee_place(one.worked.name), helped))
    notes = [*_lacking(till, one.worked.name, loads[-1])]
    if besides.usual and extras:
        notes.append("what is made up besides the pupils’ is common practice, where class: does not say")
    if loads[-1] > firings[people - 1]:
        notes.append(f"for the teacher’s piece the kiln is fired once more than for {people}")
    if plan.left:
        notes.append("the class does not get through all steps in its evenings")
    title = " + ".join([f"{one.named}: a class of {people}", *_besides_told(besides, people)])
    name = slug(f"{one.worked.name} {one.version.title} class")
    return Costing(title, name, coin, materials, used, by_packs, fee=fee, notes=tuple(notes)), troubles


def _besides_told(besides: Besides, people: int) -> Iterator[str]:
    told = ((besides.teacher, "teacher’s piece"), (besides.spare(people), "spare set"))
    return (counted(many, noun) for many, noun in told if many)


def _extras(heads: Sequence[Priced], people: int, besides: Besides, coin: Coin) -> Iterator[tuple[str, Priced]]:
    """What is made up besides: each set takes what a head does, out of the packs that are bought for all."""
    each = known([one.used for one in heads])
    for name, many in ((TEACHERS, besides.teacher), (SPARE, besides.spare(people))):
        if many:
            used = coin.line(name, _times(many, f"{coin.bare(each)} ÷ {people}"), Fraction(each) * many / people)
            amount = known([used])
            rest = coin.line(name, f"{coin.bare(0)} bought − {coin.bare(amount)} used", -amount)
            yield name, Priced(used, coin.line(name, "in the packs above", 0), rest)


def _times(many: int, what: str) -> str:
    return f"{many} × {what}" if many > 1 else what


class Once(NamedTuple):
    """What a class costs however many come: teaching, room, the teacher's piece."""

    teaching: Decimal
    room: Decimal
    piece: Decimal


class Spares(NamedTuple):
    """What all spare sets cost, and how many there are with 1, 2, … people."""

    cost: Decimal
    many: tuple[int, ...]


def _fee(  # noqa: PLR0913, PLR0917 - all that a fee is held against
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
