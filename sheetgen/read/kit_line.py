"""A line of a spreadsheet that asks for a kit: design, version, choices and colourway, or all that is wrong with them.

A trouble never shows a name, a note, or a column that is not ours: in the line under it they are dots.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, TypeVar

from sheetgen.base.place import Word
from sheetgen.base.spelling import bare, in_a_row, nearest, suggest
from sheetgen.read.order_cells import CannotRead, choices, listed
from sheetgen.read.table_text import LOST

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from sheetgen.base.place import Place
    from sheetgen.base.record import Row
    from sheetgen.base.trouble import Troubles

Meaning = TypeVar("Meaning")
LONGEST = 2_000
QUOTED = 60
"""Most letters of a cell in a message."""
FAILED = re.compile(r"#[^\W\d_][\w/]*[!?]|#N/?[AV]|Err:[0-9]{3}")  # what a spreadsheet shows for a formula that failed
DOUBTED = re.compile(f"[#{LOST}]|Err:")
FORMULA = "mend the formula, or write the value; a file that no spreadsheet program has saved has no results"
OTHERWISE = "write one of these; anything else goes under choices, as name=value, and empty is the first of them"


@dataclass(frozen=True)
class Book:
    """What the lines of one table are read with.

    `where` each column stands, `width` of the line that names them, the printed names of each design's `versions`.
    `private` columns are shown to nobody: `shown` are those of ours that are no secret.
    """

    where: Mapping[str, int]
    width: int
    versions: Mapping[str, Sequence[str]]
    designs: Mapping[str, str]
    troubles: Troubles
    private: tuple[str, ...]
    shown: frozenset[int] = field(init=False)

    def __post_init__(self) -> None:
        shown = frozenset(at for name, at in self.where.items() if name not in self.private)
        object.__setattr__(self, "shown", shown)


class KitLine:
    """A line that asks for a kit; whoever has such lines says what else stands on them."""

    def __init__(self, book: Book, row: Row) -> None:
        self.book = book
        self.row = row
        self.bad = False
        known = bare(self.cell("design")) in book.designs
        # Where a comma in a name has no quotes, every cell after it stands one column off, and may be part of a name.
        self.off = not known and not row.between and any(bare(cell) in book.designs for cell in row.cells)
        self.hides = self.off or (not row.between and len(row.cells) < book.width)
        self.record = row.record(() if self.hides else book.shown)

    @property
    def told(self) -> str:
        """What a trouble begins with, so that it is known whose line it is."""
        return ""

    @property
    def place(self) -> Place:
        """Where the line is told that lacks the column in question."""
        return self.row.place(0, self.record)

    def cell(self, column: str) -> str:
        """The text of a cell; empty where there is no such column."""
        at = self.book.where.get(column)
        return "" if at is None else self.row.cell(at)

    def word(self, column: str) -> Word:
        """A cell that knows its place; where there is no such column, nothing, at the place of the line."""
        at = self.book.where.get(column)
        return Word("", self.place) if at is None else self.row.word(at, self.record)

    def add(self, message: str, helped: str, word: Word) -> None:
        """Tell one fault of the line; `{it}` is the word, unless it must not be shown."""
        it = "what stands here" if self.hides else f"'{word[:QUOTED]}{'…' if len(word) > QUOTED else ''}'"
        self.book.troubles.add(self.told + message.replace("{it}", it), word.place, helped)
        self.bad = True

    def cells_are_sound(self) -> None:
        """Tell each cell that no person wrote so, or that stands in another column than its own."""
        if self.off:
            helped = "a comma in a cell moves those after it: put such a cell between quotation marks"
            self.add("the design stands in another column than its own", helped, self.word("design"))
        if len(self.row.text) <= LONGEST and not DOUBTED.search(self.row.text):
            return
        for column in self.book.where:
            cell = self.cell(column)
            if len(cell) > LONGEST:
                self.add(f"'{column}' has {len(cell)} letters", f"at most {LONGEST}", self.word(column))
            elif (at := cell.find(LOST)) >= 0:
                sign = self.word(column).cut(at, at + 1)
                self.add(f"a sign in '{column}' is lost or cannot be printed", "write it once more", sign)
            elif FAILED.fullmatch(cell):
                self.add(f"'{column}' is a formula that failed", FORMULA, self.word(column))

    def meaning(self, reads: Callable[[str], Meaning], column: str) -> Meaning | None:
        """What a cell means; None with a trouble at the part of it that is to be mended."""
        try:
            return reads(self.cell(column))
        except CannotRead as fault:
            word = self.word(column)
            self.add(fault.message, fault.helped, word.cut(*fault.part) if fault.part else word)
            return None

    def choices(self) -> tuple[tuple[Word, Word], ...]:
        """What is chosen, by the name of the choice."""
        parts = self.meaning(choices, "choices")
        if not parts:
            return ()
        word = self.word("choices")
        return tuple((word.cut(*name), word.cut(*value)) for name, value in parts)

    def listed(self, column: str) -> tuple[Word, ...]:
        """The things that a cell lists."""
        parts = self.meaning(listed, column)
        if not parts:
            return ()
        word = self.word(column)
        return tuple(word.cut(*part) for part in parts)

    def design(self) -> Word:
        """The design by its folder's name, written in any case, with spaces or hyphens."""
        word = self.word("design")
        if found := self.book.designs.get(bare(word)):
            return word if found == word else Word(found, word.place)
        if not word:
            self.add("the design is missing", suggest("", self.book.versions), word)
        elif self.hides:
            self.add("there is no such design", "is a comma in a name not between quotation marks?", word)
        else:
            self.add("there is no design {it}", suggest(word, self.book.versions), word)
        return word

    def version(self, design: Word) -> Word:
        """The version by its printed name; where none is named, the main one."""
        word = self.word("version")
        known = self.book.versions.get(design, ())
        if word in known or not known:
            return word
        alike = [name for name in known if bare(name) == bare(word)] if word else known[:1]
        if len(alike) == 1:
            return Word(alike[0], word.place)
        sizes = re.findall("[0-9]+", word)  # US 8 is no slip for US 10
        near = nearest(word, [name for name in known if re.findall("[0-9]+", name) == sizes])
        helped = f"did you mean '{near}'?" if near else OTHERWISE
        self.add(f"{design} has no version {{it}}; known: {in_a_row(known)}", helped, word)
        return word


def one_line(text: str) -> str:
    """A name as it goes on a label."""
    return " ".join(text.split())
