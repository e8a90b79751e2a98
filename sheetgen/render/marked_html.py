"""The marked text of a page for the screen, as a browser shows it without its style sheets."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from sheetgen.render.laid import Words

APART = "\ue013"  # two pieces of text with a gap or another line between them; no letter of any alphabet
EMPTY = frozenset(
    {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"}
)
RUNS_ON = frozenset(
    {"a", "abbr", "b", "bdi", "bdo", "cite", "code", "em", "i", "mark", "q", "s", "small", "span", "strong", "sub",
     "sup", "time", "u", "var", "wbr"}
)  # fmt: skip
NEVER = frozenset(
    {"head", "script", "style", "template", "title", "svg", "noscript", "iframe", "object", "canvas", "audio", "video",
     "datalist"}
)  # fmt: skip
GONE = re.compile(r"display:none|visibility:(hidden|collapse)|opacity:0(\.0*)?(;|$)|font-size:0[a-z%]*(;|$)")
MARKS = {"data-told": "told", "data-n": "number", "data-step": "step"}
NOTHING = APART + " \n\t\r\f"


class Shown(NamedTuple):
    """One place where something marked is printed: what can be read of it, and why the rest cannot be."""

    kind: str
    id: str
    text: str
    page: int = 0
    unseen: str = ""
    step: str = ""  # the innermost that it stands in
    at: int = 0  # which of all is read before which
    words: tuple[Words, ...] = ()  # on paper, those that are seen


def read_marked(html: str) -> list[Shown]:
    """What is marked in a page: its steps, cautions and numbers, in order."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    return [Shown(one.kind, one.id, one.text, 0, one.unseen, one.step, at) for at, one in enumerate(reader.marks)]


class _Mark:
    """A marked element while it is read."""

    def __init__(self, kind: str, id: str, step: str) -> None:  # noqa: A002 - what HTML calls it
        self.kind, self.id, self.step, self.text, self.unseen = kind, id, step, "", ""


class _Open(NamedTuple):
    tag: str
    hidden: bool
    marks: list[_Mark]


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[_Open] = []
        self.marks: list[_Mark] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """An element begins, which may be marked and may hide what is in it."""
        has = {name: value or "" for name, value in attrs}
        style = re.sub(r"\s", "", has.get("style", "").lower())
        if tag not in RUNS_ON:
            self.handle_data(APART)
        if tag not in EMPTY:
            around = (mark.id for one in reversed(self.open) for mark in one.marks if mark.kind == "step")
            step = has.get("data-step") or next(around, "")
            marks = [_Mark(kind, has[name], step) for name, kind in MARKS.items() if name in has]
            self.marks += marks
            shut = tag == "dialog" and "open" not in has
            gone = tag in NEVER or shut or bool({"hidden", "popover"} & has.keys()) or bool(GONE.search(style))
            self.open.append(_Open(tag, gone, marks))

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """HTML knows no element that ends itself, but a drawing does."""
        self.handle_starttag(tag, attrs)
        if any(one.tag == "svg" for one in self.open):
            self.handle_endtag(tag)

    def handle_endtag(self, tag: str) -> None:
        """An element ends, and with it those in it that were left open."""
        if any(one.tag == tag for one in self.open):
            while self.open.pop().tag != tag:
                pass
        if tag not in RUNS_ON:
            self.handle_data(APART)

    def handle_data(self, data: str) -> None:
        """Text, which belongs to all that are open."""
        hidden = any(one.hidden for one in self.open)
        for one in self.open:
            for mark in one.marks:
                if not hidden:
                    mark.text += data
                elif data.strip(NOTHING):
                    mark.unseen = "it is hidden"
