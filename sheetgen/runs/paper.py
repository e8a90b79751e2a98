"""The lists of a run drawn and printed: their files, and what jars in them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.draw.cut_bars import cut_bars
from sheetgen.pipeline import THEME, NotReady
from sheetgen.render.lists import Printed, lists_pdf
from sheetgen.render.pdf import NoPango
from sheetgen.render.pdf_pool import PdfPool
from sheetgen.render.theme import Theme

if TYPE_CHECKING:
    from pathlib import Path

    from sheetgen.base.rounding import Rounder
    from sheetgen.kits.run_lists import Lists
    from sheetgen.model.worked import Publisher


def on_paper(lists: Lists, studio: Publisher, rounder: Rounder, root: Path) -> Printed:
    """All lists as PDFs for the studio's papers. NotReady where nothing can be printed on this machine.

    Misplaced at a file of the library's theme that cannot be used, CannotBe for a page that cannot be printed.
    """
    try:
        pool = PdfPool(cores=1)  # so few that another process would not be ready before they are done
    except NoPango as missing:
        raise NotReady(str(missing)) from None
    theme = Theme(THEME, [root / "themes"])
    with pool:
        return lists_pdf(lists, cut_bars(lists.cuttings, rounder), studio, rounder, theme, pool)
