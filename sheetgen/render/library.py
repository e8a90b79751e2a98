"""The library's own pages: cards, lists by technique, material and tool, what designs are found in, formulas and facts.

All of it is made of the entries that the record keeps: no design is read for it.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.spelling import slug
from sheetgen.model.page import Page
from sheetgen.model.status import PUBLIC
from sheetgen.model.view import Contents, Index, ListedDesign, Listing, PageLink, SheetLink, Term, Terms
from sheetgen.render.cards import cards, scale, told
from sheetgen.render.catalogue import library_sheet
from sheetgen.render.faces import FOLDER as FACES
from sheetgen.render.faces import faces
from sheetgen.render.facts import facts_page
from sheetgen.render.find import DATA, find_data
from sheetgen.render.for_readers import for_readers
from sheetgen.render.handout import studio
from sheetgen.render.not_found import not_found
from sheetgen.render.pages import shared_files
from sheetgen.render.script import FIND, find_script
from sheetgen.render.top import Top, body, page

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

    from sheetgen.model.page import Entry
    from sheetgen.model.worked import Publisher
    from sheetgen.render.theme import Theme

FOLDER = "library"
MOST = 60
"""Cards of a page: what a phone has read in a moment, by the measure of tests/benchmark_library.py."""
LONGEST = 60  # letters of a file's name


class Had(NamedTuple):
    """What is had of the designs: the pages of each, since when those in trouble are so (year-month-day).

    `sheets` are the files of the sheets of all designs. `made` makes the pages of a name of some words, or has them as
    they were: of a thousand designs few lists are another where one is. `shared` is the key of what all pages share.
    """

    pages: Mapping[str, Sequence[str]]
    trouble: Mapping[str, str]
    sheets: Sequence[str] = ()
    made: Callable[[str, str, Callable[[], Sequence[Page]]], Sequence[Page]] = lambda _name, _of, make: make()
    shared: str = ""


def library(publisher: Publisher, entries: Sequence[Entry], theme: Theme, had: Had) -> list[Page]:
    """All of them, and what all pages load."""
    seen = [one for one in entries if one.public]
    shown = [one for one in seen if one.status == PUBLIC]
    own = [
        *_card_pages(publisher, shown, theme, had),
        *_lists(publisher, shown, [one for one in seen if one.status != PUBLIC], theme, had),
        facts_page(publisher, theme),
    ]
    return [
        *own,
        Page(f"{FOLDER}/{DATA}", find_data(shown, had.trouble, scale(shown)).encode()),
        Page(FIND, find_script().encode()),
        not_found(publisher, theme),
        *for_readers(publisher, seen, had.pages, [one.path for one in own]),
        *shared_files(theme),
        *had.made(FACES, "", faces),
    ]


def _card_pages(publisher: Publisher, shown: Sequence[Entry], theme: Theme, had: Had) -> Iterator[Page]:
    own = tuple(SheetLink(path, library_sheet(path)) for path in had.sheets)
    paths = [card_page(number) for number in range(1, max(1, -(-len(shown) // MOST)) + 1)]
    times = scale(shown)
    for number, path in enumerate(paths, 1):
        home = "../" * path.count("/")
        some = shown[(number - 1) * MOST : number * MOST]
        links = tuple(PageLink(n, "" if one == path else home + one) for n, one in enumerate(paths, 1))
        made = cards(some, home, times, had.trouble)
        sheet = Index(
            studio(publisher), publisher.language, number, made, links if len(paths) > 1 else (), home,
            f"{home}{FOLDER}/{DATA}", own if number == 1 else (),
        )  # fmt: skip
        title = f"{publisher.name}: designs" + (f", page {number}" if number > 1 else "")
        told_of = publisher.about if number == 1 else ""
        yield _page(
            publisher, Top(title, publisher.language, path, description=told_of, finds=True), "index", sheet, theme, had
        )


def card_page(number: int) -> str:
    """The path of a page of cards."""
    return "index.html" if number == 1 else f"{FOLDER}/page-{number}.html"


def _lists(
    publisher: Publisher, shown: Sequence[Entry], retired: Sequence[Entry], theme: Theme, had: Had
) -> Iterator[Page]:
    """A page of each technique, material and tool, and one that leads to them."""
    groups: list[Terms] = []
    for of, kind in (("Technique", "techniques"), ("Material", "materials"), ("Tool", "tools")):
        by = _by(shown, kind)
        paths = _paths(slug(of), by)
        terms = sorted(by, key=_in_order)
        groups.append(Terms(f"{of}s", tuple(Term(name, paths[name], len(by[name])) for name in terms)))
        for name in terms:
            sheet = Listing(studio(publisher), of, name, tuple(map(_listed, by[name])), "../")
            top = Top(f"{publisher.name}: {name}", publisher.language, f"{FOLDER}/{paths[name]}")
            yield _page(publisher, top, "listing", sheet, theme, had)
    groups = [group for group in groups if group.terms]
    sheet_ = Contents(studio(publisher), tuple(groups), tuple(map(_listed, retired)), "../")
    top = Top(f"{publisher.name}: by technique, material and tool", publisher.language, f"{FOLDER}/index.html")
    yield _page(publisher, top, "contents", sheet_, theme, had)


def _in_order(name: str) -> list[tuple[float, str]]:
    """By letters, and by size where a number stands: 6 mm comes before 10 mm."""
    pieces = re.split(r"(\d+(?:\.\d+)?)", name.lower())
    return [(float(piece), "") if n % 2 else (0.0, piece) for n, piece in enumerate(pieces)]


def material_pages(shown: Iterable[Entry]) -> dict[str, str]:
    """Of each material, in small letters, the page that lists the designs it is in."""
    by = _by(shown, "materials")
    return {name.lower(): f"{FOLDER}/{path}" for name, path in _paths(slug("Material"), by).items()}


def _by(shown: Iterable[Entry], kind: str) -> dict[str, list[Entry]]:
    """Designs by each name that they have of a kind; one that is written in other capitals is the same."""
    called: dict[str, str] = {}
    found: dict[str, list[Entry]] = {}
    for one in shown:
        for name in getattr(one, kind):
            found.setdefault(called.setdefault(name.lower(), name), []).append(one)
    return found


def _paths(kind: str, names: Iterable[str]) -> dict[str, str]:
    """A file for each name; no two have one."""
    found: dict[str, str] = {}
    taken: set[str] = set()
    for name in sorted(names):
        bare = f"{kind}-{slug(name)[:LONGEST].strip('-')}".strip("-")
        path = next(p for n in range(1, len(taken) + 2) if (p := bare if n == 1 else f"{bare}-{n}") not in taken)
        taken.add(path)
        found[name] = f"{path}.html"
    return found


def _listed(one: Entry) -> ListedDesign:
    return ListedDesign(f"../{one.name}/index.html", one.title, " · ".join(told(one)))


def _page(  # noqa: PLR0913, PLR0917 - whose it is, what stands on it, and how it is made
    publisher: Publisher, top: Top, template: str, sheet: object, theme: Theme, had: Had
) -> Page:
    top = replace(top, address=publisher.address, site=publisher.name)

    def make() -> tuple[Page]:
        return (Page(top.path, page(top, body(theme, f"{template}.html.j2", sheet))),)

    [made] = had.made(top.path, f"{had.shared} {template} {top} {sheet}", make)
    return made
