"""Forming diagrams: what is drawn is to the scale that is said, fits where it stands, and reads."""

from __future__ import annotations

import math
import re
from itertools import combinations, pairwise
from typing import Any

import pytest
from shapely import LineString, Point, box
from shapely.affinity import scale

from sheetgen.base.pen import Extent, Recorder
from sheetgen.draw import forming, kinds, sketches
from sheetgen.draw.diagrams import SCALES, TALL, WIDE, diagrams, fits
from sheetgen.draw.kinds.bent_wire import turned

PARTS = (
    "link", "eight", "wrapped", "pin", "bought", "hook", "bent", "zigzag", "folded", "held", "chain", "hooked",
    "ring", "ellipse", "stones", "row", "bail", "pressed", "box", "tray", "tube", "band", "dome",
)  # fmt: skip


def length_of(run: list[tuple[float, float]]) -> float:
    return sum(math.dist(a, b) for a, b in pairwise(run))


@pytest.mark.parametrize("name", ["link", "eight"])
def test_two_pegs_stand_their_centres_apart(drawn: Any, name: str) -> None:
    it = drawn(name)
    pegs = [o for o in it.pen.ovals if o[0] == "thin"]
    assert [o[2] / it.k for o in pegs] == pytest.approx([it.usual("peg_used"), it.usual("second_used")])
    assert math.dist(pegs[0][1], pegs[1][1]) / it.k == pytest.approx(it.usual("centres"))
    assert f"{it.size('centres').words} apart" in it.words


def test_a_figure_eight_s_wire_is_as_long_as_its_figure_says_and_goes_under_itself_once(drawn: Any) -> None:
    it = drawn("eight")
    d = it.part.fields["wire"].thickness
    radii = [(it.usual(peg) + d) / 2 for peg in ("peg_used", "second_used")]
    path = sketches.belt(radii[0], radii[1], it.usual("centres"), crossed=True)
    assert length_of([*path, path[0]]) == pytest.approx(it.usual("one"), rel=0.005)
    # what is not drawn is where it lies under: no more than a few wires' width
    assert 0 < it.usual("one") - it.band(d) < 6 * d


@pytest.mark.parametrize("name", ["link", "ring", "ellipse"])
def test_a_closed_wire_is_as_long_as_its_figure_says(drawn: Any, name: str) -> None:
    it = drawn(name)
    assert it.middle() == pytest.approx(it.usual("one"), rel=0.005)


@pytest.mark.parametrize("name", ["hook", "bent", "zigzag"])
def test_an_open_wire_is_as_long_as_its_figure_says(drawn: Any, name: str) -> None:
    it = drawn(name)
    assert it.band(1) == pytest.approx(it.usual("one"), rel=0.005)


@pytest.mark.parametrize(
    ("degrees", "said"),
    [
        (90, "1/4 turn"), (66, "under 1/4 turn"), (120, "over 1/4 turn"), (180, "1/2 turn"), (262, "3/4 turn"),
        (327, "almost 1 turn"), (360, "1 turn"), (540, "1.5 turns"),
    ],
)  # fmt: skip
def test_how_far_a_wire_is_bent_is_told_as_an_eye_tells_it(degrees: float, said: str) -> None:
    assert turned(degrees) == said


def test_a_bent_wire_is_told_by_rods_and_turns_and_marks_to_the_millimetre(drawn: Any) -> None:
    # a straight of 12, half a turn round 5 mm: π × (5 + 1) ÷ 2 = 9.4, a straight of 20, a quarter round 3: π ÷ 4 × 4
    assert drawn("bent").words[-6:] == [
        "mm along the wire from the circle:", "1: straight, to 12", "2: round 5, 1/2 turn, to 21",
        "3: straight, to 41", "4: round 3, 1/4 turn, to 45", "cut 47",
    ]  # fmt: skip


def test_a_bail_s_strip_is_as_long_as_its_tails_and_its_fold(drawn: Any) -> None:
    it = drawn("bail", 4)
    tails = it.size("wet_front") + it.size("wet_back")
    assert it.band(1) == pytest.approx(tails + it.usual("over_former"), rel=0.005)
    assert it.circles(it.usual("former_used"), "thin") == [(0, 0)]


