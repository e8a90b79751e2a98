"""Reads off a page as WeasyPrint 70.0 has laid it out: goes through its boxes, and asks only for their attributes."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any, NamedTuple

from sheetgen.facts.paper import PT_PER_INCH, PX_PER_INCH, TYPE_LEAST
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.render import seen, true_size, typed
from sheetgen.render.edges import coloured
from sheetgen.render.laid import Drawing, LaidOut, LaidPage, Line, Marked, Missed, Picture, Words
from sheetgen.render.painting import Painting, rect_of

MM = MM_PER_INCH / PX_PER_INCH
PT = PT_PER_INCH / PX_PER_INCH
CAPITALS, ASCENDERS, DESCENDERS = 0.65, 0.72, 0.21  # of the size, measured on our type face
FAINTEST = 1 / 255  # a step of a colour: less ink than this is none
MARKS = {
    "data-told": "told",
    "data-n": "number",
    "data-step": "step",
    "data-list": "list",
    "data-may-be-short": "short",
    "data-piece": "piece",
}


def laid_out(document: Any) -> LaidOut:  # noqa: ANN401 - WeasyPrint is not typed
    """What is known of a document that WeasyPrint has laid out."""
    walk = _Walk()
    pages = tuple(walk.page(number, page._page_box) for number, page in enumerate(document.pages, 1))  # noqa: SLF001
    marked = tuple(
        Marked(
            one.kind, one.id, one.beside,
            tuple(walk.words[i] for i in one.words), tuple(walk.pictures[i] for i in one.pictures),
            one.step,
        )
        for one in walk.marks.values()
    )  # fmt: skip
    return LaidOut(
        pages,
        tuple(walk.words),
        tuple(walk.pictures),
        marked,
        tuple(walk.lines),
        tuple(walk.missed),
        tuple(walk.drawings),
    )


class _Mark:
    """A marked element while its boxes are found."""

    __slots__ = ("beside", "element", "id", "kind", "pictures", "step", "words")

    def __init__(self, kind: str, id: str, beside: str, step: str, element: Any) -> None:  # noqa: A002, ANN401
        self.kind, self.id, self.beside, self.step, self.element = kind, id, beside, step, element
        self.words: list[int] = []
        self.pictures: list[int] = []


class _Inside(NamedTuple):
    """What holds for the boxes within a box: its marks, whether they are said again on each page, its fixed column."""

    marks: tuple[_Mark, ...] = ()
    again: bool = False
    margin: bool = False
    fixed: bool = False


class _Walk:
    """Goes through the boxes of each page in the order of the text."""

    def __init__(self) -> None:
        self.words: list[Words] = []
        self.pictures: list[Picture] = []
        self.lines: list[Line] = []
        self.missed: list[Missed] = []
        self.drawings: list[Drawing] = []
        self.marks: dict[tuple[int, str, int], _Mark] = {}
        self.known: dict[int, tuple[tuple[str, str, str], ...]] = {}
        self.line = self.lines_seen = 0

    def page(self, number: int, page: Any) -> LaidPage:  # noqa: ANN401
        """One page; what is seen of its words is known when all of it is."""
        self.number, self.sheet = number, (0.0, 0.0, page.margin_width(), page.margin_height())
        self.fills: list[seen.Fill] = []
        self.inks: dict[int, seen.Ink] = {}
        self.drawn: list[tuple[Drawing, seen.Rect, seen.Key]] = []
        self.lowest = page.content_box_y()
        first, first_picture = len(self.words), len(self.pictures)
        painting = Painting(self.fills)
        painting.canvas(page)
        for child in page.children:
            margin = type(child).__name__ == "MarginBox"
            inside = _Inside(margin=margin, again=margin)
            self._box(child, page, inside, painting.page_child(child))
        asked = {i for mark in self.marks.values() if mark.kind in {"told", "number"} for i in mark.words}
        for i in seen.tangled(self.inks, asked):
            self.words[i] = self.words[i]._replace(unseen=seen.TANGLED)
        numbers = {i for mark in self.marks.values() if mark.kind == "number" for i in mark.words}
        for i, ink in self.inks.items():
            near = i in numbers and seen.like_a_digit(ink, self.fills)
            if why := seen.unseen_on(ink, self.fills) or (seen.BESIDE_IT if near else ""):
                self.words[i] = self.words[i]._replace(unseen=why)
        self.drawings += [true_size.covered(*one, self.fills) for one in self.drawn]
        ends = [w.y + w.h for w in self.words[first:] if w.text.strip() and not w.unseen and not w.margin]
        ends += [p.y + p.h for p in self.pictures[first_picture:]]
        x, y, h = page.content_box_x(), page.content_box_y(), page.height
        lowest = max([self.lowest * MM, *ends])
        return LaidPage(number, x * MM, y * MM, page.width * MM, h * MM, max(0, lowest / MM - y) / h if h else 0)

    def _box(self, box: Any, parent: Any, inside: _Inside, painting: Painting) -> None:  # noqa: ANN401
        box = vars(box).get("_box", box)  # what is placed by itself stands behind its placeholder
        name = type(box).__name__
        if name == "TextBox":
            self._text(box, inside, painting)
            return
        if name == "LineBox":
            self._line(box, parent, inside, painting)
            return
        inside = self._entered(box, inside)
        painting = painting.entered(box)
        painting.ground(box)
        if "Replaced" in name:
            self._picture(box, inside, painting)
            return
        if name != "PageBox" and not inside.margin and not box.is_for_root_element and box.element_tag != "body":
            self._edge(box, painting)
        within = painting.clipped(box)
        for child in (*getattr(box, "column_groups", ()), *box.children):
            self._box(child, box, inside, within)
        floats = [child for child in box.children if child.style["float"] in {"left", "right"}]
        for one, other in pairwise(floats):
            by = (one.margin_width() + other.margin_width() - box.width) * MM
            if by > 0 and other.position_y >= one.position_y + one.margin_height() - 1:
                self.missed.append(Missed(self.number, by))

    def _edge(self, box: Any, painting: Painting) -> None:  # noqa: ANN401
        """A frame, a rule or a grey ground fills a page too."""
        if getattr(box, "border_bottom_width", 0) or getattr(box, "background", None) is not None:
            self.lowest = max(self.lowest, painting.placed(rect_of(box, "border"))[3])

    def _entered(self, box: Any, inside: _Inside) -> _Inside:  # noqa: ANN401
        element = box.element
        if getattr(box, "is_header", False) or getattr(box, "is_footer", False) or box.style["position"] == "fixed":
            inside = inside._replace(again=True)
        if type(box).__name__ == "TableBox":
            inside = inside._replace(fixed=box.style["table_layout"] == "fixed" and box.style["width"] != "auto")
        if element is None:
            return inside
        found = self.known.get(id(element))
        if found is None:
            has = element.attrib
            found = tuple((kind, has[a], has.get("data-with", "")) for a, kind in MARKS.items() if a in has)
            self.known[id(element)] = found
        if not found or any(mark.element is element for mark in inside.marks):
            return inside
        page = self.number if inside.again else 0
        steps = [one.id for one in inside.marks if one.kind == "step"] + [one[1] for one in found if one[0] == "step"]
        step = steps[-1] if steps else ""
        marks = [self.marks.setdefault((id(element), one[0], page), _Mark(*one, step, element)) for one in found]
        return inside._replace(marks=(*inside.marks, *marks))

    def _line(self, box: Any, parent: Any, inside: _Inside, painting: Painting) -> None:  # noqa: ANN401
        outer, first = self.line, len(self.words)
        self.lines_seen += 1
        number = self.line = self.lines_seen
        if box.block_ellipsis != "none":
            painting = painting.cut_short()
        for child in box.children:
            self._box(child, box, inside, painting)
        self.line = outer
        own = [word for word in self.words[first:] if word.line == number and word.text.strip()]
        if own and not painting.turned and hasattr(parent, "content_box_x"):
            x, end = min(word.x for word in own), max(word.x + word.w for word in own)
            fixed = inside.fixed and box.style["white_space"] == "nowrap"
            text = "".join(word.text for word in own)
            column = parent.content_box_x() * MM, parent.width * MM
            self.lines.append(Line(self.number, text, x, end - x, *column, fixed))

    def _text(self, box: Any, inside: _Inside, painting: Painting) -> None:  # noqa: ANN401
        style, text = box.style, box.text
        size = style["font_size"]
        base, left, right = box.position_y + box.baseline, box.position_x, box.position_x + box.width
        core = painting.placed((left, base - CAPITALS * size, right, base))
        letters = painting.placed((left, base - ASCENDERS * size, right, base + DESCENDERS * size))
        size *= painting.scale * (seen.RAISED if typed.made_small(style) else 1)
        unseen = ""
        if text.strip():
            unseen = self._unseen(style, core, size, painting)
            if not unseen:
                self.inks[len(self.words)] = seen.Ink(
                    painting.key(), core, size, coloured(style["color"]), painting.groups,
                    typed.contrast_wanted(style, size * PT),
                )  # fmt: skip
        x, y, end, bottom = (edge * MM for edge in letters)
        sign = (box.element_tag or "").endswith("::marker") and not any(letter.isalpha() for letter in text)
        for mark in inside.marks:
            if not (sign and mark.kind in {"told", "number"}):
                mark.words.append(len(self.words))
        self.words.append(
            Words(text, self.number, x, y, end - x, bottom - y, self.line, size * PT, unseen, inside.margin)
        )

    def _unseen(self, style: Any, core: seen.Rect, size: float, painting: Painting) -> str:  # noqa: ANN401
        """Why words are not seen, whatever is painted beside them."""
        whys = (
            (seen.HIDDEN, style["visibility"] != "visible"),
            (seen.SMALL, size * PT < TYPE_LEAST - seen.SLACK),
            (seen.CLEAR, _share(style, painting) < FAINTEST),
            (seen.MIRRORED, painting.mirrored),
            (seen.ON_ITS_HEAD, painting.on_its_head),
            (seen.BACKWARDS, style["direction"] == "rtl"),
            (seen.CLOSE, typed.run_together(style)),
            (seen.FORMED, typed.formed(style)),
            (seen.WIDE, typed.stand_apart(style)),
            (seen.STRUCK, "line-through" in style["text_decoration_line"]),
            (seen.COVERED, typed.lined_over(style)),
        )
        edges = seen.cut(core, self.sheet, painting.clip, size)
        return next((why for why, so in whys if so), edges)

    def _picture(self, box: Any, inside: _Inside, painting: Painting) -> None:  # noqa: ANN401
        if box.style["visibility"] != "visible":
            return
        rect = painting.placed(rect_of(box, "content"))
        # of one that may paint beyond its box nobody knows how far
        over = seen.meet(rect if box.style["overflow"] != "visible" else self.sheet, painting.clip)
        key = painting.key()
        self.fills.append(seen.Fill(key, over, (), not painting.turned, painting.groups))
        if box.element is not None and true_size.MARK in box.element.attrib:
            self.drawn.append((true_size.of_box(box, rect, painting, self.number, self.sheet), rect, key))
        whole = seen.within(rect, seen.meet(painting.clip, self.sheet), 10)
        x, y, end, bottom = (edge * MM for edge in rect)
        for mark in inside.marks:
            mark.pictures.append(len(self.pictures))
        self.pictures.append(Picture(self.number, x, y, end - x, bottom - y, "" if whole else seen.CUT))


def _share(style: Any, painting: Painting) -> float:  # noqa: ANN401
    """How much the ink of words covers."""
    return math.prod([coloured(style["color"])[3], *(share for _, share in painting.groups)])
