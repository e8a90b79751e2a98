"""A worked project to its files: a PDF of every sheet, the web page, figures.json; and the library's index."""

from __future__ import annotations

import posixpath
from dataclasses import asdict
from pathlib import PurePath
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.spelling import slug
from sheetgen.model.codes import folder_of
from sheetgen.model.fingerprint import CODE
from sheetgen.model.numbers import Numbers
from sheetgen.model.page import Entry, Page
from sheetgen.model.printed import code_of
from sheetgen.model.status import RETIRED
from sheetgen.model.view import Offline, Retired, Screen, SheetLink
from sheetgen.render import words
from sheetgen.render.card_picture import card_picture
from sheetgen.render.codes import code_pages, older
from sheetgen.render.faces import face_css, face_paths
from sheetgen.render.figures import figures_json
from sheetgen.render.findable import findable
from sheetgen.render.handout import SO_FAR, Sheets
from sheetgen.render.howto import Stands, howto
from sheetgen.render.in_units import OWN, page_in, screens, version_links
from sheetgen.render.led_on import led_on
from sheetgen.render.marks import Marks
from sheetgen.render.musts import checked_html
from sheetgen.render.ordered import HOW, PAPERS, Press, sound
from sheetgen.render.preview import preview_job, preview_of
from sheetgen.render.script import NAME as SCRIPT
from sheetgen.render.script import WORKER, script, worker
from sheetgen.render.sheets import cutters, cutting_paths
from sheetgen.render.teacher import Teacher
from sheetgen.render.top import STYLE, Top, body, page, styled
from sheetgen.render.web_pictures import on_screen, web_pictures

if TYPE_CHECKING:
    from collections.abc import Callable, Container, Generator, Iterator, Mapping, Sequence

    from sheetgen.model.codes import Code
    from sheetgen.model.drawing import Drawings, SlabLayout
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.render.card_picture import CardPicture
    from sheetgen.render.in_units import InUnits, Screens
    from sheetgen.render.job import Doubt, Makes, Printout
    from sheetgen.render.ordered import Ordered
    from sheetgen.render.theme import Theme
    from sheetgen.render.top import Preview
    from sheetgen.render.web_pictures import WebPicture

NAMES = {"handout": "Handout", "bench card": "Bench card", "teacher": "Teacher’s sheet", "templates": "Templates"}


class Links(NamedTuple):
    """What the page of a version leads to: its sheets, those that were printed before, pictures, and its preview."""

    sheets: Sequence[SheetLink]
    older: Sequence[SheetLink]
    pictures: Mapping[str, WebPicture]
    preview: Preview | None
    screens: Screens


class Rendered(NamedTuple):
    """The files of a project, what jars in the layout of its sheets, and its card; `ours` are for the studio alone."""

    pages: list[Page]
    doubts: list[Doubt]
    card: CardPicture | None = None
    ours: Sequence[Page] = ()


