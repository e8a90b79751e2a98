"""The words of a part's field, read in the sort that its kind declares."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from sheetgen.base.bend import Bend, read_bends
from sheetgen.base.dimension import COUNT, DENSITY, EXAMPLES, LENGTH, MASS, TEMPERATURE, TIME, Dimension
from sheetgen.base.interval import Interval, floor
from sheetgen.base.material import Item
from sheetgen.base.outline import Outline
from sheetgen.base.place import Word
from sheetgen.base.spelling import plain, suggest
from sheetgen.base.spot import Neighbour, Spot
from sheetgen.base.tree import Wrong
from sheetgen.model.written import Traced
from sheetgen.work.stopped import Stopped

if TYPE_CHECKING:
    from sheetgen.base.cases import Cases
    from sheetgen.parts.field import Field
    from sheetgen.work.evaluator import Evaluator

LONGEST = 100_000.0  # mm: longer than any spool, and a slip of the unit
UNITS = {LENGTH: " mm", MASS: " g", TIME: " min", TEMPERATURE: " °C"}
OURS = {DENSITY: "g/cm³", LENGTH: "mm", MASS: "g", TIME: "min", TEMPERATURE: "°C"}


def read(evaluator: Evaluator, word: Word, field: Field[Any], part: str) -> object:  # noqa: PLR0911 - one a sort of field
    """The value of a field of the part called `part`. Raises Stopped with its trouble noted."""
    sort = field.sort
    if isinstance(sort, Dimension):
        return _number(evaluator, word, field, sort, part, f"{part}.{field.attribute}")
    if not isinstance(sort, type):
        return _one_of(evaluator, word, field, tuple(map(str, sort)))
    if sort is Spot:
        return spot(evaluator, word)
    if sort is Neighbour:
        return _neighbour(evaluator, word)
    if sort is Bend:
        return _bends(evaluator, word, field, part)
    if sort is Outline or not issubclass(sort, Item):
        return word.outline if isinstance(word, Traced) else None
    return evaluator.item(word, sort)


def _one_of(evaluator: Evaluator, word: Word, field: Field[Any], words: tuple[str, ...]) -> str:
    found = next((one for one in words if plain(one) == plain(word)), None)
    if found is None:
        evaluator.troubles.add(f"'{field.name}' cannot be '{word}'", word.place, suggest(word, words))
        raise Stopped
    return found


def spot(evaluator: Evaluator, word: Word) -> Spot:
    """Two lengths with a comma and a space between."""
    left, comma, right = word.partition(", ")
    if not comma:
        evaluator.troubles.add(f"'{word}' is not a spot", word.place, "write it as 5 mm, 12 mm: to the right and down")
        raise Stopped
    sides = []
    for text, offset in ((left, 0), (right, len(left) + 2)):
        place = word.place_of(offset, len(text))
        found = evaluator.worked(Word(text, place), "", wanted="mm")
        if found.dimension != LENGTH:
            evaluator.troubles.add(f"'{text}' is {found.dimension}", place, "write 5 mm, 12 mm")
            raise Stopped
        sides.append(found.cases.usual)
    return Spot(*sides)


def _neighbour(evaluator: Evaluator, word: Word) -> Neighbour:
    if plain(word) not in evaluator.parts:
        evaluator.troubles.add(f"there is no part '{word}'", word.place, suggest(word, evaluator.parts))
        raise Stopped
    return Neighbour(plain(word))


def _bends(evaluator: Evaluator, word: Word, field: Field[Any], part: str) -> tuple[Bend, ...]:
    """Straights and arcs, each size an expression."""
    try:
        pieces = read_bends(word)
    except Wrong as wrong:
        evaluator.troubles.add(wrong.message, word.place_of(wrong.at, wrong.width), wrong.help)
        raise Stopped from None
    found = []
    for i, piece in enumerate(pieces):
        size = Word(piece.size, word.place_of(piece.at, len(piece.size)))
        found.append(
            Bend(
                _number(evaluator, size, field, LENGTH, part, f"{part}.{field.attribute}.{i}"),
                piece.degrees,
                piece.left,
            )
        )
    return tuple(found)


def _number(  # noqa: PLR0913, PLR0917 - the word, and what is asked of it
    evaluator: Evaluator, word: Word, field: Field[Any], wanted: Dimension, part: str, key: str
) -> Cases:
    """A quantity of the field's dimension, within its bounds."""
    found = evaluator.worked(word, key, wanted=OURS.get(wanted, ""))
    if found.dimension != wanted:
        how = "without a unit," if wanted == COUNT else "with its unit,"
        message = f"the {field.name} of '{part}' is {wanted}, and '{word}' is {found.dimension}"
        evaluator.troubles.add(message, word.place, f"write it {how} such as {EXAMPLES.get(wanted, '')}")
        raise Stopped
    if said := _bound(found.interval, field, wanted):
        comes = "" if word[:1].isdigit() else f", which is {found.cases.usual:.4g}{UNITS.get(wanted, '')}"
        evaluator.troubles.add(f"the {field.name} of '{part}' cannot be {word}{comes}", word.place, said)
        raise Stopped
    return found.cases


def _bound(value: Interval, field: Field[Any], dimension: Dimension) -> str:
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
