"""A page for every fingerprint that a sheet has borne: what differs now, or the way to the present sheet."""

from __future__ import annotations

import posixpath
from typing import TYPE_CHECKING

from sheetgen.base.spelling import bare
from sheetgen.model.codes import code_path, folder_of
from sheetgen.model.page import Page
from sheetgen.model.view import CodePage, MovedNumber, SheetLink
from sheetgen.render.handout import studio
from sheetgen.render.in_units import page_in
from sheetgen.render.top import Top, body, page

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.model.codes import Code
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.render.theme import Theme


def code_pages(worked: Worked, codes: Sequence[Code], theme: Theme) -> Iterator[Page]:
    """The pages of all fingerprints; of a design in other units, those of its pages in them."""
    for one in codes:
        path = code_path(worked, one.name, one.code)
        sheet = _page(worked, one, "../" * path.count("/"))
        top = Top(
            title=f"{', '.join(filter(None, (sheet.title, sheet.version)))}: sheet {sheet.code}",
            language=sheet.language,
            path=path,
            site=worked.studio.name,
            found=False,
            leads_to=sheet.path if sheet.present and not sheet.listed else "",
        )
        yield Page(path, page(top, body(theme, "code.html.j2", sheet)))


def _page(worked: Worked, one: Code, home: str) -> CodePage:
    now = worked.versions[one.now.name] if one.now is not None else worked.main
    here = folder_of(worked, one.name)
    several = len(worked.versions) > 1 or one.now is None or one.now.title != now.title  # or it is a colourway
    return CodePage(
        studio=studio(worked.studio),
        language=worked.studio.language,
        code=one.code,
        title=worked.title,
        version=one.title if several else "",
        revisions=tuple(f"revision {revision}, {date}" for revision, date in one.revisions),
        present=one.present,
        path=f"{posixpath.relpath(folder_of(worked, now.name), here)}/{page_in(worked.other_units)}".removeprefix("./"),
        made=one.now is not None,
        called=one.now.title if one.now is not None and several and bare(one.now.title) != bare(one.title) else "",
        revision=f"{worked.revised(now)}, {worked.date}",
        moved=tuple(MovedNumber(row.label, row.was, row.now) for row in one.moved),
        listed=tuple(f"{each.label}: {each.told}" for each in (one.now.lists if one.now and one.now.colourway else ())),
        home=home,
    )


def older(worked: Worked, version: WorkedVersion, codes: Sequence[Code]) -> list[SheetLink]:
    """Links from a version's page to those of the fingerprints that it bore before."""
    found = []
    for one in codes:
        if one.now is not None and one.now.name == version.name and not one.present:
            path = posixpath.relpath(code_path(worked, one.name, one.code), folder_of(worked, version.name))
            revisions = "; ".join(f"revision {revision}, {date}" for revision, date in one.revisions)
            colours = f", {one.now.title}" if one.now.title != version.title else ", in a kit" if one.now.a_kit else ""
            found.append(SheetLink(path, f"{one.code}{colours}: {revisions}"))
    return found
