"""The printed numbers of a version in a fixed order, and the six signs that stand for them on its sheets."""

from __future__ import annotations

import hashlib
import json
import re
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.clock import clock
from sheetgen.base.printed import NBSP
from sheetgen.base.spelling import in_a_sentence
from sheetgen.model.amounts import amounts
from sheetgen.model.numbers import THIN, Numbers

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from sheetgen.model.worked import Prose, Shown, Worked, WorkedStep, WorkedVersion

SIGNS = "23456789ABCDEFGHJKMNPQRSTUVWXYZ"
"""Digits and capitals without those that are taken for each other: no 0 and O, no 1, I and L."""
LONG = 6
CODE = re.compile(f"[{SIGNS}]{{{LONG}}}")
PLAIN = str.maketrans({NBSP: " ", THIN: "", "\u2060": ""})

FIGURES, SIZES, LISTS, TIMES, FIRING, SAID = "figures", "sizes", "lists", "times", "firing", "said"
GROUPS = (FIGURES, SIZES, LISTS, TIMES, FIRING, SAID)
"""Figures by their names; finished sizes and what pieces fire to; amounts and tools; times; firings; what texts say."""


USED, CLASS, EVENING, TEACHER = "used", "class", "evening", "teacher"
"""Behind an item, what is used of it and what a class has; and how numbers of the teacher's sheet alone begin."""


class Number(NamedTuple):
    """One printed number: its group, the name that it goes by there, what it is called, and its words with the unit.

    A step's numbers go by its place among the steps, so that other words for a step are no other numbers.
    """

    group: str
    key: str
    label: str
    told: str


def fingerprint(numbers: Iterable[Number]) -> str:
    """Six signs for printed numbers: the same numbers, the same signs, on every machine and in every run.

    Group, name and words of each number, by group and name, as JSON in UTF-8; of its SHA-256, read as one number with
    the first byte highest, the rest by 31⁶; that in the figures of SIGNS to base 31, the highest first. What a number
    is called does not count.
    """
    rows = sorted([one.group, one.key, one.told] for one in numbers)
    text = json.dumps(rows, ensure_ascii=False, separators=(",", ":"))
    rest = int.from_bytes(hashlib.sha256(text.encode()).digest(), "big") % len(SIGNS) ** LONG
    signs = []
    for _ in range(LONG):
        rest, last = divmod(rest, len(SIGNS))
        signs.append(SIGNS[last])
    return "".join(reversed(signs))


def code_of(worked: Worked, version: WorkedVersion) -> str:
    """The fingerprint of a version."""
    return fingerprint(printed_numbers(worked, version))


def printed_numbers(worked: Worked, version: WorkedVersion) -> list[Number]:
    """Every number of a version as its sheets print it, each name once."""
    numbers = Numbers(worked.rounder)
    each = (
        *_figures(version),
        *_sizes(version, numbers),
        *_lists(version, numbers),
        *_times(version, numbers),
        *_firing(version, numbers),
        *_said(version),
    )
    found: dict[tuple[str, str], Number] = {}
    for one in each:
        group, wanted, label, told = (" ".join(word.translate(PLAIN).split()) for word in one)
        key, nth = wanted, 1
        while (there := found.get((group, key))) is not None and there.told != told:
            nth += 1
            key = f"{wanted} {nth}"
        found.setdefault((group, key), Number(group, key, label, told))
    return list(found.values())


def _figures(version: WorkedVersion) -> Iterator[Number]:
    for key, figure in version.figures.items():
        part = version.parts[figure.part].title if figure.part in version.parts else ""
        label = f"{part}: {in_a_sentence(figure.label)}" if part else figure.label
        yield Number(FIGURES, key, label, figure.printed.told)


def _sizes(version: WorkedVersion, numbers: Numbers) -> Iterator[Number]:
    """Finished sizes, what is made and what that fires to, and how many of a part."""
    unit = numbers.rounder.unit("mm")
    for shown in version.finished:
        yield Number(SIZES, shown.label, shown.label, shown.printed.told)
    for part in version.parts.values():
        yield Number(SIZES, f"{part.name}, count", f"{part.title}: how many", str(part.count))
        for size in part.sizes:
            key, label = f"{part.name}, {size.label}", f"{part.title}: {in_a_sentence(size.label)}"
            if size.finished is not None:
                yield Number(
                    SIZES, f"{key}, finished", f"{label}, finished", f"{numbers.finished(size.finished)} {unit}"
                )
            if size.fires is not None:
                yield Number(SIZES, f"{key}, fires to", f"{label}, fires to", f"{numbers.range(size.fires)} {unit}")


