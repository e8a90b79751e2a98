"""The cards of the library: what a design shows and says there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import counted
from sheetgen.model.numbers import THIN
from sheetgen.model.view import Card, CardPicture, Chip

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from sheetgen.model.page import Entry

WIDE, TALL = 280, 180  # px of the place of a picture on the narrowest card
WHOLE = f"–\u2060{THIN}"  # no line ends within a span of time, though it may after a dash
LARGEST = 3.0  # px a mm: a library of studs alone is not blown up


def scale(entries: Iterable[Entry]) -> float:
    """How many px a mm has on every card that shows what we drew, so that the largest of them fits."""
    drawn = [one.picture for one in entries if one.picture and one.picture["drawn"]]
    fit: list[float] = [min(WIDE / one["width"], TALL / one["height"]) for one in drawn]
    return min([LARGEST, *fit])


def cards(entries: Sequence[Entry], home: str, times: float, trouble: Mapping[str, str]) -> tuple[Card, ...]:
    """A card for each, with the way from a page to what it shows."""
    return tuple(_card(one, home, times, trouble.get(one.name, "")) for one in entries)


def _card(one: Entry, home: str, times: float, trouble: str) -> Card:
    below = f"{home}{one.name}/"
    return Card(
        path=f"{below}index.html",
        title=one.title,
        summary=one.summary,
        said=told(one),
        chips=tuple(Chip(name, below + path, pdf and below + pdf) for name, path, pdf in one.chips),
        picture=_picture(one, home, times),
        trouble=trouble,
    )


def told(one: Entry) -> tuple[str, ...]:
    """Level, time at the bench, time in all where waits make it another, and heat."""
    said = (one.level, f"at the bench {one.time}" if one.time else "", _in_all(one), one.heat)
    return tuple(words.replace(f"–{THIN}", WHOLE) for words in said if words)


def _in_all(one: Entry) -> str:
    """As the page of the design says it; nothing where all of it is work, which the time at the bench has said."""
    waits = one.whole and one.whole_minutes != one.minutes
    return f"in all {one.whole}, {counted(one.sessions, 'session')}" if waits else ""


def _picture(one: Entry, home: str, times: float) -> CardPicture | None:
    shown = one.picture
    if shown is None:
        return None
    width, height = sized(shown["width"], shown["height"], times if shown["drawn"] else 1)
    webp = home + shown["webp"] if shown["webp"] else ""
    return CardPicture(home + shown["path"], width, height, shown["alternative"], webp, shown["drawn"])


def sized(width: float, height: float, times: float) -> tuple[int, int]:
    """Whole px, one at least."""
    return max(1, round(width * times)), max(1, round(height * times))
