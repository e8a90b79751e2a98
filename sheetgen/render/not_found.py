"""The page that a host shows for what is not there; it stands at any depth, so that it can load nothing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.model.page import Page
from sheetgen.model.view import NotFound
from sheetgen.render.handout import studio
from sheetgen.render.top import Top, body, page

if TYPE_CHECKING:
    from sheetgen.model.worked import Publisher
    from sheetgen.render.theme import Theme


def not_found(publisher: Publisher, theme: Theme) -> Page:
    """404.html. Only a whole address leads from everywhere, so that it has a link where the site has one."""
    sheet = NotFound(studio(publisher), f"{publisher.address}index.html" if publisher.address else "")
    title = f"{publisher.name}: not found"
    top = Top(title, publisher.language, "404.html", site=publisher.name, found=False, style=theme.styles["alone.css"])
    return Page(top.path, page(top, body(theme, "not-found.html.j2", sheet)))
