"""Every number that the sheets of a version print, and which of them only its teacher's sheet does."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.clock import clock
from sheetgen.base.material import Clay
from sheetgen.base.printed import NBSP
from sheetgen.base.spelling import in_a_sentence
from sheetgen.model.amounts import amounts
from sheetgen.model.fingerprint import FIGURES, FIRING, LISTS, SAID, SIZES, TIMES, Number, fingerprint
from sheetgen.model.for_the_maker import shown_to_the_maker, texts_of_the_maker, texts_of_the_teacher
from sheetgen.model.numbers import THIN, Numbers

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.base.rounding import Rounder
    from sheetgen.model.drawing import SlabLayout
    from sheetgen.model.worked import MaterialLine, ToolLine, Worked, WorkedStep, WorkedVersion

PLAIN = str.maketrans({NBSP: " ", THIN: "", "\u2060": ""})
AS_NEEDED = "as needed"
MOST_SIZES = 6  # finished sizes that a handout takes from the parts, where the project names none


class Row(NamedTuple):
    """A number, and whether a handout, a bench card or templates print it, and not the teacher's sheet alone."""

    number: Number
    maker: bool = True


def code_of(worked: Worked, version: WorkedVersion) -> str:
    """The fingerprint of a version's published sheets, the teacher's among them."""
    return fingerprint(printed_numbers(worked, version))


def printed_numbers(worked: Worked, version: WorkedVersion) -> list[Number]:
    """Every number of a version as its sheets print it, each name once.

    Of a page in other units than the studio's the units are among them, so that its fingerprint is another whatever the
    numbers are.
    """
    units = [Number(SAID, "units", "Units", worked.other_units)] if worked.other_units else []
    return [*(one.number for one in _rows(worked, version)), *units]


def of_the_teacher(worked: Worked, version: WorkedVersion) -> frozenset[tuple[str, str]]:
    """Group and key of those that stand on the teacher's sheet alone."""
    return frozenset((one.number.group, one.number.key) for one in _rows(worked, version) if not one.maker)


def for_the_maker(worked: Worked, version: WorkedVersion) -> list[Number]:
    """What handout, bench card and templates print, whatever the maker has and what lies in a kit: no list."""
    return [one.number for one in _rows(worked, version) if one.maker and one.number.group != LISTS]


def each_once(rows: Iterable[Row]) -> list[Row]:
    """Rows as a ledger keeps them: in plain letters, each name once, and others told apart where their words differ."""
    found: dict[tuple[str, str], Row] = {}
    for one in rows:
        group, wanted, label, told = (" ".join(word.translate(PLAIN).split()) for word in one.number)
        key, nth = wanted, 1
        while (there := found.get((group, key))) is not None and there.number.told != told:
            nth += 1
            key = f"{wanted} {nth}"
        maker = one.maker or (there is not None and there.maker)
        found[group, key] = Row(there.number if there else Number(group, key, label, told), maker)
    return list(found.values())


def taken_numbers(lines: Iterable[MaterialLine], slabs: Sequence[SlabLayout], rounder: Rounder) -> Iterator[Row]:
    """What comes from the bench, as a handout lists it: what to have, and of clay what is used where that is less."""
    for line in lines:
        item, name = line.item.id, line.item.name
        told = amounts(line, slabs, rounder)
        yield Row(Number(LISTS, item, name, told.listed if told else AS_NEEDED))
        if told is not None and told.back:
            yield Row(Number(LISTS, f"{item}, used", f"{name}, used", told.used.told), isinstance(line.item, Clay))


def tool_numbers(tools: Iterable[ToolLine], numbers: Numbers) -> Iterator[Row]:
    """The sizes of tools."""
    for tool in tools:
        if tool.sizes:
            sizes = ", ".join(map(numbers.length, tool.sizes))
            yield Row(Number(LISTS, tool.item.id, tool.item.name, f"{sizes} {numbers.rounder.unit('mm')}"))


def _rows(worked: Worked, version: WorkedVersion) -> list[Row]:
    numbers = Numbers(worked.rounder)
    return each_once(
        (
            *_figures(version),
            *_sizes(version, numbers),
            *taken_numbers(version.materials, version.slabs, worked.rounder),
            *_for_a_class(version, worked.rounder),
            *tool_numbers(version.tools, numbers),
            *_times(version, numbers),
            *_firing(version, numbers),
            *_said(version),
        )
    )


def _figures(version: WorkedVersion) -> Iterator[Row]:
    """By their names; one that a text works for itself, of the same part and with the same words, is that figure."""
    shown = list(shown_to_the_maker(version))
    named = {one.figure for one in shown}
    worked_so = {(one.part, one.printed.told) for one in shown if not one.figure}
    for key, figure in version.figures.items():
        part = version.parts[figure.part].title if figure.part in version.parts else ""
        label = f"{part}: {in_a_sentence(figure.label)}" if part else figure.label
        told = figure.printed.told
        drawn = version.drawn is None or key in version.drawn
        yield Row(Number(FIGURES, key, label, told), drawn or key in named or (figure.part, told) in worked_so)


