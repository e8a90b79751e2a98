"""A design made by a class: stations and rounds, the kiln's loads, the evenings, and what would make it fit."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from sheetgen.base.clock import evening
from sheetgen.base.frozen import Frozen
from sheetgen.base.interval import ceil
from sheetgen.base.material import Tool
from sheetgen.base.measure import measure
from sheetgen.facts.bench import NEVER_AT_HOME
from sheetgen.facts.times import DAYS_BETWEEN
from sheetgen.model.plan import NO_TIME, ClassPlan, Held, Remedy
from sheetgen.work.evenings import Evenings
from sheetgen.work.loads import Loading
from sheetgen.work.network import Task
from sheetgen.work.timetable import between, evenings

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.base.place import Place, Word
    from sheetgen.model.project import Project, Studio
    from sheetgen.model.worked import Load, WorkedStep
    from sheetgen.parts.piece import Piece
    from sheetgen.work.evaluator import Evaluator
    from sheetgen.work.evenings import Way
    from sheetgen.work.network import Network

PAIR = 2
MORE_EVENINGS = 3  # beyond these it is another course
LONGER = (15, 30, 45, 60)  # min: beyond these it is another evening


@dataclass(frozen=True, slots=True)
class Room:
    """What a class has: how it is held, how many make one, and how many there are of each tool that is counted."""

    held: Held
    makers: int
    owned: Mapping[str, int]


def class_plan(
    network: Network, parts: Mapping[str, Piece], steps: Sequence[WorkedStep], evaluator: Evaluator
) -> ClassPlan | None:
    """How a class makes this version; None where nobody says how classes are held. What finds no room is a warning."""
    held = _held(evaluator.project, evaluator.library.studio)
    if held is None or not steps:
        return None
    tools = {t.id: t for step in steps for t in _counted(step)}
    of_class = _Class(network, parts, steps, evaluator)
    room = Room(held, held.people, {name: tool.owned for name, tool in tools.items()})
    tasks, way = of_class.way(room)
    left = of_class.left(way)
    remedies = tuple(_remedies(of_class, room, tools)) if left else ()
    if left:
        _tell(steps[left[0]], held, remedies, evaluator)
    return ClassPlan(
        held,
        evenings(held, steps, tasks, way, {i: of_class.rounds(i, room) for i in range(len(steps))}),
        between(held, steps, tasks, way),
        Frozen({i: found for i in range(len(steps)) if (found := of_class.loads(i, room.makers))}),
        left,
        remedies,
    )


def _held(project: Project, studio: Studio) -> Held | None:
    """How classes of a project are held: its own words go before the studio's."""
    said = {name: _said(name, project, studio) for name in ("people", "evenings", "days_between", "set_up", "clear_up")}
    if not said["people"] or not said["evenings"]:
        return None
    days = next((int(word) for word in said["days_between"]), int(DAYS_BETWEEN))
    up, clear = (sum(measure(word).value.usual for word in said[name]) for name in ("set_up", "clear_up"))
    spans = tuple(span for word in said["evenings"] if (span := evening(word)) is not None)
    return Held(int(said["people"][0]), spans, days, up, clear)


def _said(name: str, project: Project, studio: Studio) -> list[Word]:
    each = (getattr(one.class_, name) for one in (project, studio) if one.class_ is not None)
    found: Word | list[Word] = next((one for one in each if one), [])
    return found if isinstance(found, list) else [found]


def _counted(step: WorkedStep) -> Iterator[Tool]:
    """The tools of a step that are counted: of a kiln and its boxes the loads are."""
    for item in step.uses:
        if isinstance(item, Tool) and item.owned and item.kind != "kiln" and item.inside is None:
            yield item


@dataclass(slots=True)
class _Class:
    """One version made by a class, to be planned for one room after another."""

    network: Network
    parts: Mapping[str, Piece]
    steps: Sequence[WorkedStep]
    evaluator: Evaluator
    _loaded: dict[tuple[int, int], tuple[Load, ...]] = field(default_factory=dict)

    def way(self, room: Room) -> tuple[list[Task], Way]:
        """The best way through the evenings, and the steps as the class's time sees them."""
        tasks = [self._task(i, room) for i in range(len(self.steps))]
        kilns = {i: self.loads_of(i, room) for i, step in enumerate(self.steps) if step.firing}
        return tasks, Evenings(tasks, room.held, kilns).best()

    def left(self, way: Way) -> tuple[int, ...]:
        """The steps that find no room."""
        begun = {i for _, each in (*way.held, *way.home) for i, _ in each} | {i for i, _ in way.alone}
        return tuple(i for i in range(len(self.steps)) if i not in begun)

    def rounds(self, i: int, room: Room) -> tuple[int, tuple[Tool, ...]]:
        """How often a step is done until everybody has, and the tools of which there are too few."""
        few = tuple(tool for tool in _counted(self.steps[i]) if room.owned[tool.id] < room.makers)
        return max((ceil(room.makers / room.owned[tool.id]) for tool in few), default=1), few

    def loads(self, i: int, makers: int) -> tuple[Load, ...]:
        """How the pieces of all makers go into the kiln."""
        step = self.steps[i]
        if not step.loads or step.clay is None or step.place is None:
            return ()
        if (i, makers) not in self._loaded:
            loading = Loading(step.clay, step.uses, step.place, self.evaluator)
            self._loaded[i, makers] = loading.loads(self.parts, step.parts, makers)
        return self._loaded[i, makers]

    def loads_of(self, i: int, room: Room) -> int:
        """How often the kiln is fired for all of them; where they are too many to lay down, for each by itself."""
        packed, alone = self.loads(i, room.makers), self.steps[i].loads
        if len(packed) == len(alone):
            return max((load.loads for load in packed), default=1)
        return max(load.loads for load in alone) * room.makers

    def _task(self, i: int, room: Room) -> Task:
        step = self.steps[i]
        active, wait = step.minutes or NO_TIME, step.wait or NO_TIME
        if step.firing:
            return Task(active, wait, self.network.after[i], alone=True)
        home = _may_go_home(step) and not self.network.raw[i]
        times, after = self.rounds(i, room)[0], self.network.after[i]
        return Task(active * times, wait, after, step.waits, home, self.network.wet[i])


