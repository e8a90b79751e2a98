"""Cells of an order to what they mean: a count, a day, choices, a list. What cannot be is a `CannotRead`.

A cell is plain text here, and a part of it is where it begins and ends: most lines of a run are written alike.
"""

from __future__ import annotations

import datetime as dt
import re
from functools import lru_cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator


Part = tuple[int, int]
MOST_KITS = 10_000
COUNT = re.compile(r"([0-9]{1,6})(?:[.,]0{1,2})?")  # 12,00: a column that shows two decimals
GROUPED = re.compile(r"[0-9]{1,3}(?:[.,' ][0-9]{3})+")
COUNTED = re.compile(r"([0-9]{1,5})\s*(?:x|×|[^\W\d_]+\.?)", re.IGNORECASE)
YEARS = range(2000, 2100)
ISO = re.compile(r"([0-9]{4})-([0-9]{1,2})-([0-9]{1,2})(?:[T ][0-9]{2}:[0-9]{2}(?::[0-9]{2}(?:\.[0-9]+)?)?)?")
DOTTED = re.compile(r"([0-9]{1,2})\. ?([0-9]{1,2})\. ?([0-9]{4})")
SHORT = re.compile(r"([0-9]{1,2})\. ?([0-9]{1,2})\. ?([0-9]{2})")
SLASHED = re.compile(r"([0-9]{1,2})[/-]([0-9]{1,2})[/-]([0-9]{4})")
WRITE_DAY = "write it as 2026-12-01 or 1.12.2026"
WRITE_CHOICE = "write name=value with semicolons between, such as size=US 8; length=185 mm"


class CannotRead(ValueError):
    """Why a cell means nothing, what would help, and the part to mend, else all of it.

    In the message {it} stands for that part.
    """

    def __init__(self, message: str, helped: str, part: Part | None = None) -> None:
        super().__init__(message)
        self.message = message
        self.helped = helped
        self.part = part


@lru_cache(4096)
def count(text: str) -> int:
    """How many kits: whole, 1 or more."""
    if not text:
        raise CannotRead("it is not said how many", "fill in 'count' with a whole number, 1 or more")
    whole = COUNT.fullmatch(text)
    if not whole:
        raise CannotRead("{it} is not a whole number of kits", _count_help(text))
    number = int(whole[1])
    if number == 0:
        raise CannotRead("{it} kits are none to send", "write 1 or more, or take the line out")
    if number > MOST_KITS:
        helped = f"at most {MOST_KITS} on one line; does it belong to another column?"
        raise CannotRead("{it} kits are more than anybody packs", helped)
    return number


def _count_help(text: str) -> str:
    if GROUPED.fullmatch(text):
        return f"write {re.sub('[^0-9]', '', text)}, or 1 if the sign is a decimal one"
    if counted := COUNTED.fullmatch(text):
        return f"write {int(counted[1])}"
    return "write 1, 2, 3 …"


@lru_cache(4096)
def due(text: str) -> dt.date | None:
    """The day by which an order is due: by ISO 8601, or day.month.year."""
    if not text:
        return None
    if found := ISO.fullmatch(text):
        return _day(*map(int, found.groups()))
    if found := DOTTED.fullmatch(text):
        return _day(*map(int, reversed(found.groups())))
    helped = WRITE_DAY
    if found := SLASHED.fullmatch(text):
        first, second, year = map(int, found.groups())
        ways = [one for one in (_whole(year, second, first), _whole(year, first, second)) if one]
        if len(ways) > 1 and first != second:
            raise CannotRead("{it} may be two days", f"write {ways[0]} or {ways[1]}")
        helped = f"write {ways[0]}" if ways else WRITE_DAY
    elif found := SHORT.fullmatch(text):
        day = _whole(2000 + int(found[3]), int(found[2]), int(found[1]))
        helped = f"write {day}" if day else WRITE_DAY
    elif re.fullmatch(r"[0-9]{5}", text):
        raise CannotRead("{it} is a day as a bare number", f"format the cell as a date, or {WRITE_DAY}")
    raise CannotRead("{it} is not a date", helped)


def _whole(year: int, month: int, day: int) -> dt.date | None:
    try:
        return dt.date(year, month, day) if year in YEARS else None
    except ValueError:
        return None


def _day(year: int, month: int, day: int) -> dt.date:
    found = _whole(year, month, day)
    if found is None:
        raise CannotRead("there is no day {it}", WRITE_DAY)
    return found


@lru_cache(4096)
def choices(text: str) -> tuple[tuple[Part, Part], ...]:
    """Where each choice's name and what is chosen stand.

    Semicolons or line breaks are between them, since a comma may be a decimal one.
    """
    found: dict[str, tuple[Part, Part]] = {}
    for part in _parts(text, ";\n"):
        start, end = part
        signs = text.count("=", start, end)
        if signs != 1:
            raise CannotRead(f"the choice {{it}} has {'two' if signs else 'no'} '='", WRITE_CHOICE, part)
        at = text.index("=", start, end)
        name, value = _bare(text, start, at), _bare(text, at + 1, end)
        if name[0] == name[1] or value[0] == value[1]:
            raise CannotRead(
                f"the choice {{it}} lacks its {'name' if name[0] == name[1] else 'value'}", WRITE_CHOICE, part
            )
        key = text[slice(*name)].casefold()
        if key in found:
            raise CannotRead("the choice {it} is made twice", "keep one of the two", name)
        found[key] = name, value
    return tuple(found.values())


@lru_cache(4096)
def listed(text: str) -> tuple[Part, ...]:
    """Where the things of a list stand, each once: semicolons, commas or line breaks are between them."""
    found: dict[str, Part] = {}
    for part in _parts(text, ";,\n"):
        found.setdefault(text[slice(*part)].casefold(), part)
    return tuple(found.values())


def _parts(text: str, signs: str) -> Iterator[Part]:
    """What stands between signs, white space around it left out."""
    for found in re.finditer(f"[^{signs}]+", text):
        part = _bare(text, *found.span())
        if part[0] < part[1]:
            yield part


def _bare(text: str, start: int, end: int) -> Part:
    part = text[start:end]
    begin = start + len(part) - len(part.lstrip())
    return begin, max(begin, start + len(part.rstrip()))
