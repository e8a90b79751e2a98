"""A template larger than a page: its tiles lie together to the whole, overlap by 10 mm, and say how they lie."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, box
from shapely.ops import unary_union

from sheetgen.base.pen import Extent, Recorder
from sheetgen.draw.pens import Clipped, Scaled, Turned
from sheetgen.draw.tiles import OVERLAP, tiling, turned

ROOM = (160.0, 180.0)
coordinate = st.integers(-50_000, 150_000).map(lambda n: n / 1000)
point = st.tuples(coordinate, coordinate)


def extent(width: float, height: float) -> Extent:
    return Extent(0, 0, width, height)


@given(st.floats(20, 900), st.floats(20, 900))
def test_tiles_cover_the_whole_overlap_by_ten_and_fit_the_room(width: float, height: float) -> None:
    cut = tiling(extent(width, height), ROOM)
    boxes = [box(*tile.corner, *tile.far) for tile in cut.tiles]
    assert unary_union(boxes).symmetric_difference(box(0, 0, width, height)).area == pytest.approx(0, abs=1e-3)
    assert cut.wide <= ROOM[0] + 1e-6
    assert cut.tall <= ROOM[1] + 1e-6
    for a, b in pairwise(cut.tiles):
        if b.number % cut.columns != 1 and cut.columns > 1:
            assert a.far[0] - b.corner[0] == pytest.approx(OVERLAP)


@given(st.floats(170, 900), st.floats(200, 900))
def test_every_join_mark_lies_on_two_tiles_at_least(width: float, height: float) -> None:
    cut = tiling(extent(width, height), ROOM)
    marks = list(cut.crosses())
    letters = [said for _, said in marks]
    assert len(set(letters)) == len(letters)
    for at, _ in marks:
        assert sum(all(t.corner[i] < at[i] < t.far[i] for i in (0, 1)) for t in cut.tiles) >= 2


@given(st.lists(point, min_size=2, max_size=8), st.booleans())
def test_a_line_cut_off_at_a_window_is_what_shapely_leaves_of_it(
    points: list[tuple[float, float]],
    closed: bool,  # noqa: FBT001
) -> None:
    pen = Recorder()
    Clipped(pen, (0, 0), (100, 80)).line(points, closed=closed)
    drawn = [LineString([*run, run[0]] if shut else run) for _, run, shut in pen.lines]
    whole = [*points, points[0]] if closed else points
    # run by run, for shapely joins what lies on itself
    left = sum(LineString(pair).intersection(box(0, 0, 100, 80)).length for pair in pairwise(whole))
    assert sum(line.length for line in drawn) == pytest.approx(left, abs=1e-4)
    for line in drawn:
        x1, y1, x2, y2 = line.bounds
        assert x1 >= -1e-6
        assert y1 >= -1e-6
        assert x2 <= 100 + 1e-6
        assert y2 <= 80 + 1e-6


def test_an_oval_across_a_seam_is_drawn_true() -> None:
    pen = Recorder()
    Clipped(pen, (0, 0), (100, 100)).oval((100, 50), 80, 80)
    [(_, points, _)] = pen.lines
    assert all(((x - 100) ** 2 + (y - 50) ** 2) ** 0.5 == pytest.approx(40, abs=0.001) for x, y in points)
    assert LineString(points).length == pytest.approx(40 * 3.14159265, abs=0.01)


def test_words_that_begin_in_a_window_are_moved_into_it_whole() -> None:
    pen, window = Recorder(), (50.0, 50.0)
    Clipped(pen, (0, 0), window).text((49, 49), "many words", size=3)
    [(at, said)] = pen.texts
    reach = Extent()
    reach.text(at, said, size=3)
    assert reach.right <= 50 + 1e-6
    assert reach.bottom <= 50 + 1e-6


def test_a_quarter_turn_turns_the_room_as_it_turns_the_drawing() -> None:
    upright, lying = Extent(), Extent()
    for pen in (upright, Turned(lying)):
        pen.box((3, 4), 30, 10)
        pen.oval((40, 5), 8, 2)
    told = turned(upright)
    assert (told.left, told.top, told.right, told.bottom) == pytest.approx(
        (lying.left, lying.top, lying.right, lying.bottom)
    )


def test_a_smaller_drawing_is_smaller_in_every_size() -> None:
    pen = Recorder()
    Scaled(pen, 0.5, (1, 2)).oval((10, 20), 8, 4)
    assert pen.ovals == [("cut", (6, 12), 4, 2)]


@pytest.fixture(scope="module")
def large(libraries: Any, tmp_path_factory: pytest.TempPathFactory) -> Any:
    """A plate of 300 by 220 mm, published."""
    library = libraries.make(tmp_path_factory.mktemp("large"))
    wide = "    shape: rectangle\n    across: 300 mm\n    down: 220 mm\n    hole: 40 mm\n"
    library.change("pendant/project.yaml", "    shape: disc\n    across: width\n", wide)
    library.change("pendant/project.yaml", "{{ plate.wet_disc }}", "{{ plate.wet_across }}")
    outcome = library.publish("pendant")
    assert not outcome.troubles.errors
    return library


def letters_at(page: Any, paper: Any) -> dict[str, tuple[float, float]]:
    """The middle of every join mark by the letter beside it, mm."""
    found = {}
    for circle in paper.thin_circles(page, 2.4):
        x, y = circle.middle
        beside = min(
            page.chars, key=lambda c: abs(c["x0"] * paper.MM - x - 1.3) + abs(c["bottom"] * paper.MM - y + 0.6)
        )
        found[beside["text"]] = (x, y)
    return found


@pytest.mark.parametrize("name", ["a4", "letter"])
def test_the_printed_tiles_joined_at_their_marks_measure_what_the_whole_should(
    large: Any, paper: Any, name: str
) -> None:
    with paper.Sheet(large.build / "pendant" / f"handout-{name}.pdf") as sheet:
        pages = sheet.template_pages()
        marks = [letters_at(page, paper) for page in pages]
        heavy = [[m for m in paper.marks(page) if abs(m.weight - paper.CUT) < 0.02 and not is_bar(m)] for page in pages]
    moved = {0: (0.0, 0.0)}  # where each page lies, once joined to one that lies
    while len(moved) < len(pages):
        others = [j for j in range(len(pages)) if j not in moved]
        i, j, said = next((i, j, said) for i in moved for j in others for said in marks[i].keys() & marks[j])
        (x, y), (a, b) = marks[i][said], marks[j][said]
        moved[j] = (moved[i][0] + x - a, moved[i][1] + y - b)
    for i, first in enumerate(marks):
        for j, second in enumerate(marks):
            for said in first.keys() & second:
                assert first[said][0] + moved[i][0] == pytest.approx(second[said][0] + moved[j][0], abs=0.05)
                assert first[said][1] + moved[i][1] == pytest.approx(second[said][1] + moved[j][1], abs=0.05)
    wide = [x + moved[i][0] for i in moved for m in heavy[i] for x in (m.left, m.right)]
    tall = [y + moved[i][1] for i in moved for m in heavy[i] for y in (m.top, m.bottom)]
    # 300 and 220 mm grow by 1 ÷ 0.91 to 329.67 and 241.76, drawn to a tenth
    assert sorted([max(wide) - min(wide), max(tall) - min(tall)]) == pytest.approx([241.8, 329.7], abs=0.05)


def is_bar(mark: Any) -> bool:
    return bool(min(mark.width, mark.height) < 0.01 and round(max(mark.width, mark.height), 2) == 100)


@pytest.mark.parametrize("name", ["a4", "letter"])
def test_every_tile_has_its_bars_says_which_it_is_and_keeps_to_its_page(large: Any, paper: Any, name: str) -> None:
    with paper.Sheet(large.build / "pendant" / f"handout-{name}.pdf") as sheet:
        pages = sheet.template_pages()
        assert len(pages) > 1
        for i, page in enumerate(pages):
            assert f"Plate, sheet {i + 1} of {len(pages)}" in page.extract_text()
            drawn = [m for m in paper.marks(page) if m.weight]
            assert min(m.left for m in drawn) >= 14.7
            assert max(m.right for m in drawn) <= float(page.width) * paper.MM - 14.7
            assert max(m.bottom for m in drawn) <= float(page.height) * paper.MM - 16.7
            assert [len(lines) for lines in paper.bars(page, 100)] == [1, 1]
