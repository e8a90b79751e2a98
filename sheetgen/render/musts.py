"""Holds what is printed and visible against what was worked: what is missing, hidden, altered or out of its place.

A theme marks what it prints: `data-told` on a caution or a reminder, `data-n` on a number, `data-step` round a step.
"""

from __future__ import annotations

import re
from collections import defaultdict
from dataclasses import replace
from itertools import groupby, pairwise
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.facts.paper import PT_PER_INCH
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.render.given import is_unit, numbers
from sheetgen.render.marked_html import APART, ELSE, Shown, read_marked
from sheetgen.render.placed import out_of_order, out_of_place

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.render.job import Given, Must
    from sheetgen.render.laid import LaidOut, Marked, Words

PT_PER_MM = PT_PER_INCH / MM_PER_INCH
GAP = 0.12  # of the size of the type: what is read as a space
TYPE_APART = 1.5  # a figure or a point so much larger than its neighbour does not read as one number with it
DIGITS = frozenset("0123456789.,")
LIKE_ONE = frozenset("lI|\u0131\u01c0\u2223")  # what a one is taken for
JOINERS = dict.fromkeys(map(ord, "\u00ad\u2010\u200b\u200c\u200d\u2060\ufeff"))  # soft hyphens, joiners, no width
IN_NUMBERS = {sign: None for sign in JOINERS if sign != ord("\u2010")}  # where a hyphen is a minus
SPACES = re.compile(rf"(?:\s|{APART})+")
MEND = "mend the template of the theme: print it whole, where it can be read, in an element with its mark"


class Fault(NamedTuple):
    """What a theme has left out, hidden or altered: its id, the page if it is known (from 1, else 0), in words."""

    id: str
    page: int
    words: str

    def __str__(self) -> str:
        return f"page {self.page}: {self.words}" if self.page else self.words


def faults(laid: LaidOut, must: Sequence[Must], may: Sequence[Must] = (), given: Given = ()) -> list[Fault]:
    """The faults of a document that is laid out."""
    digits, order = _digits(laid), {id(word): at for at, word in enumerate(laid.words)}
    marked = {id(word) for one in laid.marked if one.kind in {"told", "number"} for word in one.words}
    shown = [_shown(one, digits, order) for one in laid.marked if one.kind in {"told", "number"}]
    for one in laid.marked:
        if one.kind == "step":
            own = "".join(
                ELSE if other else _shown(replace(one, words=tuple(words)), digits, order).text
                for other, words in groupby(one.words, key=lambda word: id(word) in marked)
            )
            shown.append(_shown(one, digits, order)._replace(own=own))
    return [*_compared(shown, must, may), *_added(shown, given), *(Fault(*one) for one in out_of_order(shown, given))]


def checked_html(html: str, must: Sequence[Must], may: Sequence[Must] = (), given: Given = ()) -> list[Fault]:
    """The faults of a page for the screen, as far as its text, and what of its style sheets hides, tells."""
    shown = read_marked(html)
    return [*_compared(shown, must, may), *_added(shown, given), *(Fault(*one) for one in out_of_order(shown, given))]


def _compared(shown: Iterable[Shown], must: Sequence[Must], may: Sequence[Must]) -> Iterator[Fault]:
    """Each must against every place where it is shown."""
    shown = list(shown)
    if any(one.step for one in must) and not any(one.kind == "step" for one in shown):
        yield Fault("", 0, "no step is marked with data-step, so that nobody knows what stands in it")
        return
    places: dict[str, list[Shown]] = {}
    steps: dict[str, Shown] = {}
    for one in shown:
        if one.kind != "step":
            places.setdefault(one.id, []).append(one)
        elif SPACES.sub("", one.text):
            if one.id in steps:
                yield Fault(
                    "", one.page, f"'{one.id}' is marked twice with data-step: enclose all of it in one element"
                )
            steps.setdefault(one.id, one)
    worked = {one.id: one for one in (*may, *must)}
    for id_, here in places.items():
        if id_ not in worked:
            words = f"'{_plain(here[0].text)}' is marked as '{id_}', which this sheet was not given"
            yield Fault(id_, here[0].page, words)
            continue
        yield from _altered(worked[id_], here)
    for wanted in must:
        here = [place for place in places.get(wanted.id, []) if SPACES.sub("", place.text)]
        if not here:
            hidden = next((place for place in places.get(wanted.id, []) if place.unseen), None)
            words = f"is printed, but nobody sees it: {hidden.unseen}" if hidden else "is not printed"
            yield Fault(wanted.id, hidden.page if hidden else 0, f"{wanted.what} {words}")
        elif where := out_of_place(wanted, here, places, steps):
            yield Fault(wanted.id, here[0].page, f"{wanted.what} stands {where}")


