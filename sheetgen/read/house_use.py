"""House steps put into a project's list of steps: what comes after finds steps as if the project had written them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.place import Word
from sheetgen.base.spelling import plain, suggest
from sheetgen.base.trouble import FIRST_MEND
from sheetgen.model.project import Step
from sheetgen.model.written import MOST_LISTED
from sheetgen.read.house_words import Filler, alone, used
from sheetgen.read.yaml_words import Mapping, Sequence

if TYPE_CHECKING:
    from sheetgen.base.trouble import Troubles
    from sheetgen.read.house_steps import Entry, House
    from sheetgen.read.yaml_words import Words

HOUSE = "house"
ADDED = "caution"  # what a project writes here is added: no hazard of a house step is taken away
FIELDS = tuple(str(info.alias) for info in Step.model_fields.values())


def put_in(project: Mapping, house: House, troubles: Troubles) -> None:
    """Put house steps into the steps of a project as it is read, wherever it names one."""
    key = next((key for key, value in project.items() if key == "steps" and isinstance(value, list)), None)
    if key is None:
        return
    steps = Sequence()
    steps.place = project[key].place
    for step in project[key]:
        name = next((k for k in step if k == HOUSE), None) if isinstance(step, Mapping) else None
        steps += [step] if name is None else _steps(name, step, house, troubles)
        if len(steps) > MOST_LISTED:
            troubles.add(f"there are more than {MOST_LISTED} steps", key.place, "make several projects of it")
            break
    project[key] = steps


def _steps(key: Word, use: Mapping, house: House, troubles: Troubles) -> list[Mapping]:
    """The steps that stand for one use; where there is no such house step, one that only has a title."""
    name = use[key]
    entry = house.entries.get(plain(name)) if isinstance(name, Word) else None
    if entry is not None:
        return Use(name, use, entry, troubles).steps()
    if not isinstance(name, Word):
        troubles.add(f"'{HOUSE}' wants the name of a house step", key.place, suggest("", _names(house)))
    elif place := house.withheld.get(plain(name)):
        troubles.add(f"'{name}' is a house step, but it is in trouble itself", name.place, f"{FIRST_MEND} {place}")
    else:
        helped = suggest(name, _names(house))
        if house.unread and not helped.startswith("did you"):
            helped = f"{FIRST_MEND} {' and '.join(house.unread)}"
        elif not _names(house):
            helped = "house steps are written in projects/steps, beside the stock"
        troubles.add(f"there is no house step '{name}'", name.place, helped)
    title = name if isinstance(name, Word) and name else Word("-", key.place)
    stand_in = Mapping({Word("title", key.place): title})
    stand_in.place = use.place
    return [stand_in]


def _names(house: House) -> list[str]:
    return [*(str(entry.name) for entry in house.entries.values()), *house.withheld]


class Use:
    """One use of a house step: what it is given, and what it replaces."""

    def __init__(self, name: Word, written: Mapping, entry: Entry, troubles: Troubles) -> None:
        self.name, self.entry, self.troubles = name, entry, troubles
        self.given: dict[str, Words] = {}
        self.replaced = Mapping()
        self.missing: set[str] = set()
        for key, value in written.items():
            if plain(key) in entry.takes:
                self._give(key, value)
            elif key in FIELDS and not entry.several:
                self.replaced[key] = value
            elif key != HOUSE:
                self._unknown(key)

    def steps(self) -> list[Mapping]:
        """Its steps, filled in."""
        filler = Filler(self._argument, lambda _word: None, self.troubles)
        found = []
        for step in self.entry.steps:
            kept = Mapping((key, value) for key, value in step.items() if key == ADDED or key not in self.replaced)
            kept.place = step.place
            filled = filler.step(used(kept, self.name.place))
            for key, value in self.replaced.items():
                listed = alone(key, value) if key == ADDED else None
                filled[key] = self._added(filled, listed) if isinstance(listed, list) else value
            found.append(filled)
        return found

    @staticmethod
    def _added(filled: Mapping, cautions: list[Words]) -> Sequence:
        had = [one for key, value in filled.items() if key == ADDED and isinstance(value, list) for one in value]
        both = Sequence([*had, *cautions])
        both.place = getattr(cautions, "place", filled.place)
        return both

    def _give(self, key: Word, value: Words) -> None:
        if isinstance(value, Mapping):
            self.troubles.add(f"'{key}' wants plain words or a list", key.place, f"write {key}: … on one line")
        elif plain(key) in self.given:
            self.troubles.add(f"'{key}' is given twice", key.place, "keep one of the two")
        self.given[plain(key)] = value

    def _unknown(self, key: Word) -> None:
        takes = [str(one.name) for one in self.entry.takes.values()]
        if key in FIELDS:
            message = f"'{self.entry.name}' is several steps, and '{key}' of them all cannot be replaced"
            helped = f"it takes {', '.join(takes)}" if takes else "it takes no parameters"
        else:
            message = f"'{key}' is neither a parameter of '{self.entry.name}' nor a field of a step"
            helped = suggest(key, [*takes, *(() if self.entry.several else FIELDS)])
        self.troubles.add(message, key.place, helped)

    def _argument(self, name: str) -> Words | None:
        """What a parameter stands for here; None for a name that is no parameter, or with its trouble noted."""
        if name in self.given:
            found = self.given[name]
            return None if isinstance(found, Mapping) else found
        if name not in self.entry.takes:
            return None
        parameter = self.entry.takes[name]
        if parameter.default is not None:
            return used(parameter.default, self.name.place)
        if name not in self.missing:
            self.missing.add(name)
            told = f"the house step '{self.entry.name}' wants its {parameter.name}"
            self.troubles.add(told, self.name.place, f"add {parameter.name}: …")
        return None
