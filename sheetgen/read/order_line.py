"""One line of a spreadsheet of orders: what it means, or all that is wrong with it.

A trouble names the number of the order, and never shows a name, a note, or a column that is not ours: in the line under
it they are dots.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sheetgen.facts.parcels import MOST_ON_A_LINE
from sheetgen.model.orders import OrderLine
from sheetgen.read.kit_line import KitLine, one_line
from sheetgen.read.order_cells import count, due

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.base.place import Place
    from sheetgen.base.record import Row
    from sheetgen.read.kit_line import Book

PRIVATE = ("name", "gift note")
LONGEST_NUMBER = 40
NUMBER = re.compile(r"\S*[0-9]\S*")
"""What looks like an order's number, and not like a part of a note."""


class Line(KitLine):
    """One line; `read` gives it, or tells all that is wrong with it."""

    def __init__(self, book: Book, row: Row, names: Mapping[str, tuple[str, int]]) -> None:
        """`names` are those of orders by their numbers, and the line that each was first met on."""
        super().__init__(book, row)
        self.names = names
        self.number = self.cell("order")
        looks = book.where["order"] == 0 and NUMBER.fullmatch(self.number)
        self.number_told = self.number[:LONGEST_NUMBER] if looks or not self.hides else ""
        self.asked_well = False
        self.asks: OrderLine | None = None
        """Of a line that is not whole what can be asked of its kit all the same, so that no second run is wanted."""

    @property
    def told(self) -> str:
        """The order's number, where it is one."""
        return f"order {self.number_told}: " if self.number_told else ""

    @property
    def place(self) -> Place:
        """Where the order's number stands."""
        return self.row.place(self.book.where["order"], self.record)

    def read(self) -> OrderLine | None:
        """The line, or None with troubles."""
        self.cells_are_sound()
        line = None if self.bad else self.line()
        self.asks = line if self.asked_well and self.number_told else None
        return None if self.bad else line

    def line(self) -> OrderLine:
        """The line as far as it can be read."""
        order, design = self.word("order"), self.design()
        version, choices = self.version(design), self.choices()
        leave_out, only = self.listed("leave out"), self.listed("only")
        if leave_out and only:
            helped = "with 'only', nothing else is sent: empty one of them"
            self.add("both 'leave out' and 'only' are filled in", helped, only[0])
        self.asked_well = not self.bad
        if not order:
            self.add("the order has no number", "each line of an order has its number", order)
        elif len(order) > LONGEST_NUMBER:
            self.add(f"the order's number has {len(order)} letters", f"at most {LONGEST_NUMBER}", order)
        elif not order.isprintable():
            self.add("the order's number has a sign that cannot be seen", "write it once more, by hand", order)
        return OrderLine(
            order=order,
            name=self.name(),
            design=design,
            version=version,
            count=self.count(),
            choices=choices,
            colourway=self.word("colourway"),
            leave_out=leave_out,
            only=only,
            gift_note=self.cell("gift note"),
            due=self.meaning(due, "due"),
            place=order.place,
        )

    def count(self) -> int:
        """How many kits; so many that nobody packs them in one run are made, and told."""
        many = self.meaning(count, "count") or 0
        if many > MOST_ON_A_LINE:
            told = f"{self.told}{many} kits, and a studio packs up to {MOST_ON_A_LINE:g} in a run; they are made"
            self.book.troubles.add(told, self.word("count").place, "if it is a slip, mend it", "warning")
        return many

    def name(self) -> str:
        """The name of the order, wherever it is written: it has one."""
        mine = one_line(self.cell("name"))
        name, line = self.names.get(self.number, (mine, self.row.first))
        if mine and name.casefold() != mine.casefold():
            helped = "one order has one name: mend its number or its name"
            self.add(f"the name is another than on line {line}", helped, self.word("name"))
        return name
