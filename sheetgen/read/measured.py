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
    from sheetgen.read.measures import Measures

WET, FIRED = re.compile(r"\s*wet\s+(?=\S)"), re.compile(r"[,;]\s*fired\s")
FROM, TO, IN = re.compile(r"\s*from\s+(?=\S)"), re.compile(r"\sto\s"), re.compile(r"\sin\s")
STRIP = "write wet 50 mm, fired 44.6 mm"
COOLED = "write from 800 °C to 100 °C in 6 h, as your kiln does it with its door shut"


def shrunk(strips: list[Word], measures: Measures) -> Interval | None:
    """Least, middle and most shrinkage of test strips; None with a trouble."""
    found = []
    for strip in strips:
        said = _between(strip, WET, FIRED)
        if not said:
            measures.troubles.add(f"'{strip}' is not a test strip", strip.place, STRIP)
            continue
        wet, fired = (measures.interval(part, LENGTH, above=0) for part in said)
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
    said = _between(written, FROM, TO, IN)
    if not said:
        measures.troubles.add(f"'{written}' does not say how the kiln cools", written.place, COOLED)
        return None
    wanted = (TEMPERATURE, TEMPERATURE, TIME)
    hot, cool, took = (measures.interval(part, sort, above=0) for part, sort in zip(said, wanted, strict=True))
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


def _between(word: Word, first: re.Pattern[str], *others: re.Pattern[str]) -> list[Word]:
    """What stands after each of the signs of a sentence, each at its own place; none where a sign or a part is missing.

    Each sign is looked for once, from where the last one ended.
    """
    found: list[Word] = []
    sign = first.match(word)
    for after in (*others, None):
        start = sign.end() if sign else len(word)
        sign = after.search(word, start) if after else None
        text = word[start : sign.start() if sign else len(word)]
        part = text.strip()
        if not part or (after and not sign):
            return []
        found.append(Word(part, word.place_of(start + len(text) - len(text.lstrip()), len(part))))
    return found
