"""What the script finds designs in: a classic script that holds data, since a page of a folder may fetch nothing.

`LIBRARY.names` are names by kind, and a design has numbers into them; `printed` are the metals as lists print them, and
`placed` has for each tool the number of its place. A design is a row, as `_row` makes it and `designOf` in
script/search.js takes it apart.
"""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from sheetgen.base.spelling import apostrophes
from sheetgen.facts.bench import TOOL_GROUPS
from sheetgen.model.project import LEVELS
from sheetgen.render.cards import sized, told

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.model.page import Entry

DATA = "designs.js"


def find_data(entries: Sequence[Entry], trouble: Mapping[str, str], times: float) -> str:
    """The file. What a word of it says is data for the script, and never markup."""
    names = _Names()
    names.levels(entries)
    names.drawer(entries)
    rows = [_row(one, names, trouble.get(one.name, ""), times) for one in entries]
    lines = (_json(row) for row in rows)
    return f"var LIBRARY={{names:{_json(names.told())},designs:[\n" + ",\n".join(lines) + "]}\n"


class _Names:
    """Names by kind, each with its number."""

    def __init__(self) -> None:
        self.known: dict[str, dict[str, int]] = {
            kind: {} for kind in ("level", "heat", "technique", "clay", "metal", "tool", "material", "part", "place")
        }
        self.places: dict[str, str] = {}
        self.printed: dict[str, str] = {}

    def number(self, kind: str, name: str) -> int:
        known = self.known[kind]
        return known.setdefault(name, len(known))

    def levels(self, entries: Sequence[Entry]) -> None:
        """The levels that there are, the easiest first."""
        there = {one.level for one in entries}
        for level in LEVELS:
            if level in there:
                self.number("level", level)

    def drawer(self, entries: Sequence[Entry]) -> None:
        """Where each tool lies, and what each metal is printed as; the places in the order of a bench."""
        for one in entries:
            self.places |= dict(zip(one.tools, one.places, strict=False)) | self.places
            self.printed |= dict(one.metals) | self.printed
        for place in (*TOOL_GROUPS, *self.places.values()):
            if place in self.places.values():
                self.number("place", place)

    def told(self) -> dict[str, list[str] | list[int]]:
        names = {kind: list(known) for kind, known in self.known.items()}
        placed = [self.known["place"].get(self.places.get(name, ""), 0) for name in names["tool"]]
        return {**names, "placed": placed, "printed": [self.printed[name] for name in names["metal"]]}


def _row(one: Entry, names: _Names, trouble: str, times: float) -> list[Any]:
    def numbers(kind: str, many: Sequence[str]) -> list[int]:
        return [names.number(kind, name) for name in many]

    kinds = {**dict.fromkeys(one.clays, "clay"), **{name: "metal" for name, _ in one.metals}}

    def wanted(need: Sequence[str], kind: str) -> list[int]:
        return numbers(kind, [name for name in need if kinds.get(name, "tool") == kind])

    shown = one.picture
    picture: list[Any] = []
    if shown:
        size = sized(shown["width"], shown["height"], times if shown["drawn"] else 1)
        picture = [shown["path"], *size, shown["webp"], int(shown["drawn"])]
    return [
        one.name,
        one.title,
        one.summary,
        " · ".join(told(one)),
        one.minutes,
        one.whole_minutes,
        one.date,
        names.number("level", one.level),
        names.number("heat", one.heat),
        numbers("technique", one.techniques),
        numbers("clay", one.clays),
        numbers("material", one.materials),
        numbers("part", one.parts),
        [[wanted(need, kind) for kind in ("clay", "metal", "tool")] for need in one.needs],
        [_chip(*chip) for chip in one.chips],
        picture,
        trouble,
        " ".join(one.codes).lower(),
    ]


def _chip(name: str, path: str, pdf: str) -> list[str]:
    """A version's name, its folder, and its sheet in that."""
    folder = path.removesuffix("index.html")
    return [name, folder, pdf.removeprefix(folder)]


def _json(told: object) -> str:
    return apostrophes(json.dumps(told, ensure_ascii=False, separators=(",", ":")))
