"""What the teacher's sheet of a version says of a class: every number is one of its lists."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.material import Clay
from sheetgen.base.printed import NBSP
from sheetgen.kits.class_words import UNITS, pieces_told
from sheetgen.kits.kit_lines import lines_of
from sheetgen.kits.told import amount
from sheetgen.model.class_tables import Lot, Share
from sheetgen.model.in_print import in_print

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.rounding import Rounder
    from sheetgen.kits.class_run import ClassRun
    from sheetgen.kits.taken import Held, Kits, Taken


def share(run: ClassRun, kinds: Sequence[Kits], taken: Sequence[Taken], rounder: Rounder) -> Share:
    """What the kinds of set of one version have of the class."""
    every, here = len(run.pupils), sum(any(pupil.kits is kits for kits in kinds) for pupil in run.pupils)
    part = f"{here} of {every} pupils make{'s' * (here == 1)} this version." if here < every else ""
    called = kinds[0].called if kinds[0].choices else ""
    return Share(run.counted(kinds), part, called, tuple(_lots(run, kinds, taken, rounder)))


def _lots(run: ClassRun, kinds: Sequence[Kits], taken: Sequence[Taken], rounder: Rounder) -> Iterator[Lot]:
    """Of each item what is cut, together and for each set, or the class's pot, which these sets may share."""
    mine: Counter[str] = Counter()  # of each pot, how many of its sets are these
    for kits in kinds:
        mine.update(dict.fromkeys((one.item.id for one in lines_of(kits, run.kinds) if one.net is not None), kits.bags))
    for one in taken:
        name, _, detail = one.item.name.partition(", ")
        held = [each for each in one.held if any(each.kits is kits for kits in kinds)]
        for unit in dict.fromkeys(each.unit for each in held):
            yield Lot(name, detail, _together([each for each in held if each.unit == unit], unit, rounder))
        if one.way == "pot" and one.item.id in mine:
            pot = in_print(float(one.need if one.used is None else one.used), float(one.need), one.item.unit, rounder)
            used = f"about {pot.used.told} is used" if isinstance(one.item, Clay) and pot.back else ""
            whose = f"one pot for {one.bags} sets" if one.bags > mine[one.item.id] else ""
            yield Lot(name, ", ".join(filter(None, (detail, used, whose))), pot.listed)


def _together(alike: Sequence[Held], unit: str, rounder: Rounder) -> str:
    """What several sets hold together; lengths are cut one by one, and not summed."""
    if unit not in UNITS:
        return pieces_told(sum((each.together for each in alike), Fraction(0)), unit)
    sets: dict[str, int] = {}
    for each in alike:
        told = amount(each.each, unit, rounder)
        sets[told] = sets.get(told, 0) + each.kits.bags
    return "; ".join(f"{many}{NBSP}×{NBSP}{told}" for told, many in sets.items())
