"""The plan of a version: what waits for what, its sessions, and the evenings of a class; steps by their index from 0.

Times are minutes; a minute of the day is counted from midnight.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

from sheetgen.base.frozen import Frozen
from sheetgen.base.interval import Interval

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sheetgen.base.material import Tool
    from sheetgen.model.worked import Load

NO_TIME = Interval(0, 0, 0)
Who = Literal["pupil", "teacher", ""]
"""Who does what stands between two evenings; nobody what is only waited for."""


@dataclass(frozen=True, slots=True)
class Session:
    """Steps done in one go, `first` to `last`, with the wait that it ends with.

    `order` is how the hands go through those that want hands: as they are written, but for what bridges a wait.
    `active` is the work at the bench, `idle` the short waits inside it that nothing bridges, and `sitting` both.
    `waits` are the steps that are waited for after it, and `wait` how long that is when the hands are done.
    """

    first: int
    last: int
    order: tuple[int, ...]
    active: Interval
    idle: Interval
    sitting: Interval
    waits: tuple[int, ...] = ()
    wait: Interval | None = None


@dataclass(frozen=True, slots=True)
class Held:
    """How a class is held: who come, each evening's begin and end, days from one to the next."""

    people: int
    evenings: tuple[tuple[int, int], ...]
    days_between: int
    set_up: float = 0.0
    clear_up: float = 0.0


@dataclass(frozen=True, slots=True)
class Slot:
    """One row of an evening: from when, and how long at least and at most.

    `step` is None for what is in `words` alone. `waits`: it is waited for; `by` is who does it where that is not the
    class. `rounds`: how often it is done, where too few of the tools `shared` are there for all at once; `minutes` are
    those of all rounds.
    """

    begin: float
    minutes: Interval
    step: int | None = None
    words: str = ""
    waits: bool = False
    by: Who = "pupil"
    rounds: int = 1
    shared: tuple[Tool, ...] = ()

    @property
    def end(self) -> float:
        """When it is over at the latest."""
        return self.begin + self.minutes.high


@dataclass(frozen=True, slots=True)
class Evening:
    """One evening: its number, its day from that of the first as 0, its hours, its rows, and when it is over by most.

    `done` are the steps that are finished in it by hand, in their order.
    """

    number: int
    day: int
    begin: int
    end: int
    slots: tuple[Slot, ...]
    over: float

    @property
    def done(self) -> tuple[int, ...]:
        """The steps that the class does in it, in the order of their begin."""
        return tuple(slot.step for slot in self.slots if slot.step is not None and not slot.waits and slot.by)


@dataclass(frozen=True, slots=True)
class Between:
    """What is done, or waited for, after an evening and before the next.

    `after` is the evening's number and `day` counts from it: 0 that night, 1 the next day. `active` is what the hands
    do, `wait` how long it then waits. Of a firing each load is a row: number `load` of so many `loads`.
    """

    after: int
    day: int
    who: Who
    step: int
    active: Interval | None = None
    wait: Interval | None = None
    load: int = 1
    loads: int = 1


@dataclass(frozen=True, slots=True)
class Fired:
    """One load of a firing: its step, the day of the evening that it comes after, from when to when, min.

    Minutes are counted from the midnight before the first evening.
    """

    step: int
    day: int
    begin: float
    end: float


@dataclass(frozen=True, slots=True)
class Remedy:
    """One change that makes a class fit, tried: so many evenings, so many of a tool, pairs, minutes more, people."""

    kind: Literal["evenings", "tool", "pairs", "minutes", "people"]
    number: int = 0
    tool: Tool | None = None


@dataclass(frozen=True, slots=True)
class ClassPlan:
    """A design as a class makes it, everybody one; `loads` are how all its pieces go into the kiln, by step.

    `left` are the steps that find no room, and `remedies` what would make them fit, each by itself. `fired` are the
    loads as the teacher fires them.

    Where `others` of the class make other designs, `beside` says how many of them use a tool of the studio in the same
    evening, by its name in stock; `loads` have their pieces too in the steps that are fired `together`, and those of
    the steps `elsewhere` are counted with a design before this one. The hours are those of this design by itself.
    """

    held: Held
    evenings: tuple[Evening, ...] = ()
    between: tuple[Between, ...] = ()
    loads: Mapping[int, tuple[Load, ...]] = field(default_factory=Frozen)
    left: tuple[int, ...] = ()
    remedies: tuple[Remedy, ...] = ()
    fired: tuple[Fired, ...] = ()
    others: int = 0
    beside: Mapping[str, int] = field(default_factory=Frozen)
    together: tuple[int, ...] = ()
    elsewhere: tuple[int, ...] = ()

    @property
    def homework(self) -> tuple[Between, ...]:
        """What pupils do at home."""
        return tuple(one for one in self.between if one.who == "pupil")


@dataclass(frozen=True, slots=True)
class Plan:
    """What the times of a version come to.

    `after` says for each step which earlier ones it must wait for itself; `critical` is the chain of steps that takes
    longest, and `longest` how long that is with as many hands as anybody wants. `meanwhile` says for each wait which
    steps can be done in it. `at_the_bench` is all work, `in_all` from the first cut to the finished piece, by sessions.
    """

    after: tuple[tuple[int, ...], ...] = ()
    critical: tuple[int, ...] = ()
    longest: Interval = NO_TIME
    meanwhile: Mapping[int, tuple[int, ...]] = field(default_factory=Frozen)
    sessions: tuple[Session, ...] = ()
    at_the_bench: Interval = NO_TIME
    in_all: Interval = NO_TIME
    class_plan: ClassPlan | None = None
