"""House steps, written once beside the stock: each file of projects/steps read, and every fault in it told there."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.arithmetic import RESERVED
from sheetgen.base.place import Word
from sheetgen.base.spelling import plain, suggest
from sheetgen.base.trouble import Troubles
from sheetgen.facts.bench import DOES, WAITS
from sheetgen.facts.cautions import CAUTIONS
from sheetgen.model.house import HouseStep, HouseSteps
from sheetgen.read.forms import form
from sheetgen.read.house_words import Filler
from sheetgen.read.text import read_text
from sheetgen.read.yaml_words import Mapping, words

if TYPE_CHECKING:
    from collections.abc import Iterable
    from pathlib import Path

    from sheetgen.base.place import Place, Source
    from sheetgen.read.yaml_words import Words

FOLDER = "steps"  # below projects/
LONGEST_NAME = 200  # characters of a line in which a field's name is looked for
WORDS: dict[str, Iterable[str]] = {"does": DOES, "caution": CAUTIONS, "wait": WAITS}
"""Fields that have words of their own."""


@dataclass(frozen=True, slots=True)
class Parameter:
    """What a house step is given: its name as it is written, and what stands for it where a project gives nothing."""

    name: Word
    default: Words | None


@dataclass(frozen=True, slots=True)
class Entry:
    """A house step: its parameters by their names in arithmetic, and the fields of its step, or of its `several`."""

    name: Word
    about: str
    takes: dict[str, Parameter]
    steps: tuple[Mapping, ...]
    several: bool


@dataclass(slots=True)
class House:
    """The house steps by name. `withheld` are in trouble themselves; `unread` are files that could not be read."""

    entries: dict[str, Entry] = field(default_factory=dict)
    withheld: dict[str, Place] = field(default_factory=dict)
    unread: list[str] = field(default_factory=list)


def read_house_steps(projects: Path, troubles: Troubles) -> House:
    """Every house step of a library."""
    house = House()
    first: dict[str, Place] = {}
    for path in sorted((projects / FOLDER).glob("*.y*ml")):
        own = Troubles()
        name = f"projects/{FOLDER}/{path.name}"
        source = read_text(path, name, own)
        written = words(source, own, bare="takes") if source else None
        if source is None or written is None:
            house.unread.append(name)
        else:
            _read(written, house, first, own)
            for key in _in_trouble(source, written, own):
                house.entries.pop(plain(key), None)
                house.withheld.setdefault(plain(key), key.place)
        troubles.extend(own)
    return house


def _read(written: Mapping, house: House, first: dict[str, Place], troubles: Troubles) -> None:
    for name, fields in written.items():
        if plain(name) in first:
            told = f"'{name}' is a house step twice; first at {first[plain(name)]}"
            troubles.add(told, name.place, "give one another name")
            house.entries.pop(plain(name), None)
            house.withheld[plain(name)] = name.place
            continue
        first[plain(name)] = name.place
        own = Troubles()
        entry = _entry(name, fields, own)
        if entry is not None and not own.errors:
            house.entries[plain(name)] = entry
        else:
            house.withheld[plain(name)] = name.place
        troubles.extend(own)


def _in_trouble(source: Source, written: Mapping, troubles: Troubles) -> list[Word]:
    """The entries between whose lines a trouble stands, whatever told it, and those that are written twice."""
    found = []
    for trouble in troubles.errors:
        if trouble.place is None:
            continue
        line = trouble.place.line
        found += [key for key in written if key.place.line <= line][-1:]
        twice = source.line(line)[:LONGEST_NAME].partition(":")[0].strip().strip("'\"")
        found += [key for key in written if key == twice and trouble.place.column == key.place.column]
    return found


def _entry(name: Word, written: Words, troubles: Troubles) -> Entry | None:
    """One entry of a file; its troubles are noted."""
    if not isinstance(written, Mapping):
        told = f"'{name}' wants fields of its own"
        troubles.add(told, name.place, "indent those of a step below it, such as title: …")
        return None
    several = "steps" in written
    form(HouseSteps if several else HouseStep, written, troubles)
    fields = {str(key): value for key, value in written.items()}
    takes = _takes(fields.get("takes"), troubles)
    own = Mapping((key, value) for key, value in written.items() if key not in {"takes", "about"})
    own.place = written.place
    listed = fields["steps"] if several else [own]
    steps = tuple(step for step in listed if isinstance(step, Mapping)) if isinstance(listed, list) else ()
    for step in steps:
        _hidden(step, takes, troubles)
    named = _named(steps, takes, troubles)
    for key, parameter in takes.items():
        if key not in named and steps:
            helped = "name it in the step, in single braces where it stands in words, or take it out"
            troubles.add(f"nothing here uses '{parameter.name}'", parameter.name.place, helped)
    return Entry(name, str(fields.get("about", "")), takes, steps, several)


def _takes(written: Words, troubles: Troubles) -> dict[str, Parameter]:
    takes: dict[str, Parameter] = {}
    for name, default in written.items() if isinstance(written, Mapping) else ():
        key = plain(name)
        if not re.fullmatch(r"[^\W\d]\w*", key) or key in RESERVED or key == "house":
            taken = f"'{name}' has a meaning already; take another word"
            plain_words = "letters, digits and spaces, a letter first, such as on the shelf"
            helped = taken if re.fullmatch(r"[^\W\d]\w*", key) else plain_words
            troubles.add(f"'{name}' cannot be the name of a parameter", name.place, helped)
        elif key in takes:
            troubles.add(f"'{name}' is a parameter twice", name.place, "keep one of the two")
        else:
            given = not isinstance(default, Word) or default or default.block
            takes[key] = Parameter(name, default if given else None)
    return takes


def _hidden(step: Mapping, takes: dict[str, Parameter], troubles: Troubles) -> None:
    """A word of the bench that a parameter is called like: nobody could tell which of the two is meant."""
    for key, value in step.items():
        for word in value if isinstance(value, list) else [value]:
            if isinstance(word, Word) and plain(word) in takes and plain(word) in map(plain, WORDS.get(key, ())):
                told = f"the parameter '{word}' hides the word '{word}' of {key}"
                troubles.add(told, word.place, f"give the parameter another name, such as which {word}")


def _named(steps: tuple[Mapping, ...], takes: dict[str, Parameter], troubles: Troubles) -> set[str]:
    """The parameters that the steps use; a name in single braces that is none is a trouble."""
    named: set[str] = set()

    def strange(word: Word) -> None:
        if plain(word) not in takes:
            known = [str(one.name) for one in takes.values()]
            troubles.add(f"'{word}' is no parameter of this house step", word.place, suggest(word, known))

    filler = Filler(named.add, strange, troubles)
    for step in steps:
        filler.step(step)
    return named
