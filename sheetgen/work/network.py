"""Which step must wait for which, and the chain of steps that takes longest."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.base.interval import Interval
from sheetgen.facts.bench import WORKS_RAW_CLAY
from sheetgen.model.bench.walk import walk
from sheetgen.model.plan import NO_TIME

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from sheetgen.model.bench.bodies import Bench, Body
    from sheetgen.model.worked import WorkedStep
    from sheetgen.parts.piece import Piece

After = tuple[tuple[int, ...], ...]
"""For each step the earlier ones that it must wait for itself."""


@dataclass(frozen=True, slots=True)
class Task:
    """A step as time sees it: the hands for so long, then the wait; both min, and none of either is 0.

    `after` are the tasks that it waits for, all of them earlier. `alone`: it wants none of the hands that are planned.
    `home`: it may be done away from the studio. `at_once`: what it works on is wet, and is not left for another day.
    """

    active: Interval = NO_TIME
    wait: Interval = NO_TIME
    after: tuple[int, ...] = ()
    alone: bool = False
    home: bool = True
    at_once: bool = False

    @property
    def whole(self) -> Interval:
        """Both."""
        return self.active + self.wait


@dataclass(frozen=True, slots=True)
class Network:
    """For each step the earlier ones that it must wait for itself.

    `wet` says whether hands go on in it with what is still wet, `raw` whether it works on raw clay: shapes,
    joins, fills, sands or drills it.
    """

    after: After
    wet: tuple[bool, ...]
    raw: tuple[bool, ...]


def tasks(steps: Sequence[WorkedStep], found: Network) -> list[Task]:
    """Every step of one pair of hands; what says no time takes none."""
    return [
        Task(step.minutes or NO_TIME, step.whole_wait or NO_TIME, before, step.waits, at_once=wet)
        for step, before, wet in zip(steps, found.after, found.wet, strict=True)
    ]


def network(parts: Mapping[str, Piece], steps: Sequence[WorkedStep]) -> Network:
    """Steps that work on one thing wait for each other in the order as written.

    One thing is a part with all that it is joined to by then. A step that works on none that is known waits for all
    before it, and all after it wait for it; two that use one kiln wait for each other.
    """
    things, wet, raw = _worked_on(parts, steps)
    kilns = [{item.id for item in step.uses if item.acts("kiln")} for step in steps]

    def meet(i: int, j: int) -> bool:
        return not things[i] or not things[j] or bool(things[i] & things[j] or kilns[i] & kilns[j])

    found: list[tuple[int, ...]] = []
    all_before: list[set[int]] = []
    for j in range(len(steps)):
        own: list[int] = []
        known: set[int] = set()
        for i in reversed(range(j)):
            if i not in known and meet(i, j):
                own.append(i)
                known |= {i, *all_before[i]}
        found.append(tuple(reversed(own)))
        all_before.append(known)
    return Network(tuple(found), tuple(wet), tuple(raw))


def _worked_on(
    parts: Mapping[str, Piece], steps: Sequence[WorkedStep]
) -> tuple[list[set[str]], list[bool], list[bool]]:
    """What each step works on, with all that it is joined to before and after; if any is wet; if raw clay is worked.

    A bare wait works on what was last in hand.
    """
    found: list[set[str]] = [set() for _ in steps]
    wet, raw = [False for _ in steps], [False for _ in steps]
    for moment in walk({name: _not_yet_shut(part) for name, part in parts.items()}, steps):
        i, bench = moment.index, moment.bench
        if moment.deed == "begin":
            if i:  # what the step before was the last to name hangs from its place now
                found[i - 1] |= bench.group(found[i - 1])
            if moment.step.waits and not moment.step.does and not moment.named:
                found[i] |= _with_hosts(bench, bench.group(bench.last_named))
        elif moment.deed == "finish":
            found[i] |= bench.group(found[i])
            continue
        here = _with_hosts(bench, moment.whole)
        found[i] |= here
        wet[i] |= not moment.step.waits and any(_left_wet(bench.bodies[name], i) for name in here)
        raw[i] |= moment.deed in WORKS_RAW_CLAY and any(_is_raw(body) for body in moment.bodies_named)
    return found, wet, raw


def _not_yet_shut(part: Piece) -> Piece:
    """A vent is in the part that it is drilled in; of its hollow it is when that is shut, and not from the first."""
    if not part.roles.get("drilled in"):
        return part
    return replace(part, roles=Frozen({role: those for role, those in part.roles.items() if role != "vent of"}))


def _left_wet(body: Body, step: int) -> bool:
    """Whether a part is of raw clay that an earlier step left damp."""
    return body.there and body.fired is None and body.wet is not None and body.wet < step


def _is_raw(body: Body) -> bool:
    """Whether a part is of clay that no fire has met."""
    return body.clay is not None and body.fired is None


def _with_hosts(bench: Bench, names: Iterable[str]) -> set[str]:
    """These, and for holes and seats of which no file says what they are in, whatever there is of their clay."""
    found = set(names)
    for name in tuple(found):
        body = bench.bodies[name]
        if body.feature and all(bench.bodies[other].feature for other in bench.joined[name]):
            found |= {n for n, b in bench.bodies.items() if b.there and b.clay and b.clay == body.piece.clay}
    return found


def before_all(after: Sequence[Sequence[int]]) -> list[set[int]]:
    """For each step every earlier one that it waits for, however far back."""
    found: list[set[int]] = []
    for own in after:
        found.append(set(own).union(*(found[i] for i in own)))
    return found


def critical(found: Sequence[Task]) -> tuple[tuple[int, ...], Interval]:
    """The longest chain at the usual times, and how long the longest one is at the least, usual and most times."""
    usual, low, high = (_ends(found, [getattr(one.whole, end) for one in found]) for end in ("usual", "low", "high"))
    longest = Interval(*(max(ends, default=0.0) for ends in (usual, low, high)))
    return tuple(reversed(list(_back(found, usual)))), longest


def _ends(found: Sequence[Task], minutes: Sequence[float]) -> list[float]:
    """When each is over at the earliest."""
    ends: list[float] = []
    for task, long in zip(found, minutes, strict=True):
        ends.append(long + max((ends[i] for i in task.after), default=0.0))
    return ends


def _back(found: Sequence[Task], ends: Sequence[float]) -> Iterator[int]:
    """From what is over last to where its chain begins; of two that are over at once the earlier."""
    at = max(range(len(found)), key=lambda i: (ends[i], -i), default=None)
    while at is not None:
        yield at
        at = max(found[at].after, key=lambda i: (ends[i], -i), default=None)
