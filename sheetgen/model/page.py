"""What is published: files of a project's folder, and what the library's index says of it."""

from __future__ import annotations

from dataclasses import asdict, dataclass, field
from typing import Any

from sheetgen.model.status import PUBLIC, SEEN


@dataclass(frozen=True, slots=True)
class Page:
    """One file: its path below the build folder, and its bytes."""

    path: str
    content: bytes


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
