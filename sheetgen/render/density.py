"""How tightly a sheet is set: the roomiest way that fits, and never a page more for a few lines."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.facts.paper import PAGE_FULL

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.render.laid import LaidOut

SAME = 0.1  # mm: boxes of content that differ by less break their lines alike


def chosen(lay: Callable[[int], LaidOut], ways: int, most_pages: int) -> int:
    """Which of several ways to set a sheet, the roomiest first; only those that are asked for are laid out.

    The first stays if it fits, or if its last page is worth its paper; else the next that takes fewer pages.
    """
    first = lay(0)
    if len(first.pages) == 1 or len(first.pages) <= most_pages or _last_full(first) >= PAGE_FULL:
        return 0
    return next((way for way in range(1, ways) if len(lay(way).pages) < len(first.pages)), 0)


def alike(one: LaidOut, other: LaidOut) -> bool:
    """Whether what fits the pages of one fits those of the other."""
    a, b = one.pages[0], other.pages[0]
    return abs(a.w - b.w) < SAME and abs(a.h - b.h) < SAME


def _last_full(laid: LaidOut) -> float:
    """How full the last page is of those that are to be full."""
    short = {word.page for one in laid.marked if one.kind == "short" for word in one.words}
    short |= {picture.page for one in laid.marked if one.kind == "short" for picture in one.pictures}
    return next((page.full for page in reversed(laid.pages) if page.number not in short), 1.0)
