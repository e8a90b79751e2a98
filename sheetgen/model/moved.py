"""Which printed numbers of a version have moved between two states of it, and what was edited in between."""

from __future__ import annotations

import re
from collections import Counter
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.model.fingerprint import FIGURES, FIRING, GROUPS, LISTS, SAID, SIZES, TIMES, Number

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.model.ledger import Kept, Ledger

BY_STEP = (TIMES, FIRING, SAID)
IN_A_KIT, OTHER_PACK = "in a kit", "in another pack"
AN_HOUR, HALF_AN_HOUR = 60, 30  # min
MINUTES = re.compile(r"\d{3,}( to \d{3,})?(, usually \d{3,})? min")
"""A time of 100 minutes and more."""


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
    called and moves as another does is told once. So is, as the figure, what moves as a figure does: of a text, or a
    size of the figure's part.
    """
    if was.code == now.code:
        return []
    found: list[Moved] = []
    for group in GROUPS:
        found += _of_group(group, was.numbers, now.numbers)
    once = {(one.label, one.was, one.now): one for one in reversed(found)}
    return list(_not_again(sorted(once.values(), key=found.index)))


def _not_again(rows: Sequence[Moved]) -> Iterator[Moved]:
    """The rows without what a figure among them tells as well; one figure stands for one size of its part."""
    figures = [one for one in rows if one.group == FIGURES]
    said = {(one.was, one.now) for one in figures}
    of_parts = Counter((one.key.partition(".")[0], one.was, one.now) for one in figures)
    for one in rows:
        of_part = (one.key.partition(", ")[0], one.was, one.now)
        if one.group == SIZES and of_parts[of_part]:
            of_parts[of_part] -= 1
        elif one.group != SAID or (one.was, one.now) not in said:
            yield one


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
    return [Edit(one.what, _hours(one.was), _hours(one.now)) for one in both if one.was != one.now]


def _hours(told: str) -> str:
    """A time as it is written: a ledger keeps minutes, and of a night they say little. Whole and half hours alone."""
    if not MINUTES.fullmatch(told) or any(int(minutes) % HALF_AN_HOUR for minutes in re.findall(r"\d+", told)):
        return told
    return re.sub(r"\d+", lambda minutes: f"{int(minutes[0]) / AN_HOUR:g}", told).removesuffix("min") + "h"


def prices_moved(was: Ledger, now: Ledger) -> list[Moved]:
    """The prices of stock that differ; nothing where one of the two has none kept."""
    before = {one.key: one for one in was.prices or ()}
    after = {one.key: one for one in now.prices or ()}
    if was.prices is None or now.prices is None:
        return []
    found = []
    for key in dict.fromkeys([*after, *before]):
        old, new = before.get(key), after.get(key)
        one = new or old
        if one is not None and (old.told if old else "") != (new.told if new else ""):
            found.append(Moved(one.group, key, one.label, old.told if old else "", new.told if new else ""))
    return found


def nearest(was: Kept, now: Iterable[Kept]) -> Kept | None:
    """Of several that something may be now the one of which the fewest numbers differ; None of none.

    What is given out sealed comes in one pack or another, as the run has it that a kit is in.
    """
    return min(now, key=lambda one: len(moved(was, one)), default=None)


class OtherKit(NamedTuple):
    """A kit of a version with other lists: its title with the version's, its fingerprint then and now."""

    title: str
    was: str
    now: str
    rows: tuple[Moved, ...]


def kits_moved(was: Kept, now: Kept) -> frozenset[str]:
    """The colourways, and under no name none, in which a kit holds or lacks otherwise than it did: see `_ways`."""
    return frozenset(name for name in was.kits if any(_lists_moved(*way) for way in _ways(was, now, name)))


def other_kits(was: Kept, now: Kept) -> list[OtherKit]:
    """The kits that both have and of which a bag holds more or less, where the version's own lists do not tell it."""
    found, told = [], set(_of_group(LISTS, was.numbers, now.numbers))
    for name in was.kits:
        own = set[Moved]()
        for nth, (old, new) in enumerate(_ways(was, now, name)):
            rows = tuple(row for row in _lists_moved(old, new) if row not in told | own)
            if rows:
                said = (new.title, *(() if name else (IN_A_KIT,)), *((OTHER_PACK,) if nth else ()))
                found.append(OtherKit(", ".join(said), old.code, new.code, rows))
            own |= set(rows)
        told |= own if not name else set()
    return found


def _ways(was: Kept, now: Kept, name: str) -> Iterator[tuple[Kept, Kept]]:
    """A kit in a colourway, by itself, with what it is now; then each that is now and was not so, with the likest.

    What is sealed comes in one pack or another, so that there are several; where a pack is new, it is the last of one
    that is no more, or of any.
    """
    olds, news = was.kits_in(name), now.kits_in(name)
    alone = nearest(olds[0], news) if olds else None
    if alone is None:
        return
    yield olds[0], alone
    gone = [old for old in olds[1:] if all(_lists_moved(old, new) for new in news)] or olds
    for new in news:
        old = nearest(new, gone)
        if old is not None and new is not alone and all(_lists_moved(one, new) for one in olds):
            yield old, new


def _lists_moved(old: Kept, new: Kept) -> list[Moved]:
    return list(_of_group(LISTS, old.numbers, new.numbers))
