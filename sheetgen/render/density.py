"""How tightly a sheet is set: the roomiest way that fits, or that takes fewest pages."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.render.laid import LaidOut

SAME = 0.1  # mm: boxes of content that differ by less break their lines alike


def chosen(lay: Callable[[int], LaidOut], ways: int, most_pages: int) -> int:
    """Which of several ways to set a sheet, the roomiest first; only those that are asked for are laid out.

    The first that fits so many pages; where none does, the first of those that take fewest.
    """
    pages: dict[int, int] = {}
    for way in range(ways):
        pages[way] = len(lay(way).pages)
        if pages[way] <= max(1, most_pages):
            return way
    return min(pages, key=lambda way: pages[way])


def alike(one: LaidOut, other: LaidOut) -> bool:
    """Whether what fits the pages of one fits those of the other."""
    a, b = one.pages[0], other.pages[0]
    return abs(a.w - b.w) < SAME and abs(a.h - b.h) < SAME
