"""Numbers that moved in several versions or kits, folded: a line a number, and in which it moved how."""

from __future__ import annotations

from string import ascii_uppercase
from typing import TYPE_CHECKING

from sheetgen.model.fingerprint import FIGURES, FIRING, LISTS, SAID, SIZES, TIMES

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.model.moved import Moved

WIDE = 110
"""Letters of a line of a terminal, before it is broken."""
HEADS = {
    FIGURES: "Figures", SIZES: "Sizes and counts", LISTS: "Lists", TIMES: "Times", FIRING: "Firing",
    SAID: "Numbers in texts",
}  # fmt: skip


def letters(many: int) -> list[str]:
    """A letter for each of so many, and two where there are more than letters; none for one alone."""
    found = [*ascii_uppercase, *(f"{first}{second}" for first in ascii_uppercase for second in ascii_uppercase)]
    return found[:many] if many > 1 else [""] * many


def folded(columns: Mapping[str, Sequence[Moved]]) -> Iterator[str]:
    """Numbers that differ, below the head of each group; `columns` has them by the letter of whose they are.

    A number that moved alike in all of them has no letters.
    """
    rows: dict[str, dict[str, dict[tuple[str, str], list[str]]]] = {}
    for letter, moved in columns.items():
        for row in moved:
            rows.setdefault(row.group, {}).setdefault(named(row), {}).setdefault((row.was, row.now), []).append(letter)
    for group, head in HEADS.items():
        if group in rows:
            yield f"    {head}"
            for name, ways in rows[group].items():
                told = [f"{of(whose, len(columns))}{ends(*both)}" for both, whose in ways.items()]
                yield from _line(name, told)


def _line(name: str, told: Sequence[str]) -> Iterator[str]:
    """A number in one line, or where that is long in several, broken between two ways in which it moved."""
    line = f"      {name}: {told[0]}"
    for one in told[1:]:
        if len(line) + len(one) > WIDE:
            yield f"{line};"
            line = f"        {one}"
        else:
            line = f"{line}; {one}"
    yield line


def of(whose: Sequence[str], all_of_them: int) -> str:
    """The letters of whose something is; none where it is of all."""
    return "" if len(whose) == all_of_them else f"{' '.join(whose)} "


def number_told(row: Moved) -> str:
    """A number by its name, with what it was and is."""
    return f"{named(row)}: {ends(row.was, row.now)}"


def named(row: Moved) -> str:
    """What a number is called, a figure with the name by which its design knows it."""
    return f"{row.label} ({row.key})" if row.group == FIGURES else row.label


def ends(was: str, now: str) -> str:
    """Was and is; what there was not is new, and what there is no more is gone."""
    if not was:
        return f"new, {now}"
    return f"was {was}, is {now}" if now else f"was {was}, is gone"
