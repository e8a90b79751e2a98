"""Packs of stock: in the unit that the item is counted in, whole pieces, each size once, with its price."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.dimension import AREA, COUNT, LENGTH, MASS, VOLUME, Dimension
from sheetgen.base.exact import exact
from sheetgen.base.supply import Pack
from sheetgen.base.trouble import Troubles
from sheetgen.read.measures import Measures
from sheetgen.read.money import money

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from decimal import Decimal

    from sheetgen.base.place import Word
    from sheetgen.model.stock import WrittenItem, WrittenPack

UNITS = {AREA: "mm²", MASS: "g", LENGTH: "mm", VOLUME: "mL", COUNT: "piece"}
PER_ML = 1000  # mm³
HOW = {
    "piece": "counted in pieces",
    "g": "weighed",
    "mm": "sold by length",
    "mL": "sold by volume",
    "mm²": "sold by area",
}
SAYS = {"piece": "say how many: 12", "g": "25 g", "mm": "10 m", "mL": "5 mL", "mm²": "25 cm²"}
# In what the items of a group are counted, the usual one first; of all others in whatever they are sold by.
COUNTED = {
    "clays": (MASS,), "wires": (LENGTH, MASS), "sheets": (AREA,), "metals": (MASS,), "stones": (COUNT,),
    "beads": (COUNT,), "fibres": (LENGTH,), "findings": (COUNT, LENGTH), "adhesives": (VOLUME, MASS), "tools": (COUNT,),
    "consumables": (COUNT, LENGTH, MASS, VOLUME, AREA),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Counting:
    """The unit that an item is counted in; how much of it, in that unit, one is of something else that it is sold in.

    A clay has a mL in g by its density, a sheet a piece in mm² by its sides.
    """

    unit: str
    others: tuple[tuple[Dimension, float], ...] = ()

    @property
    def how(self) -> str:
        """In words."""
        return HOW[self.unit]

    @property
    def example(self) -> str:
        """An amount as it is written."""
        return SAYS[self.unit].removeprefix("say how many: ")

    def amount(self, word: Word, measures: Measures, *, nothing: bool = False, begun: bool = False) -> Fraction | None:
        """An amount in its unit, exact; None with a trouble. `nothing`: a bare 0 is one; `begun`: a piece may be."""
        found = measures.quantity(word)
        if found is None:
            return None
        factor = dict(self.others).get(found.dimension)
        value, counted = found.value, self.unit == "piece"
        if nothing and found.dimension == COUNT and value.usual == 0:
            return Fraction(0)
        if UNITS.get(found.dimension) != self.unit and factor is None:
            told = f"'{word}' is {found.dimension}, and this is {self.how}"
            measures.troubles.add(told, word.place, SAYS[self.unit])
        elif not value.exact:
            told = f"'{word}' are several amounts, and one amount is wanted"
            measures.troubles.add(told, word.place, SAYS[self.unit])
        elif found.dimension == COUNT and value.usual % 1 and not begun:
            told = f"{word} is no number of pieces: this is {HOW['piece'] if counted else self.how}"
            measures.troubles.add(told, word.place, "a whole number")
        else:
            return exact(value.usual * (factor or 1) / (PER_ML if found.dimension == VOLUME else 1))
        return None


def unit_of(group: str, words: Sequence[Word], currency: str) -> str:
    """The unit that an item of a group is counted in, by the first of these amounts that tells it."""
    fitting = COUNTED[group]
    quiet = Measures(currency, Troubles())
    each = (found.dimension for word in words if (found := quiet.quantity(word)) and found.value.usual)
    return UNITS[next((dimension for dimension in each if dimension in fitting), fitting[0])]


def packs(written: WrittenItem, counting: Counting, measures: Measures) -> tuple[Pack, ...]:
    """The packs of an item, the short form too; what is wrong with them is noted."""
    troubles = measures.troubles
    if not written.packs:
        return _short(written, counting, measures)
    head = written.packs[0].holds
    if written.pack is not None:
        troubles.add("'pack' and 'packs' are both written", written.pack.place, "keep one of the two")
        return ()
    if written.price is not None:
        told = "there is a 'price' beside 'packs', and nobody knows of which"
        troubles.add(told, written.price.place, f"in its row: {{holds: {head}, price: {written.price}}}")
        return ()
    found: list[Pack] = []
    for row in written.packs:
        pack = _row(row, head, counting, measures)
        if pack is not None and any((one.holds, one.at_least) == (pack.holds, pack.at_least) for one in found):
            troubles.add(f"a pack of {row.holds} is written twice", row.holds.place, "keep one of the two")
        elif pack is not None:
            found.append(pack)
    return tuple(found)


def _short(written: WrittenItem, counting: Counting, measures: Measures) -> tuple[Pack, ...]:
    """`pack` and `price`; what is counted and has no pack is sold one by one."""
    price = _price(written.price, measures)
    if written.pack is not None:
        holds = _holds(written.pack, counting, measures)
        return () if holds is None else (Pack(holds, price),)
    return () if price is None else tuple(_alone(written, price, counting, measures))


def _alone(written: WrittenItem, price: Decimal, counting: Counting, measures: Measures) -> Iterator[Pack]:
    """What a price without a pack is of: of one piece, or of a sheet as it is sold."""
    one = 1.0 if counting.unit == "piece" else dict(counting.others).get(COUNT)
    if one is not None:
        yield Pack(exact(one), price)
    elif written.price is not None:
        told = f"a price without a pack: this is {counting.how}"
        measures.troubles.add(told, written.price.place, f"add pack: {counting.example}")


def _row(row: WrittenPack, head: Word, counting: Counting, measures: Measures) -> Pack | None:
    if _other_unit(row.holds, head, counting, measures.currency):
        told = f"a pack of {row.holds} is in another unit than one of {head}"
        measures.troubles.add(told, row.holds.place, "write all packs of an item in one unit")
        return None
    holds, price = _holds(row.holds, counting, measures), _price(row.price, measures)
    least = 1
    if (word := row.at_least) is not None:
        if not (word.isdecimal() and word.isascii() and int(word) > 0):
            measures.troubles.add(f"'at least' cannot be {word}", word.place, "a whole number of packs, 1 or more")
            return None
        least = int(word)
    return None if holds is None else Pack(holds, price, least)


def _other_unit(word: Word, head: Word, counting: Counting, currency: str) -> bool:
    """Whether a pack is in a unit that could be the item's, but for the first pack."""
    quiet = Measures(currency, Troubles())
    first, this = quiet.quantity(head), quiet.quantity(word)
    if first is None or this is None or UNITS.get(first.dimension) != counting.unit:
        return False
    return this.dimension in UNITS and this.dimension not in {first.dimension, *dict(counting.others)}


def _holds(word: Word, counting: Counting, measures: Measures) -> Fraction | None:
    found = counting.amount(word, measures)
    if found is not None and found <= 0:
        measures.troubles.add("a pack holds something", word.place, "more than nothing")
        return None
    return found


def _price(word: Word | None, measures: Measures) -> Decimal | None:
    found = None if word is None else money(word, "a price", measures)
    if word is not None and found == 0:
        measures.troubles.add(
            f"a price cannot be {word}", word.place, "what it costs; if that is not known, leave it out"
        )
        return None
    return found
