"""The steps of a version put into sessions: what is done in one go, and the long waits between."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.base.interval import Interval
from sheetgen.facts.times import LONG_WAIT
from sheetgen.model.plan import NO_TIME, Plan, Session
from sheetgen.work.hands import in_order, timed
from sheetgen.work.network import before_all, critical

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.work.network import Task


def plan(found: Sequence[Task]) -> Plan:
    """What the times of a version come to, for one pair of hands."""
    chain, longest = critical(found)
    sessions, bridged, in_all = [], {i: _meanwhile(i, found) for i, task in enumerate(found) if _long(task)}, NO_TIME
    for first, last, waits in _runs(found):
        session, whole, inside = _session(found, first, last, waits)
        sessions.append(session)
        in_all += whole
        bridged |= {i: those for i, those in inside.items() if i not in bridged}
    return Plan(
        after=tuple(task.after for task in found),
        critical=chain,
        longest=longest,
        meanwhile=Frozen({i: those for i, those in sorted(bridged.items()) if those}),
        sessions=tuple(sessions),
        at_the_bench=sum((one.active for one in sessions), NO_TIME),
        in_all=in_all,
    )


def _long(task: Task) -> bool:
    return task.wait.low >= LONG_WAIT


def _runs(found: Sequence[Task]) -> list[tuple[int, int, tuple[int, ...]]]:
    """First and last step of each session, and the steps that are waited for at its end.

    Bare waits after a long one are part of the same break: nothing is done between them.
    """
    runs = []
    first, waits = 0, list[int]()
    for i, task in enumerate(found):
        if _long(task) or (waits and task.alone):
            waits.append(i)
        if waits and (i + 1 == len(found) or not found[i + 1].alone):
            runs.append((first, i, tuple(waits)))
            first, waits = i + 1, []
    return [*runs, (first, len(found) - 1, ())] if first < len(found) else runs


def _session(
    found: Sequence[Task], first: int, last: int, waits: tuple[int, ...]
) -> tuple[Session, Interval, dict[int, tuple[int, ...]]]:
    """One session, how long it is with its break, and what is done while something in it waits.

    What came before it is over.
    """
    own = [replace(task, after=tuple(i - first for i in task.after if i >= first)) for task in found[first : last + 1]]
    order, bridged = in_order(own)
    done, over = zip(*(timed(own, order, end) for end in ("usual", "low", "high")), strict=True)
    whole, sitting = Interval(*over), Interval(*(done if waits else over))  # the last of all is sat through
    active = sum((own[i].active for i in order), NO_TIME)
    session = Session(
        first,
        last,
        tuple(first + i for i in order),
        active,
        _less(sitting, active),
        sitting,
        waits,
        _less(whole, sitting) if waits else None,
    )
    return session, whole, {first + i: tuple(first + k for k in those) for i, those in bridged.items()}


def _less(whole: Interval, part: Interval) -> Interval:
    """What is left of a time, at its least, usual and most, whichever of them comes out least."""
    usual, low, high = (getattr(whole, end) - getattr(part, end) for end in ("usual", "low", "high"))
    return Interval(usual, min(usual, low, high), max(usual, low, high))


def _meanwhile(waiting: int, found: Sequence[Task]) -> tuple[int, ...]:
    """The later steps that can be done in a long wait: they wait neither for it nor for another wait after it."""
    before = before_all([task.after for task in found])
    can: list[int] = []
    for i in range(waiting + 1, len(found)):
        needs = before[i] - set(range(waiting))
        if not found[i].alone and needs <= set(can) and not any(found[k].wait.high for k in needs):
            can.append(i)
    return tuple(can)
