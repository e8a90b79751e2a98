"""Every fingerprint that a design's sheets have borne, and what its numbers are now."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.spelling import slug
from sheetgen.model.ledger import Ledger, Pair, paired
from sheetgen.model.moved import moved, nearest

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from sheetgen.model.ledger import Kept
    from sheetgen.model.moved import Moved
    from sheetgen.model.worked import Worked, WorkedVersion


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
    """The present fingerprints and those of the ledgers, by version, the last one first; of its kits too."""
    found: dict[tuple[str, str], Code] = {}
    for ledger in (now, *sorted(kept, key=lambda one: one.order, reverse=True)):
        revision = (ledger.revision, ledger.date)
        for was, new in (both for pair in paired(ledger, now) for both in _with_kits(pair)):
            if was is None:
                continue
            before = found.get((was.name, was.code))
            revisions = dict.fromkeys((*(before.revisions if before else ()), revision))
            differs = tuple(moved(was, new)) if new is not None else ()
            found[was.name, was.code] = Code(was.code, was.name, was.title, tuple(revisions), new, differs)
    return list(found.values())


def _with_kits(pair: Pair) -> Iterator[Pair]:
    """A version then and now, and its kits in each colourway that it had; one that is gone is compared with none."""
    yield pair
    for name in pair.was.kits if pair.was is not None else ():
        now = pair.now.kits_in(name) if pair.now is not None else []
        for was in pair.was.kits_in(name) if pair.was is not None else ():
            yield Pair(was, nearest(was, now))


def folder_of(worked: Worked, version: str) -> str:
    """Where the files of a version by its name in the file stand, below the build folder; of one that is gone too."""
    return worked.name if version == worked.main.name else f"{worked.name}/{slug(version)}"


def code_path(worked: Worked, version: str, code: str) -> str:
    """Where the page of a fingerprint stands, below the build folder: a code to be scanned leads there."""
    return f"{folder_of(worked, version)}/{code.lower()}.html"


def page_of(worked: Worked, version: WorkedVersion, code: str) -> str:
    """The address of that page, for a code on a label; empty where the studio has no address."""
    return f"{worked.studio.address}{code_path(worked, version.name, code)}" if worked.studio.address else ""
