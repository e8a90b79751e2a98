"""The marks of a sheet: each caution and number that a theme gets is marked, so that the build can ask for it again."""

from __future__ import annotations

from typing import TYPE_CHECKING

from markupsafe import Markup, escape

from sheetgen.render.job import Must

if TYPE_CHECKING:
    from sheetgen.base.printed import Printed


class Marks:
    """Marks given while a sheet's words are put together.

    `must` is what the sheet has to print, as it was worked; `may` is what it may leave out, and prints as it was worked
    where it does.
    """

    def __init__(self) -> None:
        self.must: list[Must] = []
        self.may: list[Must] = []

    def told(self, html: Markup, what: str) -> Markup:
        """A caution or a reminder."""
        return self._marked("data-told", html, what, self.must, "said")

    def number(self, printed: Printed | str, what: str) -> Markup:
        """A number that belongs to a step or a list."""
        words = printed if isinstance(printed, str) else printed.words
        return self._marked("data-n", escape(words), what, self.must, "n")

    def in_text(self, printed: Printed, what: str) -> Markup:
        """A number in a line of text, never parted from its unit."""
        return self._marked("data-n", escape(printed.told), what, self.may, "n")

    def _marked(self, attribute: str, html: Markup, what: str, where: list[Must], kind: str) -> Markup:
        name = f"{attribute[5]}{len(self.must) + len(self.may)}"
        where.append(Must(name, html.striptags(), what))
        marked = Markup(f'<span class="{kind}" {attribute}="{name}">')  # noqa: S704 - words of ours
        return marked + html + Markup("</span>")
