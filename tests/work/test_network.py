"""Which step waits for which, and which chain takes longest: networkx is the second opinion."""

from __future__ import annotations

import itertools
from typing import Any

import networkx as nx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.interval import Interval
from sheetgen.work.network import Task, before_all, critical

LINK = "link/project.yaml"


@st.composite
def networks(draw: st.DrawFn) -> list[Task]:
    found = []
    for i in range(draw(st.integers(1, 12))):
        low = draw(st.integers(0, 40))
        spans = [Interval(low + 5, low, low + 5 + draw(st.integers(0, 30))) for _ in range(2)]
        after = tuple(k for k in range(i) if draw(st.integers(0, 3)) == 0)
        found.append(Task(spans[0], spans[1], after))
    return found


def graph(tasks: list[Task], end: str) -> nx.DiGraph:
    """A step is an edge from its begin to its end; what waits for it begins after that."""
    made = nx.DiGraph()
    for i, task in enumerate(tasks):
        made.add_edge(("begin", i), ("end", i), weight=getattr(task.active, end) + getattr(task.wait, end))
        made.add_edges_from((("end", k), ("begin", i), {"weight": 0}) for k in task.after)
    return made


@given(networks())
def test_the_longest_chain_is_as_long_as_networkx_finds_it(tasks: list[Task]) -> None:
    _, longest = critical(tasks)
    for end in ("low", "usual", "high"):
        assert getattr(longest, end) == nx.dag_longest_path_length(graph(tasks, end))


@given(networks())
def test_the_critical_steps_are_a_chain_that_takes_as_long_as_the_longest(tasks: list[Task]) -> None:
    chain, longest = critical(tasks)
    assert all(a in tasks[b].after for a, b in itertools.pairwise(chain))
    assert sum(tasks[i].whole.usual for i in chain) == longest.usual


@given(networks())
def test_what_is_before_a_step_is_what_networkx_calls_its_ancestors(tasks: list[Task]) -> None:
    made = nx.DiGraph()
    made.add_nodes_from(range(len(tasks)))
    made.add_edges_from((k, i) for i, task in enumerate(tasks) for k in task.after)
    assert before_all([task.after for task in tasks]) == [nx.ancestors(made, i) for i in range(len(tasks))]


def test_nothing_at_all_takes_no_time() -> None:
    assert critical([]) == ((), Interval(0, 0, 0))


PARTS = """\
  plate: {kind: cut shape, clay: silver, shape: disc, across: 20 mm, thickness: 4 cards, hole: 3 mm}
  ring: {kind: jump ring, wire: copper-16awg, inside: 6 mm}
"""


@pytest.fixture
def pendant(library: Any) -> Any:
    """A disc of clay that hangs from a ring of wire; steps are put in by each test."""

    def after(*steps: str) -> tuple[tuple[int, ...], ...]:
        head, _, _ = library.path(LINK).read_text().partition("parts:\n")
        written = "".join(f"  - {{title: Step {i}, {step}}}\n" for i, step in enumerate(steps))
        library.write(LINK, f"{head}parts:\n{PARTS}steps:\n{written}")
        found: tuple[tuple[int, ...], ...] = library.main("link").plan.after
        return found

    return after


CUT = "parts: [plate], uses: [silver, roller], minutes: 10 min"
DRY = "parts: [plate], wait: drying, does: [dry, test]"
FIRE = "parts: [plate], firing: silver, minutes: 5 min"
WIND = "parts: [ring], uses: [copper-16awg], minutes: 10 min"
HANG = "parts: [plate, ring], does: [hang], minutes: 5 min"


def test_clay_is_dried_after_it_is_cut_and_wire_waits_for_neither(pendant: Any) -> None:
    assert pendant(CUT, DRY, WIND, FIRE, HANG) == ((), (0,), (), (1,), (2, 3))


def test_what_is_joined_is_one_thing_from_then_on(pendant: Any) -> None:
    # the ring is worked after it hangs from the plate: it waits for the hanging, and the plate's next step for it
    after = pendant(CUT, DRY, FIRE, WIND, HANG, "parts: [ring], does: [polish]", "parts: [plate], does: [polish]")
    assert after[4:] == ((2, 3), (4,), (5,))


def test_what_hangs_from_a_part_is_hung_there_by_the_last_step_that_names_it(library: Any, pendant: Any) -> None:
    bend = "parts: [ring], does: [polish], minutes: 5 min"
    assert pendant(WIND, CUT, DRY, FIRE, bend, "minutes: 5 min")[4] == (0,)
    library.change(LINK, "inside: 6 mm}", "inside: 6 mm, hangs from: plate}")
    assert library.main("link").plan.after[4] == (0, 3)


def test_a_step_that_names_nothing_waits_for_all_and_all_for_it(pendant: Any) -> None:
    assert pendant(WIND, "minutes: 5 min", CUT, DRY, FIRE, HANG)[:3] == ((), (0,), (1,))
    assert pendant(WIND, CUT, DRY, "minutes: 5 min", FIRE, HANG)[3:5] == ((0, 2), (3,))


def test_a_bare_wait_is_for_what_was_last_in_hand(pendant: Any) -> None:
    assert pendant(CUT, "wait: 10 min", WIND, DRY, FIRE, HANG)[1:4] == ((0,), (), (1,))


def test_a_firing_that_names_no_part_takes_whatever_is_of_its_clay(pendant: Any) -> None:
    assert pendant(CUT, DRY, WIND, "firing: silver", HANG)[3] == (1,)


def test_a_seat_waits_for_the_clay_that_it_is_in_though_no_file_says_which(demo: Any) -> None:
    steps, plan = demo.main("lantern-pull").steps, demo.main("lantern-pull").plan
    fire = next(i for i, step in enumerate(steps) if step.firing)
    stones = next(i for i, step in enumerate(steps) if "set" in step.does)
    assert fire in before_all(plan.after)[stones]


def test_a_foot_is_cut_while_the_tube_sets_though_its_hole_will_be_the_vent_of_the_tube(demo: Any) -> None:
    plan, titles = demo.main("buoy-drops").plan, [step.title for step in demo.main("buoy-drops").steps]
    sets, feet = titles.index("Let the tubes set"), titles.index("Cut the caps and feet")
    closed = next(i for i, step in enumerate(demo.main("buoy-drops").steps) if "close" in step.does)
    assert sets not in before_all(plan.after)[feet]
    assert feet in before_all(plan.after)[closed]


def test_one_kiln_fires_one_thing_after_another(library: Any, pendant: Any) -> None:
    assert pendant(CUT, DRY, FIRE, WIND, HANG)
    library.change("stock/others.yaml", "tools:\n", "tools:\n  kiln: {name: Kiln, kind: kiln}\n")
    other = "  other: {kind: cut shape, clay: silver, shape: disc, across: 9 mm, thickness: 4 cards}\n"
    head, _, steps = library.path(LINK).read_text().partition("steps:\n")
    more = [step.replace("plate", "other") for step in (CUT, DRY, FIRE)]
    written = "".join(f"  - {{title: More {i}, {step}}}\n" for i, step in enumerate(more))
    library.write(LINK, head + other + "steps:\n" + steps + written)
    assert library.main("link").plan.after[7] == (6,)
    text = library.path(LINK).read_text().replace("firing: silver,", "firing: silver, uses: [kiln],")
    library.write(LINK, text)
    assert library.main("link").plan.after[7] == (2, 6)
