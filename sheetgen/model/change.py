"""A design then and now: what of its printed numbers moved, or why it does not pass any more."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.model.ledger import paired
from sheetgen.model.moved import moved, other_kits

if TYPE_CHECKING:
    from sheetgen.model.ledger import Kept, Ledger, Pair
    from sheetgen.model.moved import Moved, OtherKit


class Fault(NamedTuple):
    """Why a design does not pass, what would help, and where, so far as it is known."""

    message: str
    help: str = ""
    where: str = ""


@dataclass(frozen=True, slots=True)
class Change:
    """A design: what it was at the revision asked for and is now; None is what cannot be known, or does not pass.

    `unknown` says what the ledgers do not tell; `errors` are why it does not pass.
    """

    design: str
    was: Ledger | None = None
    now: Ledger | None = None
    unknown: str = ""
    errors: tuple[Fault, ...] = ()

    @property
    def pairs(self) -> list[Pair]:
        """The versions that print other numbers, are added or dropped."""
        if self.was is None or self.now is None:
            return []
        both = paired(self.was, self.now)
        return [pair for pair in both if pair.was is None or pair.now is None or pair.was.code != pair.now.code]

    @property
    def both(self) -> list[tuple[Kept, Kept]]:
        """Those of them that were made and are made."""
        return [(old, new) for old, new in self.pairs if old is not None and new is not None]

    @property
    def rows(self) -> list[tuple[Moved, ...]]:
        """The numbers that moved, of each of these versions and then of each of the other kits."""
        return [*(tuple(moved(old, new)) for old, new in self.both), *(one.rows for one in self.other_kits)]

    @property
    def to_be_revised(self) -> bool:
        """Whether other numbers stand under a revision that was published with its own."""
        if self.was is None or self.now is None or self.was.revision != self.now.revision:
            return False
        return bool(self.pairs or self.other_kits)

    @property
    def other_kits(self) -> list[OtherKit]:
        """The kits with other lists than their version tells."""
        both = paired(self.was, self.now) if self.was is not None and self.now is not None else ()
        return [one for was, now in both if was is not None and now is not None for one in other_kits(was, now)]
