"""What a run prints by: a theme and printers; and its lists as files, for a spreadsheet and on paper."""

from __future__ import annotations

from contextlib import contextmanager
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.spelling import counted
from sheetgen.pipeline import THEME, NotReady
from sheetgen.progress import Progress
from sheetgen.publish.tables import csv_bytes
from sheetgen.publish.workbook import xlsx_bytes
from sheetgen.render.pdf import NoPango
from sheetgen.render.pdf_pool import PdfPool
from sheetgen.render.theme import Theme
from sheetgen.runs.paper import on_paper

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence
    from pathlib import Path

    from sheetgen.base.trouble import Troubles
    from sheetgen.kits.run_lists import Lists
    from sheetgen.model.sheets import Sheet
    from sheetgen.render.job import Prints

MOST_ROWS = 100_000
"""Of a list in a workbook. No program opens more than 1,048,576, and each takes its time to be written and opened."""


class Press(NamedTuple):
    """The library's theme, what prints, what prints the sheets that lie in kits, and who is told how far it is."""

    theme: Theme
    pool: PdfPool
    sheets: Prints
    progress: Progress


@contextmanager
def press(root: Path, cores: int | None = None, progress: Progress | None = None) -> Iterator[Press]:
    """Printers for a while. NotReady where pages cannot be made on this machine."""
    with PdfPool(cores) as pool:
        try:
            pool.ready()
        except NoPango as missing:
            raise NotReady(str(missing)) from None
        yield Press(Theme(THEME, [root / "themes"]), pool, pool, progress or Progress())


def list_files(
    lists: Lists, by: Press, more: Sequence[Sheet] = (), papers: Sequence[str] = ()
) -> Callable[[Troubles], tuple[dict[str, bytes], list[str]]]:
    """Every list as CSV, together with `more` as a workbook, and on paper; and how many pages each has, in lines.

    What is on paper is begun, and may be printed while something else is made; what is returned gives all of it, and
    tells what jars in a layout as a warning. Misplaced and CannotBe as for `on_paper`.
    A list too long for a workbook is a CSV alone, and told. `papers` are those of the studio where none is named.
    """
    printing = on_paper(lists, papers or lists.studio.paper, by.theme, by.pool)
    sheets = [*lists.sheets, *more]
    files = {f"{sheet.name.replace(' ', '-')}.csv": csv_bytes(sheet) for sheet in sheets}
    long = [f"{one.name}: {len(one.rows)} rows, as CSV alone: too many for lists.xlsx" for one in sheets if _long(one)]
    files["lists.xlsx"] = xlsx_bytes([sheet for sheet in sheets if not _long(sheet)])

    def made(troubles: Troubles) -> tuple[dict[str, bytes], list[str]]:
        paper = printing()
        for doubt in paper.doubts:
            troubles.add(str(doubt), None, severity="warning")
        told = [f"{name}: {counted(many, 'page')}" for name, many in paper.pages.items()]
        return files | paper.files, told + long

    return made


def _long(sheet: Sheet) -> bool:
    return len(sheet.rows) > MOST_ROWS
