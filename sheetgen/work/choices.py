"""The choices of one version: what the project says, what the version changes, what one decides for another."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.base.place import Word
from sheetgen.base.spelling import nearest, plain, suggest

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from sheetgen.base.material import Item
    from sheetgen.base.trouble import Troubles

BY = "by"
DECIMAL_COMMA = re.compile(r"(?<=[0-9]),(?=[0-9])")
NUMBER = re.compile(r"[\d.,]{1,20}")
MEASURE = re.compile(r"[\d.,]{1,20}\s?[^\W\d_]{1,20}")
OPEN = ""
"""What a choice is that could not be decided: told once, and nothing is worked from it."""
ALIKE = 20
"""So many items of stock a help names."""


def known_choices(known: Sequence[str], changes: Iterable[Mapping[str, Word]], troubles: Troubles) -> None:
    """Tell each name that is changed and that is no choice of the project, with all that there are."""
    plain_known = set(map(plain, known))
    for change in changes:
        for key in change:
            if plain(key) not in plain_known:
                place = key.place if isinstance(key, Word) else None
                troubles.add(f"'{key}' is not a choice of this project", place, _all_of(key, known))


def _all_of(word: str, known: Iterable[str]) -> str:
    """The choices there are, and the one that is most like a word: a word like none of them may be meant as any."""
    known = list(known)
    near = nearest(word, known)
    return " ".join((*((f"did you mean '{near}'?",) if near else ()), suggest("", known)))


def chosen(
    written: Mapping[Word, Word | dict[Word, Word]],
    changed: Mapping[str, Word],
    items: Mapping[str, Item],
    troubles: Troubles,
) -> dict[str, Word]:
    """Each choice by its plain name. What is changed by name goes before what another choice decides.

    `items` are those of stock, by id: what may be chosen where a choice decides nothing.
    """
    found = {plain(key): value for key, value in written.items() if isinstance(value, Word)}
    bare = [key for key, value in changed.items() if _bare(value, found.get(plain(key)))]
    for key in bare:
        troubles.add(
            f"'{key}' is a bare number", changed[key].place, f"write it with its unit, such as {found[plain(key)]}"
        )
    found |= {plain(key): Word(OPEN, value.place) if key in bare else value for key, value in changed.items()}
    tables = {plain(key): rows for key, rows in written.items() if not isinstance(rows, Word)}
    for key, rows in written.items():
        if not isinstance(rows, Word) and plain(key) not in found:
            found[plain(key)] = _decided(key, tables, found, items, troubles)
    return {plain(key): found[plain(key)] for key in (*written, *changed) if plain(key) in found}


def _bare(value: Word, own: Word | None) -> bool:
    """Whether a number has no unit where the design's own value has one: told before all that is worked from it."""
    return own is not None and bool(NUMBER.fullmatch(value.strip()) and MEASURE.fullmatch(own.strip()))


def _decided(
    key: Word,
    tables: Mapping[str, Mapping[Word, Word]],
    found: Mapping[str, Word],
    items: Mapping[str, Item],
    troubles: Troubles,
) -> Word:
    """The row that another choice points to; open, with its trouble, where there is none."""
    rows = tables[plain(key)]
    by = next((value for name, value in rows.items() if name == BY), None)
    if by is None:
        troubles.add(f"{key}: by which choice it is decided is missing", key.place, f"add {BY}: and another choice")
    elif plain(by) in tables:
        helped = "let it be decided by a choice that is given outright"
        troubles.add(f"{key}: '{by}' is decided by another choice itself", by.place, helped)
    elif (asked := found.get(plain(by))) is None:
        troubles.add(f"{key}: '{by}' is not a choice of this project", by.place, _all_of(by, map(str, found)))
    else:
        known = {_size(name): value for name, value in rows.items() if name != BY}
        if _size(asked) in known:
            return known[_size(asked)]
        told = ", ".join(str(name) for name in rows if name != BY)
        row = f"{key}: {{by: {by}}} of the design needs a row for it, {asked}: …"
        other = f", or choose {key} too{_alike(known.values(), items)}; it has rows for {told}"
        helped = f"{row}{other}" if known else row
        troubles.add(f"{key} has no row for the {by} '{asked}'", asked.place, helped)
    return Word(OPEN, key.place)


def _alike(values: Iterable[Word], items: Mapping[str, Item]) -> str:
    """The items of stock of the same kind as those that the rows name; nothing where they name none."""
    by_plain = {plain(name): item for name, item in items.items()}
    kinds = {_kind(by_plain[plain(value)]) for value in values if plain(value) in by_plain}
    alike = [name for name, item in items.items() if _kind(item) in kinds]
    return f": {', '.join(alike[:ALIKE])}{', …' if len(alike) > ALIKE else ''}" if alike else ""


def _kind(item: Item) -> tuple[object, ...]:
    return type(item), getattr(item, "kind", ""), item.acts_as


def _size(word: str) -> str:
    """A row's name with a decimal point, as a spreadsheet may have a comma: US 8,5."""
    return DECIMAL_COMMA.sub(".", plain(word))