def _added(shown: Iterable[Shown], given: Given) -> Iterator[Fault]:
    """Numbers that a step prints and was not given."""
    known = dict(given)
    for one in shown:
        if known and one.kind == "step" and (more := numbers(one.own) - known.get(one.id, frozenset())):
            yield Fault(one.id, one.page, f"'{one.id}' prints {', '.join(sorted(more))}, which it was not given")


def _altered(one: Must, here: Sequence[Shown]) -> Iterator[Fault]:
    """A place where some of it can be read, and it is not what was worked."""
    for place in here:
        if SPACES.sub("", place.text) and not _equal(place, one.words):
            told = f"{one.what} reads '{_plain(place.text)}' in place of '{_plain(one.words)}'"
            yield Fault(one.id, place.page, told + (f"; of the rest {place.unseen}" if place.unseen else ""))


def _equal(place: Shown, words: str) -> bool:
    """Whether what is read is what was worked; a gap on paper may be a space, and capitals may shout a caution."""
    joiners, gap_reads = (JOINERS, " ?") if place.kind == "told" else (IN_NUMBERS, " ")
    text, words = place.text.translate(joiners), " ".join(words.translate(joiners).split())
    if place.kind == "told":
        text, words = text.casefold(), words.casefold()
    pattern, end = "", 0
    text = text.strip("".join({c for c in text if c.isspace()} | {APART}))
    for gap in SPACES.finditer(text):
        pattern += re.escape(text[end : gap.start()]) + (" " if gap[0].strip(APART) else gap_reads)
        end = gap.end()
    return re.fullmatch(pattern + re.escape(text[end:]), words) is not None


def _plain(text: str) -> str:
    return SPACES.sub(" ", text.translate(JOINERS)).strip()


def _digits(laid: LaidOut) -> dict[int, list[Words]]:
    """What is seen of each page and begins or ends with a digit."""
    found: dict[int, list[Words]] = defaultdict(list)
    for word in laid.words:
        if word.text and not word.unseen and _reads_on(word.text):
            found[word.page].append(word)
    return found


def _reads_on(text: str) -> bool:
    return any(_is_digit(one) or one in LIKE_ONE for one in (text[0], text[-1]))


def _is_digit(letter: str) -> bool:
    return letter.isnumeric() or letter in DIGITS


def _touching(words: Sequence[Words], digits: dict[int, list[Words]]) -> tuple[str, str]:
    """A digit that stands right before a number without being of it, and one right after."""
    first, last = words[0], words[-1]
    own = {id(word) for word in words}

    def touches(left: Words, right: Words) -> bool:
        gap = right.x - left.x - left.w
        level = min(left.y + left.h, right.y + right.h) - max(left.y, right.y) > min(left.h, right.h) / 2
        return level and abs(gap) < GAP * max(left.size, right.size) / PT_PER_MM

    before = [w.text[-1] for w in digits.get(first.page, ()) if id(w) not in own and touches(w, first)]
    after = [w.text[0] for w in digits.get(last.page, ()) if id(w) not in own and touches(last, w)]
    return (
        next((sign for sign in before if _is_digit(sign) or sign in LIKE_ONE), ""),
        next((sign for sign in after if sign.isnumeric() or sign in LIKE_ONE), ""),
    )


def _as_read(words: Iterable[Words]) -> list[Words]:
    """Words in the order in which the eye meets them: those of a line from left to right."""
    return [
        one for _, line in groupby(words, key=lambda w: (w.page, w.line)) for one in sorted(line, key=lambda w: w.x)
    ]


def _one_number(before: Words, word: Words) -> bool:
    """Whether two pieces of a number are set alike, so that they read as one."""
    sizes = sorted((before.size, word.size))
    return not {before.text[-1:], word.text[:1]} <= DIGITS or sizes[1] < TYPE_APART * sizes[0]


def _shown(one: Marked, digits: dict[int, list[Words]], order: dict[int, int]) -> Shown:
    """What can be read of a marked element as it is laid out."""
    text = ""
    seen = _as_read(word for word in one.words if not word.unseen)
    for before, word in pairwise([None, *seen]):
        assert word is not None  # noqa: S101 - only the first of all is none
        near = before is None or (
            before.line == word.line
            and word.x - before.x - before.w < GAP * word.size / PT_PER_MM
            and (one.kind == "told" or _one_number(before, word))
        )
        text += ("" if near else APART) + word.text
    if one.kind == "number" and text.strip() and not is_unit(text):
        before_it, after_it = _touching(seen, digits)
        text = before_it + text + after_it
    unseen = next((word.unseen for word in one.words if word.unseen), "")
    page = next((word.page for word in (*seen, *one.words)), 0)
    printed = tuple(word for word in seen if word.text.strip())
    at = min((order[id(word)] for word in printed), default=0)
    return Shown(one.kind, one.id, text, page, unseen, one.step, at, printed)