def render(  # noqa: PLR0913, PLR0917 - what pages are made of, and by what
    worked: Worked,
    drawings: Mapping[str, Drawings],
    theme: Theme,
    pool: Makes,
    tell: Callable[[str], None] = lambda _said: None,
    codes: Sequence[Code] = (),
    others: Sequence[InUnits] = (),
) -> Generator[None, None, Rendered]:
    """Every file of the project's folder, paths relative to the build folder, and what jars in their layout.

    Each of the fingerprints `codes` has a page. It yields where it would wait for what it has begun to print, so that
    other projects can be begun meanwhile.
    Misplaced at the theme's file where a sheet leaves out, hides or alters what must be printed.
    """
    front = Sheets(worked, worked.main, drawings[worked.main.name]).picture()
    begun = iter(pool.printed([preview_job(worked, front)] if worked.studio.address else []))
    printed: dict[str, list[tuple[Ordered, list[Printout]]]] = {}
    main: dict[str, Printout] = {}  # the sheets of the main version: others are set as they are, for they are alike
    for names in ([worked.main.name], [name for name in worked.versions if name != worked.main.name]):
        ordered: dict[str, list[Ordered]] = {}
        for name in names:
            tell(f"{worked.name}: {worked.versions[name].title}" if len(worked.versions) > 1 else worked.name)
            ordered[name] = list(_ordered(worked, worked.versions[name], drawings, theme, main))
        outs = iter(pool.printed([one.job for several in ordered.values() for one in several]))
        yield
        printed |= {name: [(one, next(outs)) for one in several] for name, several in ordered.items()}
        main = main or {one.sheet: out[0] for one, out in printed[worked.main.name]}
    pages, pictures = web_pictures(worked, pool)
    card, own = card_picture(worked, front, drawings[worked.main.name].finished, pictures)
    preview = preview_of(worked, front) if worked.studio.address else None
    pages += [*own, *(Page(preview.path, one.pdf) for [one] in begun if preview)]
    doubts: list[Doubt] = []
    for name, version in worked.versions.items():
        links: list[SheetLink] = []
        for one, papers in printed[name]:
            if not worked.public or not for_the_studio(worked, one.sheet):
                links += _links(one.sheet, worked.studio.paper, papers)
            for paper, out in zip(one.job.papers, papers, strict=True):
                sound(out.faults, theme, one.template)
                pages.append(Page(paper.name, out.pdf))
            # Both papers have one content box, and what jars on one jars on the other.
            doubts += papers[0].warnings
        whole = Links(links, older(worked, version, codes), pictures, preview, screens(worked, others))
        pages += _screen(worked, version, drawings[name], theme, whole)
        for other in others:
            same = other.worked.versions[name]
            before = whole._replace(older=older(other.worked, same, other.codes))
            pages += _screen(other.worked, same, other.drawings[name], theme, before)
    pages += code_pages(worked, codes, theme)
    pages += (page for other in others for page in code_pages(other.worked, other.codes, theme))
    pages += led_on(worked, pages, theme)
    pages.append(Page(f"{worked.name}/figures.json", figures_json(worked, _slabs(drawings)).encode()))
    ours = {sheet_path(sheet, paper) for sheet in worked.sheets for paper in PAPERS if for_the_studio(worked, sheet)}
    kept = [one for one in pages if not worked.public or one.path.rpartition("/")[2] in ours]
    return Rendered([one for one in pages if one not in kept], doubts, card, kept)


def for_the_studio(worked: Worked, sheet: str) -> bool:
    """Whether nobody but the studio sees a sheet of a design."""
    return not worked.public or (sheet == "teacher" and not worked.studio.teachers_public)


def _slabs(drawings: Mapping[str, Drawings]) -> dict[str, Sequence[SlabLayout]]:
    return {name: drawn.slabs for name, drawn in drawings.items()}


def _ordered(
    worked: Worked, version: WorkedVersion, drawings: Mapping[str, Drawings], theme: Theme, main: Mapping[str, Printout]
) -> Iterator[Ordered]:
    """The sheets of a version that are published, each laid out in one way or several.

    Where the main version's are printed, as those are; in another way only if that takes more pages than theirs.
    """
    drawn = drawings[version.name]
    sheets = Sheets(worked, version, drawn)
    pages = drawn.pages.get(worked.studio.paper[0], ())
    press = Press(theme, worked.studio.paper, worked.revision, folder_of(worked, version.name))
    for name in worked.sheets:
        marks = Marks()
        sheet: object
        if name == "handout":
            sheet = sheets.handout(marks, pages)
        elif name == "bench card":
            sheet = sheets.card(marks)
        elif name == "teacher":
            sheet = Teacher(worked, version, drawn, marks, _slabs(drawings)).sheet()
        elif not (sheet := sheets.template_sheet(marks, pages)):
            continue
        yield press.ordered(name, sheet, marks, HOW[name].like(main[name]) if name in main else HOW[name])


def _links(name: str, papers: Sequence[str], outs: Sequence[Printout]) -> Iterator[SheetLink]:
    for paper, out in zip(papers, outs, strict=True):
        count = f"{out.pages} page{'s' * (out.pages > 1)}"
        yield SheetLink(sheet_path(name, paper), f"{NAMES[name]} {paper}, {count}")


