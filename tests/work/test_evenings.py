"""Evenings of a class: what is planned is the best there is, told by trying every order and place on small classes.

The rules are the tutor's. Steps go in the order of the sheet, and one is done before an earlier one only where it is
over before that one could begin. What is wet is gone on with the same evening, and stays at the studio. Homework is
begun at the hour of the class on a later day, and is done before the next evening. The teacher lights the kiln in an
evening or at that hour. Best is: least left over, least homework, fewest evenings, the last over soonest.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sheetgen.base.interval import Interval
from sheetgen.model.plan import Held
from sheetgen.work.evenings import Evenings
from sheetgen.work.network import Task

if TYPE_CHECKING:
    from collections.abc import Iterator

DAY = 1440
BEGIN, END = 18 * 60, 20 * 60
SET_UP, CLEAR_UP = 10, 5
OPEN, CLOSE = BEGIN + SET_UP, END - CLEAR_UP
Path = tuple[tuple[int, float, float], ...]
"""Step, place and begin of everything done by hand: 0 is the first evening, 0.5 at home after it."""


def exactly(minutes: float) -> Interval:
    return Interval(minutes, minutes, minutes)


def task(active: float = 0, wait: float = 0, after: tuple[int, ...] = (), **more: bool) -> Task:
    return Task(exactly(active), exactly(wait), after, **more)


def held(evenings: int, days: int = 7) -> Held:
    return Held(1, ((BEGIN, END),) * evenings, days, SET_UP, CLEAR_UP)


class Tried:
    """Every way there is, by brute force."""

    def __init__(self, tasks: list[Task], evenings: int, days: int, kilns: dict[int, int]) -> None:
        self.tasks, self.evenings, self.days, self.kilns = tasks, evenings, days, kilns

    def hour(self, minute: float) -> float:
        day = max(0, math.ceil((minute - BEGIN) / DAY))
        return day * DAY + BEGIN

    def lit(self, minute: float) -> float:
        days = (n * self.days * DAY for n in range(self.evenings))
        in_class = any(day + OPEN <= minute <= day + CLOSE for day in days)
        return minute if in_class else self.hour(minute)

    def overs(self, path: Path) -> dict[int, float]:
        """When each step is over that is begun, or begins by itself."""
        over = {i: at + self.tasks[i].active.high + self.tasks[i].wait.high for i, _, at in path}
        for i, one in enumerate(self.tasks):
            if one.alone and all(k in over for k in one.after):
                at = max((over[k] for k in one.after), default=float(OPEN))
                for _ in range(self.kilns.get(i, 1)):
                    at = (self.lit(at) if i in self.kilns else at) + one.active.high + one.wait.high
                over[i] = at
        return over

    def ready(self, i: int, over: dict[int, float]) -> float:
        return max((over.get(k, math.inf) for k in self.tasks[i].after), default=float(OPEN))

    def ways(self, path: Path = ()) -> Iterator[Path]:
        yield path
        over = self.overs(path)
        last = path[-1] if path else None
        for i, one in enumerate(self.tasks):
            if one.alone or i in over or (ready := self.ready(i, over)) == math.inf:
                continue
            for n in range(2 * self.evenings):
                place, number = n / 2, n // 2
                if last and place < last[1]:
                    continue
                free = last[2] + self.tasks[last[0]].active.high if last and place == last[1] else 0.0
                evening: float = number * self.days * DAY
                end: float
                if place % 1 == 0:
                    at, end = max(free, ready, evening + OPEN), evening + CLOSE
                else:
                    at = max(free, self.hour(evening + CLOSE))
                    at = at if ready <= at else self.hour(ready)
                    end = evening + self.days * DAY + BEGIN if number + 1 < self.evenings else math.inf
                    if not one.home or self.wet(i):
                        continue
                if at + one.active.high <= end:
                    yield from self.ways((*path, (i, place, at)))

    def wet(self, i: int) -> bool:
        return self.tasks[i].at_once or any(t.at_once and i in self.goes_on_from(k) for k, t in enumerate(self.tasks))

    def goes_on_from(self, i: int) -> set[int]:
        found = set()
        for k in self.tasks[i].after:
            if not self.tasks[k].alone:
                found.add(k)
            elif self.tasks[k].wait.low < 90:
                found |= self.goes_on_from(k)
        return found

    def kept(self, path: Path) -> bool:
        """Whether a way keeps the tutor's rules."""
        over, begun = self.overs(path), {i: (place, at) for i, place, at in path}
        for j, (place, at) in begun.items():
            for k in range(j):
                if self.tasks[k].alone or begun.get(k, (0, math.inf))[1] <= at:
                    continue
                held_back = place % 1 and (not self.tasks[k].home or self.wet(k))
                if not held_back and at + self.tasks[j].active.high > self.ready(k, over):
                    return False
        for j, one in enumerate(self.tasks):
            places = {begun[k][0] for k in self.goes_on_from(j) if k in begun} if one.at_once else set()
            if places and (j not in begun or places != {begun[j][0]}):
                return False
        return True

    def score(self, path: Path) -> tuple[float, ...]:
        home = sum(self.tasks[i].active.high for i, place, _ in path if place % 1)
        evenings = {place for _, place, _ in path if not place % 1}
        last = max((at + self.tasks[i].active.high for i, place, at in path if not place % 1), default=0)
        return len(self.tasks) - len(self.overs(path)), home, len(evenings), last

    def best(self) -> tuple[float, ...]:
        return min(self.score(path) for path in self.ways() if self.kept(path))


