"""What the printer is asked for, and what it gives back."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple, Protocol

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

    from sheetgen.model.page import Page


@dataclass(frozen=True, slots=True)
class Must:
    """Words that must be printed as they were worked, in an element with this id.

    `what` names them to whoever mends the theme: 'the caution Hot kiln of step 10'. `step`: the row that they must
    stand in; a caution without one stands before the first. `before`: the id of what they must stand before.
    """

    id: str
    words: str
    what: str
    step: str = ""
    before: str = ""


class Drawn(NamedTuple):
    """A template drawing that must be printed as it is, so many mm wide and tall; `what` names it."""

    id: str
    what: str
    wide: float
    tall: float
    fingerprint: str


Given = tuple[tuple[str, frozenset[str]], ...]
"""Of each step the numbers that it may print besides those that are marked, with their units and without."""


class Side(NamedTuple):
    """A side of paper, mm: its width and height, and where the content begins from the left and from the top."""

    wide: float
    tall: float
    left: float
    top: float


class Paper(NamedTuple):
    """One PDF: the name by which it is told of, the CSS of its page, which is put last into the head, its revision.

    Papers of one job that say their `side` have one content box between them: a sheet is laid out and painted for the
    first, and only moved on the others.
    """

    name: str
    css: str = ""
    revision: str = ""
    side: Side | None = None


@dataclass(frozen=True, slots=True)
class Job:
    """A sheet as HTML, from the roomiest to the tightest, and the papers it is printed on.

    `may`: marked words that need not be printed, and must be equal where they are. `most_pages`: how many pages it is
    to fit; `most_sides`: how many it may have without a warning; 0 is no bound. `first_full`: the share of its first
    side that it is to fill; `gives`: the share of each page that the tightest saves. `given`: the numbers of a step's
    words. `drawn`: the templates that it prints at true size. `pixels`: how wide it is as a picture, where it is
    wanted as one and not as a PDF.
    """

    htmls: tuple[str, ...]
    papers: tuple[Paper, ...]
    must: tuple[Must, ...] = ()
    may: tuple[Must, ...] = ()
    most_pages: int = 0
    most_sides: int = 0
    first_full: float = 0
    gives: float = 1
    given: Given = ()
    drawn: tuple[Drawn, ...] = ()
    pixels: int = 0


def one_page(html: str, name: str, must: Sequence[Must] = (), may: Sequence[Must] = ()) -> Job:
    """A sheet that is laid out in one way, on the paper that it names itself."""
    return Job((html,), (Paper(name),), tuple(must), tuple(may))


@dataclass(frozen=True, slots=True)
class Doubt:
    """Something of the layout that jars: on which sheet and page (from 1; 0 is the whole), in words."""

    sheet: str
    page: int
    words: str

    def __str__(self) -> str:
        return f"{self.sheet}, page {self.page}: {self.words}" if self.page else f"{self.sheet}: {self.words}"


@dataclass(frozen=True, slots=True)
class Printout:
    """A PDF, or the picture made of it, its pages, and what is to be told of it. With a fault it is not published.

    `way` is which of the sheet's ways of setting it was taken.
    """

    pdf: bytes
    pages: int
    faults: tuple[str, ...] = ()
    warnings: tuple[Doubt, ...] = ()
    way: int = 0


class Makes(Protocol):
    """What prints sheets and keeps what else is made of files, so that it is made again only where they are others."""

    def printed(self, jobs: Sequence[Job]) -> Iterable[list[Printout]]:
        """As `Prints.printed`."""

    def made(self, name: str, of: str, make: Callable[[], Sequence[Page]]) -> list[Page]:
        """Files that are made of something, known by its words: as they were, or made now."""


class Prints(Protocol):
    """What prints sheets: a pool of printers, or what stands before one."""

    def printed(self, jobs: Sequence[Job]) -> Iterable[list[Printout]]:
        """The PDFs of several sheets in their order, of each one a paper; begun at once, and each comes when ready."""