def _screen(
    worked: Worked,
    version: WorkedVersion,
    drawings: Drawings,
    theme: Theme,
    links: Links,
) -> Iterator[Page]:
    """The page of a version on a screen, and the files for a cutter."""
    main, marks, name = version is worked.main, Marks(), page_in(worked.other_units)
    home, folder = "../" if main else "../../", folder_of(worked, version.name)
    sheets = Sheets(worked, version, drawings, units=links.screens.named(worked))
    cutting = cutting_paths(drawings.cutting, worked.other_units)
    screen = Screen(
        handout=on_screen(sheets.handout(marks, ()), links.pictures, folder),
        sheets=links.screens.sheets(links.sheets),
        versions=tuple(version_links(worked, version)) if len(worked.versions) > 1 else (),
        cutters=tuple(cutters(drawings, worked.other_units)),
        older=tuple(links.older),
        home=home,
        retired=retired(worked, home),
        edition=f"{slug(worked.revised(version))}-{worked.date}",
        offline=_offline(worked, version, home, [*(s.path for s in links.sheets), *cutting.values()], links.pictures),
        units=links.screens.links(worked),
    )
    made = body(theme, "project.html.j2", screen)
    sound(
        checked_html(styled(theme, made), marks.must, marks.may, tuple(marks.given.items())), theme, "project.html.j2"
    )
    head = screen.handout.head
    top = Top(
        title=", ".join(filter(None, (head.title, head.version))),
        language=head.language,
        path=f"{folder}/{name}",
        canonical=f"{folder}/{OWN}",
        address=worked.studio.address,
        site=worked.studio.name,
        description=head.summary_plain,
        of_design=True,
        preview=links.screens.preview(links.preview, worked),
        data=howto(worked, version, screen.handout, Stands(f"{folder}/{name}", worked.studio.address)),
    )
    yield Page(top.path, page(top, made))
    for part, path in cutting.items():
        yield Page(f"{folder}/{path}", drawings.cutting[part].encode())


def retired(worked: Worked, home: str) -> Retired | None:
    """What the page of a design says that is no longer made."""
    to, title = worked.instead
    return Retired(title, f"{home}{to}/index.html" if to else "") if worked.status == RETIRED else None


def _offline(
    worked: Worked, version: WorkedVersion, home: str, own: Sequence[str], pictures: Mapping[str, WebPicture]
) -> Offline:
    """What a page wants where there is no net: itself, its sheets, templates and pictures, and what all pages load."""
    folder = folder_of(worked, version.name)
    shown = [posixpath.relpath(file.path, folder) for one in pictures.values() for file in one.files]
    code = code_of(worked, version)
    shared = [home + name for name in (STYLE, SCRIPT, *face_paths())]
    as_ = f"{slug(worked.revision)}-{worked.date}-{code}"
    return Offline(as_, home + WORKER, " ".join([page_in(worked.other_units), *own, *shown]), " ".join(shared))


def sheet_path(sheet: str, paper: str) -> str:
    """A sheet's file name for a paper."""
    return f"{slug(sheet)}-{paper.lower()}.pdf"


def entry(worked: Worked, rendered: Rendered, revisions: Sequence[list[str]] = ()) -> Entry:
    """What the library says of a project, the feed of its revisions, and the catalogue."""
    several = len(worked.versions) > 1
    numbers, times = Numbers(worked.rounder), worked.main.bench_times
    time = numbers.added(times)
    there = {page.path for page in rendered.pages}
    own = [sheet_path(sheet, paper) for sheet in worked.sheets for paper in worked.studio.paper]
    return Entry(
        name=worked.name,
        title=worked.title,
        summary=words.plain(worked.main.summary),
        level=worked.level,
        time=f"{time}{SO_FAR if worked.main.untimed else ''}" if time else "",
        revision=worked.revised(worked.main).removeprefix("revision "),
        date=worked.date,
        tags=list(worked.tags),
        versions=[version.title for version in worked.versions.values()] if several else [],
        sheets=[path for path in own if f"{worked.name}/{path}" in there],
        revisions=list(revisions),
        chips=[_chip(worked, version, there) for version in worked.versions.values()],
        picture=asdict(rendered.card) if rendered.card else None,
        **findable(worked),
        codes=sorted({code for path in there if CODE.fullmatch(code := PurePath(path).stem.upper())}),
        status=worked.status,
        instead=worked.instead[0],
    )


def _chip(worked: Worked, version: WorkedVersion, there: Container[str]) -> list[str]:
    """A version's name, its page, and its first sheet that everybody may see."""
    folder = folder_of(worked, version.name)
    paths = (f"{folder}/{sheet_path(sheet, paper)}" for sheet in worked.sheets for paper in worked.studio.paper)
    below = f"{worked.name}/"
    pdf = next((path for path in paths if path in there), below)
    name = version.title if len(worked.versions) > 1 else ""
    return [name, f"{folder}/index.html".removeprefix(below), pdf.removeprefix(below)]


def shared_files(theme: Theme) -> list[Page]:
    """What all pages load besides the type faces: the style of the theme, which names those, and the script."""
    style = "".join((face_css(), theme.styles["screen.css"]))
    return [Page(STYLE, style.encode()), Page(SCRIPT, script().encode()), Page(WORKER, worker().encode())]
