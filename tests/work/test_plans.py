"""Small designs as a class makes them: those that do not fit the evenings say so, and what would make them fit.

Each wrong one names the first step that finds no room, and every single change that would help; of an honest one that
looks like it nothing is said. They were written from the trade before the plan.
"""

from __future__ import annotations

import math
import re
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.base.interval import Interval
from sheetgen.model.plan import Held
from sheetgen.work.evenings import Evenings
from sheetgen.work.network import Task

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.trouble import Trouble
    from sheetgen.model.plan import ClassPlan, Remedy

HERE = Path(__file__).parent / "plans"
WRONG, HONEST = (sorted(HERE.glob(f"{which}/*.yaml")) for which in ("wrong", "honest"))


def header(case: Path, name: str) -> list[str]:
    return re.findall(rf"^# {name}: (.*)$", case.read_text(), re.MULTILINE)


@pytest.fixture
def case(libraries: Any, tmp_path: Path) -> Callable[[Path], Any]:
    """A library of one design."""

    def made(path: Path) -> Any:
        library = libraries.Library(tmp_path)
        library.write("studio.yaml", (HERE / "studio.yaml").read_bytes())
        library.write("stock/stock.yaml", (HERE / "stock.yaml").read_bytes())
        library.write(f"{path.stem}/project.yaml", path.read_bytes())
        return library

    return made


def told(library: Any) -> list[Trouble]:
    outcome = library.check()
    assert not outcome.troubles.errors, "\n".join(map(str, outcome.troubles))
    return list(outcome.troubles)


def planned(library: Any, path: Path) -> ClassPlan:
    found: ClassPlan | None = library.main(path.stem).plan.class_plan
    assert found is not None
    return found


@pytest.mark.parametrize("path", WRONG, ids=lambda path: path.stem)
def test_a_class_that_does_not_fit_is_a_warning_that_names_what_would_help(
    path: Path, case: Callable[[Path], Any]
) -> None:
    [trouble] = told(case(path))
    assert trouble.severity == "warning"
    [left] = header(path, "left")
    assert trouble.message.endswith(f"no room for ‘{left}’")
    assert trouble.help == "it would fit with " + ", or with ".join(header(path, "fits"))
    assert trouble.place is not None


@pytest.mark.parametrize("path", HONEST, ids=lambda path: path.stem)
def test_nothing_is_said_of_a_class_that_fits(path: Path, case: Callable[[Path], Any]) -> None:
    library = case(path)
    assert [str(trouble) for trouble in told(library)] == []
    assert planned(library, path).left == ()


def mend(library: Any, path: Path, remedy: Remedy, number: int) -> None:
    """The change written into the files, as whoever reads the warning would."""
    hours = {"evenings": ['"18:00-20:00"'] * number, "minutes": [f'"18:00-{20 + number // 60}:{number % 60:02}"'] * 2}
    change: Callable[[str, str], None] = partial(library.change, "studio.yaml")
    if remedy.kind in hours:
        own = "evenings:" in path.read_text()
        name = f"{path.stem}/project.yaml" if own else "studio.yaml"
        written = ", ".join(hours[remedy.kind][: 1 if own and remedy.kind == "minutes" else None])
        text = re.sub(r'evenings: (\[.*?\]|"[^"]*")', f"evenings: [{written}]", library.path(name).read_text())
        library.write(name, text)
    elif remedy.kind == "tool":
        assert remedy.tool is not None
        name = remedy.tool.name
        text = library.path("stock/stock.yaml").read_text()
        mended = re.sub(rf"(name: {name},.* owned: )\d+", rf"\g<1>{number}", text)
        library.write("stock/stock.yaml", mended)
    else:  # in pairs half as many make one
        change("people: 12", f"people: {number}")


@pytest.mark.parametrize("path", WRONG, ids=lambda path: path.stem)
def test_every_change_that_is_named_makes_it_fit_when_it_is_made_and_a_smaller_one_does_not(
    path: Path, case: Callable[[Path], Any]
) -> None:
    remedies = planned(case(path), path).remedies
    assert remedies
    for remedy in remedies:
        library = case(path)
        mend(library, path, remedy, remedy.number)
        assert told(library) == [], remedy
        one_less = {"minutes": remedy.number - 15, "people": remedy.number + 1, "pairs": 12}
        library = case(path)
        mend(library, path, remedy, one_less.get(remedy.kind, remedy.number - 1))
        assert len(told(library)) == 1, remedy


