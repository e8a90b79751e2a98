"""till.yaml of the private folder: rates, prices and shares; every wrong one is told where it stands."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.dimension import TIME
from sheetgen.base.exact import exact
from sheetgen.base.frozen import Frozen
from sheetgen.base.place import Word
from sheetgen.base.spelling import suggest
from sheetgen.model.till import Till, WrittenTill
from sheetgen.read.bounds import OF_STOCK, bounded
from sheetgen.read.files import file_words, once_a_line
from sheetgen.read.forms import form
from sheetgen.read.measures import Measures
from sheetgen.read.money import money
from sheetgen.read.shares import WHOLE, margin, overhead, share, tax

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from decimal import Decimal
    from fractions import Fraction
    from pathlib import Path

    from sheetgen.base.trouble import Troubles
    from sheetgen.model.till import Prices

TILL = "till.yaml"
MOST_MINUTES = 6000  # of packing: a hundred hours, and more is a slip
MOST_PIECES = 1000  # in one load


def read_till(path: Path, currency: str, designs: Sequence[str], troubles: Troubles) -> Till | None:
    """The studio's rates; None where there is no such file, or where a trouble in it is noted.

    `designs` are the names of the library's, for which there may be fees.
    """
    if not path.exists():
        return None
    before = len(troubles.errors)
    name = f"{path.parent.name}/{path.name}"
    found = file_words(path, name, troubles)
    if found is None or not bounded(found, OF_STOCK, troubles):
        return None
    with once_a_line(troubles) as more:
        written = form(WrittenTill, found, more)
    if written is None:
        return None
    with once_a_line(troubles) as more:
        till = _Reader(Measures(currency, more)).till(written, name, designs)
    return till if len(troubles.errors) == before else None


class _Reader:
    """One file's values being read."""

    def __init__(self, measures: Measures) -> None:
        self.measures, self.troubles = measures, measures.troubles

    def till(self, written: WrittenTill, name: str, designs: Sequence[str]) -> Till:
        """All of it; what is in trouble is as if it were not there."""
        over, parts = overhead(written.overhead, self.measures)
        class_, packing = written.class_, written.packing
        fees = self.fees(class_.fee, designs)
        work = packing.a_kit or packing.a_run
        if written.rate_an_hour is None and work is not None:
            told = "packing takes time, and nobody says what an hour of it costs"
            example = f"add rate an hour: 32 {self.measures.currency}, at your own rate"
            self.troubles.add(told, work.place, example)
        return Till(
            name,
            self.price(written.rate_an_hour, "the rate an hour"),
            self.minutes(packing.a_kit),
            self.minutes(packing.a_run),
            over,
            parts,
            self.price(written.cost_of_a_load, "the cost of a load"),
            self.pieces(written.pieces_a_load),
            self.prices(written.wrapping.a_kit),
            self.prices(written.wrapping.with_sheets),
            self.prices(written.wrapping.a_run),
            share(written.replacements, "replacements", self.measures, WHOLE) or exact(0),
            share(written.markup, "a markup", self.measures),
            margin(written.margin, self.measures),
            tax(written.tax, self.measures),
            self.price(written.price_step, "a price step", nothing=False),
            self.price(class_.room_an_evening, "the room"),
            self.price(class_.teaching_an_evening, "teaching"),
            Frozen({one: amount for one, (_, amount) in fees.items()}),
            Frozen({one: word.place for one, (word, _) in fees.items()}),
        )

    def price(self, word: Word | None, name: str, *, nothing: bool = True) -> Decimal | None:
        """An amount of money; `nothing`: it may be 0."""
        found = None if word is None else money(word, name, self.measures)
        if word is not None and found == 0 and not nothing:
            self.troubles.add(f"{name} cannot be {word}", word.place, "more than 0; or take it out")
            return None
        return found

    def prices(self, written: Mapping[Word, Word]) -> Prices:
        """Things with their prices."""
        each = ((str(name), self.price(word, f"the price of {name}")) for name, word in written.items())
        return tuple((name, price) for name, price in each if price is not None)

    def minutes(self, word: Word | None) -> Fraction:
        """A time, in minutes."""
        if word is None:
            return exact(0)
        found = self.measures.quantity(word)
        if found is None:
            return exact(0)
        value = found.value
        if found.dimension != TIME:
            self.troubles.add(f"packing takes a time, and '{word}' is {found.dimension}", word.place, "such as 3 min")
        elif not value.exact:
            self.troubles.add(f"'{word}' are several times, and one is wanted", word.place, "the usual one: 3 min")
        elif not 0 <= value.usual <= MOST_MINUTES:
            self.troubles.add(f"packing cannot take {word}", word.place, f"from 0 min to {MOST_MINUTES} min")
        else:
            return exact(value.usual)
        return exact(0)

    def pieces(self, word: Word | None) -> int:
        """How many pieces share a load."""
        if word is None:
            return 1
        if not (word.isdecimal() and word.isascii() and 0 < int(word) <= MOST_PIECES):
            told = f"'pieces a load' cannot be {word}"
            self.troubles.add(
                told, word.place, f"a whole number from 1 to {MOST_PIECES}: as many as are fired together"
            )
            return 1
        return int(word)

    def fees(
        self, written: Word | Mapping[Word, Word] | None, designs: Sequence[str]
    ) -> dict[str, tuple[Word, Decimal]]:
        """Fees by the name of the design; one for all under no name."""
        each = {"": written} if isinstance(written, Word) else dict(written or {})
        found = {}
        for name, word in each.items():
            if isinstance(name, Word) and name not in designs:
                self.troubles.add(f"there is no design '{name}'", name.place, suggest(name, designs))
            elif (amount := self.price(word, "a fee", nothing=False)) is not None:
                found[str(name)] = word, amount
        return found
