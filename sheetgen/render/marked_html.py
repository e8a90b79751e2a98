"""The marked text of a page for the screen, as a browser shows it; of its style sheets only what hides."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

import cssselect2
import tinyhtml5

from sheetgen.render.quick import quick_words
from sheetgen.render.screen_css import Styles, hides
from sheetgen.render.seen import BACKWARDS, HIDDEN

if TYPE_CHECKING:
    from sheetgen.render.laid import Words

APART = "\ue013"  # two pieces of text with a gap or another line between them; no letter of any alphabet
ELSE = "\ue014"  # in the text of a step, what is marked as something else
RUNS_ON = frozenset(
    {"a", "abbr", "b", "bdi", "bdo", "cite", "code", "em", "i", "mark", "q", "s", "small", "span", "strong", "sub",
     "sup", "time", "u", "var", "wbr"}
)  # fmt: skip
NEVER = frozenset(
    {"head", "script", "style", "template", "title", "svg", "noscript", "iframe", "object", "canvas", "audio", "video",
     "datalist", "textarea", "select", "math"}
)  # fmt: skip
GONE = frozenset({"hidden", "popover", "inert"})
MARKS = {"data-told": "told", "data-n": "number", "data-step": "step"}
ELSEWHERE = "a style sheet that stands elsewhere"
TURNS = frozenset("\u202b\u202d\u202e\u2067")  # signs that turn what follows from right to left
FOLDED = "it is folded away"
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
    own: str = ""  # of a step, what is marked as nothing else


def read_marked(html: str) -> list[Shown]:
    """What is marked in a page: its steps, cautions and numbers, in order."""
    quick_words()
    root = tinyhtml5.parse(html, namespace_html_elements=False)
    linked = any("stylesheet" in link.get("rel", "").lower() for link in root.iter("link"))
    turned = not TURNS.isdisjoint("".join(root.itertext()))
    unread = ELSEWHERE if linked else BACKWARDS if turned else ""
    reader = _Reader(Styles(("".join(sheet.itertext()) for sheet in root.iter("style")), unread))
    reader.element(cssselect2.ElementWrapper.from_html_root(root), _Inside())
    return [
        Shown(one.kind, one.id, one.text, 0, one.unseen, one.step, at, (), one.own)
        for at, one in enumerate(reader.marks)
    ]


def drawing_in(html: str) -> Any:  # noqa: ANN401 - an element, as WeasyPrint reads it
    """The first drawing of a text."""
    quick_words()
    return next(tinyhtml5.parse(html).iter("{http://www.w3.org/2000/svg}svg"))


class _Mark:
    """A marked element while it is read."""

    def __init__(self, kind: str, id: str, step: str) -> None:  # noqa: A002 - what HTML calls it
        self.kind, self.id, self.step, self.text, self.unseen = kind, id, step, "", ""
        self.own = ""


class _Inside(NamedTuple):
    """What holds within an element: its marks, the step, why nobody sees it, and whether that only folds it away."""

    marks: tuple[_Mark, ...] = ()
    step: str = ""
    unseen: str = ""
    folded: bool = False


class _Reader:
    def __init__(self, styles: Styles) -> None:
        self.styles = styles
        self.marks: list[_Mark] = []

    def element(self, element: Any, inside: _Inside) -> None:  # noqa: ANN401 - cssselect2 is not typed
        """An element, which may be marked and may hide what is in it."""
        tag, has = element.local_name, dict(element.etree_element.attrib)
        outer = inside
        if tag not in RUNS_ON:
            self._text(APART, outer)
        step = has.get("data-step") or inside.step
        marks = [_Mark(kind, has[name], step) for name, kind in MARKS.items() if name in has]
        self.marks += marks
        unseen = inside.unseen or _hidden(tag, has) or self.styles.hiding(element)
        inside = _Inside((*inside.marks, *marks), step, unseen, inside.folded)
        shut = tag == "details" and ("open" not in has or "name" in has)  # of one name only one is open
        self._text(element.etree_element.text or "", inside)
        children = element.iter_children()
        for node in element.etree_element:
            if isinstance(node.tag, str):  # a comment is a node too
                folded = inside.folded or (shut and node.tag != "summary")
                self.element(next(children), inside._replace(folded=folded))
            self._text(node.tail or "", inside._replace(folded=inside.folded or shut))
        if tag not in RUNS_ON:
            self._text(APART, outer)

    def _text(self, data: str, inside: _Inside) -> None:
        """Text, which belongs to all that it stands in. Only what belongs to no step may be folded away."""
        own = ELSE if any(mark.kind != "step" for mark in inside.marks) else data
        for mark in inside.marks:
            unseen = inside.unseen or (FOLDED if inside.folded and mark.step else "")
            if not unseen:
                mark.text += data
                mark.own += own
            elif data.strip(NOTHING):
                mark.unseen = unseen


def _hidden(tag: str, has: dict[str, str]) -> str:
    """Why nobody sees what is in an element, as far as it tells itself."""
    gone = tag in NEVER or (tag == "dialog" and "open" not in has) or not GONE.isdisjoint(has)
    if gone or has.get("aria-hidden", "").lower() == "true":
        return HIDDEN
    if has.get("dir", "").lower() == "rtl":
        return BACKWARDS
    return HIDDEN if hides(has.get("style", "")) else ""
