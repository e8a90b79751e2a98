"""How a sheet is set: in fewest pages, its first side full, and as roomy as that allows."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sheetgen.render.laid import LaidOut, LaidPage

SAME = 0.1  # mm: boxes of content that differ by less break their lines alike


def chosen(lay: Callable[[int], LaidOut], ways: int, most_pages: int, first_full: float = 0, gives: float = 1) -> int:
    """Which of several ways to set a sheet, the roomiest first; only those that are asked for are laid out.

    The fewest pages, of so many or fewer none is fewer; then the first that fills such a share of its first side,
    failing that the one that fills it most. No tighter one is tried where even the tightest, which `gives` such a share
    of each page, could save none.
    """
    ranks: dict[int, tuple[int, float]] = {}
    for way in range(ways):
        pages = lay(way).pages
        empty = 1 - pages[0].full if len(pages) > 1 and pages[0].full < first_full else 0
        ranks[way] = (max(1, most_pages, len(pages)), empty)
        if not empty and (len(pages) <= max(1, most_pages) or not _may_save(pages, gives)):
            return min(ranks, key=lambda way: ranks[way])
    return min(ranks, key=lambda way: ranks[way])


def _may_save(pages: Sequence[LaidPage], gives: float) -> bool:
    """Whether what stands on the last page might go onto the others, each of which gives such a share of itself."""
    room = sum(1 - page.full for page in pages[:-1]) + gives * len(pages)
    return pages[-1].full <= room


def alike(one: LaidOut, other: LaidOut) -> bool:
    """Whether what fits the pages of one fits those of the other."""
    a, b = one.pages[0], other.pages[0]
    return abs(a.w - b.w) < SAME and abs(a.h - b.h) < SAME
