"""Sessions: what is done in one go, what bridges a wait, and how long all of it is."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.interval import Interval
from sheetgen.work.network import Task, before_all, critical
from sheetgen.work.sessions import plan


def hands(low: float, high: float | None = None, after: tuple[int, ...] = (), wait: float = 0) -> Task:
    high = low if high is None else high
    return Task(Interval((low + high) / 2, low, high), Interval(wait, wait, wait), after)


def waits(low: float, high: float | None = None, after: tuple[int, ...] = ()) -> Task:
    high = low if high is None else high
    return Task(wait=Interval((low + high) / 2, low, high), after=after, alone=True)


def ends(found: Interval | None) -> tuple[float, float]:
    assert found is not None
    return found.low, found.high


CUT, SET, WIND, JOIN, DRY, FIRE, BRUSH = 0, 1, 2, 3, 4, 5, 6
DROPS = [
    hands(10, 15), waits(20, 30, after=(CUT,)), hands(15, 20), hands(5, 10, after=(SET, WIND)),
    waits(720, 1440, after=(JOIN,)), hands(10, 15, after=(DRY,), wait=300), hands(20, 30, after=(FIRE,)),
]  # fmt: skip


def test_a_session_ends_with_a_long_wait_and_every_step_is_in_one() -> None:
    sessions = plan(DROPS).sessions
    assert [(one.first, one.last, one.waits) for one in sessions] == [(0, 4, (DRY,)), (5, 5, (FIRE,)), (6, 6, ())]
    assert [one.wait for one in sessions][2] is None
    assert ends(sessions[0].wait) == (720, 1440)
    assert ends(sessions[1].wait) == (300, 300)


def test_a_short_wait_is_inside_its_session_and_counts_as_far_as_nothing_bridges_it() -> None:
    first = plan(DROPS).sessions[0]
    assert ends(first.active) == (30, 45)
    assert ends(first.idle) == (5, 10)  # 20 to 30 min, of which winding takes 15 to 20
    assert first.order == (CUT, WIND, JOIN)


def test_a_wait_names_what_can_be_done_meanwhile() -> None:
    assert plan(DROPS).meanwhile == {SET: (WIND,)}
    free = [*DROPS, hands(30), hands(10, after=(7,)), hands(5, after=(6, 8))]
    assert plan(free).meanwhile == {SET: (WIND,), DRY: (7, 8), FIRE: (7, 8)}


def test_what_waits_for_a_second_long_wait_is_not_done_meanwhile() -> None:
    glued = [hands(10), waits(720, after=(0,)), hands(15, wait=400), hands(5, after=(2,)), hands(5, after=(1, 3))]
    assert plan(glued).meanwhile == {1: (2,)}


def test_a_step_that_would_outlast_a_short_wait_does_not_bridge_it() -> None:
    longer = [*DROPS[:WIND], hands(25, 31), *DROPS[WIND + 1 :]]
    # bridged or not, it is next in the order; what follows it would have been ready before
    assert plan(longer).sessions[0].order == (CUT, WIND, JOIN)
    passed_over = [hands(10), waits(20, after=(0,)), hands(5, after=(1,)), hands(21)]
    assert plan(passed_over).sessions[0].order == (0, 2, 3)
    assert plan(passed_over).meanwhile == {}
    fits = [*passed_over[:3], hands(20)]
    assert plan(fits).sessions[0].order == (0, 3, 2)
    assert plan(fits).meanwhile == {1: (3,)}


def test_a_wait_of_90_minutes_ends_a_session_and_one_of_89_does_not() -> None:
    for minutes, sessions in ((90, 2), (89, 1)):
        assert len(plan([hands(10), waits(minutes, after=(0,)), hands(10, after=(1,))]).sessions) == sessions


def test_two_long_waits_in_a_row_are_one_break() -> None:
    found = plan([hands(20), waits(360, 720, after=(0,)), waits(360, 720, after=(1,)), hands(30, after=(2,))])
    assert [(one.first, one.last, one.waits) for one in found.sessions] == [(0, 2, (1, 2)), (3, 3, ())]
    assert ends(found.sessions[0].wait) == (720, 1440)
    assert ends(found.in_all) == (770, 1490)


def test_a_short_wait_after_a_long_one_is_of_the_same_break() -> None:
    found = plan([hands(20), waits(360, after=(0,)), waits(15, after=(1,)), hands(30, after=(2,))]).sessions
    assert [(one.first, one.last, one.waits, one.wait and one.wait.high) for one in found] == [
        (0, 2, (1, 2), 375), (3, 3, (), None),
    ]  # fmt: skip


def test_two_that_wait_beside_each_other_are_waited_for_once() -> None:
    found = plan([hands(20), hands(20), waits(360, after=(0,)), waits(600, after=(1,)), hands(30, after=(2, 3))])
    assert ends(found.sessions[0].wait) == (600, 600)
    assert ends(found.in_all) == (670, 670)


def test_what_is_waited_for_at_the_end_of_all_belongs_to_the_last_session() -> None:
    cured = plan([hands(20), waits(1440, after=(0,))]).sessions
    assert [(one.first, one.last, one.waits) for one in cured] == [(0, 1, (1,))]
    [short] = plan([hands(20), waits(30, after=(0,))]).sessions
    assert (short.waits, ends(short.sitting)) == ((), (50, 50))


def test_all_in_all_is_sessions_and_breaks_and_nothing_twice() -> None:
    found = plan(DROPS)
    assert ends(found.at_the_bench) == (60, 90)
    assert ends(found.in_all) == (60 + 5 + 720 + 300, 90 + 10 + 1440 + 300)


@st.composite
def networks(draw: st.DrawFn) -> list[Task]:
    found = []
    for i in range(draw(st.integers(1, 9))):
        after = tuple(k for k in range(i) if draw(st.integers(0, 2)) == 0)
        low = draw(st.sampled_from([0, 5, 20, 60, 120, 700]))
        high = low + draw(st.sampled_from([0, 10, 50]))
        if draw(st.booleans()):
            found.append(hands(low, high, after, wait=draw(st.sampled_from([0, 0, 15, 400]))))
        else:
            found.append(waits(low, high, after))
    return found


@given(networks())
def test_all_in_all_is_between_the_longest_chain_and_everything_one_after_another(tasks: list[Task]) -> None:
    found = plan(tasks)
    one_after_another = sum((task.whole for task in tasks), Interval(0, 0, 0))
    _, longest = critical(tasks)
    for end in ("low", "usual", "high"):
        least, most = (getattr(one, end) for one in (longest, one_after_another))
        assert least - 1e-6 <= getattr(found.in_all, end) <= most + 1e-6


@given(networks())
def test_sessions_follow_each_other_and_leave_no_step_out(tasks: list[Task]) -> None:
    found = plan(tasks)
    steps = [i for one in found.sessions for i in range(one.first, one.last + 1)]
    assert steps == list(range(len(tasks)))
    by_hand = [i for one in found.sessions for i in one.order]
    assert sorted(by_hand) == [i for i, task in enumerate(tasks) if not task.alone]
    assert all(one.waits for one in found.sessions[:-1])


@given(networks())
def test_what_is_done_meanwhile_comes_later_and_does_not_wait_for_that_wait(tasks: list[Task]) -> None:
    before = before_all([task.after for task in tasks])
    for wait, those in plan(tasks).meanwhile.items():
        assert all(i > wait and wait not in before[i] and not tasks[i].alone for i in those)


@pytest.mark.parametrize("name", ["buoy-drops", "sedge-bookmark", "shingle-keeper"])
def test_a_design_of_the_demonstration_takes_no_longer_than_all_its_steps_in_a_row(name: str, demo: Any) -> None:
    version = demo.main(name)
    whole = sum(version.whole_times, Interval(0, 0, 0))
    bench = sum(version.bench_times, Interval(0, 0, 0))
    assert ends(version.plan.at_the_bench) == pytest.approx(ends(bench))
    assert version.plan.in_all.high <= whole.high + 1e-6
