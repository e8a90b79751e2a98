"""The sheets of all designs together: the catalogue, half a page each, and the programme, four classes a side."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Annotated

if TYPE_CHECKING:
    from sheetgen.model.view.first_side import Picture
    from sheetgen.model.view.head import Head, Html


@dataclass(frozen=True, slots=True)
class Fitted:
    """A picture as wide as its place lets it be. Its source is put in when the page is made."""

    picture: Picture
    wide: Annotated[str, "its width: 64.5mm"]
    true: Annotated[bool, "whether it is drawn, and that is its true size"]


@dataclass(frozen=True, slots=True)
class Listed:
    """A design as all designs together are listed."""

    id: Annotated[str, "of its element, by which the index leads to it"]
    title: str
    summary: Annotated[str, "shortened, where it is too long"]
    time: Annotated[Html, "at the bench, or nothing"]
    level: str
    heat: Annotated[str, "Kiln, Torch, Kiln and torch, or Neither kiln nor torch"]
    evenings: Annotated[Html, "how many a class takes, or nothing"]
    versions: Annotated[str, "their names, shortened where they are too many, or nothing"]
    revised: Annotated[str, "revision 2, 2026-11-27"]
    seen: Annotated[Fitted | None, "its picture; nothing where it shows none"]
    address: Annotated[str, "of its page, or nothing where the site has none"]
    code: Annotated[Html, "the same to be scanned, a drawing, or nothing"]


@dataclass(frozen=True, slots=True)
class Written:
    """Where a design stands."""

    id: Annotated[str, "of its element; nothing where it stands in another volume"]
    title: str
    at: Annotated[str, "its page; where there are several volumes, the volume before it"]


@dataclass(frozen=True, slots=True)
class IndexLine:
    """A word to find designs by, and those that it finds."""

    word: str
    designs: tuple[Written, ...]


@dataclass(frozen=True, slots=True)
class ToFind:
    """A part of the index."""

    title: str
    lines: tuple[IndexLine, ...]


@dataclass(frozen=True, slots=True)
class CatalogueSheet:
    """All designs, or a volume of them: `catalogue.html.j2`. Each stands on half a page, two after each other."""

    head: Head
    counted: Annotated[str, "11 designs"]
    volume: Annotated[str, "which of several it is, or nothing"]
    cover: Annotated[tuple[Fitted, ...], "a few pictures for the cover, which only the first volume has"]
    address: Annotated[str, "of the library's page, or nothing"]
    designs: tuple[Listed, ...]
    index: Annotated[tuple[ToFind, ...], "at the end of the first volume, of all of them"]


@dataclass(frozen=True, slots=True)
class ProgrammeSheet:
    """Classes to be offered, four a side, their dates and fees to be written in by hand: `programme.html.j2`."""

    head: Head
    address: Annotated[str, "of the library's page, or nothing"]
    designs: tuple[Listed, ...]
