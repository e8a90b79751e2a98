"""What a person types of a run: so many of a design, or of one of its versions by its printed name."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

from sheetgen.base.trouble import CannotBe

WRITTEN = 'write buoy-drops=12, or tideline-band:"US 8"=3'
WHICH = 'write buoy-drops, or tideline-band:"US 8"'
TABLES = (".csv", ".tsv", ".txt", ".xlsx")
MOST = 100_000  # kits of one version in a run: more is a slip of the finger


@dataclass(frozen=True, slots=True)
class Want:
    """So many of a design's version; no version: the main one."""

    design: str
    version: str
    count: int


def is_table(word: str) -> bool:
    """Whether a word is the name of a table, and of no design: by its ending, or for a file is there."""
    return Path(word).suffix.lower() in TABLES or Path(word).is_file()


def read_which(word: str) -> Want:
    """A word such as `tideline-band:US 8`: one of it. CannotBe for one with a count, or with signs of no text."""
    design, colon, version = (part.strip() for part in word.partition(":"))
    if not word.isprintable():
        raise CannotBe(f"{word!a} has signs that cannot be printed", help=WHICH, field="design")
    if "=" in word:
        told = f"'{word}' says how many, and a class has as many as its class plan"
        raise CannotBe(told, help="write people: 8 under class, in the project or the studio", field="count")
    if not design or (colon and not version):
        raise CannotBe(f"'{word}' does not say which", help=WHICH, field="design")
    return Want(design, version, 1)


def read_want(word: str) -> Want:
    """A word such as `tideline-band:US 8=3`. CannotBe for one that is not written so, or for a count of 0 or 1.5."""
    told, sign, many = word.rpartition("=")
    design, colon, version = told.partition(":")
    design, version, many = design.strip(), version.strip(), many.strip()
    if not word.isprintable():
        raise CannotBe(f"{word!a} has signs that cannot be printed", help=WRITTEN, field="count")
    if not sign or not design or not many or (colon and not version):
        raise CannotBe(f"'{word}' does not say how many of what", help=WRITTEN, field="count")
    if not re.fullmatch(r"[0-9]{1,9}", many) or not 1 <= int(many) <= MOST:
        raise CannotBe(f"'{word}': a count cannot be {many}", help=f"a whole number from 1 to {MOST}", field="count")
    return Want(design, version, int(many))