def test_three_torches_for_twelve_are_four_rounds_and_take_four_times_as_long(case: Callable[[Path], Any]) -> None:
    path = HERE / "honest" / "three-torches-for-a-moment.yaml"
    [first] = planned(case(path), path).evenings
    heat = next(slot for slot in first.slots if slot.step == 1)
    assert (heat.rounds, [tool.name for tool in heat.shared]) == (4, ["Torch"])
    assert (heat.minutes.low, heat.minutes.high) == (20, 35)  # four times 8, by a clock of five minutes


def test_an_evening_is_laid_out_by_the_clock_each_row_after_the_most_of_the_one_before(
    case: Callable[[Path], Any],
) -> None:
    path = HERE / "honest" / "three-torches-for-a-moment.yaml"
    [first] = planned(case(path), path).evenings
    rows = [
        (slot.words or slot.step, slot.begin - 18 * 60, slot.minutes.low, slot.minutes.high) for slot in first.slots
    ]
    # a class is held by a clock of five minutes: 32 min are 35 in it
    work = [(0, 10, 10, 15), (1, 25, 20, 35), (2, 60, 20, 30)]
    assert rows == [("Welcome, set up", 0, 10, 10), *work, ("Clear up", 90, 10, 10)]
    assert (first.begin, first.over, first.end) == (18 * 60, 18 * 60 + 100, 20 * 60)


def test_between_two_evenings_it_dries_the_teacher_fires_and_nobody_else_does(case: Callable[[Path], Any]) -> None:
    path = HERE / "honest" / "dried-between.yaml"
    rows = planned(case(path), path).between
    assert [(row.after, row.day, row.who, row.step, row.load, row.loads) for row in rows] == [
        (1, 0, "", 2, 1, 1),
        (1, 2, "teacher", 3, 1, 2),  # 24 h from 19:20 are over after 18:00 of the next day
        (1, 3, "teacher", 3, 2, 2),
    ]  # fmt: skip
    assert [row.active and row.active.high for row in rows] == [None, 10, 10]  # nobody works at what dries


def test_a_class_stays_until_what_sets_is_taken_off(demo: Any) -> None:
    first, *_ = demo.main("tideline-band").plan.class_plan.evenings
    sets, clear_up = first.slots[-2:]
    assert (sets.waits, clear_up.words) == (True, "Clear up")
    assert sets.begin == clear_up.begin  # they clear up while it sets
    assert first.over == sets.end > clear_up.end


def test_every_row_of_a_timetable_begins_on_five_minutes(demo: Any) -> None:
    for worked in demo.check().worked:
        for version in worked.versions.values():
            for evening in version.plan.class_plan.evenings:
                assert {slot.begin % 5 for slot in evening.slots} | {evening.over % 5} == {0}, worked.name


def test_a_wait_that_is_bridged_stands_under_what_is_done_meanwhile(demo: Any) -> None:
    first, *_ = demo.main("saltpan-brooch").plan.class_plan.evenings
    rows = [(slot.step, slot.waits) for slot in first.slots]
    begins = [slot.begin for slot in first.slots]
    assert begins == sorted(begins)
    assert rows[rows.index((2, True)) - 1] == (4, False)  # the bridge is cut while the dome sets


def test_each_load_of_a_kiln_is_a_row_of_its_own_day(case: Callable[[Path], Any]) -> None:
    path = HERE / "honest" / "loads-in-a-week.yaml"
    fired = [row for row in planned(case(path), path).between if row.who == "teacher"]
    assert [(row.day, row.load, row.loads) for row in fired] == [(2, 1, 4), (3, 2, 4), (4, 3, 4), (5, 4, 4)]


def test_a_class_s_pieces_are_laid_into_the_kiln_together(case: Callable[[Path], Any]) -> None:
    # Discs of 20 mm shrink by 10 %: cut 22.2 mm; on a shelf of 100 mm, 10 mm apart, lie three by three, 12 on two.
    path = HERE / "honest" / "dried-between.yaml"
    [load] = planned(case(path), path).loads[3]
    assert (load.pieces, load.fullest, load.places, load.loads) == (12, 9, 2, 2)


