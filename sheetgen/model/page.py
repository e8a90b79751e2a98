"""What is published: files of a project's folder, and what the library's index says of it."""

from __future__ import annotations

from dataclasses import asdict, dataclass, field
from typing import Any


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
    minutes: float = 0
    """At the bench, by the most that is printed; 0 where that is not known."""
    heat: list[str] = field(default_factory=list)
    """What it is heated with: kiln, torch."""
    evenings: int = 0
    """That a class takes; 0 where none is planned, or it does not fit."""
    card: dict[str, Any] = field(default_factory=dict)
    """Its picture, as `CardPicture` has it; nothing where it shows none."""

    def as_dict(self) -> dict[str, Any]:
        """Plain values for the record of what was published."""
        return asdict(self)
