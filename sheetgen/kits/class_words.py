"""What the tables of a class say: every number is one of its lists."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.material import Adhesive
from sheetgen.base.printed import NBSP
from sheetgen.base.spelling import begun, counted, told_apart
from sheetgen.kits.poured import colours_of
from sheetgen.kits.told import amount
from sheetgen.model.class_tables import Lies, Lot, Sits, TablesTold, TableTold
from sheetgen.model.tool_told import tool_told
from sheetgen.model.worn import worn

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence
    from fractions import Fraction

    from sheetgen.base.rounding import Rounder
    from sheetgen.kits.at_tables import Laid, Place, Table, Thing
    from sheetgen.kits.class_run import ClassRun
    from sheetgen.kits.colours import Allotted
    from sheetgen.kits.taken import Kits

THIN = "\u202f"
TEACHERS = "Teacher’s table"
ALL_ONE = "The table"
NOWHERE = "At no table"
SCALE = "Scale that shows 0.1 g"
"""Where clay is weighed out; what each takes is told in tenths."""
UNITS = ("piece", "g", "mL", "mm", "mm²")


class TableWords:
    """The words of the tables of one class."""

    def __init__(self, run: ClassRun, rounder: Rounder) -> None:
        self.run, self.rounder = run, rounder
        heads = {
            line.item.id: line.item.name.partition(",")[0] for kits in run.kinds for line in kits.version.materials
        }
        heads |= {
            item.id: item.name.partition(",")[0]
            for kits in run.kinds
            if kits.colourway
            for item in kits.colourway.items
        }
        self.heads = Counter(heads.values())
        self.several = len({kits.worked.name for kits in run.kinds}) > 1

    def told(self, laid: Laid) -> TablesTold:
        """All of it."""
        everywhere = len(laid.tables) == 1
        return TablesTold(
            self.run.counted(),
            tuple(self._table(table, self._called(table.name, alone=everywhere)) for table in laid.tables),
            self._table(laid.teacher, TEACHERS),
            tuple(f"{self._tool(one)}: {one.much} for {laid.users[one.item.id]}" for one in laid.stations),
            tuple(map(self._lot, laid.kiln)),
            tuple(self._tool(one) + (f": {one.much}" if one.much else "") for one in laid.kiln_tools),
        )

    def _called(self, name: str, *, alone: bool) -> str:
        """A table as its page is headed: a number or a letter is one of a table."""
        if not name:
            return ALL_ONE if alone else NOWHERE
        return f"Table {name}" if name.isdigit() or len(name) == 1 else name

    def makes(self, kits: Kits) -> str:
        """A kind of set, its colours left out."""
        told = (kits.design if self.several else "", kits.called)
        return ", ".join(one for one in told if one)

    def _table(self, table: Table, name: str) -> TableTold:
        seated = [
            Sits(one.name, self.makes(one.kits), self._clay(clay), _colours(one.kits, own))
            for one, own, clay in zip(table.pupils, table.colours, table.clay, strict=bool(table.pupils))
        ]
        return TableTold(
            name,
            tuple(seated),
            tuple(self._own(table) if name == TEACHERS else self._lying(table.places)),
            tuple(map(self._lot, table.shared)),
            (
                *(f"{self._tool(one)}: {one.much} of {one.of}" for one in table.tools),
                *([SCALE] if any(table.clay) else []),
            ),
        )

    def _own(self, table: Table) -> Iterator[Lies]:
        """The teacher's sets, each by itself, and the tools for his pieces once."""
        places, sets = table.places, iter(zip(table.colours, table.clay, strict=True))
        for place in places:
            many = f"{len(place.names)} of " if len(place.names) > 1 else ""
            where = f"{many}{place.names[0]}: {self._kind(place.kits)}"
            lies = _with_sheets(self._list(where[:1].upper() + where[1:], place.things, ()), place)
            own = [next(sets) for _ in place.names]
            mixes = dict.fromkeys(_colours(place.kits, colours) for colours, _ in own)
            clay = dict.fromkeys(f"Clay: {told}" for _, things in own if (told := self._clay(things)))
            yield replace(lies, tools=(*lies.tools, *clay, *filter(None, mixes)))
        yield from (worn := [*_worn(places, "The teacher wears or has")])
        tools = dict.fromkeys(self._tool(tool) for place in places for tool in _without(place, worn).tools)
        if tools:
            yield Lies("For the teacher’s pieces", (), tuple(tools))

    def _lying(self, places: Sequence[Place]) -> Iterator[Lies]:
        """What is the same at all places of a table once, then what is at all of a design, then by the kind of set."""
        told = _alike(places)
        many = sum(len(place.names) for place in places)
        yield from (worn := [*_worn(places, "Everybody wears or has", _sheets(places))])
        places = [_without(place, worn) for place in places]
        if told:
            yield self._some("At the one place" if many == 1 else f"At each of {many} places", places[0], told)
        for design in dict.fromkeys(place.kits.design for place in places):
            here = [place for place in places if place.kits.design == design]
            own = [one for one in _alike(here) if one not in told] if 1 < len(here) < len(places) else []
            if own:
                yield self._some(f"{design}: {_each(here)}", here[0], own)
            alike: dict[str, list[tuple[list[Thing], list[Place]]]] = {}
            for place in here:
                rest = [one for one in (*place.things, *place.tools) if one not in (*told, *own)]
                groups = alike.setdefault(self.makes(place.kits), [])
                those = next((with_it for had, with_it in groups if had == rest), None)
                if those is None:
                    groups.append((rest, [place]))
                else:
                    those.append(place)
            for makes, groups in alike.items():
                for rest, those in groups:
                    called = makes if those[1:] else self._kind(those[0].kits)
                    if rest:
                        yield self._some(f"{called}: {_each(those)}", those[0], rest)

    def _some(self, where: str, place: Place, of: Sequence[Thing]) -> Lies:
        """Those things and tools of a place."""
        return self._list(where, [one for one in place.things if one in of], [one for one in place.tools if one in of])

    def _kind(self, kits: Kits) -> str:
        return ", ".join(filter(None, (self.makes(kits), kits.colourway.name if kits.colourway else "")))

    def _list(self, where: str, things: Sequence[Thing], tools: Sequence[Thing]) -> Lies:
        return Lies(where, tuple(map(self._lot, things)), tuple(map(self._tool, tools)))

    def _tool(self, thing: Thing) -> str:
        return tool_told(thing.item, thing.sizes, self.rounder)

    def _clay(self, things: Sequence[Thing]) -> str:
        """What is weighed out for one set; of several clays each by its name."""
        told = [self._lot(one) for one in things]
        return ", ".join(f"{one.amount} {one.name}" if told[1:] else one.amount for one in told)

    def _lot(self, thing: Thing) -> Lot:
        name, _, detail = thing.item.name.partition(", ")
        detail = (
            detail if self.heads[name] > 1 else ""
        )  # a table has few things: the first words tell most of them apart
        if isinstance(thing.item, Adhesive) and thing.item.mixed:
            detail = ", ".join(filter(None, (detail, "its parts A and B together, unmixed")))
        if thing.much is None:
            return Lot(name, detail, "")
        return Lot(name, detail, each_told(thing.much, thing.spare, thing.unit, self.rounder))


