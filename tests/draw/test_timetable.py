"""The timetable of a class: what stands where, in mm, and how large its words are."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING, Any
from xml.etree import ElementTree as ET

import pytest

from sheetgen.base.interval import Interval
from sheetgen.draw.timetable import timetable
from sheetgen.model.plan import ClassPlan, Evening, Held, Slot

if TYPE_CHECKING:
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import WorkedVersion

CHART, END = 76.0, 174.0  # mm: where the bars begin, and where the longest evening ends
SVG = "{http://www.w3.org/2000/svg}"
SLOTS = (
    Slot(18 * 60, Interval(10, 10, 10), words="Welcome"),
    Slot(18 * 60 + 10, Interval(45, 30, 60), step=0, rounds=4),
    Slot(19 * 60 + 10, Interval(15, 10, 20), step=1, waits=True, by=""),
    Slot(19 * 60 + 30, Interval(15, 15, 15), step=2, by="teacher"),
    Slot(19 * 60 + 45, Interval(10, 10, 10), words="Clear up"),
)


@pytest.fixture
def version(library: Any) -> Any:
    """The pendant, two hours long from 18:00."""
    return planned(library.main("pendant"), SLOTS)


def planned(version: WorkedVersion, slots: tuple[Slot, ...], *, end: int = 20 * 60, left: tuple[int, ...] = ()) -> Any:
    held = Held(12, ((18 * 60, end),), 7)
    evening = Evening(1, 0, 18 * 60, end, slots, slots[-1].end)
    return replace(version, plan=replace(version.plan, class_plan=ClassPlan(held, (evening,), left=left)))


def drawn(version: WorkedVersion) -> Drawing:
    [evening] = timetable(version)
    return evening


def boxes(drawing: Drawing) -> list[tuple[str, float, float]]:
    """What each bar is, and from where to where along the page."""
    looks = []
    for one in ET.fromstring(drawing.svg).iter(f"{SVG}polygon"):  # noqa: S314 - our own
        across = [float(point.split(",")[0]) for point in one.attrib["points"].split()]
        dashed, black = "stroke-dasharray" in one.attrib, one.attrib["fill"] == "#000"
        looks.append(("black" if black else "dashed" if dashed else "open", min(across), max(across)))
    return looks


def x(minutes: float) -> float:
    return CHART + minutes / 120 * (END - CHART)


def texts(drawing: Drawing) -> list[str]:
    return [one.text or "" for one in ET.fromstring(drawing.svg).iter(f"{SVG}text")]  # noqa: S314 - our own


def test_the_least_is_black_the_most_adds_an_open_bar_and_a_wait_is_dashed(version: WorkedVersion) -> None:
    found = sorted(boxes(drawn(version)), key=lambda one: one[1])
    minutes = [(look, round((left - x(0)) * 120 / (END - CHART)), right) for look, left, right in found]
    assert [(look, begin) for look, begin, _ in minutes] == [
        ("black", 0), ("black", 10), ("open", 40), ("dashed", 70), ("black", 90), ("black", 105),
    ]  # fmt: skip
    assert [right for _, _, right in found] == pytest.approx([x(m) for m in (10, 40, 70, 90, 105, 115)], abs=1e-3)


def test_each_row_says_when_it_begins_and_what_it_is(version: WorkedVersion) -> None:
    said = texts(drawn(version))
    for words in (
        "18:10",
        "1 Cut, in 4 rounds",
        "19:10",
        "Dry",
        "19:30",
        "2 Fire (you)",
        "19:45",
        "Clear up; end 19:55",
    ):
        assert words in said


def test_the_hours_are_told_above_where_they_stand(version: WorkedVersion) -> None:
    marks = {
        one.text: float(one.attrib["x"])
        for one in ET.fromstring(drawn(version).svg).iter(f"{SVG}text")  # noqa: S314 - our own
        if one.attrib["text-anchor"] == "middle"
    }
    assert marks == {f"{18 + n // 2}:{n % 2 * 30:02}": pytest.approx(x(30 * n), abs=1e-3) for n in range(5)}


def test_its_words_are_semibold_and_of_8_and_a_half_points_at_least(version: WorkedVersion) -> None:
    drawing = drawn(version)
    assert min(map(float, re.findall(r'font-size="([\d.]+)"', drawing.svg))) >= 8.5 * 25.4 / 72
    assert 'font-weight="600"' in drawing.svg
    assert drawing.width == 180


def test_the_hours_of_a_whole_day_are_still_apart(version: WorkedVersion) -> None:
    long = planned(version, SLOTS, end=24 * 60)
    said = [words for words in texts(drawn(long)) if re.fullmatch(r"\d\d:00", words)]
    assert "22:00" in said
    assert len(set(said)) <= 9


def test_a_long_title_is_broken_and_leaves_no_word_out(version: WorkedVersion) -> None:
    title = "Wrap the former in release sheet, then roll, texture and cut two strips of clay"
    steps = (replace(version.steps[0], short=title), *version.steps[1:])
    short, long = drawn(version), drawn(replace(version, steps=steps))
    assert "1 " + title + ", in 4 rounds" in " ".join(texts(long))
    assert long.height > short.height


def test_a_design_without_a_class_has_no_timetable(library: Any) -> None:
    assert timetable(library.main("pendant")) == ()


def test_every_timetable_of_the_demonstration_keeps_within_its_width(demo: Any) -> None:
    for name in ("buoy-drops", "sedge-bookmark"):
        for version in demo.worked(name).versions.values():
            bars = [bar for evening in timetable(version) for bar in boxes(evening)]
            assert bars
            assert all(CHART <= left <= right <= 180 for _, left, right in bars)
