"""What a studio measures itself: how its test strips shrank, and how its kiln cools."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.dimension import LENGTH, TEMPERATURE, TIME
from sheetgen.base.interval import Interval
from sheetgen.base.place import Word
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.kiln import ROOM
from sheetgen.formulas.firing import cooling_constant
from sheetgen.formulas.shrinkage import shrinkage

if TYPE_CHECKING:
    from sheetgen.base.dimension import Dimension
    from sheetgen.read.measures import Measures

STRIP = "write wet 50 mm, fired 44.6 mm"
COOLED = "write from 800 °C to 100 °C in 6 h, as your kiln does it with its door shut"


def shrunk(strips: list[Word], measures: Measures) -> Interval | None:
    """Least, middle and most shrinkage of test strips; None with a trouble."""
    found = []
    for strip in strips:
        match = re.fullmatch(r"\s*wet\s+(.+?)\s*[,;]\s*fired\s+(.+?)\s*", strip)
        if not match:
            measures.troubles.add(f"'{strip}' is not a test strip", strip.place, STRIP)
            continue
        wet, fired = (_read(strip, match, i, LENGTH, measures) for i in (1, 2))
        if wet and fired:
            try:
                found.append(shrinkage.pure(wet.usual, fired.usual))
            except CannotBe as fault:
                measures.troubles.add(fault.message, strip.place, fault.help)
    if not found:
        return None
    found.sort()
    half = len(found) // 2
    middle = found[half] if len(found) % 2 else (found[half - 1] + found[half]) / 2
    return Interval(middle, found[0], found[-1])


def cooled(written: Word, measures: Measures) -> Interval | None:
    """A kiln's cooling constant, min, from one cooling of it that was timed; None with a trouble."""
    match = re.fullmatch(r"\s*from\s+(.+?)\s+to\s+(.+?)\s+in\s+(.+?)\s*", written)
    if not match:
        measures.troubles.add(f"'{written}' does not say how the kiln cools", written.place, COOLED)
        return None
    wanted = (TEMPERATURE, TEMPERATURE, TIME)
    hot, cool, took = (_read(written, match, i, sort, measures) for i, sort in enumerate(wanted, 1))
    if not (hot and cool and took):
        return None
    try:
        low, usual, high = (
            cooling_constant.pure(hot.usual, cool.usual, float(ROOM), minutes)
            for minutes in (took.low, took.usual, took.high)
        )
    except CannotBe as fault:
        measures.troubles.add(fault.message, written.place, fault.help)
        return None
    return Interval(usual, low, high)


def _read(word: Word, match: re.Match[str], group: int, wanted: Dimension, measures: Measures) -> Interval | None:
    """One of the measures in a sentence, at its own place."""
    part = Word(match[group], word.place_of(match.start(group), len(match[group])))
    return measures.interval(part, wanted, above=0)
