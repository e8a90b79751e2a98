"""Orders that hold another sheet than is printed now, and which of its numbers differ, so far as that can be known."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.model.moved import moved, nearest

if TYPE_CHECKING:
    from sheetgen.model.ledger import Kept
    from sheetgen.model.moved import Moved
    from sheetgen.model.sent import Holding


class Mail(NamedTuple):
    """The sheets of a version as they are published: their folder, the files for each paper, and whether they stand."""

    folder: str
    files: tuple[tuple[str, ...], ...]
    stand: bool


@dataclass(frozen=True, slots=True)
class Present:
    """What a kind of kit is now: its numbers, in whatever packs it comes, and those of its version; or why not.

    `mail` is what is mailed to whoever holds another sheet: None of a kit that has sheets of its own.
    """

    kits: tuple[Kept, ...] = ()
    version: Kept | None = None
    why: str = ""
    mail: Mail | None = None

    def bears(self, code: str) -> bool:
        """Whether its sheets bear a fingerprint, or those do that its version is published with."""
        return any(one is not None and one.code == code for one in (*self.kits, self.version))


@dataclass(frozen=True, slots=True)
class Another:
    """Kits of one kind with a fingerprint that is not the present one.

    `was` are the numbers of that fingerprint, None where no ledger has them: of a kit, or of a version where its sheets
    went as they are published.
    """

    holding: Holding
    was: Kept | None
    present: Present

    @property
    def now(self) -> Kept | None:
        """What there is to compare with; None where the kit is not made now."""
        if self.was is None:
            return next(iter(self.present.kits), None)
        return nearest(self.was, self.present.kits) if self.was.a_kit else self.present.version

    @property
    def design(self) -> str:
        """The folder of its design."""
        return self.holding.kit.design

    @property
    def moved(self) -> tuple[Moved, ...]:
        """The numbers of its sheets that differ; none where one of the two is not known.

        All that differ where no ledger tells which of them are on its sheets.
        """
        was, now = self.was, self.now
        if was is None or now is None:
            return ()
        if self.known:
            was, now = was.of_the_maker, now.of_the_maker
        return tuple(moved(was, now))

    @property
    def known(self) -> bool:
        """Whether it is known which numbers its sheets print."""
        return self.was is not None and self.was.teachers is not None

    @property
    def wrong(self) -> bool:
        """Whether its sheets print another number than those of now, or nobody can tell.

        Two fingerprints may differ by what no sheet of the kit prints.
        """
        return self.was is None or self.now is None or bool(self.moved)

    @property
    def told(self) -> str:
        """What is known of it, in a few words."""
        if self.now is None:
            return self.present.why
        if self.was is None:
            return f"is now {self.now.code}; no ledger has the numbers of {self.holding.code}"
        many = len(self.moved)
        all_told = "" if self.known else "; which of them its sheets print, its ledger does not tell"
        return f"is now {self.now.code}; {many} number{'s differ' if many != 1 else ' differs'}{all_told}"
