"""The library's own pages: cards of its designs, and its lists by technique, material and tool."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Annotated

if TYPE_CHECKING:
    from sheetgen.model.view.head import Studio
    from sheetgen.model.view.screen import SheetLink


@dataclass(frozen=True, slots=True)
class CardPicture:
    """What a card shows; of what we drew one millimetre is as wide on every card."""

    source: str
    width: Annotated[int, "px, of the file; of what we drew as it is shown"]
    height: int
    alternative: str
    webp: Annotated[str, "the same as WebP, or nothing"]
    drawn: Annotated[bool, "whether we drew it"]


@dataclass(frozen=True, slots=True)
class Chip:
    """A version of a design."""

    name: Annotated[str, "nothing where there is one alone"]
    path: str
    pdf: Annotated[str, "the first of its sheets, or nothing"]


@dataclass(frozen=True, slots=True)
class Card:
    """A design in the library."""

    path: str
    title: str
    summary: str
    said: Annotated[tuple[str, ...], "level, time at the bench and in all, kiln or torch"]
    chips: tuple[Chip, ...]
    picture: CardPicture | None
    trouble: Annotated[str, "since when its file cannot be published, year-month-day, or nothing"]


@dataclass(frozen=True, slots=True)
class PageLink:
    """A page of cards."""

    number: int
    path: Annotated[str, "nothing for this one"]


@dataclass(frozen=True, slots=True)
class Index:
    """A page of cards: `index.html.j2`. The first is the library's own page."""

    studio: Studio
    language: str
    number: Annotated[int, "1 for the first"]
    cards: tuple[Card, ...]
    pages: Annotated[tuple[PageLink, ...], "all of them; none where there is one alone"]
    home: Annotated[str, "the way up to the library's page"]
    data: Annotated[str, "data-find: the way to what the script finds designs in; on an element of its own"]
    sheets: Annotated[tuple[SheetLink, ...], "of all designs together: catalogue, programme"] = ()


@dataclass(frozen=True, slots=True)
class ListedDesign:
    """A design in a list."""

    path: str
    title: str
    said: Annotated[str, "level, time at the bench and in all, kiln or torch"]


@dataclass(frozen=True, slots=True)
class Listing:
    """The designs of one technique, material or tool: `listing.html.j2`."""

    studio: Studio
    of: Annotated[str, "Technique, Material, Tool"]
    name: str
    designs: tuple[ListedDesign, ...]
    home: Annotated[str, "the way up to the library's page"]


@dataclass(frozen=True, slots=True)
class Term:
    """A technique, a material or a tool, and how many designs have it."""

    name: str
    path: str
    designs: int


@dataclass(frozen=True, slots=True)
class Terms:
    """All techniques, all materials, or all tools."""

    name: Annotated[str, "Techniques, Materials, Tools"]
    terms: tuple[Term, ...]


@dataclass(frozen=True, slots=True)
class Contents:
    """The library by technique, material and tool: `contents.html.j2`."""

    studio: Studio
    groups: tuple[Terms, ...]
    retired: Annotated[tuple[ListedDesign, ...], "designs that are no longer offered"]
    home: Annotated[str, "the way up to the library's page"]


@dataclass(frozen=True, slots=True)
class DesignLink:
    """The way from the page of a design to another."""

    path: str
    title: Annotated[str, "in whatever script: <bdi> keeps its direction to itself"]


@dataclass(frozen=True, slots=True)
class InClay:
    """Other designs in a clay that a version is made of."""

    clay: str
    designs: Annotated[tuple[DesignLink, ...], "the next ones first"]
    path: Annotated[str, "the list of all designs in it; nothing where all others stand here"]


@dataclass(frozen=True, slots=True)
class Neighbours:
    """Where the page of a design leads besides: `neighbours.html.j2`. It is put under the body of the page."""

    previous: Annotated[DesignLink | None, "the design before it among the cards, or None; `next` is that after it"]
    next: DesignLink | None
    also: tuple[InClay, ...]
