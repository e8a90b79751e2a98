"""The lists of a run to PDFs: one a list and paper, for each is handed to another table."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, NamedTuple

from markupsafe import Markup

from sheetgen.model.view import Html
from sheetgen.render.job import Job
from sheetgen.render.ordered import PAPERS, paper_of, sound
from sheetgen.render.pages import sheet_path

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping, Sequence

    from sheetgen.model.drawing import Drawing
    from sheetgen.render.job import Doubt, Printout
    from sheetgen.render.pdf_pool import PdfPool
    from sheetgen.render.theme import Theme


class Printed(NamedTuple):
    """The files by their names, the pages of each, and what jars in their layout."""

    files: dict[str, bytes]
    pages: dict[str, int]
    doubts: list[Doubt]


def lists_pdf(lists: Mapping[str, object], papers: Sequence[str], theme: Theme, pool: PdfPool) -> Callable[[], Printed]:
    """Each list, by its name the data of its template, on each paper: begun to be printed, and what gives them.

    That raises Misplaced at a theme's file that cannot be used, CannotBe for a page that cannot be printed.
    """
    jobs = [
        Job(
            (theme.page(f"{name}.html.j2", sheet=one, density=""),),
            tuple(paper_of(sheet_path(name, paper), PAPERS[paper], "") for paper in papers),
        )
        for name, one in lists.items()
    ]
    return partial(_printed, list(lists), jobs, pool.printed(jobs), theme)


def _printed(names: Sequence[str], jobs: Sequence[Job], each: Iterable[list[Printout]], theme: Theme) -> Printed:
    found = Printed({}, {}, [])
    for name, job, outs in zip(names, jobs, each, strict=True):
        for paper, out in zip(job.papers, outs, strict=True):
            sound(out.faults, theme, f"{name}.html.j2")
            found.files[paper.name], found.pages[paper.name] = out.pdf, out.pages
        found.doubts.extend(outs[0].warnings)  # both papers have one content box
    return found


def as_html(drawings: Iterable[Iterable[Drawing | None]]) -> list[list[Html]]:
    """Drawings for a template; nothing where there is none."""
    return [[Html(Markup(one.svg if one else "")) for one in each] for each in drawings]  # noqa: S704 - our own pen
