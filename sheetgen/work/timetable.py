"""A way through the evenings laid out: the rows of each evening, and what happens between one and the next."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from sheetgen.base.clock import MINUTES_PER_DAY
from sheetgen.base.interval import GRAIN, Interval
from sheetgen.model.plan import Between, Evening, Fired, Slot
from sheetgen.work.stations import by_teacher

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.base.material import Tool
    from sheetgen.model.plan import Held, Who
    from sheetgen.model.worked import WorkedStep
    from sheetgen.work.evenings import Begun, Way
    from sheetgen.work.network import Task

WELCOME, CLEAR_UP = "Welcome, set up", "Clear up"


def evenings(
    held: Held,
    steps: Sequence[WorkedStep],
    tasks: Sequence[Task],
    way: Way,
    rounds: Mapping[int, tuple[int, tuple[Tool, ...]]],
) -> tuple[Evening, ...]:
    """Each evening that is held, counted as they are held, with its rows by the clock."""
    each = enumerate(way.held, 1)
    return tuple(_evening(count, number, begun, held, tasks, rounds, way, steps) for count, (number, begun) in each)


def _evening(  # noqa: PLR0913, PLR0917 - one evening, of all that is known
    count: int,
    number: int,
    begun: Begun,
    held: Held,
    tasks: Sequence[Task],
    rounds: Mapping[int, tuple[int, tuple[Tool, ...]]],
    way: Way,
    steps: Sequence[WorkedStep],
) -> Evening:
    begin, end = held.evenings[number]
    day = number * held.days_between
    midnight = day * MINUTES_PER_DAY
    slots = []
    if held.set_up:
        slots.append(Slot(begin, _exactly(held.set_up), words=WELCOME))
    last = begin + held.set_up
    for i, at in begun:
        times, few = rounds[i]
        slots.append(Slot(at - midnight, tasks[i].active, i, rounds=times, shared=few))
        last = max(last, slots[-1].end)
    for i, at, minutes in _waits(begun, way, tasks):
        if begin <= at - midnight and at - midnight + minutes.high <= end + GRAIN:
            slots.append(Slot(at - midnight, minutes, i, waits=True, by="teacher" if steps[i].firing else ""))
    slots.sort(key=lambda slot: (slot.begin, slot.waits))
    if held.clear_up:
        slots.append(Slot(last, _exactly(held.clear_up), words=CLEAR_UP))
    # While something sets all clear up; then it is taken off, and only then they go.
    stays = max((slot.end for slot in slots if slot.waits and not slot.by), default=0.0)
    return Evening(count, day, begin, end, tuple(slots), max(last + held.clear_up, stays))


def _exactly(minutes: float) -> Interval:
    return Interval(minutes, minutes, minutes)


def _waits(begun: Begun, way: Way, tasks: Sequence[Task]) -> Iterator[tuple[int, float, Interval]]:
    """What is waited for: what begins by itself, and what a step leaves to wait for when the hands are done."""
    for i, at in way.alone:
        if tasks[i].whole.high:
            yield i, at, tasks[i].whole
    for i, at in begun:
        if tasks[i].wait.high:
            yield i, at + tasks[i].active.high, tasks[i].wait


def between(held: Held, steps: Sequence[WorkedStep], tasks: Sequence[Task], way: Way) -> tuple[Between, ...]:
    """What is done at home or by the teacher, and what waits, from one evening to the next, in its order."""
    in_class = [number for number, _ in way.held]
    loads, so_far = Counter(i for i, _ in way.alone), Counter[int]()
    rows = []
    for at, i, who in sorted(_doings(steps, tasks, way)):
        task = tasks[i]
        so_far[i] += 1
        begun = (n for n in in_class if _day(held, n) + held.evenings[n][0] <= at)
        number = max(begun, default=next(iter(in_class), 0))
        if at + task.whole.high > _day(held, number) + held.evenings[number][1] + GRAIN:
            day = int((at - _day(held, number)) // MINUTES_PER_DAY)
            wait = task.wait if task.wait.high else None
            active, of_how_many = task.active if who else None, max(1, loads[i])
            rows.append(
                Between(
                    in_class.index(number) + 1 if in_class else 1,
                    day,
                    who,
                    i,
                    active,
                    wait,
                    min(so_far[i], of_how_many),
                    of_how_many,
                )
            )
    return tuple(rows)


def fired(held: Held, steps: Sequence[WorkedStep], tasks: Sequence[Task], way: Way) -> tuple[Fired, ...]:
    """Each load of the kiln, after the evening that was begun last."""
    days = [number * held.days_between for number, _ in way.held]
    rows = []
    for i, at in sorted(way.alone, key=lambda one: one[1]):
        if steps[i].firing:
            before = [day for day in days if day * MINUTES_PER_DAY + held.evenings[0][0] <= at]
            rows.append(Fired(i, max(before, default=0), at, at + tasks[i].whole.high))
    return tuple(rows)


def _doings(steps: Sequence[WorkedStep], tasks: Sequence[Task], way: Way) -> Iterator[tuple[float, int, Who]]:
    """When, what and who: all but what the class does in an evening."""
    yield from ((at, i, "pupil") for _, each in way.home for i, at in each)
    yield from ((at, i, "teacher" if by_teacher(steps[i]) else "") for i, at in way.alone)
    in_class = (one for _, each in way.held for one in each)
    yield from ((at + tasks[i].active.high, i, "") for i, at in in_class if tasks[i].wait.high)


def _day(held: Held, number: int) -> float:
    """The midnight before an evening, min from that before the first."""
    return number * held.days_between * MINUTES_PER_DAY