def test_a_strip_pressed_together_leaves_its_bar_at_a_tangent() -> None:
    # the exact length on one line (Wikipedia, Belt problem), with nothing between the two sides
    r, c = 3.0, 8.0
    path = forming.over_bar(r, 5, 4, (c, 0))
    over = 2 * math.sqrt(c**2 - r**2) + r * (math.pi + 2 * math.asin(r / c))
    assert length_of(path) == pytest.approx(5 + 4 + over, rel=1e-3)
    assert all(math.hypot(x, y) >= r - 1e-9 for x, y in path)


def test_a_folded_strip_is_two_drops_and_half_a_turn(drawn: Any) -> None:
    it = drawn("folded", 1)  # the ribbon is 0.4 mm thick: at this scale one line
    strips = [points for kind, points, closed in it.pen.lines if kind == "cut" and not closed]
    assert [length_of(points) for points in strips] == [pytest.approx(it.usual("first_cut"), rel=0.005)]


@pytest.mark.parametrize("name", ["folded", "held"])
def test_a_fringe_hangs_from_its_first_drop_to_its_last(drawn: Any, name: str) -> None:
    it = drawn(name, 1)
    ends = [y for kind, points, closed in it.pen.lines if closed and kind != "solid" for _, y in points]
    assert max(ends) == pytest.approx(it.usual("last"))
    assert any(y == pytest.approx(it.usual("first")) for y in ends)


def test_a_ring_of_stones_has_its_seats_on_the_circle_and_none_overlap(drawn: Any) -> None:
    it = drawn("stones")
    seats = it.circles(it.size("drill"))
    assert len(seats) == it.usual("stones")
    assert all(math.hypot(*at) == pytest.approx(it.size("wet_around") / 2) for at in seats)
    assert min(math.dist(a, b) for a, b in combinations(seats, 2)) == pytest.approx(it.usual("wet_pitch"), abs=0.02)
    assert it.usual("wet_pitch") > it.usual("drill")
    assert it.size("wet_pitch").words in it.words


def marks(it: Any) -> dict[str, float]:
    """Where each arrow of a straight wire stands, by the words its line leads to; mm from the wire's left end."""
    lines = [points for kind, points, _ in it.pen.lines if kind == "thin"]
    feet = {(round(b[0], 6), round(b[1], 6)): a[0] for a, b in lines}
    return {w: feet[at] / it.k for (x, y), w in it.pen.texts for at in feet if math.dist(at, (x, y)) < 1}


def test_the_marks_of_a_head_pin_stand_at_the_lengths_the_figures_say(drawn: Any) -> None:
    it = drawn("pin")
    d, beyond, end = 0.6438, it.size("beyond"), it.usual("end")
    loop = math.pi * (2.5 + d)
    places = [beyond - end, beyond - it.usual("neck") - loop, beyond - it.usual("neck"), beyond, beyond + 8]
    assert sorted(marks(it).values()) == pytest.approx([*places, it.size("cut")], abs=0.01)
    assert f"neck to {beyond.words}" in it.words
    assert f"cut {it.size('cut').words}" in it.words


def test_a_wire_s_marks_say_where_they_stand(drawn: Any) -> None:
    for name in ("pin", "bought", "wrapped"):
        for words, at in marks(drawn(name)).items():
            assert float(words.rsplit(" ", 1)[1]) == pytest.approx(at, abs=0.5), words  # told to 1 mm


@pytest.mark.parametrize(("name", "beads"), [("pin", 1), ("wrapped", 2)])
def test_the_beads_lie_where_the_wire_is_left_straight(drawn: Any, name: str, beads: int) -> None:
    it = drawn(name)
    found = sorted(x for x, _ in it.circles(8))
    assert len(found) == beads
    assert found[0] - 4 >= it.size("beyond") - 1e-9
    assert found[-1] + 4 <= it.size("beyond") + it.usual("stack") + 1e-9


