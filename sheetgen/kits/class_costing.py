"""What a class costs: its materials out of the pots of its lists, teaching, room and loads, and its fee against it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.exact import percent
from sheetgen.base.spelling import counted, slug
from sheetgen.base.trouble import CannotBe, Misplaced, Trouble
from sheetgen.kits.class_fee import Once, Spares, fee_as_it_is, fee_by_heads
from sheetgen.kits.class_run import fired_more
from sheetgen.kits.costing import Costing, both_ways, of_all
from sheetgen.kits.costs import costed
from sheetgen.kits.fired_told import fired_told
from sheetgen.kits.material import Priced, Sets
from sheetgen.kits.money import known
from sheetgen.kits.rates import rates_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence
    from decimal import Decimal

    from sheetgen.kits.class_run import ClassRun
    from sheetgen.kits.costing import Fee
    from sheetgen.kits.money import Coin, Line
    from sheetgen.kits.rates import Rates
    from sheetgen.model.class_list import Besides
    from sheetgen.model.plan import ClassPlan
    from sheetgen.model.till import Till

TEACHERS, SPARE = "The teacher’s piece", "Spare sets"


@dataclass(frozen=True, slots=True)
class Course:
    """A class to be costed: its run, what its designs say of one, by their folders, and its name where it has a list.

    `loads` is how often the kiln is fired with 1, 2, … pieces, up to those of all pupils and of the teacher: a spare
    set is fired in place of a piece that is lost. It is left out where not all are of one design and fired alike.
    """

    run: ClassRun
    said: Mapping[str, Besides]
    loads: tuple[int, ...] = ()
    called: str = ""

    @property
    def alike(self) -> bool:
        """Whether all make one design, so that a set more costs what any other does."""
        return len(self.run.designs) == 1


def of_class(course: Course, till: Till | None, coin: Coin) -> tuple[Costing, list[Trouble]]:
    """A class with all on its list, or with all places taken. Nothing is sent, so that nothing is sent again.

    Of one design the materials are the pupils' part, and what is made up besides is a line at a head's part; of several
    designs they are those of all sets. A trouble for a fee that never pays. Misplaced at a design where nobody says how
    the class is held.
    """
    run, people = course.run, len(course.run.pupils)
    plans = _plans(run)
    evenings = len({evening.day for plan in plans for evening in plan.evenings})
    rates = replace(rates_of(till, coin), replacements=Fraction(0))
    heads, troubles = of_all(run.kinds, coin, Sets(people, run.sets) if course.alike else None)
    extras = dict(_extras(heads, run, coin)) if course.alike else {}
    teaching, room = (
        []
        if price is None
        else [coin.line(name, f"{counted(evenings, 'evening')} × {coin.bare(price)}", evenings * price)]
        for name, price in (("Teaching", till.teaching if till else None), ("Room", till.room if till else None))
    )
    fired = sum(kits.firings for kits in run.kinds)
    materials, loads = (*heads, *extras.values()), fired if till and till.load is not None else 0
    why = fired_told((kits, run.fired(kits)) for kits in run.kinds)
    used, by_packs = (
        costed(rates, people, materials=lines, wrapping=[], labour=teaching, loads=loads, fired=why, room=room)
        for lines in both_ways(materials)
    )
    fee = None
    if till is not None:
        lines = _Lines([one.used for one in heads], {name: one.used for name, one in extras.items()}, teaching, room)
        try:
            fee = _fee(course, till, lines, used.cost, rates)
        except CannotBe as fault:
            helped = fault.help + (f", and {percent(till.tax, coin.point)} tax on it" if till.tax else "")
            told = f"{run.kinds[0].design}: {fault.message}"
            troubles.append(Trouble(told, till.fee_place(run.designs[0]), helped))
    notes = [*_lacking(till, run, fired), *_told(course, any(plan.left for plan in plans))]
    title, name = _called(course)
    return Costing(title, name, coin, materials, used, by_packs, fee=fee, notes=tuple(notes)), troubles


def _plans(run: ClassRun) -> list[ClassPlan]:
    """The plan of each kind. Misplaced where there is none."""
    found = []
    for kits in run.kinds:
        plan = kits.version.plan.class_plan
        if plan is None:
            told = f"nobody says how a class makes {kits.design}"
            helped = 'add class: {people: 12, evenings: ["18:30-21:30"]}, here or in projects/studio.yaml'
            raise Misplaced(Trouble(told, kits.worked.place, helped))
        found.append(plan)
    return found


def _called(course: Course) -> tuple[str, str]:
    """The title of a costing, and the name of its files."""
    run = course.run
    if course.called:
        return f"{course.called}: a class, {run.counted()}", slug(f"{course.called} class")
    [one], people = run.kinds, len(run.pupils)
    told = [f"{one.named}: a class of {people}", *(counted(many, noun) for noun, many in _besides(run))]
    return " + ".join(told), slug(f"{one.worked.name} {one.version.title} class")


def _besides(run: ClassRun) -> Iterator[tuple[str, int]]:
    """What is made up besides the pupils' sets, and how many of it."""
    each = (("teacher’s piece", [one.teacher for one in run.extras]), ("spare set", [one.spare for one in run.extras]))
    return ((noun, sum(many)) for noun, many in each if any(many))


