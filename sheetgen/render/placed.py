"""Whether what must be read stands where it belongs: in its step, a caution before what is done; others before all.

On paper both the order in which it is read aloud and the place where it lies count; on a screen only the order does.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from sheetgen.facts.paper import APART_FROM_STEP, LINES_OVERLAP
from sheetgen.render.marked_html import NOTHING

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from sheetgen.render.job import Given, Must
    from sheetgen.render.laid import Words
    from sheetgen.render.marked_html import Shown

OUTSIDE, LATE, BEHIND = "outside of its step", "after what is done there", "after the first step begins"
APART = "apart from its step"


def out_of_place(
    wanted: Must, here: Sequence[Shown], places: Mapping[str, Sequence[Shown]], steps: Mapping[str, Shown]
) -> str:
    """Where it stands, if it stands right in none of these places; empty where it does in one. `steps`: in order."""
    why = ""
    first = next(iter(steps.values()), None)
    for place in here:
        if wanted.step:
            before = places.get(wanted.before, ())
            if place.step != wanted.step:
                why = OUTSIDE
            elif any(_follows(place, other) for other in before if other.step == wanted.step):
                why = LATE
            elif _adrift(place.words, steps[wanted.step].words):
                why = APART
            else:
                return ""
        elif place.kind == "told" and first is not None and _follows(place, first):
            why = BEHIND
        else:
            return ""
    return why


def out_of_order(shown: Iterable[Shown], given: Given) -> Iterator[tuple[str, int, str]]:
    """Steps and waits that are left out, or stand behind a later one: id, page and words."""
    steps: dict[str, Shown] = {}
    for one in shown:
        if one.kind == "step" and one.text.strip(NOTHING):
            steps.setdefault(one.id, one)
    rows = [id_ for id_, _ in given] if steps else []
    yield from ((id_, 0, f"'{id_}' is left out, a row of the bench") for id_ in rows if id_ not in steps)
    for earlier, later in pairwise(steps[id_] for id_ in rows if id_ in steps):
        if _follows(earlier, later):
            yield later.id, later.page, f"'{later.id}' stands before '{earlier.id}', which is done first"


def _follows(one: Shown, other: Shown) -> bool:
    """Whether it is read after the other, or lies under where that begins."""
    if one.at > other.at:
        return True
    if not one.words or not other.words:
        return False
    page, beside = one.words[0].page, other.words[0].page
    if page != beside:
        return page > beside
    (left, top, right, _), (begins, upper, ends, _) = _box(one.words, page), _box(other.words, page)
    return left < ends and begins < right and top > upper + LINES_OVERLAP


def _adrift(own: Sequence[Words], of_step: Sequence[Words]) -> bool:
    """Whether it is carried off from the other words of its step on the page."""
    if not own:
        return False
    page, mine = own[0].page, {id(word) for word in own}
    others = [word for word in of_step if word.page == page and id(word) not in mine]
    if not others:
        return False
    (_, top, _, bottom), (_, upper, _, lower) = _box(own, page), _box(others, page)
    return max(upper - bottom, top - lower) > APART_FROM_STEP


def _box(words: Sequence[Words], page: int) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of words on a page, mm."""
    here = [word for word in words if word.page == page]
    return (
        min(word.x for word in here), min(word.y for word in here),
        max(word.x + word.w for word in here), max(word.y + word.h for word in here),
    )  # fmt: skip
