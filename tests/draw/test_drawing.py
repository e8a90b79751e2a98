"""Drawings: true size onto any pen, and laid out on pages."""

from __future__ import annotations

import re
from typing import Any
from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.pen import Extent, Moved, Recorder, arc
from sheetgen.draw.bars import INCHES, MM, SIDE, Bars, bars_beside, draw_bars
from sheetgen.draw.paper import Paper, mm
from sheetgen.draw.templates import draw

SVG = "{http://www.w3.org/2000/svg}"
PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
far = st.floats(-500, 500)


def parsed(svg: str) -> ET.Element:
    return ET.fromstring(svg)  # noqa: S314 - our own drawings


@given(far, far, st.floats(0.1, 300), st.floats(0.1, 300))
def test_a_box_takes_the_paper_it_says(x: float, y: float, width: float, height: float) -> None:
    extent = Extent()
    extent.box((x, y), width, height)
    assert (extent.left, extent.top) == (x, y)
    assert (extent.width, extent.height) == pytest.approx((width, height))


@given(far, far, st.floats(0.1, 300))
def test_a_moved_drawing_is_the_same_drawing_elsewhere(x: float, y: float, size: float) -> None:
    still, moved = Recorder(), Recorder()
    for pen in (still, Moved(moved, (x, y))):
        pen.circle((3, 4), size)
        pen.cross((1, 2))
        pen.across(-4, 0, size, "words", to=0)
    assert [o[2:] for o in moved.ovals] == [o[2:] for o in still.ovals]
    for (_, there, _), (_, here, _) in zip(moved.lines, still.lines, strict=True):
        assert [(a - x, b - y) for a, b in there] == pytest.approx([pytest.approx(p) for p in here])


def test_a_dimension_reaches_from_end_to_end_and_says_its_words() -> None:
    pen = Recorder()
    pen.across(-4, 10, 45, "35.0", to=0)
    ends = {round(x, 6) for kind, points, _ in pen.lines if kind == "thin" for x, _ in points}
    assert ends == {10, 45}
    assert [words for _, words in pen.texts] == ["35.0"]


@pytest.mark.parametrize(
    ("words", "wide", "between"), [("Ø 9.5", 9.5, True), ("5.6", 5.6, True), ("Ø 39", 6, False), ("2", 3.5, False)]
)
def test_a_number_that_fits_between_its_arrows_stands_there(words: str, wide: float, *, between: bool) -> None:
    # in the face at 3 mm: a figure 1.5 mm, a point 0.75 mm, Ø 2 mm; two arrow heads are 4 mm
    for draw_it, along in ((Recorder.across, 0), (Recorder.upright, 1)):
        pen = Recorder()
        draw_it(pen, -4, 0, wide, words, to=0)
        [(at, _)] = pen.texts
        assert (0 < at[along] < wide) == between


def test_an_arc_ends_where_it_should() -> None:
    points = arc((0, 0), 10, -90, 270, 8)
    assert points[0] == pytest.approx((0, -10))
    assert points[2] == pytest.approx((10, 0))
    assert points[-1] == pytest.approx(points[0])


@pytest.mark.parametrize(("x", "written"), [(1.0, "1"), (0.5, "0.5"), (1 / 3, "0.333"), (-0.0001, "0"), (100.0, "100")])
def test_a_coordinate_has_a_thousandth_of_a_millimetre(x: float, written: str) -> None:
    assert mm(x) == written


def test_a_drawing_is_as_many_millimetres_as_it_says() -> None:
    pen = Paper()
    pen.box((10, 20), 30, 40)
    drawing = pen.drawing((9, 19), 32, 42, "A box & its <words>")
    svg = parsed(drawing.svg)
    assert (svg.get("width"), svg.get("height")) == ("32mm", "42mm")
    assert svg.get("viewBox") == "9 19 32 42"
    assert next(iter(svg)).tag == f"{SVG}title"
    assert next(iter(svg)).text == "A box & its <words>"


def test_words_in_a_drawing_cannot_become_code() -> None:
    pen = Paper()
    pen.text((0, 0), "</text><script>alert(1)</script>")
    svg = parsed(pen.drawing((0, 0), 10, 10, "x").svg)
    assert not svg.findall(f".//{SVG}script")


@pytest.mark.parametrize(
    ("inches", "tall", "along", "upright"),
    [(False, 120, 100, 100), (False, 99, 100, 50), (True, 120, 101.6, 101.6), (True, 100, 101.6, 50.8)],
)
def test_the_bars_measure_what_stands_beside_them(inches: bool, tall: float, along: float, upright: float) -> None:  # noqa: FBT001
    pen, bars = Recorder(), bars_beside(tall, 180, inches=inches)
    draw_bars(pen, bars, bars.foot(tall))
    runs = [points for kind, points, _ in pen.lines if kind == "cut"]
    assert [abs(a[1] - b[1]) for a, b in runs if a[0] == b[0]] == [pytest.approx(upright)]
    assert [abs(a[0] - b[0]) for a, b in runs if a[1] == b[1]] == [pytest.approx(along)]
    told = {
        f"{along / 25.4:.0f} in" if inches else f"{along} mm",
        f"{upright / 25.4:.0f} in" if inches else f"{upright} mm",
    }
    assert {words for _, words in pen.texts} == told


