"""What a class does at once and what in rounds, and what may go home."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.base.interval import Interval, ceil
from sheetgen.base.material import Tool
from sheetgen.facts.bench import NEVER_AT_HOME
from sheetgen.facts.cautions import AT_HOME
from sheetgen.facts.times import CLASS_CLOCK
from sheetgen.model.numbers import stepped
from sheetgen.model.plan import NO_TIME
from sheetgen.work.evenings import Evenings
from sheetgen.work.network import Task

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.model.plan import Held
    from sheetgen.model.worked import WorkedStep
    from sheetgen.work.class_loads import ClassLoads
    from sheetgen.work.evenings import Span, Way
    from sheetgen.work.network import Network


@dataclass(frozen=True, slots=True)
class Room:
    """What a class has: how it is held, how many make one, and how many there are of each tool that is counted.

    `beside` is how many who make other designs use such a tool in the same evening.
    """

    held: Held
    makers: int
    owned: Mapping[str, int]
    beside: Mapping[str, int] = field(default_factory=Frozen)

    def users(self, tool: Tool) -> int:
        """How many use a tool."""
        return self.makers + self.beside.get(tool.id, 0)


def counted(step: WorkedStep) -> Iterator[Tool]:
    """The tools of a step that are counted: of a kiln and its boxes the loads are."""
    for item in step.uses:
        if isinstance(item, Tool) and item.owned and item.kind != "kiln" and item.inside is None:
            yield item


def by_teacher(step: WorkedStep) -> bool:
    """Whether the teacher begins it: a firing, and a drying before which cracks are filled."""
    return bool(step.firing) or (step.waits and "fill" in step.does)


@dataclass(slots=True)
class ClassWork:
    """One version made by a class, to be planned for one room after another.

    `taken` are the times at which the kiln is fired for other designs.
    """

    network: Network
    steps: Sequence[WorkedStep]
    kiln: ClassLoads
    taken: Sequence[Span] = ()

    def way(self, room: Room) -> tuple[list[Task], Way]:
        """The best way through the evenings, and the steps as the class's time sees them."""
        tasks = [self._task(i, room) for i in range(len(self.steps))]
        kilns = {i: self.kiln.loads_of(i, room.makers) for i, step in enumerate(self.steps) if step.firing}
        tended = {i for i, step in enumerate(self.steps) if by_teacher(step)} - kilns.keys()
        return tasks, Evenings(tasks, room.held, kilns, self.taken, tended).best()

    def left(self, way: Way) -> tuple[int, ...]:
        """The steps that find no room."""
        begun = {i for _, each in (*way.held, *way.home) for i, _ in each} | {i for i, _ in way.alone}
        return tuple(i for i in range(len(self.steps)) if i not in begun)

    def rounds(self, i: int, room: Room) -> tuple[int, tuple[Tool, ...]]:
        """How often a step is done until everybody has, and the tools of which there are too few."""
        few = tuple(tool for tool in counted(self.steps[i]) if room.owned[tool.id] < room.users(tool))
        return max((ceil(room.users(tool) / room.owned[tool.id]) for tool in few), default=1), few

    def _task(self, i: int, room: Room) -> Task:
        step = self.steps[i]
        active, wait = step.minutes or NO_TIME, step.wait or NO_TIME
        if step.firing:
            return Task(_by_the_clock(active), _by_the_clock(wait), self.network.after[i], alone=True)
        home = _may_go_home(step) and not self.network.raw[i]
        times, after = self.rounds(i, room)[0], self.network.after[i]
        return Task(_by_the_clock(active * times), _by_the_clock(wait), after, step.waits, home, self.network.wet[i])


def _by_the_clock(minutes: Interval) -> Interval:
    """A time as it is printed, at its most up to five minutes: then each row of a timetable begins on one of them."""
    low, high = stepped(minutes)
    high = ceil(high / CLASS_CLOCK) * float(CLASS_CLOCK)
    return Interval(min(max(minutes.usual, low), high), low, high)


def _may_go_home(step: WorkedStep) -> bool:
    """Whether a pupil may do a step at home: nothing hot, no acid, no dust of clay, no shared tool.

    Work with raw clay (`Network.raw`) stays at the studio too, wet or dry; and a hollow is closed where the teacher
    sees that its inside is dry.
    """
    hurts = step.acts(*NEVER_AT_HOME) or "close" in step.does or any(c.id not in AT_HOME for c in step.cautions)
    return not (hurts or any(counted(step)))
