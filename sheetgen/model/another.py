"""Orders that hold another sheet than is printed now, and which of its numbers differ, so far as that can be known."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from sheetgen.model.in_a_kit import in_a_kit
from sheetgen.model.moved import moved

if TYPE_CHECKING:
    from sheetgen.model.ledger import Kept
    from sheetgen.model.moved import Moved
    from sheetgen.model.sent import Holding


@dataclass(frozen=True, slots=True)
class Present:
    """What a kind of kit is now: its numbers, or why it has none."""

    kept: Kept | None = None
    why: str = ""


@dataclass(frozen=True, slots=True)
class Another:
    """Kits of one kind with a fingerprint that is not the present one.

    `was` are the numbers of that fingerprint, None where no ledger has them; `now` is None where the kit is not made
    now, and `why` says so.
    """

    holding: Holding
    was: Kept | None
    now: Kept | None
    why: str = ""

    @property
    def design(self) -> str:
        """The folder of its design."""
        return self.holding.kit.design

    @property
    def moved(self) -> tuple[Moved, ...]:
        """The numbers of its sheets that differ; none where one of the two is not known."""
        if self.was is None or self.now is None:
            return ()
        was, now = (replace(one, numbers=tuple(in_a_kit(one.numbers))) for one in (self.was, self.now))
        return tuple(moved(was, now))

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
            return self.why
        if self.was is None:
            return f"is now {self.now.code}; no ledger has the numbers of {self.holding.code}"
        many = len(self.moved)
        return f"is now {self.now.code}; {many} number{'s differ' if many != 1 else ' differs'}"
