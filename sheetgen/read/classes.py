"""How classes are held, as studio and project write it: people, hours, days between, set up and clear up."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.clock import evening
from sheetgen.base.dimension import TIME
from sheetgen.model.class_list import NONE

if TYPE_CHECKING:
    from sheetgen.base.place import Word
    from sheetgen.base.trouble import Troubles
    from sheetgen.model.project import Class
    from sheetgen.read.measures import Measures

MOST_PEOPLE, MOST_EVENINGS, MOST_DAYS = 100, 30, 60
MOST_MINUTES = 120  # to set up or to clear up


def check_class(written: Class | None, measures: Measures) -> None:
    """What a class's words cannot be."""
    if written is None:
        return
    troubles = measures.troubles
    _whole(written.people, "people", MOST_PEOPLE, "people: 12", troubles)
    _whole(written.days_between, "days between", MOST_DAYS, "days between: 7", troubles)
    if written.a_spare_set_for != NONE:
        _whole(written.a_spare_set_for, "a spare set for", MOST_PEOPLE, f"a spare set for: 12; or {NONE}", troubles)
    if written.teachers_piece is not None and written.teachers_piece not in {"yes", "no"}:
        told = f"teacher's piece cannot be {written.teachers_piece}"
        troubles.add(told, written.teachers_piece.place, "yes or no")
    up, clear = (
        measures.interval(word, TIME, least=0, most=MOST_MINUTES, name=name) if word is not None else None
        for name, word in (("set up", written.set_up), ("clear up", written.clear_up))
    )
    taken = sum(one.usual for one in (up, clear) if one is not None)
    if len(written.evenings) > MOST_EVENINGS:
        told = f"a class of {len(written.evenings)} evenings is too long to plan"
        troubles.add(told, written.evenings[MOST_EVENINGS].place, f"{MOST_EVENINGS} evenings at most")
    for word in written.evenings:
        found = evening(word)
        if found is None:
            helped = 'from when to when, on one day, in quotes: "18:30-21:10"'
            troubles.add(f"'{word}' is no evening", word.place, helped)
        elif found[1] - found[0] <= taken:
            told = f"the evening {word} is over before it has been set up and cleared up"
            troubles.add(told, word.place, "a later end, or a shorter set up: and clear up:")


def check_whole(own: Class | None, studio: Class | None, troubles: Troubles) -> None:
    """A project that speaks of its class has all that a plan wants, in its own words or the studio's."""
    said = [one for one in (own, studio) if one is not None]
    words = [own.people, *own.evenings, own.days_between, own.set_up, own.clear_up] if own is not None else []
    first = next((word for word in words if word is not None), None)
    for name, example in (("people", "people: 12"), ("evenings", 'evenings: ["18:30-21:10"]')):
        if first is not None and not any(getattr(one, name) for one in said):
            helped = f"add {example}, here or to class: of the studio"
            troubles.add(f"this class has no {name}", first.place, helped)


def _whole(word: Word | None, name: str, most: int, example: str, troubles: Troubles) -> None:
    """A number of people or days."""
    if word is not None and not (word.isdecimal() and word.isascii() and 0 < int(word) <= most):
        troubles.add(f"{name} cannot be {word}", word.place, f"a whole number from 1 to {most}: {example}")
