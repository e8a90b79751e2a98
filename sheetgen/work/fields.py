"""The words of a part's field, read in the sort that its kind declares."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from sheetgen.base.arithmetic import Wrong
from sheetgen.base.bend import Bend, read_bends
from sheetgen.base.dimension import EXAMPLES, LENGTH, MASS, TEMPERATURE, TIME, Dimension
from sheetgen.base.material import Item
from sheetgen.base.outline import Outline
from sheetgen.base.place import Word
from sheetgen.base.spelling import suggest
from sheetgen.base.spot import Neighbour, Spot
from sheetgen.base.spread import Spread, floor
from sheetgen.model.written import Traced
from sheetgen.work.stopped import Stopped, in_arithmetic

if TYPE_CHECKING:
    from sheetgen.parts.given import Given
    from sheetgen.work.bench import Workbench

LONGEST = 100_000.0  # mm: longer than any spool, and a slip of the unit
UNITS = {LENGTH: " mm", MASS: " g", TIME: " min", TEMPERATURE: " °C"}


def read(bench: Workbench, word: Word, field: Given[Any], part: str) -> object:  # noqa: PLR0911 - one a sort of field
    """The value of a field of the part called `part`. Raises Stopped with its trouble noted."""
    sort = field.sort
    if isinstance(sort, Dimension):
        return _number(bench, word, field, sort, part)
    if not isinstance(sort, type):
        return _one_of(bench, word, field, tuple(map(str, sort)))
    if sort is Spot:
        return _spot(bench, word)
    if sort is Neighbour:
        return _neighbour(bench, word)
    if sort is Bend:
        return _bends(bench, word, field, part)
    if sort is Outline or not issubclass(sort, Item):
        return word.outline if isinstance(word, Traced) else None
    return bench.item(word, sort)


def _one_of(bench: Workbench, word: Word, field: Given[Any], words: tuple[str, ...]) -> str:
    if str(word) not in words:
        bench.troubles.add(f"'{field.name}' cannot be '{word}'", word.place, suggest(word, words))
        raise Stopped
    return str(word)


def _spot(bench: Workbench, word: Word) -> Spot:
    """Two lengths with a comma and a space between."""
    left, comma, right = word.partition(", ")
    if not comma:
        bench.troubles.add(f"'{word}' is not a spot", word.place, "write it as 5 mm, 12 mm: to the right and down")
        raise Stopped
    sides = []
    for text, offset in ((left, 0), (right, len(left) + 2)):
        place = word.place_of(offset, len(text))
        found = bench.worked(Word(text, place))
        if found.dimension != LENGTH:
            bench.troubles.add(f"'{text}' is {found.dimension}", place, "write 5 mm, 12 mm")
            raise Stopped
        sides.append(found.value.usual)
    return Spot(*sides)


def _neighbour(bench: Workbench, word: Word) -> Neighbour:
    if in_arithmetic(word) not in bench.parts:
        bench.troubles.add(f"there is no part '{word}'", word.place, suggest(word, bench.parts))
        raise Stopped
    return Neighbour(in_arithmetic(word))


def _bends(bench: Workbench, word: Word, field: Given[Any], part: str) -> tuple[Bend, ...]:
    """Straights and arcs, each size an expression."""
    try:
        pieces = read_bends(word)
    except Wrong as wrong:
        bench.troubles.add(wrong.message, word.place_of(wrong.at, wrong.width), wrong.help)
        raise Stopped from None
    found = []
    for piece in pieces:
        size = Word(piece.size, word.place_of(piece.at, len(piece.size)))
        found.append(Bend(_number(bench, size, field, LENGTH, part), piece.degrees, piece.left))
    return tuple(found)


def _number(bench: Workbench, word: Word, field: Given[Any], wanted: Dimension, part: str) -> Spread:
    """A quantity of the field's dimension, within its bounds."""
    found = bench.worked(word)
    if found.dimension != wanted:
        message = f"the {field.name} of '{part}' is {wanted}, and '{word}' is {found.dimension}"
        bench.troubles.add(message, word.place, f"write it with its unit, such as {EXAMPLES.get(wanted, '')}")
        raise Stopped
    if said := _bound(found.value, field, wanted):
        comes = "" if word[:1].isdigit() else f", which is {found.value.usual:.4g}{UNITS.get(wanted, '')}"
        bench.troubles.add(f"the {field.name} of '{part}' cannot be {word}{comes}", word.place, said)
        raise Stopped
    return found.value


def _bound(value: Spread, field: Given[Any], dimension: Dimension) -> str:
    """What a field asks for that a value is not; empty if it is well."""
    unit = UNITS.get(dimension, "")
    if field.above is not None and value.low <= field.above:
        return f"more than {field.above:g}{unit}"
    if field.at_least is not None and value.low < field.at_least:
        return f"{field.at_least:g}{unit} or more"
    if field.at_most is not None and value.high > field.at_most:
        return f"{field.at_most:g}{unit} or less"
    if dimension == LENGTH and value.high > LONGEST:
        return f"{LONGEST / 1000:g} m or less"
    if field.whole and floor(value.low) != value.low:
        return f"a whole number, such as {floor(value.low + 0.5)}"
    return ""
