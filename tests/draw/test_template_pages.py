"""Templates: what is cut, what it fires to, what a cutter gets; and shapely's opinion on each outline."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from itertools import combinations
from typing import TYPE_CHECKING, Any
from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon

from sheetgen.base.flat import Flat, Oval, box
from sheetgen.base.pen import Extent, Recorder, arc
from sheetgen.draw.cutter import Cutter
from sheetgen.draw.drawn import fitting
from sheetgen.draw.ghost import apart, ghost, room_for_words
from sheetgen.draw.pens import Strokes
from sheetgen.draw.piece import Template, templates
from sheetgen.draw.templates import draw

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

SVG = "{http://www.w3.org/2000/svg}"
S = 0.09
size = st.floats(3, 200)


@pytest.fixture(scope="module")
def worked(flats: Any) -> Any:
    return flats.worked("flats")


@pytest.fixture(scope="module")
def flat(worked: Any) -> dict[str, Template]:
    return {template.piece.name: template for template in templates(worked.main)}


def shape_of(cut: Flat) -> BaseGeometry:
    """An outline without its holes, as shapely has it."""
    if isinstance(cut.outline, Oval):
        turn, (x0, y0) = arc((0, 0), 0.5, 0, 360, 4000), cut.outline.centre
        return Polygon([(x0 + x * cut.outline.width, y0 + y * cut.outline.height) for x, y in turn])
    return Polygon(cut.outline.points)


@pytest.mark.parametrize("name", ["tube", "disc", "plate", "oval", "kite", "dome", "band", "row"])
def test_the_clay_of_a_part_is_what_shapely_finds_its_outline_to_hold(
    name: str, flat: dict[str, Template], worked: Any
) -> None:
    """Area drawn × thickness × 7 g/cm³; drawn in round sizes, so as near as the rounding lets it."""
    [cut] = flat[name].piece.flat
    drawn = shape_of(cut)
    assert cut.outline.area == pytest.approx(drawn.area, rel=1e-5)
    mass, thickness = worked.main.figures[f"{name}.clay_mass"].value.usual, cut.thickness
    assert thickness
    slack = 0.25 * drawn.length / 2 + 1  # each edge may lie half a step of 0.5 mm from the exact size
    if name in {"tube", "band"}:
        slack += 0.5 * min(cut.extent.width, cut.extent.height)  # the strip is rounded up
    assert mass == pytest.approx(drawn.area * thickness * 7 / 1000, abs=slack * thickness * 7 / 1000)


def test_the_length_of_an_outline_is_what_shapely_finds(flat: dict[str, Template]) -> None:
    [kite] = flat["kite"].piece.flat
    edges = [(0, 8), (10, 0), (20, 8), (10, 31)]  # as written in the file
    by_hand = sum(math.dist(a, b) for a, b in zip(edges, [*edges[1:], edges[0]], strict=True)) * 22.0 / 20
    assert shape_of(kite).length == pytest.approx(by_hand, abs=0.01)


@given(size, size, st.floats(0.01, 0.3))
def test_the_ghost_of_a_box_is_smaller_by_the_shrinkage_and_a_narrow_one_shares_its_corner(
    wide: float, tall: float, shrinkage: float
) -> None:
    e = ghost(Flat(box(wide, tall)), shrinkage).extent
    off = (0, 0) if min(wide, tall) * shrinkage < 1.2 else (wide * shrinkage / 2, tall * shrinkage / 2)
    assert (e.left, e.top) == pytest.approx(off)
    assert (e.width, e.height) == pytest.approx((wide * (1 - shrinkage), tall * (1 - shrinkage)))


@given(size, size, st.floats(0.01, 0.3))
def test_the_ghost_of_a_round_piece_shares_its_middle(wide: float, tall: float, shrinkage: float) -> None:
    fired = ghost(Flat(Oval((7, 9), wide, tall)), shrinkage)
    assert fired.line == "fired"
    assert isinstance(fired.outline, Oval)
    assert fired.outline.centre == pytest.approx((7, 9))
    across, down = fired.outline.width, fired.outline.height
    assert (across, down) == pytest.approx((wide * (1 - shrinkage), tall * (1 - shrinkage)))


def test_what_is_cut_away_where_a_strip_meets_is_not_in_its_ghost() -> None:
    assert ghost(Flat(box(40, 10), meets=36), 0.1).extent.width == pytest.approx(36 * 0.9)


def test_a_hole_has_a_ghost_in_the_middle_alone_where_it_can_be_told_from_it() -> None:
    # 12 mm in the middle fires 0.6 mm smaller on each side, 4 mm only 0.2
    for hole, shown in (
        (Oval((20, 20), 12, 12), True), (Oval((25, 20), 12, 12), False), (Oval((20, 20), 4, 4), False)
    ):  # fmt: skip
        assert len(ghost(Flat(Oval((20, 20), 30, 30), (hole,)), 0.1).holes) == shown


@pytest.mark.parametrize("wide", [5.5, 6.5])
def test_a_strip_so_narrow_that_a_copier_merges_its_lines_has_no_dots(wide: float) -> None:
    # at 9 %: 0.50 and 0.59 mm between the middles of a line of 0.5 and dots of 0.42 mm
    cut = Flat(box(24, wide))
    assert apart(cut, ghost(cut, 0.09)) == (wide == 6.5)


@pytest.mark.parametrize("name", ["tube", "disc", "plate", "oval", "kite", "dome", "band", "row"])
def test_every_flat_kind_of_clay_is_drawn_with_what_it_fires_to(name: str, flat: dict[str, Template]) -> None:
    pen, fired = Recorder(), Extent()
    flat[name].bare(pen)
    Recorder([m for m in pen.lines if m[0] == "fired"], [m for m in pen.ovals if m[0] == "fired"]).replay(fired)
    [cut] = flat[name].piece.flat
    shown = name not in {"band", "row"}  # 5.5 mm wide: a copier would run its line and its dots into one
    assert fired.height / cut.extent.height == pytest.approx(1 - S if shown else 0)
    assert ("dotted: fires to about" if shown else "fires to about") in flat[name].says


def test_fires_to_is_said_inside_and_over_no_line(flat: dict[str, Template]) -> None:
    for template in flat.values():
        pen = Strokes()
        template.own(pen)
        for cut in template.piece.flat:
            fired = ghost(cut, S)
            at = room_for_words(fired, pen.runs())
            if at is None:
                continue
            words = Polygon([(at[0], at[1]), (at[0] + 12.9, at[1]), (at[0] + 12.9, at[1] - 2.2), (at[0], at[1] - 2.2)])
            assert shape_of(fired).buffer(1e-6).contains(words)
            for run in pen.runs():
                assert LineString(run).disjoint(words)


def test_a_small_piece_has_no_room_for_words() -> None:
    cut = Flat(Oval((0, 0), 4, 4))
    assert room_for_words(ghost(cut, 0.1), cut.runs) is None


def test_words_in_a_ring_of_holes_would_be_read_of_the_ring() -> None:
    ring = [
        Oval((20 + 12 * math.cos(a), 20 + 12 * math.sin(a)), 2.5, 2.5) for a in (math.pi * i / 6 for i in range(12))
    ]
    whole, pierced = Flat(Oval((20, 20), 39, 39)), Flat(Oval((20, 20), 39, 39), tuple(ring))
    assert room_for_words(ghost(whole, 0.09), whole.runs) is not None
    assert room_for_words(ghost(pierced, 0.09), pierced.runs) is None


def test_a_part_of_several_pieces_says_how_many_they_are_in_all(demo: Any) -> None:
    versions = demo.check("shingle-keeper").worked[0].versions
    titles = [one.title for one in templates(versions["main"])]
    # a base and a lid, the lid's lip, and four walls
    assert "Box, cut 7 pieces" in titles


def test_a_label_is_two_lines_of_name_and_count_cards_clay_and_shrinkage(library: Any) -> None:
    worked = library.worked("drops")
    long = worked.versions["Long"]
    body = next(one for one in templates(long) if one.piece.name == "body")
    pen = Recorder()
    body.draw(pen)
    label = [words.replace("\u00a0", " ") for _, words in pen.texts][-2:]
    assert label == ["Body, cut 2", "3 cards; test silver, shrinks 9 %"]
    # who does not see it is told more
    for words in ("Template of Body, cut 2", "0.75 mm, 3 cards", "Test silver, drawn for 9 % shrinkage", "dotted"):
        assert words in body.says.replace("\u00a0", " ")


@pytest.mark.parametrize("of", ["flats", "demo"])
def test_no_line_of_a_label_is_longer_than_forty_letters(of: str, worked: Any, demo: Any) -> None:
    several = [worked] if of == "flats" else demo.check().worked
    labels = [t for one in several for v in one.versions.values() for t in templates(v)]
    assert labels
    for template in labels:
        assert 0 < len(template.title) <= 40
        assert 0 < len(template.label) <= 40, template.label


def test_a_label_that_is_too_long_loses_what_stands_behind_its_commas() -> None:
    assert fitting("Sterling-silver sheet, 0.6 mm thick, soft") == "Sterling-silver sheet, 0.6 mm thick"
    assert fitting("roll to 4 cards; Fine-silver clay, low fire, at 9 %", "4 cards; Fine-silver clay, at 9 %") == (
        "4 cards; Fine-silver clay, at 9 %"
    )


def test_the_seats_and_their_drill_are_named(flat: dict[str, Template]) -> None:
    assert "7 seats, drill Ø 2.4 mm" in flat["row"].says.replace("\u00a0", " ")


class Words(Recorder):
    """A pen that remembers the room that its words take: their letters, without what hangs below the line."""

    def __init__(self) -> None:
        super().__init__()
        self.room: list[tuple[str, Any]] = []

    def text(self, at: tuple[float, float], words: str, **how: Any) -> None:
        extent = Extent()
        extent.text(at, words, **how)
        around = (extent.left + 0.35, extent.top + 0.3, extent.right - 0.35, extent.bottom - 0.6)
        self.room.append((words, Polygon.from_bounds(*around)))


def test_no_words_of_a_template_lie_on_each_other_or_on_a_line(worked: Any, demo: Any) -> None:
    for one in (worked, *demo.check().worked):
        for template in (t for v in one.versions.values() for t in templates(v)):
            pen = Words()
            template.draw(pen)
            lines = [LineString([*run, run[0]] if shut else run) for _, run, shut in pen.lines if len(set(run)) > 1]
            rings = [shape_of(Flat(Oval(at, wide, tall))).exterior for _, at, wide, tall in pen.ovals]
            for words, room in pen.room:
                assert not any(room.intersects(mark) for mark in (*lines, *rings)), (template.title, words)
            for (one_said, a), (other, b) in combinations(pen.room, 2):
                assert not a.intersects(b), (template.title, one_said, other)


# A file for a cutter


@pytest.mark.parametrize("name", ["tube", "disc", "plate", "oval", "kite", "dome", "band", "row"])
def test_a_file_for_a_cutter_is_in_millimetres_and_has_only_what_a_machine_follows(name: str, flats: Any) -> None:
    svg = ET.fromstring((flats.build / "flats" / "templates" / f"{name}.svg").read_text("utf-8"))  # noqa: S314 - ours
    box = [float(n) for n in (svg.get("viewBox") or "").split()]
    assert (svg.get("width"), svg.get("height")) == (f"{box[2]:g}mm", f"{box[3]:g}mm")
    assert next(iter(svg)).tag == f"{SVG}title"
    groups = {g.get("id") for g in svg.iter(f"{SVG}g")}
    assert "cut" in groups
    assert groups <= {"cut", "fold", "marks"}
    assert not list(svg.iter(f"{SVG}text"))
    assert {e.tag.removeprefix(SVG) for g in svg.iter(f"{SVG}g") for e in g} <= {"path", "circle", "ellipse"}


def test_a_cutter_gets_the_holes_and_the_fold_lines_each_in_their_group(flats: Any) -> None:
    folder = flats.build / "flats" / "templates"
    disc = ET.fromstring((folder / "disc.svg").read_text("utf-8"))  # noqa: S314 - ours
    [cut] = [g for g in disc.iter(f"{SVG}g") if g.get("id") == "cut"]
    assert [c.get("r") for c in cut] == ["11", "1.65"]
    tube = ET.fromstring((folder / "tube.svg").read_text("utf-8"))  # noqa: S314 - ours
    [fold] = [g for g in tube.iter(f"{SVG}g") if g.get("id") == "fold"]
    [line] = fold
    x = {float(n) for n in re.findall(r"([\d.]+) [\d.]+", line.get("d") or "")}
    assert x == {round(math.pi * (9 + 0.2 + 0.75), 1)}  # former 9, one sheet of 0.1 each side, clay of 0.75


def test_the_page_on_the_screen_links_every_file_for_a_cutter(flats: Any) -> None:
    html = (flats.build / "flats" / "index.html").read_text("utf-8")
    files = sorted((flats.build / "flats" / "templates").glob("*.svg"))
    assert len(files) == 8
    for file in files:
        assert f'href="templates/{file.name}"' in html


def test_dimensions_and_words_do_not_reach_a_cutter() -> None:
    pen = Cutter()
    pen.across(-4, 0, 30, "30", to=0)
    pen.upright(-4, 0, 30, "30", to=0)
    pen.arrow((0, 0), (1, 0))
    pen.text((0, 0), "words")
    assert not any(pen.groups.values())


# Bars and sharing of pages


def test_a_page_is_no_taller_than_its_templates_or_its_bar_need(worked: Any) -> None:
    [page] = draw(worked, worked.main, ["A4"]).pages["A4"]
    assert page.bars == ("100 mm", "100 mm")
    # all but one small part: one bar of 100 mm along, and of 50 mm upright, with 8.5 mm for the one along
    few = replace(worked.main, parts={"disc": worked.main.parts["disc"]})
    [short] = draw(worked, few, ["A4"]).pages["A4"]
    assert short.bars == ("100 mm", "50 mm")
    assert short.drawing.height == pytest.approx(50 + 8.5 + 0.5)
    assert short.drawing.says.endswith("Bars of 100 mm along and 50 mm upright")


def test_both_papers_have_one_layout(worked: Any) -> None:
    drawn = draw(worked, worked.main, ["A4", "Letter"]).pages
    assert [p.drawing for p in drawn["A4"]] == [p.drawing for p in drawn["Letter"]]
    assert {p.paper for p in drawn["Letter"]} == {"Letter"}


def test_how_full_a_page_is_is_counted(worked: Any) -> None:
    for paper in ("A4", "Letter"):
        for page in draw(worked, worked.main, [paper]).pages[paper]:
            assert 0.05 < page.share <= 1