@st.composite
def classes(draw: st.DrawFn) -> tuple[list[Task], int, int, dict[int, int]]:
    """A few steps: work, settings, long waits, a kiln; some wet, some that may not go home."""
    tasks: list[Task] = []
    kilns = {}
    hands = 0
    for i in range(draw(st.integers(1, 6))):
        after = tuple(k for k in range(i) if draw(st.integers(0, 2)) == 0)
        kind = draw(st.sampled_from(["work", "work", "work", "set", "dry", "kiln"])) if hands < 4 else "set"
        if kind == "work":
            hands += 1
            minutes, wait = draw(st.sampled_from([5, 10, 30, 50, 70, 130])), draw(st.sampled_from([0, 0, 0, 15, 1500]))
            wet = draw(st.booleans()) and bool(after)
            tasks.append(task(minutes, wait, after, home=draw(st.booleans()), at_once=wet))
        elif kind == "kiln":
            kilns[i] = draw(st.integers(1, 2))
            tasks.append(task(10, draw(st.sampled_from([20, 400])), after, alone=True))
        else:
            wait = draw(st.sampled_from([20, 45] if kind == "set" else [720, 2000, 9000]))
            tasks.append(task(0, wait, after, alone=True))
    return tasks, draw(st.integers(1, 3)), draw(st.sampled_from([1, 2, 7])), kilns


@settings(max_examples=250)
@given(classes())
def test_no_order_and_no_place_of_the_steps_is_better_than_the_one_that_is_planned(
    drawn: tuple[list[Task], int, int, dict[int, int]],
) -> None:
    tasks, evenings, days, kilns = drawn
    planned = Evenings(tasks, held(evenings, days), kilns).best()
    assert planned.score == Tried(tasks, evenings, days, kilns).best()


def test_two_steps_that_fill_an_evening_are_done_in_one_and_a_third_in_the_next() -> None:
    way = Evenings([task(60), task(45, after=(0,)), task(10, after=(1,), home=False)], held(2)).best()
    assert way.held == ((0, ((0, OPEN), (1, OPEN + 60))), (1, ((2, 7 * DAY + OPEN),)))


def test_what_finds_no_room_goes_home_and_a_torch_never_does() -> None:
    chain = [task(100), task(100, after=(0,)), task(20, after=(1,))]
    assert [i for _, done in Evenings(chain, held(2)).best().home for i, _ in done] == [2]
    assert [i for _, done in Evenings(chain, held(1)).best().home for i, _ in done] == [1, 2]
    torch = [task(100), task(100, after=(0,), home=False)]
    assert Evenings(torch, held(1)).best().left == 1


def test_two_days_of_drying_are_over_after_a_week_and_not_after_a_night() -> None:
    dried = [task(30), task(0, 48 * 60, after=(0,), alone=True), task(30, after=(1,), home=False)]
    assert Evenings(dried, held(2, days=7)).best().left == 0
    assert Evenings(dried, held(2, days=1)).best().left == 1


def test_homework_is_done_before_the_door_opens_for_the_next_evening() -> None:
    # dry an hour before the second evening: there is no hour of the class left before it
    late = [task(100), task(0, 24 * 60 - 3 * 60, after=(0,), alone=True), task(5, after=(1,)), task(101, after=(2,))]
    assert [place for place, _ in Evenings(late, held(2, days=1)).best().home] == [1]


def test_what_is_wet_is_not_begun_where_it_cannot_be_gone_on_with() -> None:
    rolled = [task(60), task(50, after=(0,)), task(40, after=(1,), at_once=True)]
    way = Evenings(rolled, held(2)).best()
    assert [[i for i, _ in done] for _, done in way.held] == [[0], [1, 2]]


@pytest.mark.parametrize(("loads", "day"), [(1, 1), (2, 2), (3, 3)])
def test_each_load_is_lit_when_the_teacher_is_there(loads: int, day: int) -> None:
    fired = [task(105), task(10, 480, after=(0,), alone=True), task(5, after=(1,), home=False)]
    way = Evenings(fired, held(2), {1: loads}).best()
    lit = [at for i, at in way.alone if i == 1]
    assert lit == [CLOSE, *(n * DAY + BEGIN for n in range(1, loads))]
    assert max(lit) // DAY == day - 1
