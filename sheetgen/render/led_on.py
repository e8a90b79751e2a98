"""Pages at addresses of before: where a design or a version was called otherwise, a page is left that leads on."""

from __future__ import annotations

import posixpath
from typing import TYPE_CHECKING

from sheetgen.base.spelling import slug
from sheetgen.model.codes import folder_of
from sheetgen.model.page import Page
from sheetgen.model.view import Renamed
from sheetgen.render.handout import studio
from sheetgen.render.top import Top, body, page

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.model.worked import Worked
    from sheetgen.render.theme import Theme


def led_on(worked: Worked, pages: Sequence[Page], theme: Theme) -> list[Page]:
    """A page for each that a reader may have kept: of every page of the design, and of each version's."""
    own = [one.path for one in pages if one.path.endswith(".html")]
    there = set(own)
    old = dict(_of_versions(worked))
    old |= {f"{was}{path.removeprefix(worked.name)}": path for was in worked.was for path in own}
    old |= {f"{was}{path.removeprefix(worked.name)}": to for was in worked.was for path, to in _of_versions(worked)}
    return [_leading(worked, path, to, theme) for path, to in old.items() if path not in there]


def _of_versions(worked: Worked) -> Iterator[tuple[str, str]]:
    for version in worked.versions.values():
        if version.was:
            yield f"{worked.name}/{slug(version.was)}/index.html", f"{folder_of(worked, version.name)}/index.html"


def _leading(worked: Worked, path: str, to: str, theme: Theme) -> Page:
    link = posixpath.relpath(to, posixpath.dirname(path))
    top = Top(
        title=f"{worked.title}: moved",
        language=worked.studio.language,
        path=path,
        address=worked.studio.address,
        site=worked.studio.name,
        found=False,
        leads_to=link,
        canonical=to,
    )
    sheet = Renamed(studio(worked.studio), worked.title, link)
    return Page(path, page(top, body(theme, "renamed.html.j2", sheet)))
