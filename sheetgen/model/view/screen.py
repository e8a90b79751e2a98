"""The pages on a screen: of a design, of a fingerprint, and the list of the library."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Annotated

if TYPE_CHECKING:
    from sheetgen.model.view.bench import Handout
    from sheetgen.model.view.head import Html, Studio


@dataclass(frozen=True, slots=True)
class SheetLink:
    """A published sheet."""

    path: str
    label: Annotated[str, "Handout A4, 4 pages"]


@dataclass(frozen=True, slots=True)
class VersionLink:
    """A version of the design."""

    name: str
    path: Annotated[str, "nothing for this one"]


@dataclass(frozen=True, slots=True)
class UnitLink:
    """The same page in a unit: `units.html.j2`, where the script looks for them."""

    name: Annotated[str, "mm, inches"]
    unit: Annotated[str, "mm or in: data-unit, by which the last one is remembered"]
    path: Annotated[str, "nothing for this one"]


@dataclass(frozen=True, slots=True)
class CutterLink:
    """A template's shape, and its file for a cutter."""

    part: str
    title: Annotated[str, "the part, and how many to cut, bend or mark"]
    label: Annotated[str, "what it is rolled to or cut from, or nothing"]
    svg: Html
    path: Annotated[str, "nothing where there is none"]


@dataclass(frozen=True, slots=True)
class Offline:
    """What the script is told that keeps a page for when there is no net: the data- attributes of one element."""

    revision: Annotated[str, "data-as: what it is known by; another where the page is another"]
    worker: Annotated[str, "data-worker: the way to the program that keeps it"]
    files: Annotated[str, "data-files: the ways to its own files, blanks between"]
    shared: Annotated[str, "data-shared: the same of what all pages load"]


@dataclass(frozen=True, slots=True)
class Retired:
    """That a design is no longer offered, and what it leads on to."""

    title: Annotated[str, "the design that is made instead, or nothing"]
    path: Annotated[str, "the way to its page, or nothing"]


@dataclass(frozen=True, slots=True)
class Screen:
    """The page of a design on a screen: `project.html.j2`."""

    handout: Handout
    sheets: tuple[SheetLink, ...]
    versions: tuple[VersionLink, ...]
    cutters: tuple[CutterLink, ...]
    older: Annotated[tuple[SheetLink, ...], "the pages of sheets that were printed before, with other numbers"]
    home: Annotated[str, "the way up to the library's page"]
    retired: Annotated[Retired | None, "of a design that is no longer offered"]
    edition: Annotated[str, "data-edition: as what ticks, place and clocks are kept; one in all units"]
    offline: Annotated[Offline, "what is kept where somebody asks for it, on an element with data-keep"]
    units: Annotated[tuple[UnitLink, ...], "in which units this page is; none where in one"] = ()


@dataclass(frozen=True, slots=True)
class MovedNumber:
    """A number that an older sheet prints otherwise."""

    label: str
    was: Annotated[str, "number and unit there, or nothing"]
    now: Annotated[str, "number and unit today, or nothing"]


@dataclass(frozen=True, slots=True)
class CodePage:
    """Where the fingerprint on a sheet leads: `code.html.j2`."""

    studio: Studio
    language: str
    code: Annotated[str, "the fingerprint"]
    title: Annotated[str, "the design"]
    version: Annotated[str, "the version as it was printed there; nothing where the design had only one"]
    revisions: Annotated[tuple[str, ...], "what the sheet was: revision 2, 2026-03-14"]
    present: Annotated[bool, "whether the sheets bear it today"]
    path: Annotated[str, "the page of today's sheet; of a version that is no longer made, that of the design"]
    made: Annotated[bool, "whether the version is still made"]
    called: Annotated[str, "what the version is called today, where that is another name, or nothing"]
    revision: Annotated[str, "of today's sheet: revision 3, 2026-05-02"]
    moved: Annotated[tuple[MovedNumber, ...], "the numbers that differ"]
    listed: Annotated[tuple[str, ...], "of a kit in a colourway what its sheets list today, and how much of it"]
    home: Annotated[str, "the way up to the library's page"]


@dataclass(frozen=True, slots=True)
class Renamed:
    """What stands at an address of before: `renamed.html.j2`."""

    studio: Studio
    title: Annotated[str, "the design, as it is called now"]
    path: Annotated[str, "the way to where its page is now"]


@dataclass(frozen=True, slots=True)
class NotFound:
    """What a host shows for what is not there: `not-found.html.j2`. Its page loads nothing but alone.css."""

    studio: Studio
    home: Annotated[str, "the address of the library's page, or nothing where the site has none"]


@dataclass(frozen=True, slots=True)
class OursDesign:
    """A design of which there is something that the studio alone sees."""

    title: str
    status: Annotated[str, "public, draft, class only, retired"]
    path: Annotated[str, "the way to its page, where that is the studio's alone too, or nothing"]
    sheets: tuple[SheetLink, ...]


@dataclass(frozen=True, slots=True)
class OfStudio:
    """The list of what the studio alone sees, in a folder that is not put anywhere: `studio.html.j2`."""

    studio: Studio
    designs: tuple[OursDesign, ...]
