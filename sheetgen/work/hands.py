"""One pair of hands, or a class that works as one: which step comes next, and what is done while another waits.

The hands go through the steps as they are written. Where the next one must wait, a later one is done meanwhile, if it
is ready and is done, by its most, before any earlier one could begin: no step is ever begun later for it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from sheetgen.base.interval import GRAIN

if TYPE_CHECKING:
    from collections.abc import Callable, Collection, Sequence

    from sheetgen.work.network import Task


@dataclass(slots=True)
class Hands:
    """How far the hands are: `over` is when each step is over, its wait with it, min; steps in the order of the file.

    `starts` are all that began, with when. `alone` says when what wants no hands begins, once it could: a kiln that is
    fired several times as often.
    """

    tasks: Sequence[Task]
    begin: float = 0.0
    over: dict[int, float] = field(default_factory=dict)
    starts: list[tuple[int, float]] = field(default_factory=list)
    alone: Callable[[int, float], Sequence[float]] = lambda _i, ready: (ready,)

    def ready(self, i: int) -> float | None:
        """When all that a step waits for is over; None while that is not known."""
        latest = self.begin
        for k in self.tasks[i].after:
            if k not in self.over:
                return None
            latest = max(latest, self.over[k])
        return latest

    def settle(self) -> None:
        """What wants no hands begins by itself."""
        for i, task in enumerate(self.tasks):
            if task.alone and i not in self.over and (ready := self.ready(i)) is not None:
                for at in self.alone(i, ready):
                    self.do(i, at)

    def do(self, i: int, at: float) -> None:
        """A step is begun, and is over when the last of it is."""
        self.starts.append((i, at))
        self.over[i] = at + self.tasks[i].active.high + self.tasks[i].wait.high

    def copied(self) -> Hands:
        """Hands that are as far, and go on by themselves."""
        return Hands(self.tasks, self.begin, dict(self.over), list(self.starts), self.alone)

    def next(
        self, at: float, last: float, *, home: bool = False, never: Collection[int] = ()
    ) -> tuple[int | None, float]:
        """What is begun at a time, to be done before the last, and when the first that it goes before could; or never.

        `home`: only what may go home; `never` is not begun, and holds back what comes after it as if it did not fit.
        """
        again = math.inf
        for i, task in enumerate(self.tasks):
            if task.alone or i in self.over or (home and not task.home) or (ready := self.ready(i)) is None:
                continue
            if ready <= at + GRAIN:
                fits = i not in never and at + task.active.high <= min(last, again) + GRAIN
                return (i if fits else None), again
            again = min(again, ready)
        return None, again


def in_order(tasks: Sequence[Task]) -> tuple[list[int], dict[int, list[int]]]:
    """All tasks done in one go: the order of the hands, and what later task is begun while one waits."""
    hands = Hands(tasks)
    hands.settle()
    order: list[int] = []
    begun: dict[int, float] = {}
    at = 0.0
    while True:
        i, again = hands.next(at, math.inf)
        if i is None and again == math.inf:
            break
        if i is None:
            at = again
            continue
        hands.do(i, at)
        hands.settle()
        begun[i] = at
        at += tasks[i].active.high
        order.append(i)
    waits = {k: over for k, over in hands.over.items() if tasks[k].wait.high}
    return order, {
        k: [i for i in order if i > k and over - tasks[k].wait.high - GRAIN <= begun[i] < over - GRAIN]
        for k, over in waits.items()
    }


def timed(tasks: Sequence[Task], order: Sequence[int], end: str) -> tuple[float, float]:
    """When the hands are done in this order, and when all waits are over, at the `low`, `usual` or `high` times."""
    over: dict[int, float] = {}
    free = 0.0

    def settle() -> None:
        for i, task in enumerate(tasks):
            if task.alone and i not in over and all(k in over for k in task.after):
                over[i] = max((over[k] for k in task.after), default=0.0) + getattr(task.whole, end)

    settle()
    for i in order:
        free = max([free, *(over[k] for k in tasks[i].after)]) + getattr(tasks[i].active, end)
        over[i] = free + getattr(tasks[i].wait, end)
        settle()
    return free, max([free, *over.values()])
