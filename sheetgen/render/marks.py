"""The marks of a sheet: each caution and number that a theme gets is marked, so that the build can ask for it again."""

from __future__ import annotations

import re
from contextlib import contextmanager
from typing import TYPE_CHECKING

from markupsafe import Markup, escape

from sheetgen.render.job import Drawn, Must
from sheetgen.render.marked_html import drawing_in
from sheetgen.render.true_size import MARK, fingerprint

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.printed import Printed
    from sheetgen.model.drawing import Drawing


class Marks:
    """Marks given while a sheet's words are put together.

    `must` is what the sheet has to print, as it was worked; `may` is what it may leave out, and prints as it was worked
    where it does. `drawn` are the templates.
    """

    def __init__(self) -> None:
        self.must: list[Must] = []
        self.may: list[Must] = []
        self.drawn: list[Drawn] = []
        self.given: dict[str, frozenset[str]] = {}  # the numbers of the words of each row
        self.row = self.action = ""

    @contextmanager
    def inside(self, row: str) -> Iterator[None]:
        """While the words of a step are put together: what is marked meanwhile must stand in its row."""
        self.row = row
        yield
        self.row = self.action = ""

    def told(self, html: Markup, what: str) -> Markup:
        """A caution or a reminder, which stands before what is done."""
        return self._marked("data-told", html, what, self.must, self.action)

    def done(self, html: Markup, what: str) -> Markup:
        """What is done in a step: its first words are marked, so that they can be held behind its cautions."""
        if not html.strip():
            return html
        self.action = name = self._name("t")
        first = re.match("\\s*<p>(.*?)</p>", html, re.DOTALL)
        marked = f' data-told="{name}">'
        self.must.append(Must(name, Markup(first[1] if first else html).striptags(), what, self.row))  # noqa: S704
        return Markup(str(html).replace(">", marked, 1) if first else f"<div{marked}{html}</div>")  # noqa: S704

    def number(self, printed: Printed | str, what: str) -> Markup:
        """A number that belongs to a step or a list."""
        words = printed if isinstance(printed, str) else printed.words
        return self._marked("data-n", escape(words), what, self.must)

    def in_text(self, printed: Printed, what: str) -> Markup:
        """A number in a line of text, never parted from its unit."""
        return self._marked("data-n", escape(printed.told), what, self.may)

    def drawing(self, drawing: Drawing, what: str) -> Markup:
        """A drawing that is cut out: it is printed as it is, at true size."""
        name = f"d{len(self.drawn)}"
        svg = drawing.svg.replace("<svg ", f'<svg {MARK}="{name}" ', 1)
        self.drawn.append(Drawn(name, what, drawing.width, drawing.height, fingerprint(drawing_in(svg))))
        return Markup(svg)  # noqa: S704 - by our own pen

    def _name(self, letter: str) -> str:
        return f"{letter}{len(self.must) + len(self.may)}"

    def _marked(self, attribute: str, html: Markup, what: str, where: list[Must], before: str = "") -> Markup:
        name, kind = self._name(attribute[5]), "said" if attribute == "data-told" else "n"
        where.append(Must(name, html.striptags(), what, self.row, before))
        marked = Markup(f'<span class="{kind}" {attribute}="{name}">')  # noqa: S704 - words of ours
        return marked + html + Markup("</span>")