def _lists(version: WorkedVersion, numbers: Numbers) -> Iterator[Number]:
    """What is used up, for one and for a class, and the sizes of tools."""
    plan = version.plan.class_plan
    for line in version.materials:
        item, name = line.item.id, line.item.name
        told = amounts(line, version.slabs, numbers.rounder)
        yield Number(LISTS, item, name, told.listed if told else "as needed")
        if told is not None and told.back:
            yield Number(LISTS, f"{item}, {USED}", f"{name}, used", told.used.told)
        if plan is not None:
            people = plan.held.people
            pot = amounts(line, version.slabs, numbers.rounder, people)
            if pot is not None:
                yield Number(LISTS, f"{item}, {CLASS}", f"{name}, for {people}", pot.listed)
    for tool in version.tools:
        if tool.sizes:
            sizes = ", ".join(map(numbers.length, tool.sizes))
            yield Number(LISTS, tool.item.id, tool.item.name, f"{sizes} {numbers.rounder.unit('mm')}")


def _times(version: WorkedVersion, numbers: Numbers) -> Iterator[Number]:
    yield Number(TIMES, "at the bench", "At the bench", numbers.added(version.bench_times))
    yield Number(TIMES, "in all", "In all", numbers.added(version.whole_times))
    for at, step in _placed(version):
        if step.minutes is not None:
            yield Number(TIMES, f"{at}, time", f"{step.title}, time", numbers.time(step.minutes))
        if step.whole_wait is not None:
            yield Number(TIMES, f"{at}, wait", f"{step.title}, wait", numbers.time(step.whole_wait))
    for nth, session in enumerate(version.plan.sessions, 1):
        if session.wait is not None:
            yield Number(TIMES, f"session {nth}, wait", f"After session {nth}, wait", numbers.time(session.wait))
    for evening in version.plan.class_plan.evenings if version.plan.class_plan else ():
        for row, slot in enumerate(evening.slots, 1):
            words = version.steps[slot.step].title if slot.step is not None else slot.words
            key = f"{EVENING} {evening.number}, {row:02}"
            yield Number(TIMES, key, f"Evening {evening.number}: {in_a_sentence(words)}, from", clock(slot.begin))


def _firing(version: WorkedVersion, numbers: Numbers) -> Iterator[Number]:
    """Programs phase by phase, loads, the torch's times, and how hot a kiln is opened."""
    for at, step in _placed(version):
        phases = step.firing
        for nth, phase in enumerate(phases, 1):
            which = f", phase {nth}" if len(phases) > 1 else ""
            for label, number, unit in numbers.firing(phase):
                key, said = f"{at}, phase {nth}, {label}", f"{step.title}{which}, {in_a_sentence(label)}"
                yield Number(FIRING, key, said, f"{number} {unit}".strip())
        for load in step.loads:
            where = "in carbon" if load.boxed else "on shelves"
            told = f"{load.loads} of at most {load.fullest}"
            yield Number(FIRING, f"{at}, loads {where}", f"{step.title}, loads {where}", told)
        if step.torch and (found := re.findall(r"\d[\d.,]*\d|\d", step.torch)):
            yield Number(FIRING, f"{at}, torch", f"{step.title}, by torch", ", ".join(found))
        if step.opened_at is not None:
            told = f"{numbers.rounder.decimal(step.opened_at, 0)} °C"
            yield Number(FIRING, f"{at}, opened at", f"{step.title}, opened at", told)


def _said(version: WorkedVersion) -> Iterator[Number]:
    """Numbers that a text or a step works for itself; a figure that it names is counted as that figure."""
    known = {(figure.part, figure.printed.told) for figure in version.figures.values()}
    told = version.teaching
    lines = (*told.before, *told.show, told.scrap, told.leftovers, *told.bring, told.next)
    texts: list[tuple[str, str, Prose | tuple[Shown, ...]]] = [("head", "Head", version.summary)]
    texts += [("head", "Head", version.makes), *((TEACHER, "For the teacher", line) for line in lines)]
    for at, step in _placed(version):
        mishaps = (text for mishap in step.mishaps for text in (mishap.seen, mishap.why, mishap.mend))
        each = (step.text, step.expect, step.meanwhile, step.show, step.card, *mishaps)
        texts += [(at, step.title, text) for text in each]
    for at, title, text in texts:
        for one in text:
            if not isinstance(one, str) and (one.part, one.printed.told) not in known:
                label = f"{title}: {in_a_sentence(one.label)}"
                yield Number(SAID, ", ".join(filter(None, (at, one.part, one.label))), label, one.printed.told)


def _placed(version: WorkedVersion) -> Iterator[tuple[str, WorkedStep]]:
    """Each step with its place among the steps, waits counted: step 04."""
    return ((f"step {nth:02}", step) for nth, step in enumerate(version.steps, 1))
