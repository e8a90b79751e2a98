"""The lists of a run drawn and printed: their files, and what jars in them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.draw import cut_bars as drawn
from sheetgen.kits import cut_paper, paper
from sheetgen.render.lists import Printed, as_html, lists_pdf

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sheetgen.kits.run_lists import Lists
    from sheetgen.render.pdf_pool import PdfPool
    from sheetgen.render.theme import Theme


def views(lists: Lists) -> dict[str, object]:
    """Each list by its name, as a theme gets it."""
    bars = drawn.cut_bars(cut_paper.cut_bars(lists.cuttings, lists.rounder))
    return dict(paper.on_paper(lists, as_html(bars)))


def on_paper(lists: Lists, papers: Sequence[str], theme: Theme, pool: PdfPool) -> Callable[[], Printed]:
    """All lists as PDFs, on each of the papers: begun to be printed, and what gives them.

    That raises Misplaced at a file of the library's theme that cannot be used, CannotBe for a page that cannot be
    printed.
    """
    return lists_pdf(views(lists), papers, theme, pool)
