"""Which of its firing programs a clay is fired by, one version at a time: what comes after knows a clay by one program.

The project names one; else it is the strongest that everything bears which goes into the fire with the clay.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.material import Clay, Metal, Sheet, Wire
from sheetgen.base.place import Word
from sheetgen.base.spelling import plain, suggest
from sheetgen.base.trouble import Troubles
from sheetgen.facts.metals import MARGIN, METALS
from sheetgen.work.evaluator import Evaluator
from sheetgen.work.needs import holds

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from sheetgen.base.material import Item, Program
    from sheetgen.model.project import Library, Project


def by_program(project: Project, library: Library, overrides: Mapping[str, Word], troubles: Troubles) -> Library:
    """The library with every clay of its stock by the program that this version fires it with."""
    stock = library.stock
    several = [item for item in stock.items.values() if isinstance(item, Clay) and len(item.programs) > 1]
    if not several and not project.programs:
        return library
    # Whether a step is done may hang on numbers: they are those of the clays as stock has them, and told of later.
    first = Evaluator(project, library, overrides, Troubles())
    named = _named(first, troubles)
    bears, weakest = min(((_bears(item), item.name) for item in _along(first)), default=(math.inf, ""))
    clays = {}
    for clay in several:
        program = named.get(clay.id)
        clays[clay.id] = clay.fired_by(program) if program else _strongest(clay, bears, weakest)
    return replace(library, stock=replace(stock, items=stock.items | clays))


def _strongest(clay: Clay, bears: float, weakest: str) -> Clay:
    """By the strongest program that what goes along bears; where it bears none, by the coolest, and the checks tell.

    What bears least says why it is not the strongest of all.
    """
    borne = [program for program in clay.programs if program.peak <= bears]
    if not borne:
        return clay.fired_by(min(clay.programs, key=lambda program: program.peak))
    program = max(borne, key=lambda program: program.rank)
    strongest = program is max(clay.programs, key=lambda program: program.rank)
    return clay.fired_by(program, "" if strongest else f"{weakest}, which bears no more than {bears:g} °C")


def _named(evaluator: Evaluator, troubles: Troubles) -> dict[str, Program]:
    """The program that the project names for a clay; a clay by its own name goes before one by a choice."""
    found: dict[str, Program] = {}
    programs = evaluator.project.programs
    for key, word in sorted(programs.items(), key=lambda one: plain(one[0]) not in evaluator.choices):
        item = _item(key, evaluator)
        if not isinstance(item, Clay):
            _no_clay(key, item, evaluator, troubles)
            continue
        program = next((one for one in item.programs if one.name and plain(one.name) == plain(word)), None)
        if program is not None:
            found[item.id] = program
            continue
        known = [one.name for one in item.programs if one.name]
        helped = suggest(word, known) if known else "it has one, without a name: take this out, or name another clay"
        troubles.add(f"{item.name} has no program '{word}'", word.place, helped)
    return found


def _no_clay(key: Word, item: Item | None, evaluator: Evaluator, troubles: Troubles) -> None:
    """A key of `programs` that names no clay; one whose own data is in trouble is told where a part names it."""
    stock = evaluator.library.stock
    word = evaluator.choices.get(plain(key), key)
    if item is not None:
        message = f"'{item.id}' is a {type(item).__name__.lower()}, and a program fires a clay"
    elif evaluator.withheld(word) or stock.unread:
        return
    else:
        message = f"'{key}' is neither a clay of stock nor a choice"
    clays = [one.id for one in stock.items.values() if isinstance(one, Clay)]
    choices = [name for name in evaluator.project.choices if isinstance(_item(name, evaluator), Clay)]
    troubles.add(message, key.place, suggest(key, [*clays, *choices]))


def _item(word: Word, evaluator: Evaluator) -> Item | None:
    """An item of stock by its id, or by the choice that holds it."""
    return evaluator.stocked(evaluator.choices.get(plain(word), word))


def _along(evaluator: Evaluator) -> Iterator[Item]:
    """Whatever the parts, the list of materials and the steps of this version name."""
    project = evaluator.project
    words: list[Word] = [line.item for line in project.materials]
    for part in project.parts.values():
        words += [word for word in part.values() if isinstance(word, Word)]
    for step in project.steps:
        if step.when is None or holds(step.when, evaluator):
            words += step.uses
    for word in words:
        item = _item(word, evaluator)
        if item is not None and not isinstance(item, Clay):
            yield item


def _bears(item: Item) -> float:
    """How hot an item may get, °C; without end where no limit is known, and where it never goes into the kiln.

    Wire and sheet may be fired in place, and stock need not say so: they bear heat to a little under their solidus.
    """
    said = item.borne("kiln")
    if said is not None:
        return said or math.inf
    if isinstance(item, Wire | Sheet | Metal) and item.metal in METALS and not item.coated:
        return METALS[item.metal].solidus - MARGIN
    return math.inf
