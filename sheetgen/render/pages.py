"""A worked project to the files of its folder: web page, handouts and figures.json; and the library's index."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from markupsafe import Markup

from sheetgen.base.spelling import slug
from sheetgen.base.trouble import Misplaced, Trouble
from sheetgen.model.numbers import Numbers
from sheetgen.model.page import Entry, Page
from sheetgen.render import words
from sheetgen.render.facts import facts_page
from sheetgen.render.figures import figures_json
from sheetgen.render.hazards import checked
from sheetgen.render.job import Job, Paper
from sheetgen.render.musts import MEND
from sheetgen.render.pdf import font_css, font_files
from sheetgen.render.sheets import cutting_paths, template_pages
from sheetgen.render.view import SO_FAR, View

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from sheetgen.model.drawing import Drawings
    from sheetgen.model.worked import Publisher, Worked
    from sheetgen.render.job import Doubt, Printout
    from sheetgen.render.pdf_pool import PdfPool
    from sheetgen.render.theme import Theme

PAPER_SIZES = {"A4": "210mm 297mm", "Letter": "8.5in 11in"}
FONT_FOLDER = "fonts"


class Rendered(NamedTuple):
    """The files of a project, and what jars in the layout of its sheets."""

    pages: list[Page]
    doubts: list[Doubt]


def render(
    worked: Worked,
    drawings: Mapping[str, Drawings],
    theme: Theme,
    pool: PdfPool,
    tell: Callable[[str], None] = lambda _said: None,
) -> Rendered:
    """Every file of the project's folder, paths relative to the build folder, and what jars in their layout.

    Misplaced at the theme's file where a sheet leaves out, hides or alters what must be printed.
    """
    pages: list[Page] = []
    jobs: dict[str, Job] = {}
    for name, version in worked.versions.items():
        main = name == worked.main.name
        folder = worked.name + ("" if main else f"/{slug(name)}")
        tell(f"{worked.name}: {version.title}" if len(worked.versions) > 1 else worked.name)
        values = View(worked, version, drawings[name]).values()
        home = "../" if main else "../../"
        sheets = [{"path": sheet_path(paper), "label": f"Handout, {paper} (PDF)"} for paper in worked.studio.paper]
        html = theme.page(
            "project.html.j2",
            **values,
            home=home, up="" if main else "../", sheets=sheets, faces=_faces(home),
        )  # fmt: skip
        html = checked(html, version.steps, theme, "project.html.j2")
        pages.append(Page(f"{folder}/index.html", html.encode()))
        for part, path in cutting_paths(drawings[name].cutting).items():
            pages.append(Page(f"{folder}/{path}", drawings[name].cutting[part].encode()))
        for paper in worked.studio.paper:
            templates = template_pages(drawings[name].pages.get(paper, ()))
            html = theme.page("handout.html.j2", **values, pages=templates, paper_size=PAPER_SIZES[paper])
            html = checked(html, version.steps, theme, "handout.html.j2")
            path = f"{folder}/{sheet_path(paper)}"
            jobs[path] = Job((html,), (Paper(path, revision=worked.revision),))
    doubts: list[Doubt] = []
    for path, [printout] in zip(jobs, pool.printed(list(jobs.values())), strict=True):
        pages.append(Page(path, _sound(printout, theme)))
        doubts += printout.warnings
    pages.append(Page(f"{worked.name}/figures.json", figures_json(worked).encode()))
    return Rendered(pages, doubts)


def _sound(printout: Printout, theme: Theme) -> bytes:
    """A PDF that may be published."""
    if printout.faults:
        more = f", and {len(printout.faults) - 1} more of this kind" if len(printout.faults) > 1 else ""
        raise Misplaced(Trouble(printout.faults[0] + more, theme.place("handout.html.j2"), MEND))
    return printout.pdf


def sheet_path(paper: str) -> str:
    """The handout's file name for a paper."""
    return f"handout-{paper.lower()}.pdf"


def _faces(home: str) -> Markup:
    return Markup(font_css(f"{home}{FONT_FOLDER}/"))  # noqa: S704 - our own text


def entry(worked: Worked) -> Entry:
    """What the index says of a project."""
    several = len(worked.versions) > 1
    time = Numbers(worked.rounder).added(worked.main.bench_times)
    return Entry(
        name=worked.name,
        title=worked.title,
        summary=words.plain(worked.main.summary),
        level=worked.level,
        time=f"{time}{SO_FAR if worked.main.untimed else ''}" if time else "",
        revision=worked.revision,
        date=worked.date,
        tags=list(worked.tags),
        versions=[version.title for version in worked.versions.values()] if several else [],
        sheets=[sheet_path(paper) for paper in worked.studio.paper],
    )


def index(studio: Publisher, entries: Sequence[Entry], theme: Theme) -> list[Page]:
    """The library's index, and the type face that its pages use."""
    html = theme.page("index.html.j2", studio=studio, language=studio.language, entries=entries, faces=_faces(""))
    fonts = [Page(f"{FONT_FOLDER}/{name}", path.read_bytes()) for name, path in font_files().items()]
    return [Page("index.html", html.encode()), facts_page(studio, theme, _faces("")), *fonts]
