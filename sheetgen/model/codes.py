"""Every fingerprint that a design's sheets have borne, and what its numbers are now."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.model.ledger import Ledger, paired
from sheetgen.model.moved import moved

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sheetgen.model.ledger import Kept
    from sheetgen.model.moved import Moved


@dataclass(frozen=True, slots=True)
class Code:
    """One fingerprint of one version: the revisions that it stood for, each with its date, and the version now.

    `name` is what the version was called in the file. `now` is None where it is no longer made. It is `present` where
    the sheets bear it today.
    """

    code: str
    name: str
    title: str
    revisions: tuple[tuple[str, str], ...]
    now: Kept | None
    moved: tuple[Moved, ...]

    @property
    def present(self) -> bool:
        """Whether the sheets bear it today."""
        return self.now is not None and self.now.code == self.code


def codes(now: Ledger, kept: Iterable[Ledger]) -> list[Code]:
    """The present fingerprints and those of the ledgers, by version, the last one first."""
    found: dict[tuple[str, str], Code] = {}
    for ledger in (now, *sorted(kept, key=lambda one: one.order, reverse=True)):
        for was, new in paired(ledger, now):
            if was is None:
                continue
            revision = (ledger.revision, ledger.date)
            before = found.get((was.name, was.code))
            revisions = dict.fromkeys((*(before.revisions if before else ()), revision))
            differs = tuple(moved(was, new)) if new is not None else ()
            found[was.name, was.code] = Code(was.code, was.name, was.title, tuple(revisions), new, differs)
    return list(found.values())
