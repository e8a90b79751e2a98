"""Where the page of a design leads besides: to the designs beside it among the cards, and to others in its clay.

It is made of the entries that the record keeps, and put into pages that stand: no design is worked for its neighbours.
"""

from __future__ import annotations

from bisect import bisect
from typing import TYPE_CHECKING

from sheetgen.model.status import PUBLIC
from sheetgen.model.view import DesignLink, InClay, Neighbours
from sheetgen.render.in_units import NAMES, OWN, page_in
from sheetgen.render.library import material_pages
from sheetgen.render.top import body

if TYPE_CHECKING:
    from collections.abc import Container, Iterator, Mapping, Sequence

    from sheetgen.model.page import Entry
    from sheetgen.render.theme import Theme

MOST = 6
"""Designs in a clay that a page names itself: more than a screen of a phone are for a list of their own."""
NONE = Neighbours(None, None, ())


def neighbours(entries: Sequence[Entry], files: Mapping[str, Container[str]]) -> dict[str, dict[str, Neighbours]]:
    """Of each page of every design where it leads. `entries` stand as the cards do, `files` are those of each design.

    What is not among the cards has no neighbours, and is none.
    """
    shown = [one for one in entries if one.status == PUBLIC]
    beside = _Beside(shown, files)
    found = {one.name: dict.fromkeys(_pages(one, files), NONE) for one in entries}
    for at, one in enumerate(shown):
        found[one.name] = {page: beside.of(at, page, clays) for page, clays in _pages(one, files).items()}
    return found


def block(theme: Theme, one: Neighbours) -> bytes:
    """It as a page has it; nothing where it leads nowhere."""
    made = body(theme, "neighbours.html.j2", one).strip() if one != NONE else ""
    return f"\n{made}".encode() if made else b""


def _pages(one: Entry, files: Mapping[str, Container[str]]) -> dict[str, Sequence[str]]:
    """The pages of its versions in all units, each with the clays of its version."""
    clays = dict(zip(_versions(one), one.made_of, strict=False))
    each = {f"{below}{name}": of for below, of in clays.items() for name in (OWN, *map(page_in, NAMES))}
    return {path: of for path, of in each.items() if path in files.get(one.name, ())}


def _versions(one: Entry) -> Iterator[str]:
    """The folder of each version, as a path goes on from it."""
    return (f"{one.name}/{path.removesuffix(OWN)}" for _, path, _ in one.chips)


class _Beside:
    """What stands beside each of the designs that are shown."""

    def __init__(self, shown: Sequence[Entry], files: Mapping[str, Container[str]]) -> None:
        self.shown, self.files, self.lists = shown, files, material_pages(shown)
        self.within: dict[str, list[int]] = {}
        for at, one in enumerate(shown):
            for clay in dict.fromkeys(clay.lower() for clays in one.made_of for clay in clays):
                self.within.setdefault(clay, []).append(at)

    def of(self, at: int, page: str, clays: Sequence[str]) -> Neighbours:
        """What stands beside the design at a place, as a page of it leads there that is of a version in such clays."""
        before = self._link(page, at - 1) if at else None
        after = self._link(page, at + 1) if at + 1 < len(self.shown) else None
        return Neighbours(before, after, tuple(self._also(at, page, clays)))

    def _also(self, at: int, page: str, clays: Sequence[str]) -> Iterator[InClay]:
        for clay in clays:
            all_ = self.within.get(clay.lower(), [])
            after = bisect(all_, at)
            others = [one for one in (*all_[after : after + MOST], *all_[: min(after, MOST)]) if one != at][:MOST]
            if others:
                links = tuple(self._link(page, one, clay) for one in others)
                more = len(all_) > len(others) + 1
                path = f"{_home(page)}{self.lists.get(clay.lower(), '')}" if more else ""
                yield InClay(clay, links, path, len(all_))

    def _link(self, page: str, to: int, clay: str = "") -> DesignLink:
        """From a page to a design, to its first version in that clay, in the same units where it has such a page."""
        one, name = self.shown[to], page.rpartition("/")[2]
        each = zip(_versions(one), one.made_of, strict=False)
        below = next((path for path, of in each if clay.lower() in map(str.lower, of)), f"{one.name}/")
        there = f"{below}{name}"
        return DesignLink(
            _home(page) + (there if there in self.files.get(one.name, ()) else f"{below}{OWN}"), one.title
        )


def _home(page: str) -> str:
    return "../" * page.count("/")
