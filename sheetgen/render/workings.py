"""The workings of the teacher's sheet: how each number was worked, so that a reader can reckon it again."""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING

from sheetgen.base.rounding import told_end
from sheetgen.base.tree import FUNCTIONS
from sheetgen.formulas.formula import ALL
from sheetgen.model.amounts import amounts, by_slab, worked
from sheetgen.model.view import Working, Workings

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from sheetgen.base.figure import Figure
    from sheetgen.base.material import Item
    from sheetgen.model.drawing import SlabLayout
    from sheetgen.model.numbers import Numbers
    from sheetgen.model.worked import WorkedVersion

SIGNS = {
    "up": "up( ) is to the whole number above, up(a, b) to the whole number of b",
    "down": "down( ) to the whole number below, down(a, b) to the whole number of b",
    "round": "round(a, b) a to the nearest whole number of b",
    "nearest": "nearest(a, b, c) is the one of b, c that is nearest to a",
    "atleast": "atleast(a, b, c) the smallest of b, c that is not under a",
    "max": "max( ) the largest of several",
    "min": "min( ) the smallest",
    "sin": "sin( ), cos( ) are of an angle in radians",
    "asin": "asin( ) the angle in radians of which it is the sine",
    "acos": "acos( ) the angle in radians of which it is the cosine",
    "atan": "atan( ) the angle in radians of which it is the tangent",
    "ln": "ln( ) the natural logarithm",
}
NUMBER = re.compile(r"[\d.,]*\d")
NEUTRAL = re.compile(r"[\d.,+−×÷()\s]+")  # signs that may leave a number as it is
SIX_FIGURES = 1e-5  # a working prints six
BARE = re.compile(r"[\d.,]+( to [\d.,]+)?")
TO_HAVE = "To have, with its allowance"
SLAB = "Of clay to have, the last number is what the largest slab weighs, with the pieces that are cut before it."
ENOUGH = "What must be enough however the pieces come out is worked at its usual and printed at its most."


def workings(
    version: WorkedVersion, numbers: Numbers, slabs: Sequence[SlabLayout], named: Callable[[Item], str]
) -> tuple[Workings, ...]:
    """The workings part by part, then those of the waits and of what to have, each item as the sheet has it named.

    None that only repeats an input.
    """
    groups: dict[str, list[Working]] = {}
    for figure in version.figures.values():
        if not _repeats(figure):
            row = Working(figure.label, figure.working, figure.printed.told)
            groups.setdefault(figure.part.replace("_", " ").capitalize() or "The project", []).append(row)
    groups["Waits"] = [
        Working(s.title, s.wait_working, numbers.time(s.wait)) for s in version.steps if s.wait_working and s.wait
    ]
    groups[TO_HAVE] = [
        Working(named(line.item), working, told.listed)
        for line in version.materials
        if (told := amounts(line, slabs, numbers.rounder)) is not None
        and not re.fullmatch(r"[\d.]+", working := worked(line, slabs))  # what is one number stands in the list
    ]
    return tuple(Workings(part, tuple(rows)) for part, rows in groups.items() if rows)


def explained(groups: Sequence[Workings], version: WorkedVersion, numbers: Numbers, slabs: Sequence[SlabLayout]) -> str:
    """How the numbers of workings are rounded, and what the signs in them mean."""
    told = [numbers.rounder.told()]
    if any(told_end(f.value, f.rounding) != f.value.usual for f in version.figures.values()):
        told.append(ENOUGH)
    if any(by_slab(line, slabs) for line in version.materials):
        told.append(SLAB)
    signs = "; ".join(_signs(groups))
    if signs:
        told.append(f"Signs: {signs}.")
    return " ".join(told)


def _repeats(figure: Figure) -> bool:
    """Whether a working only says a number again: the number itself, or with what changes nothing (8 ÷ (1 + 0))."""
    if BARE.fullmatch(figure.working):
        return True
    if not NEUTRAL.fullmatch(figure.working) or not figure.value.exact:
        return False
    others = [float(one.replace(",", ".")) for one in NUMBER.findall(figure.working) if one not in {"0", "1"}]
    return len(others) == 1 and math.isclose(others[0], figure.value.usual, rel_tol=SIX_FIGURES)


def _signs(groups: Sequence[Workings]) -> Iterator[str]:
    """What the signs mean that these workings use."""
    used = " ".join(row.working for group in groups for row in group.rows)
    numeric = {one.name: f"{one.call}: {FUNCTIONS[one.name].says}" for one in ALL if one.name in FUNCTIONS}
    for sign, meaning in (SIGNS | numeric).items():
        if re.search(rf"(?<![a-z_]){sign}\(", used):
            yield meaning