def _told(course: Course, unfinished: bool) -> Iterator[str]:  # noqa: FBT001 - one of its notes
    run = course.run
    if len(run.kinds) > 1:
        yield f"of these sets: {'; '.join(f'{kits.bags} × {kits.named}' for kits in run.kinds)}"
    if run.usual:
        yield "a teacher’s piece and spare sets are common practice; class: in studio.yaml may say otherwise"
    yield from fired_more(run, course.loads)
    if unfinished:
        yield "the class does not get through all steps in its evenings"


def _extras(heads: Sequence[Priced], run: ClassRun, coin: Coin) -> Iterator[tuple[str, Priced]]:
    """What is made up besides: each set takes what a head does, out of the packs that are bought for all."""
    each, people = known([one.used for one in heads]), len(run.pupils)
    names = {"teacher’s piece": TEACHERS, "spare set": SPARE}
    for noun, many in _besides(run):
        name = names[noun]
        used = coin.line(name, _times(many, f"{coin.bare(each)} ÷ {people}"), Fraction(each) * many / people)
        amount = known([used])
        rest = coin.line(name, f"{coin.bare(0)} bought − {coin.bare(amount)} used", -amount)
        yield name, Priced(used, coin.line(name, "in the packs above", 0), rest)


def _times(many: int, what: str) -> str:
    return f"{many} × {what}" if many > 1 else what


@dataclass(frozen=True, slots=True)
class _Lines:
    """The lines of a cost by the used share that a fee is held against."""

    heads: Sequence[Line]
    extras: Mapping[str, Line]
    teaching: Sequence[Line]
    room: Sequence[Line]


def _fee(course: Course, till: Till, lines: _Lines, cost: Line, rates: Rates) -> Fee | None:
    """The fee against the cost; None where the till does not say one for every design."""
    run, coin = course.run, rates.coin
    fees = {design: fee for design in run.designs if (fee := till.fee(design)) is not None}
    if len(fees) < len(run.designs):
        return None
    if not course.loads:
        return fee_as_it_is(run, fees, known([cost]), rates)
    mine, spare = (_amount(lines.extras.get(name), coin) for name in (TEACHERS, SPARE))
    [said] = (course.said[design] for design in run.designs)
    many = tuple(said.spare(n) for n in range(1, len(run.pupils) + 1))
    loads = course.loads[said.teacher :]
    once = Once(known(lines.teaching), known(lines.room), mine)
    return fee_by_heads(fees[run.designs[0]], known(lines.heads), once, Spares(spare, many), loads, rates)


def _amount(line: Line | None, coin: Coin) -> Decimal:
    return coin.least * 0 if line is None else known([line])


def _lacking(till: Till | None, run: ClassRun, loads: int) -> Iterator[str]:
    if till is None:
        yield "not reckoned, for there is no till.yaml in the private folder: teaching, firing, overhead, room, a fee"
        return
    there = {
        "teaching ('teaching an evening')": till.teaching is not None,
        "firing ('cost of a load')": till.load is not None or not loads,
        "overhead ('overhead')": bool(till.overhead),
        "the room ('room an evening')": till.room is not None,
        "a fee ('fee')": all(till.fee(design) is not None for design in run.designs),
    }
    if absent := [what for what, stands in there.items() if not stands]:
        yield f"not reckoned, for {till.name} does not say it: {', '.join(absent)}"
