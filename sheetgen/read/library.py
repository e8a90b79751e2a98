"""A library on disk to studio, stock and projects, with every trouble of every file in one run."""

from __future__ import annotations

import datetime as dt
from itertools import chain
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.frozen import Frozen
from sheetgen.base.paths import COPIED, OUTSIDE, leads_out
from sheetgen.base.place import Place, Source, Word
from sheetgen.base.spelling import suggest
from sheetgen.base.trouble import Trouble, Troubles
from sheetgen.facts.bench import WORN_AT, WORN_BY
from sheetgen.model.project import LEVELS, Filed, Library, Project
from sheetgen.model.status import STATUS
from sheetgen.model.studio import Studio
from sheetgen.model.worked import SHEETS
from sheetgen.model.written import LONGEST, default
from sheetgen.parts.catalogue import kinds
from sheetgen.read.bounds import bounded, few
from sheetgen.read.classes import check_class, check_whole
from sheetgen.read.files import once_a_line
from sheetgen.read.formats import as_now, number_of
from sheetgen.read.forms import form
from sheetgen.read.house_steps import FOLDER, House, read_house_steps
from sheetgen.read.house_use import put_in
from sheetgen.read.instead import lead_on
from sheetgen.read.kinds import read_kinds
from sheetgen.read.labels import read_labels
from sheetgen.read.measures import Measures
from sheetgen.read.parts import check_fields, check_parts
from sheetgen.read.pictures import look_at_pictures
from sheetgen.read.said import one_title, titles_of
from sheetgen.read.shops import read_shops
from sheetgen.read.stock_files import read_stock
from sheetgen.read.studio import PAPERS, among, currency_of, read_studio, sheets_among
from sheetgen.read.text import read_text
from sheetgen.read.was import misnamed, one_address_each, were_called
from sheetgen.read.yaml_words import words

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from pathlib import Path

NO_PROJECTS = {"stock", "kinds", FOLDER}  # folders of the studio, beside its projects
NOTHING: Mapping[str, Sequence[str]] = Frozen()


class Shared(NamedTuple):
    """What the designs of a library share: a library without them, house steps; no studio where that is in trouble."""

    root: Path
    library: Library
    house: House
    studio: Studio | None


def read_library(root: Path, troubles: Troubles, only: Sequence[str] = ()) -> Library | None:
    """Everything under `root/projects`; None when studio or stock stop all projects. `only` names projects to read."""
    shared = read_shared(root, troubles)
    return read_designs(shared, troubles, only) if shared is not None else None


def read_shared(root: Path, troubles: Troubles) -> Shared | None:
    """Studio, stock, kinds and house steps; None when there is nothing to read designs with."""
    projects = root / "projects"
    if not projects.is_dir():
        troubles.add(
            f"there is no folder '{projects.name}' in {root}",
            None,
            "run from the library's folder, or name it with --library",
        )
        return None
    outside = [folder for folder in (projects, *(projects / one for one in NO_PROJECTS)) if leads_out(folder, root)]
    for folder in outside:
        told = f"the folder {OUTSIDE}"
        troubles.add(told, Place(Source(str(folder.relative_to(root)))), COPIED)
    if outside:
        return None
    studio = read_studio(projects, troubles)
    currency = str(studio.currency) if studio else currency_of(projects)
    shops = read_shops(studio.shops, Measures(currency, Troubles())) if studio else None
    stock = read_stock(projects, currency, shops, troubles)
    library = Library(studio or Studio(name=default("")), stock)
    library.labels = read_labels(studio, PAPERS, currency, Troubles()) if studio else None
    studios, library.withheld = read_kinds(projects, kinds(), stock.cautions, troubles)
    library.kinds = kinds() | studios
    return Shared(root, library, read_house_steps(projects, troubles), studio)


def read_designs(
    shared: Shared, troubles: Troubles, only: Sequence[str] = (), stand: Mapping[str, Sequence[str]] = NOTHING
) -> Library:
    """The library with its designs, or those named.

    `stand` are designs that need not be read, each with what it was called before: no other has its title.
    """
    root, library, house, studio = shared
    projects = root / "projects"
    folders = sorted(f for f in projects.iterdir() if f.is_dir() and f.name not in NO_PROJECTS and f.name[0] != ".")
    known = [f.name for f in folders]
    for name in only:
        if name not in known:
            troubles.add(f"there is no project '{name}'", None, suggest(name, known))
    old: dict[str, set[str]] = {}  # what those were called
    others: list[Word] = []  # the titles of those that nobody asked for
    for folder in folders:
        if folder.name in stand and folder.name not in only:
            old[folder.name] = {*stand[folder.name]}
            continue
        if only and folder.name not in only:
            others += titles_of(folder)
            old[folder.name] = were_called(folder)
            continue
        own = Troubles()
        if leads_out(folder, root):
            own.add(f"the folder {OUTSIDE}", Place(Source(f"projects/{folder.name}")), COPIED)
        project = None if own.errors else _project(folder, library, house, own)
        if project is not None and studio is not None:  # what a class lacks, a studio in trouble may say
            check_whole(project.class_, studio.class_, own)
        troubles.extend(own)
        if project is None or own.errors:
            library.failed.append(folder.name)
        else:
            library.projects.append(Filed(folder.name, folder, project))
    _one_name_each(library, others, troubles)
    one_address_each(library, folders, old, troubles)
    lead_on(library, folders, troubles)
    if studio is None:
        library.failed += [p.name for p in library.projects]
        library.projects.clear()
    return library


