"""What jars in the layout of a sheet: short pages, what is parted, split, clipped, on each other or too tight."""

from __future__ import annotations

from collections import defaultdict
from typing import TYPE_CHECKING

from sheetgen.facts.paper import COLUMN_SPARE, LINES_OVERLAP, PAGE_FULL
from sheetgen.render.seen import CUT

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.render.laid import LaidOut, LaidPage, Marked, Picture, Words

Told = tuple[int, str]
"""The page, from 1, or 0 for the whole sheet; and what jars, in words."""
MOST_SHOWN = 40  # letters of what is quoted


def doubts(laid: LaidOut, most_sides: int = 0) -> list[Told]:
    """All that jars in a sheet, by its pages."""
    found = [*_sides(laid, most_sides), *_short(laid), *_parted(laid), *misplaced(laid)]
    return sorted(dict.fromkeys(found), key=lambda told: told[0])


def misplaced(laid: LaidOut) -> list[Told]:
    """What of a page, however full it is, is cut off, beyond its margin or its column, or on each other."""
    return [*_clipped(laid), *_columns(laid), *_on_each_other(laid)]


def short_pages(laid: LaidOut) -> list[LaidPage]:
    """Pages under a third full, but for a sheet of one page and for those that may be short."""
    if len(laid.pages) == 1:
        return []
    may = {page for one in laid.marked if one.kind == "short" for page in _pages(one)}
    return [page for page in laid.pages if page.full < PAGE_FULL and page.number not in may]


def _sides(laid: LaidOut, most: int) -> Iterator[Told]:
    if most and len(laid.pages) > most:
        yield 0, f"it has {len(laid.pages)} sides, more than {most}"


def _short(laid: LaidOut) -> Iterator[Told]:
    for page in short_pages(laid):
        yield page.number, f"it is only {page.full * 100:.0f} % full"


def _parted(laid: LaidOut) -> Iterator[Told]:
    """What belongs on one page and stands on two."""
    begins = {f"step-{one.id}": one for one in reversed(laid.marked) if one.kind == "step" and _pages(one)}
    for one in laid.marked:
        pages = _pages(one)
        if one.kind == "told" and one.beside in begins and pages:
            own = {id(word) for word in one.words}
            action = next((w.page for w in begins[one.beside].words if _seen(w) and id(w) not in own), pages[-1])
            if action != pages[-1]:
                yield pages[-1], f"the caution '{_quoted(one.words)}' stands apart from its step on page {action}"
        if one.kind == "list" and {1, 2} <= set(pages):
            yield 1, f"the list '{_quoted(one.words)}' is split before page 2"
        if one.kind == "step" and len(pages) > 1:
            yield pages[0], f"the step '{_quoted(one.words)}' is parted: it goes on on page {pages[-1]}"


def _clipped(laid: LaidOut) -> Iterator[Told]:
    """What an edge cuts off, or what stands outside of the box that a page keeps for its content."""
    for word in laid.words:
        if word.unseen == CUT:
            yield word.page, f"'{_cut(word.text)}' is cut off"
        elif _seen(word) and not word.margin and (far := _beyond(laid.pages[word.page - 1], word)):
            yield word.page, f"'{_cut(word.text)}' goes {far:.1f} mm beyond the margin"
    for drawing in laid.pictures:
        if drawing.unseen:
            yield drawing.page, "a drawing is cut off"
        elif far := _beyond(laid.pages[drawing.page - 1], drawing):
            yield drawing.page, f"a drawing goes {far:.1f} mm beyond the margin"


def _beyond(page: LaidPage, one: Words | Picture) -> float:
    """How far something goes beyond its page's content box, mm; nothing where nobody sees it."""
    right, bottom = one.x + one.w - page.x - page.w, one.y + one.h - page.y - page.h
    far = max(page.x - one.x, right, page.y - one.y, bottom)
    return far if far > LINES_OVERLAP else 0


def _columns(laid: LaidOut) -> Iterator[Told]:
    for line in laid.lines:
        spare = line.column_x + line.column_w - line.x - line.w
        if spare < -LINES_OVERLAP:
            yield line.page, f"'{_cut(line.text)}' is {-spare:.1f} mm wider than its column"
        elif line.fixed and line.column_w - line.w < COLUMN_SPARE:
            yield line.page, f"'{_cut(line.text)}' fits its column with only {line.column_w - line.w:.1f} mm to spare"
    for one in laid.missed:
        if one.by < COLUMN_SPARE:
            yield one.page, f"two columns miss standing side by side by {one.by:.1f} mm"


def _on_each_other(laid: LaidOut) -> Iterator[Told]:
    """Letters of two lines that lie on each other."""
    pages: dict[int, list[Words]] = defaultdict(list)
    for word in laid.words:
        if _seen(word):
            pages[word.page].append(word)
    for number, words in pages.items():
        words.sort(key=lambda word: word.y)
        for i, upper in enumerate(words):
            bottom, right = upper.y + upper.h - LINES_OVERLAP, upper.x + upper.w - LINES_OVERLAP
            for lower in words[i + 1 :]:
                if lower.y >= bottom:
                    break
                if lower.line != upper.line and lower.x < right and lower.x + lower.w > upper.x + LINES_OVERLAP:
                    yield number, f"'{_cut(upper.text)}' and '{_cut(lower.text)}' lie on each other"


def _seen(word: Words) -> bool:
    return not word.unseen and bool(word.text.strip())


def _pages(one: Marked) -> list[int]:
    """The pages on which something of it is seen."""
    return sorted({word.page for word in one.words if _seen(word)} | {picture.page for picture in one.pictures})


def _quoted(words: Sequence[Words]) -> str:
    return _cut(next((word.text for word in words if _seen(word)), ""))


def _cut(text: str) -> str:
    plain = " ".join(text.split())
    return plain if len(plain) <= MOST_SHOWN else plain[: MOST_SHOWN - 1] + "…"
