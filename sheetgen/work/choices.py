"""The choices of one version: what the project says, what the version changes, what one decides for another."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.place import Word
from sheetgen.base.spelling import plain, suggest

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.base.trouble import Troubles

BY = "by"
DECIMAL_COMMA = re.compile(r"(?<=[0-9]),(?=[0-9])")
OPEN = ""
"""What a choice is that could not be decided: told once, and nothing is worked from it."""


def chosen(
    written: Mapping[Word, Word | dict[Word, Word]], changed: Mapping[str, Word], troubles: Troubles
) -> dict[str, Word]:
    """Each choice by its plain name. What is changed by name goes before what another choice decides."""
    found = {plain(key): value for key, value in written.items() if isinstance(value, Word)}
    found |= {plain(key): value for key, value in changed.items()}
    tables = {plain(key): rows for key, rows in written.items() if not isinstance(rows, Word)}
    for key, rows in written.items():
        if not isinstance(rows, Word) and plain(key) not in found:
            found[plain(key)] = _decided(key, rows, found, tables, troubles)
    return {plain(key): found[plain(key)] for key in (*written, *changed) if plain(key) in found}


def _decided(
    key: Word,
    rows: Mapping[Word, Word],
    found: Mapping[str, Word],
    tables: Mapping[str, Mapping[Word, Word]],
    troubles: Troubles,
) -> Word:
    """The row that another choice points to; open, with its trouble, where there is none."""
    by = next((value for name, value in rows.items() if name == BY), None)
    if by is None:
        troubles.add(f"{key}: by which choice it is decided is missing", key.place, f"add {BY}: and another choice")
    elif plain(by) in tables:
        helped = "let it be decided by a choice that is given outright"
        troubles.add(f"{key}: '{by}' is decided by another choice itself", by.place, helped)
    elif (asked := found.get(plain(by))) is None:
        troubles.add(f"{key}: '{by}' is not a choice of this project", by.place, suggest(by, map(str, found)))
    else:
        known = {_size(name): value for name, value in rows.items() if name != BY}
        if _size(asked) in known:
            return known[_size(asked)]
        told = ", ".join(str(name) for name in rows if name != BY)
        row = f"add a row for it, {asked}: …, or choose {key} too; "
        helped = f"{row}there are {told}" if known else f"add a row for it: {asked}: …"
        troubles.add(f"{key} has no row for the {by} '{asked}'", asked.place, helped)
    return Word(OPEN, key.place)


def _size(word: str) -> str:
    """A row's name with a decimal point, as a spreadsheet may have a comma: US 8,5."""
    return DECIMAL_COMMA.sub(".", plain(word))
