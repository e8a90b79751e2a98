"""Which printed numbers of a version have moved between two states of it, and what was edited in between."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from sheetgen.model.fingerprint import FIGURES, FIRING, GROUPS, SAID, TIMES, Number

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from sheetgen.model.ledger import Kept

BY_STEP = (TIMES, FIRING, SAID)


class Moved(NamedTuple):
    """A printed number then and now; nothing where there was or is none."""

    group: str
    key: str
    label: str
    was: str
    now: str


class Edit(NamedTuple):
    """Something that numbers are worked from, then and now; nothing where there was or is none."""

    what: str
    was: str
    now: str


def moved(was: Kept, now: Kept) -> list[Moved]:
    """The numbers that differ, by group, as they stand now, then those that are gone.

    Of a step they are told apart by its title first: a step that is put in moves none of those after it. What is
    called and moves as another does is told once, and of a text what moves as a figure does, as the figure.
    """
    if was.code == now.code:
        return []
    found: list[Moved] = []
    for group in GROUPS:
        found += _of_group(group, was.numbers, now.numbers)
    figures = {(one.was, one.now) for one in found if one.group == FIGURES}
    once = {(one.label, one.was, one.now): one for one in reversed(found)}
    kept = sorted(once.values(), key=found.index)
    return [one for one in kept if one.group != SAID or (one.was, one.now) not in figures]


def _of_group(group: str, was: Iterable[Number], now: Iterable[Number]) -> Iterator[Moved]:
    before = [one for one in was if one.group == group]
    after = [one for one in now if one.group == group]
    pairs: dict[int, Number] = {}
    for by in ("label", "key") if group in BY_STEP else ("key",):
        named: dict[str, list[Number]] = {}
        for one in before:
            named.setdefault(getattr(one, by), []).append(one)
        for nth, one in enumerate(after):
            same = named.get(getattr(one, by), [])
            if nth not in pairs and same:
                pairs[nth] = same.pop(0)
        taken = set(pairs.values())
        before = [one for one in before if one not in taken]
    for nth, one in enumerate(after):
        old = pairs[nth].told if nth in pairs else ""
        if old != one.told:
            yield Moved(group, one.key, one.label, old, one.told)
    yield from (Moved(group, one.key, one.label, one.told, "") for one in before)


def edits(was: Kept, now: Kept) -> list[Edit]:
    """What was edited of all that the numbers are worked from, so far as a ledger keeps it."""
    if not was.inputs:
        return []
    keys = dict.fromkeys([*now.inputs, *was.inputs])
    both = (Edit(key, was.inputs.get(key, ""), now.inputs.get(key, "")) for key in keys)
    return [one for one in both if one.was != one.now]
