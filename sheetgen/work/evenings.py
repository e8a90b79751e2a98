"""Steps put into the evenings of a class: exactly, by what is left over, what goes home, how many evenings, how late.

In an evening the class goes through the steps as one pair of hands does (work/hands.py), and stops where the next one
does not fit; of what would be left wet then nothing is begun, and nothing of it goes home. Doing less helps only where
an evening is then not held at all. So all there is to choose is that, whether a wait is bridged with something wet that
must be gone on with, and how many of the next steps are done at home before the next evening. Each choice is tried once
for whatever is done by then.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from sheetgen.base.clock import MINUTES_PER_DAY
from sheetgen.base.interval import GRAIN
from sheetgen.facts.times import LONG_WAIT
from sheetgen.work.hands import Hands

if TYPE_CHECKING:
    from collections.abc import Collection, Iterator, Mapping, Sequence

    from sheetgen.model.plan import Held
    from sheetgen.work.network import Task

Span = tuple[float, float]
"""From when to when, min."""
Begun = tuple[tuple[int, float], ...]
"""Tasks that are begun, each with when."""


@dataclass(frozen=True, slots=True)
class Way:
    """A way through the evenings, or through those from some moment on. The one of the least score is the best.

    `left` are tasks that find no room, `minutes` what goes home, at the most, `last` when the last evening is over.
    `held` is what the class does in each evening by its number from 0, `home` what pupils do at home after one, and
    `alone` what begins without them. Minutes are counted from the midnight before the first evening.
    """

    left: int
    minutes: float = 0.0
    last: float = 0.0
    held: tuple[tuple[int, Begun], ...] = ()
    home: tuple[tuple[int, Begun], ...] = ()
    alone: Begun = ()

    @property
    def score(self) -> tuple[float, ...]:
        """What is left over, what goes home, how many evenings, and how late the last is over: less is better."""
        return self.left, round(self.minutes, 6), len(self.held), self.last


@dataclass(slots=True)
class Evenings:
    """The search: tasks of a class, and how it is held. `kilns` are those that the teacher fires, with their loads.

    While the kiln is `taken` for something else it is not fired for these. `tended` is what else the teacher begins.
    """

    tasks: Sequence[Task]
    held: Held
    kilns: Mapping[int, int] = field(default_factory=dict)
    taken: Sequence[Span] = ()
    tended: Collection[int] = ()
    _known: dict[tuple[object, ...], Way] = field(default_factory=dict)
    _wet_after: dict[int, frozenset[int]] = field(default_factory=dict)
    _opens: frozenset[int] = frozenset()

    def __post_init__(self) -> None:
        """What must be gone on with, and from what; nothing of it goes home."""
        self._wet_after = {i: frozenset(self._by_hand(i)) for i, task in enumerate(self.tasks) if task.at_once}
        self._opens = frozenset[int]().union(*self._wet_after.values())
        wet = self._opens | self._wet_after.keys()
        self.tasks = [replace(task, home=task.home and i not in wet) for i, task in enumerate(self.tasks)]

    def best(self) -> Way:
        """The best way there is."""
        hands = Hands(self.tasks, self.span(0)[0], alone=self._begins_alone)
        hands.settle()
        at_once = tuple(hands.starts)
        found = self._from(0, hands)
        return replace(found, alone=(*at_once, *found.alone))

    def span(self, number: int) -> tuple[float, float]:
        """When the hands may begin in an evening, and when they must be done."""
        begin, end = self.held.evenings[number]
        day = number * self.held.days_between * MINUTES_PER_DAY
        return day + begin + self.held.set_up, day + end - self.held.clear_up

    def _begins_alone(self, i: int, ready: float) -> list[float]:
        """When what wants no hands begins: a wait at once; each load of a kiln when the teacher is there."""
        if i in self.tended:
            return [self._teacher_at(ready)]
        if i not in self.kilns:
            return [ready]
        long = self.tasks[i].whole.high
        begun = [self._kiln_at(ready, long)]
        while len(begun) < self.kilns[i]:
            begun.append(self._kiln_at(begun[-1] + long, long))
        return begun

    def _kiln_at(self, minute: float, long: float) -> float:
        """When the teacher is there and the kiln is free for so long."""
        at = self._teacher_at(minute)
        while clash := [end for begin, end in self.taken if at < end - GRAIN and begin < at + long - GRAIN]:
            at = self._teacher_at(max(clash))
        return at

    def _teacher_at(self, minute: float) -> float:
        """When the teacher is there: in an evening, and on every other day at the hour of one."""
        spans = (self.span(number) for number in range(len(self.held.evenings)))
        inside = any(begin <= minute <= end + GRAIN for begin, end in spans)
        return minute if inside else self._hour_after(minute)

    def _hour_after(self, minute: float) -> float:
        """The hour at which the class begins, of the first day on which it is not yet over."""
        hour = self.held.evenings[0][0]
        return hour + max(0, math.ceil((minute - hour) / MINUTES_PER_DAY - GRAIN)) * MINUTES_PER_DAY

    def _from(self, number: int, hands: Hands) -> Way:
        """The best way on from an evening that is about to begin."""
        if number == len(self.held.evenings):
            return Way(len(self.tasks) - len(hands.over))
        begin, _ = self.span(number)
        key = (number, *sorted((i, max(begin, over)) for i, over in hands.over.items()))
        if key not in self._known:
            self._known[key] = self._best_from(number, hands)
        return self._known[key]

    def _best_from(self, number: int, hands: Hands) -> Way:
        """The best of all choices; more homework is not tried once all fits with less."""
        before = len(hands.starts)
        best: Way | None = None
        for held, after in self._evening(number, hands):
            for home, at_home in self._homework(number, after):
                if best is not None and not best.left and self._minutes(home) > best.minutes + GRAIN:
                    break
                way = self._joined(number, held, home, before, at_home)
                best = way if best is None or way.score < best.score else best
        return best or Way(len(self.tasks))

    def _minutes(self, begun: Begun) -> float:
        """How long it all takes at the most."""
        return sum(self.tasks[i].active.high for i, _ in begun)

    def _joined(self, number: int, held: Begun, home: Begun, before: int, hands: Hands) -> Way:
        """An evening, what is done at home after it, and the best way on."""
        new = tuple((i, at) for i, at in hands.starts[before:] if self.tasks[i].alone)
        on = self._from(number + 1, hands)
        over = max((at + self.tasks[i].active.high for i, at in held), default=0.0)
        return Way(
            on.left,
            on.minutes + self._minutes(home),
            max(over, on.last),
            ((number, held), *on.held) if held else on.held,
            ((number, home), *on.home) if home else on.home,
            (*new, *on.alone),
        )

    def _evening(self, number: int, hands: Hands) -> Iterator[tuple[Begun, Hands]]:
        """One evening gone through, as far as nothing is left wet: what is done in it, and how far the hands are.

        Or it is not held.
        """
        begin, last = self.span(number)
        nothing: Begun = ()
        ways = [(begin, hands, nothing, (nothing, hands), frozenset[int]())]
        while ways:
            at, before, done, kept, never = ways.pop()
            on = before.copied()
            while True:
                i, again = on.next(at, last, never=never)
                if i is None and again > last:
                    break
                if i is None:
                    at = again
                    continue
                if again < math.inf and i in self._opens:
                    ways.append((at, on.copied(), done, kept, never | {i}))
                on.do(i, at)
                on.settle()
                done = (*done, (i, at))
                at += self.tasks[i].active.high
                if not self._wet(on):
                    kept = done, on.copied()
            yield kept[0], kept[1].copied()
        yield nothing, hands.copied()

    def _wet(self, hands: Hands) -> bool:
        """Whether something is begun that must be gone on with."""
        return any(i not in hands.over and not after.isdisjoint(hands.over) for i, after in self._wet_after.items())

    def _by_hand(self, i: int) -> Iterator[int]:
        """The steps done by hand that a step goes on from, over the short waits between."""
        for k in self.tasks[i].after:
            if not self.tasks[k].alone:
                yield k
            elif self.tasks[k].wait.low < LONG_WAIT:
                yield from self._by_hand(k)

    def _homework(self, number: int, hands: Hands) -> Iterator[tuple[Begun, Hands]]:
        """None, one, two or more of the next steps done at home after an evening, before the next one begins."""
        further = number + 1 < len(self.held.evenings)
        last = self.span(number + 1)[0] - self.held.set_up if further else math.inf
        at = self._hour_after(self.span(number)[1])
        done: Begun = ()
        yield done, hands.copied()
        hands = hands.copied()
        while True:
            i, again = hands.next(at, last, home=True)
            if i is None and again >= last:
                return
            if i is None:
                at = self._hour_after(again)
                continue
            hands.do(i, at)
            hands.settle()
            done = (*done, (i, at))
            at += self.tasks[i].active.high
            yield done, hands.copied()
