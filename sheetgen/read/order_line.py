"""One line of a spreadsheet of orders: what it means, or all that is wrong with it.

A trouble names the number of the order, and never shows a name, a note, or a column that is not ours: in the line under
it they are dots.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, TypeVar

from sheetgen.base.place import Word
from sheetgen.base.spelling import bare, nearest, suggest
from sheetgen.model.orders import OrderLine
from sheetgen.read.order_cells import CannotRead, choices, count, due, listed
from sheetgen.read.table_text import LOST

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from sheetgen.base.record import Row
    from sheetgen.base.trouble import Troubles

Meaning = TypeVar("Meaning")
PRIVATE = ("name", "gift note")
LONGEST_NUMBER = 40
LONGEST = 2_000
QUOTED = 60
"""Most letters of a cell in a message."""
FAILED = re.compile(r"#[^\W\d_][\w/]*[!?]|#N/?[AV]|Err:[0-9]{3}")  # what a spreadsheet shows for a formula that failed
NUMBER = re.compile(r"\S*[0-9]\S*")
"""What looks like an order's number, and not like a part of a note."""
DOUBTED = re.compile(f"[#{LOST}]|Err:")
FORMULA = "mend the formula, or write the value; a file that no spreadsheet program has saved has no results"


@dataclass(frozen=True)
class Book:
    """What the lines of one table are read with.

    `where` each column stands, `width` of the line that names them, the printed names of each design's `versions`,
    the `names` of orders and the line that each was first met on. `shown` are the columns that are nobody's secret.
    """

    where: Mapping[str, int]
    width: int
    versions: Mapping[str, Sequence[str]]
    designs: Mapping[str, str]
    troubles: Troubles
    names: Mapping[str, tuple[str, int]]
    shown: frozenset[int] = field(init=False)

    def __post_init__(self) -> None:
        shown = frozenset(at for name, at in self.where.items() if name not in PRIVATE)
        object.__setattr__(self, "shown", shown)


class Line:
    """One line; `read` gives it, or tells all that is wrong with it."""

    def __init__(self, book: Book, row: Row) -> None:
        self.book = book
        self.row = row
        self.bad = False
        self.number = self.cell("order")
        known = bare(self.cell("design")) in book.designs
        # Where a comma in a name has no quotes, every cell after it stands one column off, and may be part of a name.
        self.off = not known and not row.between and any(bare(cell) in book.designs for cell in row.cells)
        self.hides = self.off or (not row.between and len(row.cells) < book.width)
        self.record = row.record(() if self.hides else book.shown)
        looks = book.where["order"] == 0 and NUMBER.fullmatch(self.number)
        self.number_told = self.number[:LONGEST_NUMBER] if looks or not self.hides else ""

    def cell(self, column: str) -> str:
        """The text of a cell; empty where there is no such column."""
        at = self.book.where.get(column)
        return "" if at is None else self.row.cell(at)

    def word(self, column: str) -> Word:
        """A cell that knows its place; where there is no such column, nothing, at the order's number."""
        at = self.book.where.get(column)
        if at is None:
            return Word("", self.row.place(self.book.where["order"], self.record))
        return self.row.word(at, self.record)

    def add(self, message: str, helped: str, word: Word) -> None:
        """Tell one fault of the line; `{it}` is the word, unless it must not be shown."""
        told = f"order {self.number_told}: " if self.number_told else ""
        it = "what stands here" if self.hides else f"'{word[:QUOTED]}{'…' if len(word) > QUOTED else ''}'"
        self.book.troubles.add(told + message.replace("{it}", it), word.place, helped)
        self.bad = True

    def read(self) -> OrderLine | None:
        """The line, or None with troubles."""
        self.cells_are_sound()
        line = None if self.bad else self.line()
        return None if self.bad else line

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

    def line(self) -> OrderLine:
        """The line as far as it can be read."""
        order = self.word("order")
        if not order:
            self.add("the order has no number", "each line of an order has its number", order)
        elif len(order) > LONGEST_NUMBER:
            self.add(f"the order's number has {len(order)} letters", f"at most {LONGEST_NUMBER}", order)
        design = self.design()
        leave_out, only = self.listed("leave out"), self.listed("only")
        if leave_out and only:
            helped = "with 'only', nothing else is sent: empty one of them"
            self.add("both 'leave out' and 'only' are filled in", helped, only[0])
        return OrderLine(
            order=order,
            name=self.name(),
            design=design,
            version=self.version(design),
            count=self.meaning(count, "count") or 0,
            choices=self.choices(),
            colourway=self.word("colourway"),
            leave_out=leave_out,
            only=only,
            gift_note=self.cell("gift note"),
            due=self.meaning(due, "due"),
            place=order.place,
        )

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

    def name(self) -> str:
        """The name of the order, wherever it is written: it has one."""
        mine = one_line(self.cell("name"))
        name, line = self.book.names.get(self.number, (mine, self.row.first))
        if mine and name.casefold() != mine.casefold():
            helped = "one order has one name: mend its number or its name"
            self.add(f"the name is another than on line {line}", helped, self.word("name"))
        return name

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
        helped = f"did you mean '{near}'?" if near else "write one of these, or leave it empty for the first"
        told = ", ".join(f"'{name}'" if "," in name else name for name in known)
        self.add(f"{design} has no version {{it}}; known: {told}", helped, word)
        return word


def one_line(text: str) -> str:
    """A name as it goes on a label."""
    return " ".join(text.split())
