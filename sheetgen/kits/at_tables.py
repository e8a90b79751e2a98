"""What stands on each table of a class and what lies at each place; every number is that of the class's lists."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import TYPE_CHECKING

from sheetgen.base.exact import shared_out
from sheetgen.base.material import Clay, Tool
from sheetgen.kits.class_run import tables_of
from sheetgen.kits.poured import colours_of_each, poured

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.base.material import Item
    from sheetgen.kits.class_run import ClassRun, Pupil
    from sheetgen.kits.colours import Allotted
    from sheetgen.kits.poured import Part
    from sheetgen.kits.taken import Kits, Taken

SPARE = "a spare set"
KILN = "kiln"
"""The group of tools that stand where there is fire, whoever uses them."""


@dataclass(frozen=True, slots=True)
class Thing:
    """Something to be laid out: how much of it, and what of that is to spare; None of what is taken as needed.

    `unit` is the item's, or names a piece by its sides. `sizes` are those of a tool, mm; `of` is how many of a tool
    there are in all, where these are some of them.
    """

    item: Item
    much: Fraction | None
    unit: str = "piece"
    spare: Fraction = Fraction(0)
    sizes: tuple[float, ...] = ()
    of: int = 0


@dataclass(frozen=True, slots=True)
class Place:
    """A place, or several alike, with what lies at each of them. `names` are the pupils', or whose else it is."""

    kits: Kits
    names: tuple[str, ...] = field(repr=False)
    things: tuple[Thing, ...]
    tools: tuple[Thing, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """A table: who sits there as the list has them, its places by the kind of set, what stands on it for all.

    `colours` are, of each pupil, how many of each colour are his of what stands there, nothing in no colourway; `clay`
    is what he weighs out of it. On the teacher's they are those of each set, in the order of the places.
    """

    name: str = field(repr=False)
    pupils: tuple[Pupil, ...]
    colours: tuple[Allotted, ...]
    clay: tuple[tuple[Thing, ...], ...]
    places: tuple[Place, ...]
    shared: tuple[Thing, ...]
    tools: tuple[Thing, ...] = ()


@dataclass(frozen=True, slots=True)
class Laid:
    """The room as it is laid out: the tables, what is the teacher's, what stands by itself and what by the kiln.

    `users` says how many pupils share each tool that stands by itself, by its name in stock.
    """

    tables: tuple[Table, ...]
    teacher: Table
    stations: tuple[Thing, ...]
    kiln: tuple[Thing, ...]
    kiln_tools: tuple[Thing, ...]
    users: dict[str, int]


class Room:
    """The tables of a class being laid out."""

    def __init__(self, run: ClassRun, taken: Sequence[Taken]) -> None:
        self.run, self.taken = run, taken
        self.pots = [one for one in taken if one.way == "pot"]
        self.seated = tables_of(run.pupils)
        self.owned: dict[str, Tool] = {}
        self.users: dict[str, int] = {}
        for one in run.pupils:
            for line in one.kits.version.tools:
                if isinstance(line.item, Tool) and line.item.owned and not by_the_fire(line.item):
                    self.owned[line.item.id] = line.item
                    self.users[line.item.id] = self.users.get(line.item.id, 0) + 1
        self.few = {name: tool for name, tool in self.owned.items() if (tool.owned or 0) < self.users[name]}

    def laid(self) -> Laid:
        """All of it."""
        groups = [[one.kits for one in pupils] for pupils in self.seated.values()]
        extras = [one.kits for one in self.run.extras for _ in range(one.teacher + one.spare)]
        sets = [*groups, extras]
        pots = poured(self.run.kinds, [one for one in self.pots if not self._heats(one)], sets)
        colours = [tuple(each) for each in colours_of_each(self.run.kinds, sets)]
        clay = [tuple(self._weighed(group, here)) for group, here in zip(sets, pots, strict=True)]
        dealt = self._dealt()
        tables = tuple(
            Table(
                name,
                tuple(pupils),
                colours[i],
                clay[i],
                tuple(self._places(pupils)),
                tuple(self._shared([one.kits for one in pupils], pots[i])),
                tuple(dealt[i]),
            )
            for i, (name, pupils) in enumerate(self.seated.items())
        )
        alone = [tool for name, tool in self.few.items() if not any(t.item.id == name for each in dealt for t in each)]
        return Laid(
            tables,
            Table("", (), colours[-1], clay[-1], tuple(self._teacher()), tuple(self._shared(extras, pots[-1]))),
            tuple(Thing(tool, Fraction(tool.owned or 0)) for tool in alone),
            tuple(self._kiln()),
            tuple(self._kiln_tools()),
            {tool.id: self.users[tool.id] for tool in alone},
        )

    def _weighed(self, group: Sequence[Kits], here: Mapping[str, tuple[Taken, Part]]) -> Iterator[tuple[Thing, ...]]:
        """What each set of a group takes of the clay that stands there, which is all of it."""
        pots = [replace(one, need=part.much) for one, part in here.values() if isinstance(one.item, Clay)]
        for own in poured(self.run.kinds, pots, [[kits] for kits in group]):
            yield tuple(_poured(own))

    def _places(self, pupils: Sequence[Pupil]) -> Iterator[Place]:
        for kits in self.run.kinds:
            names = tuple(one.name for one in pupils if one.kits is kits)
            if names:
                yield Place(kits, names, tuple(self._things(kits)), tuple(self._tools(kits)))

    def _things(self, kits: Kits) -> Iterator[Thing]:
        """What a set of a kind holds, as the pick list has it."""
        for one in self.taken:
            for held in one.held:
                if held.kits is kits:
                    yield Thing(one.item, held.each, held.unit, held.spare)

    def _tools(self, kits: Kits) -> Iterator[Thing]:
        """What everybody has for himself: where stock does not say how many there are, each has one."""
        for line in kits.version.tools:
            if line.item.id not in self.few and not by_the_fire(line.item):
                yield Thing(line.item, Fraction(1), sizes=line.sizes)

    def _shared(self, sets: Sequence[Kits], pots: Mapping[str, tuple[Taken, Part]]) -> Iterator[Thing]:
        """The pots of a table, and what its people take as needed."""
        yield from _poured(pots)
        here = {id(kits) for kits in sets}
        lines = [line for kits in self.run.kinds if id(kits) in here for line in kits.version.materials]
        for item in {line.item.id: line.item for line in lines if line.net is None}.values():
            if not by_the_fire(item):
                yield Thing(item, None)

    def _dealt(self) -> list[list[Thing]]:
        """Of a tool of which there are fewer than people some stand on each table that uses it, if they go round."""
        found: list[list[Thing]] = [[] for _ in self.seated]
        for name, tool in self.few.items():
            uses = [
                sum(any(line.item.id == name for line in one.kits.version.tools) for one in pupils)
                for pupils in self.seated.values()
            ]
            here, owned = [i for i, many in enumerate(uses) if many], tool.owned or 0
            if owned < len(here):
                continue
            more = shared_out(owned - len(here), [Fraction(uses[i]) for i in here])
            for i, extra in zip(here, more, strict=True):
                found[i].append(Thing(tool, Fraction(1 + extra), of=owned))
        return found

    def _teacher(self) -> Iterator[Place]:
        """The teacher's own pieces with their tools, and the spare sets without."""
        for one in self.run.extras:
            things = tuple(self._things(one.kits))
            if one.teacher:
                yield Place(one.kits, ("the teacher’s piece",) * one.teacher, things, tuple(self._tools(one.kits)))
            if one.spare:
                yield Place(one.kits, (SPARE,) * one.spare, things, ())

    def _kiln(self) -> Iterator[Thing]:
        """What is used where there is fire: the filling of the box, and what is taken as needed."""
        for one in filter(self._heats, self.pots):
            yield Thing(one.item, one.need, one.item.unit)
        lines = [line for kits in self.run.kinds for line in kits.version.materials if line.net is None]
        for item in {line.item.id: line.item for line in lines if by_the_fire(line.item)}.values():
            yield Thing(item, None)

    def _heats(self, one: Taken) -> bool:
        """Whether a pot stands by the kiln, the filling of a box too."""
        lines = (line for kits in self.run.kinds for line in kits.version.materials if line.item.id == one.item.id)
        return by_the_fire(one.item) or any(line.filling for line in lines)

    def _kiln_tools(self) -> Iterator[Thing]:
        """What stands there, each once, with how many there are where stock says it."""
        tools = {line.item.id: line.item for kits in self.run.kinds for line in kits.version.tools}
        for tool in tools.values():
            if by_the_fire(tool):
                yield Thing(tool, Fraction(tool.owned) if isinstance(tool, Tool) and tool.owned else None)


def _poured(pots: Mapping[str, tuple[Taken, Part]]) -> Iterator[Thing]:
    for one, part in pots.values():
        yield Thing(one.item, part.much, one.item.unit, part.spare)


def by_the_fire(item: Item) -> bool:
    """Whether a thing stands by kiln and torch, and not at a place."""
    if item.acts("carbon", "support", "kiln", "torch", "firing box"):
        return True
    return isinstance(item, Tool) and (KILN in {item.group, item.kind} or item.inside is not None)
