"""What the script finds designs in: a classic script that holds data, since a page of a folder may fetch nothing.

`LIBRARY.names` are names by kind, and a design has numbers into them. It is a row, as `_row` makes it and `design` in
script/search.js takes it apart.
"""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from sheetgen.base.spelling import apostrophes
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
    rows = [_row(one, names, trouble.get(one.name, ""), times) for one in entries]
    lines = (_json(row) for row in rows)
    return f"var LIBRARY={{names:{_json(names.told())},designs:[\n" + ",\n".join(lines) + "]}\n"


class _Names:
    """Names by kind, each with its number."""

    def __init__(self) -> None:
        self.known: dict[str, dict[str, int]] = {
            kind: {} for kind in ("level", "heat", "technique", "clay", "tool", "material", "part")
        }

    def number(self, kind: str, name: str) -> int:
        known = self.known[kind]
        return known.setdefault(name, len(known))

    def levels(self, entries: Sequence[Entry]) -> None:
        """The levels that there are, the easiest first."""
        there = {one.level for one in entries}
        for level in LEVELS:
            if level in there:
                self.number("level", level)

    def told(self) -> dict[str, list[str]]:
        return {kind: list(known) for kind, known in self.known.items()}


def _row(one: Entry, names: _Names, trouble: str, times: float) -> list[Any]:
    def numbers(kind: str, many: Sequence[str]) -> list[int]:
        return [names.number(kind, name) for name in many]

    clays = set(one.clays)
    wanted = [
        [numbers("clay", [n for n in need if n in clays]), numbers("tool", [n for n in need if n not in clays])]
        for need in one.needs
    ]
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
        wanted,
        one.chips,
        picture,
        trouble,
    ]


def _json(told: object) -> str:
    return apostrophes(json.dumps(told, ensure_ascii=False, separators=(",", ":")))
