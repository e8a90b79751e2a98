"""The format of a project's file, by the number in it: an older one is read as it reads now, a newer one refused.

`format: 1` stands at the beginning of a file; where no number is, the file is of the oldest format.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.place import Place, Word

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.place import Source
    from sheetgen.base.trouble import Troubles

    Step = Callable[[str], str]

OLDEST = 1
STEPS: tuple[Step, ...] = ()
"""Each makes of a text in one format that in the next, the first of format 1 that of format 2. It keeps comments and
order, and every line on its line, so that a trouble of an older file stands where it is told."""
WRITTEN = re.compile(r"^format:(?=\s|\Z)([^#\n]*)", re.MULTILINE)
NUMBER = re.compile(r"[0-9]{1,6}")
QUOTED = 40


def newest() -> int:
    """The format that this program writes."""
    return OLDEST + len(STEPS)


def as_now(source: Source, troubles: Troubles) -> Source | None:
    """The text of a project's file in the newest format, line for line; None, with a trouble, where it is newer."""
    found = WRITTEN.search(source.text)
    word = _word(source, found) if found else None
    number = number_of(word, troubles) if word else OLDEST
    if number is None:
        return source
    if number > newest():
        return None
    text = source.text
    for step in STEPS[number - OLDEST :]:
        text = step(text)
    return source if text == source.text else replace(source, text=text)


def _word(source: Source, found: re.Match[str]) -> Word:
    said = found[1].strip()
    before = found[1][: len(found[1]) - len(found[1].lstrip())]
    line = source.text.count("\n", 0, found.start()) + 1
    return Word(said.strip("'\""), Place(source, line, len("format:") + len(before) + 1, max(1, len(said))))


def number_of(word: Word, troubles: Troubles) -> int | None:
    """The number of a format; one that is none, or newer than the newest, is told. None where it is none."""
    if not NUMBER.fullmatch(word) or int(word) < OLDEST:
        told = f"'{word[:QUOTED]}' is not the number of a format"
        troubles.add(told, word.place, f"write format: {newest()}, or take it out")
        return None
    number = int(word)
    if number > newest():
        told = f"the file is of format {number}, and this program reads formats to {newest()}"
        helped = "it was written for a newer one: install that, or ask for the file as it was before"
        troubles.add(told, word.place, helped)
    return number


def numbered(text: str) -> str:
    """A text in the newest format with its number: in place of the one there is, or before the first field."""
    if found := WRITTEN.search(text):
        gap = found[1][len(found[1].rstrip()) :]
        return f"{text[: found.start(1)]} {newest()}{gap}{text[found.end(1) :]}"
    lines = text.split("\n")
    at = next((n for n, line in enumerate(lines) if line.strip() and not line.startswith(("#", "---"))), len(lines))
    return "\n".join([*lines[:at], f"format: {newest()}", *lines[at:]])