def _sizes(version: WorkedVersion, numbers: Numbers) -> Iterator[Row]:
    """Finished sizes, what is made and what that fires to, and how many of a part."""
    unit = numbers.rounder.unit("mm")
    for shown in version.finished:
        yield Row(Number(SIZES, shown.label, shown.label, shown.printed.told))
    left = 0 if version.finished else MOST_SIZES
    for part in version.parts.values():
        yield Row(Number(SIZES, f"{part.name}, count", f"{part.title}: how many", str(part.count)))
        for size in part.sizes:
            key, label = f"{part.name}, {size.label}", f"{part.title}: {in_a_sentence(size.label)}"
            if size.finished is not None:
                told = f"{numbers.finished(size.finished)} {unit}"
                yield Row(Number(SIZES, f"{key}, finished", f"{label}, finished", told), left > 0)
                left -= 1
            if size.fires is not None:
                told = f"{numbers.range(size.fires)} {unit}"
                yield Row(Number(SIZES, f"{key}, fires to", f"{label}, fires to", told), maker=False)


def _for_a_class(version: WorkedVersion, rounder: Rounder) -> Iterator[Row]:
    plan = version.plan.class_plan
    for line in version.materials if plan is not None else ():
        people = plan.held.people if plan is not None else 1
        pot = amounts(line, version.slabs, rounder, people)
        if pot is not None:
            label = f"{line.item.name}, for {people}"
            yield Row(Number(LISTS, f"{line.item.id}, class", label, pot.listed), maker=False)


def _times(version: WorkedVersion, numbers: Numbers) -> Iterator[Row]:
    yield Row(Number(TIMES, "at the bench", "At the bench", numbers.added(version.bench_times)))
    yield Row(Number(TIMES, "in all", "In all", numbers.added(version.whole_times)))
    for at, step in _placed(version):
        if step.minutes is not None:
            yield Row(Number(TIMES, f"{at}, time", f"{step.title}, time", numbers.time(step.minutes)))
        if step.whole_wait is not None:
            yield Row(Number(TIMES, f"{at}, wait", f"{step.title}, wait", numbers.time(step.whole_wait)))
    for nth, session in enumerate(version.plan.sessions, 1):
        if session.wait is not None:
            yield Row(Number(TIMES, f"session {nth}, wait", f"After session {nth}, wait", numbers.time(session.wait)))
    for evening in version.plan.class_plan.evenings if version.plan.class_plan else ():
        for row, slot in enumerate(evening.slots, 1):
            words = version.steps[slot.step].title if slot.step is not None else slot.words
            label = f"Evening {evening.number}: {in_a_sentence(words)}, from"
            yield Row(Number(TIMES, f"evening {evening.number}, {row:02}", label, clock(slot.begin)), maker=False)


def _firing(version: WorkedVersion, numbers: Numbers) -> Iterator[Row]:
    """Programs phase by phase, loads, the torch's times, and how hot a kiln is opened."""
    for at, step in _placed(version):
        phases = step.firing
        for nth, phase in enumerate(phases, 1):
            which = f", phase {nth}" if len(phases) > 1 else ""
            for label, number, unit in numbers.firing(phase):
                key, said = f"{at}, phase {nth}, {label}", f"{step.title}{which}, {in_a_sentence(label)}"
                yield Row(Number(FIRING, key, said, f"{number} {unit}".strip()))
        for load in step.loads:
            where = "in carbon" if load.boxed else "on shelves"
            told = f"{load.loads} of at most {load.fullest}"
            yield Row(Number(FIRING, f"{at}, loads {where}", f"{step.title}, loads {where}", told))
        if step.torch and (found := re.findall(r"\d[\d.,]*\d|\d", step.torch)):
            yield Row(Number(FIRING, f"{at}, torch", f"{step.title}, by torch", ", ".join(found)))
        if step.opened_at is not None:
            told = f"{numbers.rounder.decimal(step.opened_at, 0)} °C"
            yield Row(Number(FIRING, f"{at}, opened at", f"{step.title}, opened at", told))


def _said(version: WorkedVersion) -> Iterator[Row]:
    """Numbers that a text or a step works for itself; a figure that it names is counted as that figure."""
    known = {(figure.part, figure.printed.told) for figure in version.figures.values()}
    sides = (texts_of_the_maker(version), True), (texts_of_the_teacher(version), False)
    for at, title, text, maker in ((*one, maker) for texts, maker in sides for one in texts):
        for one in text:
            if not isinstance(one, str) and (one.part, one.printed.told) not in known:
                label = f"{title}: {in_a_sentence(one.label)}"
                yield Row(
                    Number(SAID, ", ".join(filter(None, (at, one.part, one.label))), label, one.printed.told), maker
                )


def _placed(version: WorkedVersion) -> Iterator[tuple[str, WorkedStep]]:
    """Each step with its place among the steps, waits counted: step 04."""
    return ((f"step {nth:02}", step) for nth, step in enumerate(version.steps, 1))
