"""A class as a spreadsheet gives it, a pupil a line. Names and tables are private, and no repr shows them."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sheetgen.base.place import Place, Word


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
