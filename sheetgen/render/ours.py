"""The list of what the studio alone sees: drafts, designs for classes, teacher's sheets; and what its pages load."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.model.page import Page
from sheetgen.model.view import OfStudio, OursDesign, SheetLink
from sheetgen.render.handout import studio
from sheetgen.render.pages import shared_files
from sheetgen.render.top import Top, body, page

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.model.page import Entry
    from sheetgen.model.worked import Publisher
    from sheetgen.render.theme import Theme


def ours(
    publisher: Publisher,
    entries: Sequence[Entry],
    theme: Theme,
    standing: Mapping[str, Sequence[str]],
    faces: Sequence[Page],
) -> list[Page]:
    """The files of that folder besides those of designs; none where there are none. `standing` are theirs."""
    listed = tuple(_design(one, standing[one.name]) for one in entries if standing.get(one.name))
    if not listed:
        return []
    title = f"{publisher.name}: for the studio alone"
    top = Top(title, publisher.language, "index.html", site=publisher.name)
    made = body(theme, "studio.html.j2", OfStudio(studio(publisher), listed))
    return [Page(top.path, page(top, made)), *shared_files(theme), *faces]


def _design(one: Entry, files: Sequence[str]) -> OursDesign:
    own = f"{one.name}/index.html"
    sheets = tuple(SheetLink(path, _called(path, one.name)) for path in files if path.endswith(".pdf"))
    return OursDesign(one.title, one.status, own if own in files else "", sheets)


def _called(path: str, design: str) -> str:
    """A sheet by its file, and the version by its folder."""
    version, _, name = path.removeprefix(f"{design}/").rpartition("/")
    said = name.removesuffix(".pdf").replace("-", " ")
    return f"{version.replace('-', ' ')}: {said}" if version else said