def _may_go_home(step: WorkedStep) -> bool:
    """Whether a pupil may do a step at home: nothing hot, no acid, nothing that the teacher shows, no shared tool.

    Raw clay stays at the studio too, with all that it is rolled and cut with.
    """
    hurts = step.acts(*NEVER_AT_HOME) or any(caution.at_action for caution in step.cautions)
    return not (hurts or step.who or any(_counted(step)))


def _remedies(of_class: _Class, room: Room, tools: Mapping[str, Tool]) -> Iterator[Remedy]:
    """The least of each change that by itself makes everything fit; where none does, how many people would."""

    def fits(tried: Room) -> bool:
        return not of_class.way(tried)[1].left

    found = False
    for remedy, tried in _changes(of_class, room, tools):
        one = next((number for number, change in tried if fits(change)), None)
        if one is not None:
            found = True
            yield Remedy(remedy.kind, one, remedy.tool)
    if not found:
        fewer = ((n, replace(room, makers=n)) for n in range(room.makers - 1, 0, -1))
        one = next((number for number, change in fewer if fits(change)), None)
        if one is not None:
            yield Remedy("people", one)


def _changes(
    of_class: _Class, room: Room, tools: Mapping[str, Tool]
) -> Iterator[tuple[Remedy, Iterator[tuple[int, Room]]]]:
    """What could be changed, and each in its degrees, the least first."""
    held = room.held
    many = len(held.evenings)
    further = (replace(held, evenings=(*held.evenings, *[held.evenings[-1]] * k)) for k in range(1, MORE_EVENINGS + 1))
    yield Remedy("evenings"), ((len(one.evenings), replace(room, held=one)) for one in further)
    short = dict.fromkeys(tool for i in range(len(of_class.steps)) for tool in of_class.rounds(i, room)[1])
    for tool in short:
        numbers = range(tools[tool.id].owned + 1, room.makers + 1)
        yield Remedy("tool", tool=tool), ((n, replace(room, owned={**room.owned, tool.id: n})) for n in numbers)
    if room.makers > 1:
        yield Remedy("pairs"), iter([(ceil(room.makers / PAIR), replace(room, makers=ceil(room.makers / PAIR)))])
    longer = ((k, tuple((begin, end + k) for begin, end in held.evenings)) for k in LONGER)
    yield Remedy("minutes"), ((k, replace(room, held=replace(held, evenings=hours))) for k, hours in longer if many)


def _tell(step: WorkedStep, held: Held, remedies: Sequence[Remedy], evaluator: Evaluator) -> None:
    many = len(held.evenings)
    evenings = f"{many} evening{'s' if many > 1 else ''}"
    title = evaluator.project.title  # the place may be the studio's, and that of every project
    told = f"a class of {held.people} does not get through ‘{title}’ in {evenings}: no room for ‘{step.title}’"
    helped = "it would fit with " + ", or with ".join(_worded(one, held) for one in remedies)
    nothing = "no evening more, tool or pair makes it fit by itself: write a long step as two, or give it more time"
    evaluator.troubles.add(told, _place(evaluator), helped if remedies else nothing, "warning")


def _worded(remedy: Remedy, held: Held) -> str:
    if remedy.kind == "tool" and remedy.tool is not None:
        return f"{remedy.number} of ‘{remedy.tool.name}’ in place of {remedy.tool.owned}"
    more = remedy.number - len(held.evenings)
    evening = "one more evening" if more == 1 else f"{more} more evenings"
    pairs = f"work in pairs, {remedy.number} pieces"
    minutes = f"{remedy.number} min more each evening"
    return {"evenings": evening, "pairs": pairs, "minutes": minutes, "people": f"{remedy.number} people"}[remedy.kind]


def _place(evaluator: Evaluator) -> Place | None:
    """Where the class is written: in the project, else in the studio's file."""
    hours = _said("evenings", evaluator.project, evaluator.library.studio)
    return hours[0].place if hours else None