def test_what_repeats_in_a_chain_is_a_link_with_its_ring(drawn: Any) -> None:
    it = drawn("chain")
    assert "18 repeats" in it.words
    at, _ = next(t for t in it.pen.texts if t[1] == "18 repeats")
    dimensions = [points for kind, points, _ in it.pen.lines if kind == "thin" and points[0][1] == points[1][1]]
    level = min(dimensions, key=lambda points: abs(points[0][1] - at[1]))
    assert (level[1][0] - level[0][0]) / it.k == pytest.approx(18)


def test_a_chain_shows_its_end_rings_and_few_of_its_links(drawn: Any) -> None:
    it = drawn("chain")
    closed = [points for kind, points, closed in it.pen.lines if kind == "cut" and closed and len(points) > 4]
    # two edges each: three links, two rings between them, three at the ends
    assert len(closed) == 2 * (3 + 2 + 3)
    assert "clasp" in it.words


def test_a_box_stands_on_its_base(drawn: Any) -> None:
    it = drawn("box", 1)
    boxes = [(min(x for x, _ in p), max(x for x, _ in p)) for _, p, closed in it.pen.lines if closed and len(p) == 4]
    wide = it.size("wet_across")
    assert sum(hi - lo == pytest.approx(wide) for lo, hi in boxes) == 3  # from above, the lid, the base
    assert sum(hi - lo == pytest.approx(it.size("lip_across")) for lo, hi in boxes) == 1


@pytest.mark.parametrize("name", PARTS)
def test_a_diagram_fits_its_column_at_the_scale_it_says(all_drawn: Any, name: str) -> None:
    drawing = diagrams(all_drawn.main)[name]
    assert drawing.width <= WIDE + 1
    assert drawing.height <= TALL + 2
    assert "; drawn at scale " in drawing.says


class Words(Recorder):
    """A pen that remembers what room its words take: their letters, without what hangs below the line."""

    def __init__(self) -> None:
        super().__init__()
        self.room: list[tuple[str, Any]] = []

    def text(self, at: tuple[float, float], words: str, **how: Any) -> None:
        extent = Extent()
        extent.text(at, words, **how)
        self.room.append((words, box(extent.left + 0.35, extent.top + 0.3, extent.right - 0.35, extent.bottom - 0.6)))

    @property
    def marks(self) -> list[Any]:
        lines = [LineString([*run, run[0]] if closed else run) for _, run, closed in self.lines if len(set(run)) > 1]
        return [*lines, *(scale(Point(at).buffer(0.5), w, h).exterior for _, at, w, h in self.ovals)]


@pytest.mark.parametrize("name", PARTS)
@pytest.mark.parametrize("unit", ["all_drawn", "drawn_in_inches"])
def test_no_words_of_a_diagram_lie_on_a_line_or_on_each_other(
    unit: str, name: str, request: pytest.FixtureRequest
) -> None:
    part = request.getfixturevalue(unit).main.parts[name]
    for k in SCALES:
        extent, pen = Extent(), Words()
        kinds.diagram(extent, part, k)
        if fits(extent, k):
            kinds.diagram(pen, part, k)
            for words, room in pen.room:
                assert not any(room.intersects(mark) for mark in pen.marks), words
            for (one, a), (other, b) in combinations(pen.room, 2):
                assert not a.intersects(b), f"{one} and {other}"
            return
    pytest.fail("it fits at no scale")


@pytest.mark.parametrize("name", PARTS)
def test_the_words_for_those_who_do_not_see_it_are_in_the_studio_s_unit(
    name: str, all_drawn: Any, drawn_in_inches: Any
) -> None:
    in_mm, in_inches = (kinds.diagram(Recorder(), one.main.parts[name], 2) for one in (all_drawn, drawn_in_inches))
    assert in_mm
    assert not re.search(r"\d\sin\b", in_mm)
    assert not re.search(r"\bmm\b", in_inches)


def test_the_belt_of_an_open_link_touches_both_pegs() -> None:
    path = sketches.belt(3, 2, 12, crossed=False)
    assert min(math.hypot(x, y) for x, y in path) == pytest.approx(3, abs=0.01)
    assert min(math.dist((12, 0), p) for p in path) == pytest.approx(2, abs=0.01)
