"""What is published: files of a project's folder, and what the library's index says of it."""

from __future__ import annotations

from dataclasses import asdict, dataclass, field
from typing import Any

from sheetgen.model.status import PUBLIC, SEEN

NEIGHBOURS = b"<!-- neighbours -->"
"""What stands on the page of a design before the block that leads to other designs, which is put there last of all."""
END = b"\n</body></html>\n"


@dataclass(frozen=True, slots=True)
class Page:
    """One file: its path below the build folder, and its bytes."""

    path: str
    content: bytes


def neighbours_of(page: bytes) -> bytes | None:
    """The block of a page that leads to other designs; None of one that has no place for it."""
    _, mark, after = page.rpartition(NEIGHBOURS)
    return after.removesuffix(END) if mark and after.endswith(END) else None


def with_neighbours(page: bytes, block: bytes) -> bytes:
    """A page that has a place for it with this block, and all else as it is."""
    before, mark, _ = page.rpartition(NEIGHBOURS)
    return b"".join((before, mark, block.replace(NEIGHBOURS, b""), END))


@dataclass(frozen=True, slots=True)
class Entry:
    """What the index says of one project; kept from publication to publication."""

    name: str
    title: str
    summary: str
    level: str
    time: str
    revision: str
    date: str
    tags: list[str] = field(default_factory=list)
    versions: list[str] = field(default_factory=list)
    sheets: list[str] = field(default_factory=list)
    revisions: list[list[str]] = field(default_factory=list)
    """Each revision with its date and what it changed, the oldest first."""
    techniques: list[str] = field(default_factory=list)
    heat: str = ""
    minutes: float = 0
    """The most that it takes at the bench; 0 where no step says so."""
    whole: str = ""
    """From the first cut to the finished piece, with all waits, as the page of the design says it; or nothing."""
    whole_minutes: float = 0
    """The most of that; 0 where it is not told."""
    sessions: int = 0
    """In which somebody works alone; a class has its own evenings."""
    evenings: int = 0
    """That a class takes; 0 where none is planned, or it does not fit."""
    clays: list[str] = field(default_factory=list)
    tools: list[str] = field(default_factory=list)
    places: list[str] = field(default_factory=list)
    """Of each of these tools, where it lies."""
    metals: list[list[str]] = field(default_factory=list)
    """Wire and sheet, of which a drawer has some or none: the name of each in the stock, and as lists print it."""
    materials: list[str] = field(default_factory=list)
    parts: list[str] = field(default_factory=list)
    needs: list[list[str]] = field(default_factory=list)
    """The clays, metals and tools that are wanted at once: of each version, once where they are the same."""
    chips: list[list[str]] = field(default_factory=list)
    """Of each version its name, its page and the first of its sheets, below the folder of the project, or nothing."""
    made_of: list[list[str]] = field(default_factory=list)
    """Of each version, as in `chips`, the clays that it is made of."""
    picture: dict[str, Any] | None = None
    """What its card shows, as `CardPicture` of the pages has it."""
    codes: list[str] = field(default_factory=list)
    """The fingerprints that have a page: those that sheets bear, or bore."""
    status: str = PUBLIC
    instead: str = ""
    """The folder of the design that a retired one leads on to."""

    @property
    def public(self) -> bool:
        """Whether it has a page that everybody may see."""
        return self.status in SEEN

    def as_dict(self) -> dict[str, Any]:
        """Plain values for the record of what was published."""
        return asdict(self)
