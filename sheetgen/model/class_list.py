"""A class as a spreadsheet gives it, and what is made up besides. Names and tables are private: no repr shows them."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.base.place import Place, Word

NONE = "none"
"""In place of a number: no spare set at all."""


@dataclass(frozen=True, slots=True)
class PupilLine:
    """A pupil, what he makes, and the table at which he sits; no table where none is said.

    `version` is a printed name, of the main version too. What may still turn out wrong is a `Word` and knows its place.
    """

    name: str = field(repr=False)
    design: Word
    version: Word
    choices: tuple[tuple[Word, Word], ...]
    colourway: Word
    table: str = field(repr=False)
    place: Place

    @property
    def leave_out(self) -> tuple[Word, ...]:
        """Nobody at a table does without anything."""
        return ()

    @property
    def only(self) -> tuple[Word, ...]:
        """Nor does anybody have a part alone."""
        return ()

    @property
    def whose(self) -> str:
        """What a trouble of it begins with: nothing, for it names nobody."""
        return ""

    @property
    def posted(self) -> bool:
        """What stands on a table is not sent."""
        return False


@dataclass(frozen=True, slots=True)
class Besides:
    """What is made up of a design besides its pupils' sets, and how many places its class has.

    `teacher`: pieces that the teacher makes. `per`: a spare set for each so many pupils that are begun; 0 is none.
    `places`: 0 where nobody says; `where` they are written. `usual`: what of it is common practice, since nobody says.
    """

    teacher: int
    per: int
    places: int = 0
    where: Place | None = None
    usual: bool = False

    def spare(self, pupils: int) -> int:
        """Spare sets for so many pupils."""
        return -(-pupils // self.per) if self.per else 0
