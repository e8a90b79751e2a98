"""The project's own comparisons, both sides worked."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.place import Word
from sheetgen.model.worked import COMPARISONS, Need
from sheetgen.work.bench import PLAIN_UNITS, Workbench
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from collections.abc import Iterator


def needs(bench: Workbench) -> Iterator[Need]:
    """Every comparison that can be worked; the others are noted."""
    for check in bench.project.checks:
        try:
            yield _need(check.need, str(check.say), bench)
        except Stopped:
            continue


def holds(when: Word, bench: Workbench) -> bool:
    """Whether a step's `when` holds: a choice is an item of stock, or is not; or a comparison of numbers."""
    match = re.fullmatch(r"\s*([\w ]+?)\s+is\s+(not\s+)?([\w.-]+)\s*", when)
    try:
        if match is None:
            if equals := re.fullmatch(r"\s*([\w ]+?)\s*=\s*([a-z][\w.-]*)\s*", when):
                _no_number(equals, when, bench)
            need = _need(when, "", bench)
            return COMPARISONS[need.sign](need.left.usual, need.right.usual)
        chosen = bench.item(Word(match[1], when.place_of(match.start(1), len(match[1]))))
        wanted = bench.item(Word(match[3], when.place_of(match.start(3), len(match[3]))))
    except Stopped:
        return True
    return (chosen.id == wanted.id) != bool(match[2])


def _no_number(match: re.Match[str], when: Word, bench: Workbench) -> None:
    """What is chosen is, or is not, an item; it does not equal one."""
    if match[2] in bench.library.stock.items:
        bench.troubles.add(f"'{match[2]}' is an item and no number", when.place, f"write {match[1]} is {match[2]}")
        raise Stopped


def _need(written: Word, say: str, bench: Workbench) -> Need:
    match = re.fullmatch(r"([^<>=≤≥]+)(<=|>=|<|>|=|≤|≥)([^<>=≤≥]+)", written, re.DOTALL)
    if match is None:
        bench.troubles.add("this is no comparison", written.place, "write body.inside < 12 mm")
        raise Stopped
    sides = [Word(match[i], written.place_of(match.start(i), len(match[i]))) for i in (1, 3)]
    left, right = bench.worked(sides[0]), bench.worked(sides[1])
    if left.dimension != right.dimension:
        message = f"{left.dimension} cannot be compared with {right.dimension}"
        bench.troubles.add(message, written.place, "give both sides the same kind of unit")
        raise Stopped
    sign = {"≤": "<=", "≥": ">="}.get(match[2], match[2])
    unit = PLAIN_UNITS.get(left.dimension, "")
    return Need(left.value, sign, right.value, unit, say, written.place)
