"""Pages in other units than the studio's: what they are called, where they stand, and how each leads to the others."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.spelling import slug
from sheetgen.model.view import SheetLink, UnitLink, VersionLink

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.base.place import Place
    from sheetgen.model.codes import Code
    from sheetgen.model.drawing import Drawings
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.render.top import Preview

NAMES = {"mm": "mm", "in": "inches"}
_LITERAL = {
    "in": re.compile(r"\d\s*(?:mm|cm|millimet\w+|centimet\w+)\b"),
    "mm": re.compile(r"\d\s*(?:″|inch(?:es)?\b|in\b(?!\s+(?:a|an|all|each|its|one|the|turn)\b))"),
}
"""A length of another unit that stands in words as it was written, by the units that the page is to be in."""
_BEFORE = re.compile(r"[\d.,/ ½¼¾⅛×–-]*$")
OWN = "index.html"


class InUnits(NamedTuple):
    """A design as it is worked in other units, its drawings, and every fingerprint that its pages have borne."""

    worked: Worked
    drawings: Mapping[str, Drawings]
    codes: Sequence[Code]


class Screens(NamedTuple):
    """In which units the pages of a design are, the studio's own first; none where in these alone."""

    units: tuple[str, ...] = ()

    def named(self, worked: Worked) -> str:
        """What is said of a page's units, where there are others."""
        return NAMES[_units(worked)] if self.units else ""

    def links(self, worked: Worked) -> tuple[UnitLink, ...]:
        """From a page to the same in each unit."""
        here = _units(worked)
        paths = {one: page_in(one if at else "") for at, one in enumerate(self.units)}
        return tuple(UnitLink(NAMES[one], one, "" if one == here else path) for one, path in paths.items())

    def preview(self, preview: Preview | None, worked: Worked) -> Preview | None:
        """The picture for who passes a link on; what is said of it tells sizes in the studio's own units."""
        return replace(preview, alternative=worked.title) if preview and worked.other_units else preview

    def sheets(self, links: Sequence[SheetLink]) -> tuple[SheetLink, ...]:
        """Links to what is printed, which is in the studio's own units."""
        said = f", in {NAMES[self.units[0]]}" if self.units else ""
        return tuple(SheetLink(one.path, f"{one.label}{said}") for one in links)


def as_written(other: Worked) -> tuple[str, Place | None] | None:
    """The first length that a design says in its words in another unit, and where: it stays as it was written."""
    wrong = _LITERAL[other.other_units]
    for version in other.versions.values():
        each = [(version.summary, other.place), (version.makes, other.place)]
        for step in version.steps:
            said = (step.text, step.expect, step.meanwhile)
            each += [(prose, step.place or other.place) for prose in said]
        for prose, place in each:
            for words in prose:
                if isinstance(words, str) and (found := wrong.search(words)):
                    before = _BEFORE.search(words[: found.start()])
                    return f"{before[0] if before else ''}{found[0]}".strip(), place
    return None


def screens(worked: Worked, others: Sequence[InUnits]) -> Screens:
    """Those of a design that is worked in others too."""
    return Screens((_units(worked), *(one.worked.other_units for one in others)) if others else ())


def page_in(other_units: str) -> str:
    """The file of a version's page; in the studio's own units the one that a folder opens with."""
    return f"in-{NAMES[other_units]}.html" if other_units else OWN


def version_links(worked: Worked, here: WorkedVersion) -> Iterator[VersionLink]:
    """From a version's page to those of the others in the same units."""
    up = "" if here is worked.main else "../"
    for version in worked.versions.values():
        below = "" if version is worked.main else f"{slug(version.name)}/"
        path = f"{up}{below}{page_in(worked.other_units)}"
        yield VersionLink(version.title, "" if version is here else path)


def _units(worked: Worked) -> str:
    return "in" if worked.rounder.inches else "mm"
