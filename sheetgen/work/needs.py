"""The project's own comparisons, both sides worked."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.place import Word
from sheetgen.model.worked import Need
from sheetgen.work.bench import PLAIN_UNITS, Stopped, Workbench

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.model.project import Check


def needs(bench: Workbench) -> Iterator[Need]:
    """Every comparison that can be worked; the others are noted."""
    for check in bench.project.checks:
        try:
            yield _need(check, bench)
        except Stopped:
            continue


def _need(check: Check, bench: Workbench) -> Need:
    match = re.fullmatch(r"([^<>=≤≥]+)(<=|>=|<|>|=|≤|≥)([^<>=≤≥]+)", check.need, re.DOTALL)
    if match is None:
        bench.troubles.add("this is no comparison", check.need.place, "write body.inside < 12 mm")
        raise Stopped
    sides = [Word(match[i], check.need.place_of(match.start(i), len(match[i]))) for i in (1, 3)]
    left, right = bench.worked(sides[0]), bench.worked(sides[1])
    if left.dimension != right.dimension:
        message = f"{left.dimension} cannot be compared with {right.dimension}"
        bench.troubles.add(message, check.need.place, "give both sides the same kind of unit")
        raise Stopped
    sign = {"≤": "<=", "≥": ">="}.get(match[2], match[2])
    unit = PLAIN_UNITS.get(left.dimension, "")
    return Need(left.value, sign, right.value, unit, str(check.say), check.need.place)