def test_a_paper_too_narrow_for_the_long_bar_has_a_short_one() -> None:
    assert bars_beside(120, 100 + SIDE, inches=False).along == MM[0]
    assert bars_beside(120, 100, inches=False).along == MM[1]
    assert Bars(*INCHES).says == "Bars of 4 in along and 2 in upright"


@pytest.fixture(scope="module")
def worked(flats: Any) -> Any:
    return flats.worked("flats")


def test_every_flat_part_has_a_template_alone_and_on_a_page(worked: Any) -> None:
    drawings = draw(worked, worked.main, ["A4", "Letter"])
    assert set(drawings.templates) == set(worked.main.parts)
    for paper in PAPERS:
        placed = [name for page in drawings.pages[paper] for name in page.parts]
        assert sorted(placed) == sorted(worked.main.parts)


@pytest.mark.parametrize("paper", PAPERS)
def test_a_page_of_templates_fits_its_paper(paper: str, worked: Any) -> None:
    wide, tall = PAPERS[paper]
    for page in draw(worked, worked.main, [paper]).pages[paper]:
        # one content box on both papers, less what the heading takes
        assert page.drawing.width == 180 <= wide - 30
        assert page.drawing.height <= 247 - 24 <= tall - 32 - 24
        assert 0 < page.share <= 1


def test_a_template_says_in_words_what_it_is(worked: Any) -> None:
    said = draw(worked, worked.main, ["A4"]).templates["disc"].says
    assert "22\u00a0mm" in said
    assert "9 % shrinkage" in said


def test_what_the_template_says_is_what_it_measures(worked: Any) -> None:
    """The number beside a shape and the shape itself, for the disc of 20 mm: cut at 22.0."""
    svg = parsed(draw(worked, worked.main, ["A4"]).templates["disc"].svg)
    assert [c.get("r") for c in svg.iter(f"{SVG}circle") if c.get("stroke-width") == "0.5"] == ["11", "1.65"]
    assert "Ø 22" in [t.text for t in svg.iter(f"{SVG}text")]


def test_on_a_screen_a_template_is_as_wide_as_its_shape_and_its_label_stands_over_it(worked: Any) -> None:
    """Beside the shape it would be cut off on a phone."""
    drawn = draw(worked, worked.main, ["A4"])
    title, label = drawn.labels["disc"]
    assert title.startswith("Disc, cut ")
    assert label
    assert not {title, label} & {t.text for t in parsed(drawn.templates["disc"].svg).iter(f"{SVG}text")}
    assert drawn.templates["disc"].width < 22 + 20  # the disc, and the room of its dimensions
    (page,) = drawn.pages["A4"]
    assert {title, label} <= {t.text for t in parsed(page.drawing.svg).iter(f"{SVG}text")}


@pytest.mark.parametrize("wide", [2.5, 3.3, 5, 7.7, 40])
def test_a_fold_is_seen_at_both_edges_however_narrow_the_strip(wide: float) -> None:
    pen = Paper()
    pen.line([(4, 0), (4, wide)], "fold")
    (line,) = parsed(pen.drawing((0, 0), 8, wide, "A strip").svg).iter(f"{SVG}line")
    dash, gap = map(float, str(line.get("stroke-dasharray")).split())
    dashes = (wide + gap) / (dash + gap)
    assert dashes == pytest.approx(round(dashes), abs=0.01)
    assert round(dashes) >= 2  # one at each edge
    assert gap >= 0.5  # mm: what a copy keeps


def test_many_templates_take_several_pages_and_none_is_lost(libraries: Any, tmp_path: Any) -> None:
    parts = "".join(
        f"  plate {i}:\n    kind: cut shape\n    clay: clay\n    shape: rectangle\n"
        f"    across: {60 + i} mm\n    down: {50 + i} mm\n    thickness: 4 cards\n"
        for i in range(13)
    )  # fmt: skip
    library = libraries.make(tmp_path)
    library.change("pendant/project.yaml", "parts:\n  plate:\n", "parts:\n" + parts + "  plate:\n")
    worked = library.worked("pendant")
    for paper in PAPERS:
        pages = draw(worked, worked.main, [paper]).pages[paper]
        assert len(pages) > 1
        assert sorted(name for page in pages for name in page.parts) == sorted(worked.main.parts)
        for page in pages:
            boxes = [
                [float(n) for n in re.findall(r"[\d.]+", p.get("points") or "")]
                for p in parsed(page.drawing.svg).iter(f"{SVG}polygon")
                if p.get("stroke-width") == "0.5"
            ]
            corners = [(min(b[::2]), min(b[1::2]), max(b[::2]), max(b[1::2])) for b in boxes]
            for i, a in enumerate(corners):
                assert a[2] <= page.drawing.width
                assert a[3] <= page.drawing.height
                for b in corners[i + 1 :]:
                    assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]


def test_a_template_larger_than_a_page_takes_several_and_is_no_trouble(library: Any) -> None:
    library.change("pendant/project.yaml", "  width: 20 mm", "  width: 300 mm")
    worked = library.worked("pendant")
    for paper, (wide, tall) in PAPERS.items():
        pages = draw(worked, worked.main, [paper]).pages[paper]
        assert len(pages) >= 4  # 329.5 mm both ways
        assert {name for page in pages for name in page.parts} == {"plate"}
        for page in pages:
            assert page.drawing.width <= wide - 30
            assert page.drawing.height <= tall - 32 - 24
