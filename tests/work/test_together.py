"""Two small designs in one class: what fits for each by itself need not fit for both, and then it is told.

Written from the trade before the plan. Three torches; a shelf of 100 mm; two evenings of 1 h 40 min, a week between.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

import pytest

from sheetgen.work.together import Making, together

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.model.plan import ClassPlan

HERE = Path(__file__).parent / "together"


class Both(NamedTuple):
    """What each design's plan says by itself, the plans beside each other, and what is then told."""

    alone: list[ClassPlan]
    plans: list[ClassPlan]
    told: list[str]
    helps: list[str]


@pytest.fixture
def both(libraries: Any, tmp_path: Path) -> Callable[..., Both]:
    """Designs of a class, each with so many who make it."""

    def made(**people: int) -> Both:
        library = libraries.Library(tmp_path)
        library.write("studio.yaml", (HERE / "studio.yaml").read_bytes())
        library.write("stock/stock.yaml", (HERE / "stock.yaml").read_bytes())
        names = {name.replace("_", "-"): many for name, many in people.items()}
        for name, many in names.items():
            text = (HERE / f"{name}.yaml").read_text("utf-8")
            library.write(f"{name}/project.yaml", f"{text}class: {{people: {many}}}\n".encode())
        outcome = library.check()
        assert not list(outcome.troubles), "\n".join(map(str, outcome.troubles))  # by itself each design fits
        projects = {filed.name: filed.project for filed in outcome.library.projects}
        makings = [Making(name, library.main(name), projects[name], many) for name, many in names.items()]
        plans, troubles = together(makings, outcome.library)
        return Both(
            [one.version.plan.class_plan for one in makings if one.version.plan.class_plan],
            [plan for plan in plans if plan],
            [one.message for one in troubles],
            [one.help for one in troubles],
        )

    return made


def rounds(plan: ClassPlan, step: int) -> list[int]:
    return [slot.rounds for evening in plan.evenings for slot in evening.slots if slot.step == step]


HEAT, FIRE = 1, 3


# Wrong: what fits only on paper


def test_twelve_at_three_torches_do_not_fit_because_six_of_them_make_something_else(both: Callable[..., Both]) -> None:
    """Six at three torches are two rounds, an hour; twelve are four, two hours, and an evening has 1 h 40 min.

    Four torches are three rounds. Three pairs and the six others are nine, three rounds too: 1 h 30.
    """
    found = both(bangle=6, bar=6)
    assert [rounds(plan, HEAT) for plan in found.alone] == [[2], [2]]
    assert found.told == [
        f"6 of a class of 12 do not get through ‘{title}’ in 2 evenings, with what they share with the others: "
        "no room for ‘Heat it until it is soft’"
        for title in ("Bangle", "Bar")
    ]
    four, pairs, longer = "4 of ‘Torch’ in place of 3", "work in pairs, 3 pieces", "30 min more each evening"
    assert set(found.helps) == {f"it would fit with {four}, or with {pairs}, or with {longer}"}


def test_six_loads_of_two_designs_are_one_kilns_loads(both: Callable[..., Both]) -> None:
    """A disc of 60 mm fills a shelf. Three loads, one a day, are cold in a week; six are not."""
    found = both(disc_60=3, coaster_60=3)
    assert [[load.loads for load in plan.loads[FIRE]] for plan in found.alone] == [[3], [3]]
    assert [[load.loads for load in plan.loads[FIRE]] for plan in found.plans] == [[6], [6]]
    assert [told.rpartition(": ")[2] for told in found.told] == ["no room for ‘Brush it’"] * 2
    assert all("one more evening" in helped for helped in found.helps)


# Honest, and alike


def test_twelve_at_three_torches_for_a_moment_fit_and_are_counted(both: Callable[..., Both]) -> None:
    """Four rounds of 8 min."""
    found = both(bangle_quickly=6, bar_quickly=6)
    assert not found.told
    assert [rounds(plan, HEAT) for plan in found.plans] == [[4], [4]]
    assert [dict(plan.beside) for plan in found.plans] == [{"torch": 6}, {"torch": 6}]


def test_a_torch_that_others_want_in_another_evening_is_not_shared(both: Callable[..., Both]) -> None:
    """Who cuts for 80 min heats in the second evening; the others heat in the first."""
    found = both(bangle=6, bar_slowly_cut=6)
    assert not found.told
    assert [rounds(plan, HEAT) for plan in found.plans] == [[2], [2]]


def test_small_pieces_of_two_designs_are_one_load_and_counted_once(both: Callable[..., Both]) -> None:
    """Six discs of 22 mm raw lie on a shelf of 100 mm: one load, which the second design does not count again."""
    found = both(disc_20=3, token_20=3)
    assert not found.told
    assert [[(load.pieces, load.loads) for load in plan.loads[FIRE]] for plan in found.plans] == [[(6, 1)], [(6, 1)]]
    assert [plan.together for plan in found.plans] == [(FIRE,), (FIRE,)]
    assert [plan.elsewhere for plan in found.plans] == [(), (FIRE,)]


def test_what_is_fired_hotter_goes_into_a_load_of_its_own_after_the_other(both: Callable[..., Both]) -> None:
    """One kiln: by themselves both would be fired at the same hour."""
    found = both(disc_20=3, token_hotter=3)
    assert not found.told
    first, second = (plan.fired[0] for plan in found.alone)
    assert first.begin == second.begin
    first, second = (plan.fired[0] for plan in found.plans)
    assert first.end <= second.begin
    assert not any(plan.together for plan in found.plans)


def test_one_design_is_planned_as_ever(both: Callable[..., Both]) -> None:
    found = both(bangle=6)
    assert found.plans == found.alone
