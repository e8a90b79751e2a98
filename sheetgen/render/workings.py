"""The last section of a sheet: how each number was worked, so that a reader can reckon it again."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from sheetgen.base.rounding import told_end
from sheetgen.base.tree import FUNCTIONS
from sheetgen.formulas.formula import ALL
from sheetgen.model.numbers import SCALES

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.figure import Figure
    from sheetgen.model.numbers import Numbers
    from sheetgen.model.worked import MaterialLine, WorkedVersion

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
BARE = re.compile(r"[\d.,]+( to [\d.,]+)?")
FINE, LARGE = 0.05, 1000.0  # what is told with more decimals, and with fewer
ENOUGH = "What must be enough however the pieces come out is worked at its usual and printed at its most."


def workings(version: WorkedVersion, numbers: Numbers) -> dict[str, Any]:
    """The tables, by part, and what a reader must know of their signs and rounding."""
    groups = list(_groups(version, numbers))
    told = [numbers.rounder.told()]
    if any(told_end(f.value, f.rounding) != f.value.usual for f in version.figures.values()):
        told.append(ENOUGH)
    return {"workings": groups, "signs": list(_signs(groups)), "rounded": " ".join(told)}


def _groups(version: WorkedVersion, numbers: Numbers) -> Iterator[dict[str, Any]]:
    groups: dict[str, list[dict[str, str]]] = {}
    for figure in version.figures.values():
        if BARE.fullmatch(figure.working):  # an input again, which stands among the sizes
            continue
        row = {"label": figure.label, "working": figure.working, **_value(figure, numbers)}
        groups.setdefault(figure.part, []).append(row)
    for part, rows in groups.items():
        yield {"part": part.replace("_", " ").capitalize() or "The project", "rows": rows}
    waits = [
        {"label": s.title, "working": s.wait_working, "exact": "", "value": numbers.time(s.wait)}
        for s in version.steps
        if s.wait_working and s.wait
    ]
    if waits:
        yield {"part": "Waits", "rows": waits}
    used = [
        {"label": line.item.name, "working": _taken(line), "exact": "", "value": numbers.amount(line)}
        for line in version.materials
        if line.net is not None and not re.fullmatch(r"[\d.]+", _taken(line))  # what is one number stands in the list
    ]
    if used:
        yield {"part": "Used up, with its allowance", "rows": used}


def _taken(line: MaterialLine) -> str:
    """How an amount is worked; of sheet metal the blanks, with what is left round them."""
    blanks = (f"{n} × ({long:.6g} × {wide:.6g})" for n, long, wide in line.blanks)
    return " + ".join(blanks) or line.working


def _signs(groups: list[dict[str, Any]]) -> Iterator[str]:
    """What the signs mean that the workings of this sheet use."""
    used = " ".join(row["working"] for group in groups for row in group["rows"])
    numeric = {one.name: f"{one.call}: {FUNCTIONS[one.name].says}" for one in ALL if one.name in FUNCTIONS}
    for sign, meaning in (SIGNS | numeric).items():
        if re.search(rf"(?<![a-z_]){sign}\(", used):
            yield meaning


def _value(figure: Figure, numbers: Numbers) -> dict[str, str]:
    """What the working comes to, and what is printed where that differs."""
    size = abs(figure.value.usual)
    exact = numbers.rounder.decimal(figure.value.usual, 6 if size < FINE else 3 if size < LARGE else 1)
    told = f"{exact} {'' if figure.unit in SCALES else figure.unit}".strip()
    same = figure.printed.words == exact and figure.printed.unit == figure.unit
    return {"exact": told, "value": told if same else figure.printed.told}
