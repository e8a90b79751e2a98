"""A field of a studio's own kind, made from its words."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from sheetgen.base.dimension import COUNT, DENSITY, LENGTH, MASS, TEMPERATURE, TIME, Dimension
from sheetgen.base.material import Adhesive, Bead, Clay, Fibre, Finding, Item, Metal, Sheet, Stone, Tool, Wire
from sheetgen.base.spelling import plain, suggest
from sheetgen.parts.field import Field

if TYPE_CHECKING:
    from sheetgen.base.place import Word
    from sheetgen.model.kinds import WrittenField
    from sheetgen.read.measures import Measures

ITEMS: dict[str, type[Item]] = {
    one.__name__.lower(): one for one in (Adhesive, Bead, Clay, Fibre, Finding, Item, Metal, Sheet, Stone, Tool, Wire)
}
NUMBERED: dict[str, Dimension] = {
    "length": LENGTH, "count": COUNT, "ratio": COUNT, "mass": MASS, "density": DENSITY, "time": TIME,
    "temperature": TEMPERATURE,
}  # fmt: skip
SORTS = ("item", *NUMBERED, "one of")
USUAL: dict[str, dict[str, float]] = {
    "count": {"at_least": 1, "at_most": 10_000},
    "ratio": {"at_least": 0, "at_most": 1},
}


def own_field(key: Word, written: WrittenField, measures: Measures) -> Field[Any] | None:
    """The field, with every trouble of it noted; None where it does not even say what it is."""
    troubles = measures.troubles
    sorts = {sort: word for sort in SORTS if (word := getattr(written, sort.replace(" ", "_"))) is not None}
    if len(sorts) != 1:
        told = (
            f"'{key}' is two things at once: {' and '.join(sorts)}" if sorts else f"'{key}' does not say what it takes"
        )
        troubles.add(told, key.place, f"one of these: {', '.join(SORTS)}")
        return None
    [(sort, word)] = sorts.items()
    optional = written.optional == "yes"
    if written.optional is not None and written.optional not in {"yes", "no"}:
        troubles.add(f"'optional' is yes or no, not '{written.optional}'", written.optional.place, "write yes or no")
    if optional and written.default is not None:
        told = f"'{key}' has a default and may be left out"
        troubles.add(told, written.default.place, "keep one of the two: what is left out is its default")
    about = written.about
    if sort in NUMBERED:
        if about is not None:
            troubles.add(f"'{key}' says twice what it is", about.place, f"write it after {sort}: alone")
        about = word
    elif about is None:
        troubles.add(f"'{key}' does not say what it is", key.place, "add about: …")
    for name in ("above", "at_least", "at_most"):
        if sort not in NUMBERED and (bound := getattr(written, name)) is not None:
            troubles.add(f"'{name.replace('_', ' ')}' is for numbers", bound.place, "take it out")
    made: dict[str, Any] = {"optional": optional, "role": written.role or ""}
    if sort == "item":
        made |= _item(word, written, measures)
    elif sort == "one of":
        made |= _one_of(key, word, written, measures)
    else:
        made |= _number(key, sort, written, measures)
    return Field(made.pop("sort"), str(about or ""), **made) if made.get("sort") else None


def _item(word: Word, written: WrittenField, measures: Measures) -> dict[str, Any]:
    if word not in ITEMS:
        measures.troubles.add(f"stock holds no '{word}'", word.place, suggest(word, ITEMS))
    if written.default is not None:
        measures.troubles.add("an item has no default", written.default.place, "take it out, or write optional: yes")
    return {"sort": ITEMS.get(str(word))}


def _one_of(key: Word, choices: list[Word], written: WrittenField, measures: Measures) -> dict[str, Any]:
    troubles = measures.troubles
    known: dict[str, Word] = {}
    for one in choices:
        if plain(one) in known:
            troubles.add(f"'{one}' is a choice twice", one.place, "take one out")
        known[plain(one)] = one
    if len(choices) < 2:  # noqa: PLR2004 - nothing to choose
        troubles.add(f"'{key}' leaves no choice", key.place, "one of: [butted, lapped]")
    if written.optional == "yes" and written.optional is not None:
        troubles.add(f"'{key}' is not left out: its first word is the default", written.optional.place, "take it out")
    default = written.default
    if default is not None and plain(default) not in known:
        troubles.add(f"'{key}' cannot be '{default}'", default.place, suggest(default, known.values()))
    first = default if default is not None else choices[0] if choices else ""
    return {"sort": tuple(map(str, choices)), "default": str(first)}


def _number(key: Word, sort: str, written: WrittenField, measures: Measures) -> dict[str, Any]:
    wanted = NUMBERED[sort]
    bounds: dict[str, float | None] = dict(USUAL.get(sort, {}))
    for name in ("above", "at_least", "at_most"):
        word = getattr(written, name)
        if word is not None and (found := measures.interval(word, wanted, name=f"'{name.replace('_', ' ')}'")):
            bounds[name] = found.usual
            if not found.exact:
                measures.troubles.add("a bound is one number", word.place, "write one end of it")
    if bounds.get("above") is not None and written.at_least is None:
        bounds.pop("at_least", None)
    per = {DENSITY: 1000.0}.get(wanted, 1.0)  # a density is kept in g/cm³
    if written.default is not None:
        least, above, most = (bounds.get(name) for name in ("at_least", "above", "at_most"))
        found = measures.interval(written.default, wanted, least=least, above=above, most=most, name=f"the {key}")
        if found and sort == "count" and found.usual % 1:
            measures.troubles.add(f"the {key} is a whole number", written.default.place, "2, 3 …")
    told = {name: bound * per for name, bound in bounds.items() if bound is not None}
    return {"sort": wanted, "default": written.default, "whole": sort == "count", **told}