def test_more_pieces_than_are_laid_down_at_once_are_loaded_half_by_half(case: Callable[[Path], Any]) -> None:
    # nine discs of 20 mm to a shelf: 440 of forty people are laid down as twice 220
    path = HERE / "honest" / "dried-between.yaml"
    library = case(path)
    library.change("dried-between/project.yaml", "thickness: 4 cards}", "thickness: 4 cards, count: 11}")
    library.change("dried-between/project.yaml", "class: {}", "class: {people: 40}")
    plan = planned(library, path)
    assert plan.loads == {}
    fired = [row for row in plan.between if row.who == "teacher"]
    assert {row.loads for row in fired} == {2 * math.ceil(20 * 11 / 9)}


def test_homework_is_what_finds_no_room_and_is_done_on_a_later_day(case: Callable[[Path], Any]) -> None:
    path = HERE / "honest" / "goes-home.yaml"
    [home] = planned(case(path), path).homework
    assert home.active is not None
    assert (home.who, home.step, home.after, home.day, home.active.high) == ("pupil", 2, 2, 1, 90)


def test_the_teacher_s_sheet_names_the_homework_before_anything_else_and_only_where_there_is_some(
    case: Callable[[Path], Any],
) -> None:
    assert case(HERE / "honest" / "goes-home.yaml").teacher("goes-home").plan_says[0].split(". ")[:2] == [
        "For 12 people, in 2 evenings",
        "Homework: step 3",
    ]
    says = case(HERE / "honest" / "dried-between.yaml").teacher("dried-between").plan_says
    assert not any("Homework" in line for line in says)


def test_no_torch_and_no_tool_of_the_studio_goes_home(case: Callable[[Path], Any]) -> None:
    path = HERE / "wrong" / "one-evening-short.yaml"
    assert planned(case(path), path).homework == ()
    library = case(HERE / "honest" / "goes-home.yaml")
    text = library.path("goes-home/project.yaml").read_text().replace("uses: [pliers]", "uses: [mill]")
    library.write("goes-home/project.yaml", text.replace("copper, pliers", "copper, mill").replace("60-90", "10-15"))
    assert planned(library, HERE / "honest" / "goes-home.yaml").homework == ()


def test_a_kiln_that_is_counted_is_opened_once_and_not_twelve_times(case: Callable[[Path], Any]) -> None:
    path = HERE / "honest" / "dried-between.yaml"
    library = case(path)
    library.change("stock/stock.yaml", "    kind: kiln\n", "    kind: kiln\n    owned: 1\n")
    library.change("dried-between/project.yaml", "uses: [brush]", "uses: [brush, kiln]")
    [brush] = [slot for slot in planned(library, path).evenings[1].slots if slot.step == 4]
    assert (brush.rounds, brush.minutes.high) == (1, 30)


def test_a_design_holds_its_classes_in_its_own_way_where_it_says_so(case: Callable[[Path], Any]) -> None:
    path = HERE / "honest" / "loads-in-a-week.yaml"
    held = planned(case(path), path).held
    assert (held.people, held.days_between, held.set_up, len(held.evenings)) == (4, 7, 10, 2)


def test_without_a_class_there_is_no_plan_of_one(case: Callable[[Path], Any]) -> None:
    path = HERE / "honest" / "torch-of-their-own.yaml"
    library = case(path)
    library.change("studio.yaml", "  people: 12\n", "")
    assert library.main(path.stem).plan.class_plan is None


def test_a_long_design_for_many_evenings_is_planned_without_a_wait() -> None:
    # forty steps and ten evenings: the search looks at what is done by then, never at the way there
    tasks = [
        Task(Interval(30, 30, 30), Interval(0, 0, 0) if i % 4 else Interval(800, 800, 800), (i - 1,) if i % 5 else ())
        for i in range(40)
    ]
    way = Evenings(tasks, Held(12, ((1080, 1200),) * 10, 7)).best()
    assert way.left == 0


def test_the_demonstration_fits_its_evenings(demo: Any) -> None:
    assert [str(t) for t in demo.check().troubles if "does not get through" in t.message] == []


def test_between_two_evenings_the_teacher_fills_the_cracks_when_the_teacher_is_there_and_nobody_else(demo: Any) -> None:
    for name in ("buoy-drops", "shingle-keeper"):
        version = demo.main(name)
        plan = version.plan.class_plan
        mends = [row for row in plan.between if "fill" in version.steps[row.step].does]
        assert {row.who for row in mends} == {"teacher"}, name
        rows = [row for row in plan.between if not row.who]
        assert all("dry" in version.steps[r.step].does or "cure" in version.steps[r.step].does for r in rows), name