def _project(folder: Path, library: Library, house: House, troubles: Troubles) -> Project | None:
    name = f"projects/{folder.name}/project.yaml"
    path = folder / "project.yaml"
    if not path.exists():
        near = sorted(p.name for p in folder.glob("*.y*ml"))
        helped = f"rename {near[0]} to project.yaml" if near else "write one, or move the folder elsewhere"
        troubles.add("the project's file is missing", Place(Source(name)), helped)
        return None
    if helped := misnamed(folder.name):
        troubles.add(f"the folder cannot be called '{folder.name}'", Place(Source(name)), helped)
    source = read_text(path, name, troubles)
    source = as_now(source, troubles) if source else None
    found = words(source, troubles) if source else None
    if found is None:
        return None
    bound = (bounded(value, LONGEST, troubles) for key, value in found.items() if key != "parts")
    if not few(found, troubles) or not all(bound):
        return None  # but of parts: an outline may be long, and has bounds of its own
    with once_a_line(troubles) as more:
        put_in(found, house, more)
    with once_a_line(troubles) as more:
        project = form(Project, found, more)
        if project is None:  # its parts are looked at all the same
            parts = next((value for key, value in found.items() if key == "parts"), None)
            check_fields(parts, library.kinds, more, library.withheld)
    if project is None:
        return None
    with once_a_line(troubles) as more:
        _look_over(project, folder, library, more)
    return project


def _look_over(project: Project, folder: Path, library: Library, troubles: Troubles) -> None:
    """What a form cannot tell: format, level, date, pictures, parts."""
    if project.format_ is not None:
        number_of(project.format_, troubles)
    among(project.level, LEVELS, "level", troubles)
    among(project.status, STATUS, "status", troubles)
    among(project.worn_by, WORN_BY, "worn by", troubles)
    if project.worn_at is not None:
        among(project.worn_at, WORN_AT, "worn at", troubles)
    if not _is_date(project.date):
        troubles.add(f"'{project.date}' is not a date", project.date.place, "year, month, day: 2026-03-14")
    look_at_pictures(project, folder, troubles)
    sheets_among(project.sheets, SHEETS, troubles)
    check_class(project.class_, Measures(str(library.studio.currency), troubles))
    for name, value in chain(project.choices.items(), *(version.items() for version in project.versions)):
        if isinstance(value, Word) and not value.strip():  # in quotes, or a block without a line
            troubles.add(f"'{name}' has nothing after it", name.place, "fill it in or take it out")
    for name_word in (project.title, project.summary, project.revision):
        if not name_word.strip():
            troubles.add("this has nothing in it", name_word.place, "fill it in")
    for tag in project.tags:
        if not tag:  # one of blanks is told as any text of blanks
            troubles.add("this has nothing in it", tag.place, "fill it in or take it out")
    check_parts(project, library.kinds, troubles, library.withheld)


def _is_date(text: str) -> bool:
    """Whether a text is a day that the calendar has, as year-month-day."""
    try:
        return dt.date.fromisoformat(text).isoformat() == text
    except ValueError:
        return False


def _one_name_each(library: Library, others: Sequence[Word], troubles: Troubles) -> None:
    """Two projects with one title are both held back: nobody could tell their sheets apart."""
    titles: dict[str, list[Word]] = {}
    for title in (*others, *(filed.project.title for filed in library.projects)):
        titles.setdefault(one_title(title), []).append(title)
    for same in titles.values():
        for title in same[1:]:
            if any(title is other for other in others):
                continue
            message = f"another project is called '{title}' too: {same[0].place}"
            troubles.extend([Trouble(message, title.place, "give one of them another title")])
        if len(same) > 1:
            twice = [filed for filed in library.projects if any(filed.project.title is title for title in same)]
            library.failed += [filed.name for filed in twice]
            library.projects = [filed for filed in library.projects if filed not in twice]