def _colours(kits: Kits, own: Allotted) -> str:
    """A colourway with how many of each colour are of one set: grey sea: clear 7, smoke 5; its own colour: clear 12."""
    items = colours_of(kits)
    told = dict(zip(items, told_apart([item.name for item in items.values()]), strict=True))
    each = []
    for name, many in own:
        colour = told[name].removeprefix(items[name].name.partition(",")[0]).strip() or told[name]
        each.append(f"{colour.replace(' ', NBSP)}{NBSP}{many}")
    return ": ".join(filter(None, (kits.colourway.name if kits.colourway else "", ", ".join(each))))


def _with_sheets(lies: Lies, place: Place) -> Lies:
    """What lies at a place, and the printed sheets of its kind."""
    sheets = ", ".join(place.kits.sheets)
    return replace(lies, tools=(f"Sheets: {sheets}", *lies.tools)) if sheets else lies


def _sheets(places: Sequence[Place]) -> Iterator[str]:
    """The printed sheets that each has of what he makes; those that only some have by their designs."""
    every = [place.kits.sheets for place in places]
    if alike := [name for name in every[0] if all(name in each for each in every)]:
        yield begun(", ".join(alike))
    for name in dict.fromkeys(name for each in every for name in each if name not in alike):
        designs = dict.fromkeys(place.kits.design for place in places if name in place.kits.sheets)
        yield f"{begun(name)}: {', '.join(designs)}"


def _worn(places: Sequence[Place], who: str, besides: Iterable[str] = ()) -> Iterator[Lies]:
    """What the cautions tell to wear and does not lie among the tools of all places, and what is `besides`."""
    laid = [{tool.item.name for tool in place.tools} for place in places]
    there = set.intersection(*laid) if laid else set()
    told = dict.fromkeys((*(wear for place in places for wear in worn(place.kits.version)), *besides))
    told = {words: None for words in told if words not in there}
    if told:
        yield Lies(who, (), tuple(told))


def _without(place: Place, worn: Sequence[Lies]) -> Place:
    """A place without the tools that everybody has anyhow: each is told once."""
    had = {words for lies in worn for words in lies.tools}
    return replace(place, tools=tuple(tool for tool in place.tools if tool.item.name not in had))


def _alike(places: Sequence[Place]) -> list[Thing]:
    """What lies at all of some places, things and then tools."""
    every = [(*place.things, *place.tools) for place in places]
    return [one for one in every[0] if all(one in each for each in every)]


def _each(places: Sequence[Place]) -> str:
    many = sum(len(place.names) for place in places)
    return f"each of {many} places" if many > 1 else "1 place"


def each_told(much: Fraction, spare: Fraction, unit: str, rounder: Rounder) -> str:
    """What one set has of an item, as its list prints it: of what is counted the spare ones stand apart."""
    if unit not in UNITS:
        return pieces_told(much, unit)
    if unit == "piece" and spare:
        return f"{much - spare}{THIN}+{THIN}{spare}"
    return amount(much, unit, rounder)


def pieces_told(many: Fraction, unit: str) -> str:
    """So many pieces of two sides: 2 pieces of 25 × 63 mm."""
    noun, of, sides = unit.partition(" of ")
    return f"{counted(str(many), noun)}{of}{sides}"
