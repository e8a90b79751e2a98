"""Which list what lies in the private folder was made of: another of the same name must not take its place unseen."""

from __future__ import annotations

from pathlib import Path

from sheetgen.base.paths import leads_out
from sheetgen.publish.plain_file import held_in

LONGEST = 10_000
"""Bytes of the name of a list at most."""


def is_of(table: Path) -> bytes:
    """What is kept beside what was made of a list."""
    return f"{table.resolve()}\n".encode()


def another(private: Path, kept: str, table: Path) -> Path | None:
    """The list that was kept there, where it is another and still there: one that was moved is the same.

    Nothing is read by a link that leads out of the private folder.
    """
    path = private / kept
    if leads_out(path, private):
        return None
    try:
        before = Path((held_in(path, LONGEST) or b"").decode().removesuffix("\n"))
        return before if before != table.resolve() and before.is_file() else None
    except (OSError, ValueError):
        return None
