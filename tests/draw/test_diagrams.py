"""Forming diagrams and finished views: what is drawn is to the scale that is said, and fits where it stands."""

from __future__ import annotations

import math
from itertools import combinations, pairwise
from pathlib import Path
from typing import Any

import pytest

from sheetgen.base import forming, sketches
from sheetgen.base.pen import Extent, Recorder
from sheetgen.base.rounding import Rounder
from sheetgen.draw.diagrams import SCALES, TALL, WIDE, diagrams
from sheetgen.draw.finished import finished

PARTS = {
    "link": "kind: long link, wire: round-1, inside: 4 mm, second inside: 3 mm, length: 20 mm",
    "eight": "kind: figure-eight link, wire: round-1, loop: 4 mm, second loop: 5 mm, length: 18 mm",
    "wrapped": "kind: wrapped-loop link, wire: awg-22, bead: bead-8, beads: 2, caps: 3 mm",
    "pin": "kind: head-pin drop, wire: awg-22, bead: bead-8, head wire: 4 mm",
    "bought": "kind: head-pin drop, wire: awg-22, bead: bead-8, closed: turned, pin: pin-40",
    "hook": "kind: S-hook, wire: round-1, upper: 5 mm, lower: 4 mm, length: 25 mm",
    "bent": "kind: bent wire, wire: round-1, form: 'straight 12 mm, arc 5 mm 180, straight 20 mm, arc 3 mm 90 left'",
    "zigzag": "kind: bent wire, wire: round-1, form: 'arc 2 mm 90; straight 60 mm" + "; arc 3 mm 90" * 12 + "'",
    "folded": "kind: fringe, fibre: ribbon-3, strands: 8, first: 20 mm, last: 45 mm, bar: 3 mm",
    "held": "kind: fringe, fibre: cord-2, strands: 61, first: 30 mm, last: 60 mm, shape: point",
    "chain": "kind: chain run, length: 180 mm, link: 14 mm, ring: 4 mm, wire: 1 mm, ring wire: 0.8 mm, end rings: 3,"
    " clasp: clasp-16",
    "hooked": "kind: chain run, length: 60 mm, link: 16 mm, wire: 1.2 mm",
    "ring": "kind: jump ring, wire: round-1, rod: 5 mm",
    "ellipse": "kind: jump ring, wire: round-1, shape: ellipse, inside: 9 mm, inside width: 5 mm",
    "stones": "kind: stone ring, clay: silver, stone: glass-2, around: 12 mm, across: 18 mm",
    "row": "kind: stone row, clay: silver, stone: glass-2, along: 20 mm, width: 5 mm, gap: 0.8 mm",
    "bail": "kind: bail, clay: silver, inside: 6 mm, width: 4 mm, front tail: 8 mm, back tail: 6 mm, thickness: 1 mm",
    "pressed": "kind: bail, clay: silver, inside: 6 mm, width: 4 mm, front tail: 8 mm, back tail: 6 mm, thickness: 1 mm,"
    " meeting: 6 mm",
    "box": "kind: box, clay: silver, across: 30 mm, down: 20 mm, wall height: 8 mm, thickness: 1.5 mm, lid: with a lip",
    "tray": "kind: box, clay: silver, across: 60 mm, down: 60 mm, wall height: 20 mm, thickness: 2 mm, corners: mitred",
    "tube": "kind: tube, clay: silver, length: 20 mm, inside: 7 mm, thickness: 1 mm, release sheet: 0.1 mm",
    "band": "kind: ring band, clay: silver, size: US 7, width: 5 mm, thickness: 1.5 mm",
    "dome": "kind: dome, clay: silver, across: 25 mm, rise: 5 mm, thickness: 1 mm",
}
SEEN = {
    "disc": "kind: cut shape, clay: silver, across: 15 mm, hole: 3 mm, thickness: 1 mm",
    "drop": "kind: cut shape, clay: silver, shape: teardrop, across: 15 mm, down: 25 mm, thickness: 1 mm",
    "washer": "kind: washer, clay: silver, outside: 18 mm, opening: 9 mm, thickness: 1 mm",
    "seat": "kind: seat, clay: silver, stone: round-8, thickness: 4 mm",
    "cup": "kind: bezel cup, strip: fine-04, stone: oval-18",
    "spiral": "kind: flat spiral, wire: round-1, across: 18 mm, gap: 0.5 mm",
    "coil": "kind: wire coil, wire: round-1, inside: 5 mm, turns: 6",
    "metal": "kind: metal disc, sheet: sterling-08, across: 19 mm, hole: 2 mm",
    "blank": "kind: ring blank, sheet: sterling-15, size: US 7, width: 4 mm",
    "strand": "kind: bead strand, bead: bead-8, length: 60 mm",
    "necklace": "kind: graduated strand, largest: 10 mm, smallest: 4 mm, length: 190 mm",
    "wrist": "kind: beads round a neck or wrist, bead: bead-8, girth: 160 mm",
}
PROJECT = """\
title: Drawn
revision: 1
date: 2026-01-10
summary: One part of every kind that is drawn.
makes: 1
level: experienced
parts:
{parts}
steps:
  - title: Make
    parts: [{names}]
    diagram: [{names}]
  - title: Dry
    wait: 1 h
  - title: Fire
    firing: silver
"""


def project(parts: dict[str, str]) -> str:
    found = "\n".join(f"  {name}: {{{text}}}" for name, text in parts.items())
    return PROJECT.format(parts=found, names=", ".join(parts))


@pytest.fixture(scope="module")
def library(libraries: Any, tmp_path_factory: pytest.TempPathFactory) -> Any:
    stock = (Path(__file__).parents[1] / "parts" / "workbench.yaml").read_text("utf-8")
    made = libraries.make(tmp_path_factory.mktemp("drawn"), libraries.FILES | {"stock/workbench.yaml": stock})
    made.write("drawn/project.yaml", project(PARTS | SEEN))
    return made


@pytest.fixture(scope="module")
def worked(library: Any) -> Any:
    return library.worked("drawn")


class Drawn:
    """One part's diagram on a pen that remembers, and its figures."""

    def __init__(self, worked: Any, name: str, k: float = 2.0, rounder: Rounder | None = None) -> None:
        self.part, self.k, self.pen = worked.main.parts[name], k, Recorder()
        self.figures, self.name, self.rounder = worked.main.figures, name, rounder or worked.rounder
        self.says = self.part.diagram(self.pen, self.size, k)

    def size(self, figure: str) -> Any:
        return self.rounder.size(self.figures[f"{self.name}.{figure}"])

    def usual(self, figure: str) -> float:
        return float(self.figures[f"{self.name}.{figure}"].value.usual)

    @property
    def words(self) -> list[str]:
        return [words for _, words in self.pen.texts]

    def circles(self, across: float, kind: str = "cut") -> list[tuple[float, float]]:
        """Middles of the circles so wide, mm of the piece."""
        found = [o for o in self.pen.ovals if o[0] == kind and o[2] == pytest.approx(across * self.k)]
        return [(x / self.k, y / self.k) for _, (x, y), _, _ in found]

    def middle(self) -> float:
        """Length of the middle of the wire or strip, halfway between the two longest edges, mm of the piece."""
        edges = sorted((walk(points, closed=closed) for _, points, closed in self.pen.lines), reverse=True)
        return sum(edges[:2]) / 2 / self.k

    def band(self, thickness: float) -> float:
        """Length of an open wire or strip, from the outline round it, mm of the piece."""
        longest = max(walk(points, closed=True) for _, points, closed in self.pen.lines if closed)
        return longest / 2 / self.k - thickness


def walk(points: list[tuple[float, float]], *, closed: bool) -> float:
    run = [*points, points[0]] if closed else points
    return sum(math.dist(a, b) for a, b in pairwise(run))


@pytest.mark.parametrize("name", ["link", "eight"])
def test_two_pegs_stand_their_centres_apart(worked: Any, name: str) -> None:
    drawn = Drawn(worked, name)
    pegs = [o for o in drawn.pen.ovals if o[0] == "thin"]
    assert [o[2] / drawn.k for o in pegs] == pytest.approx([drawn.usual("peg_used"), drawn.usual("second_used")])
    assert math.dist(pegs[0][1], pegs[1][1]) / drawn.k == pytest.approx(drawn.usual("centres"))
    assert f"{drawn.size('centres').words} apart" in drawn.words


@pytest.mark.parametrize("name", ["link", "eight", "ring", "ellipse"])
def test_a_closed_wire_is_as_long_as_its_figure_says(worked: Any, name: str) -> None:
    drawn = Drawn(worked, name)
    assert drawn.middle() == pytest.approx(drawn.usual("one"), rel=0.005)


@pytest.mark.parametrize("name", ["hook", "bent", "zigzag"])
def test_an_open_wire_is_as_long_as_its_figure_says(worked: Any, name: str) -> None:
    drawn = Drawn(worked, name)
    assert drawn.band(1) == pytest.approx(drawn.usual("one"), rel=0.005)


def test_a_bail_s_strip_is_as_long_as_its_tails_and_its_fold(worked: Any) -> None:
    drawn = Drawn(worked, "bail", 4)
    tails = drawn.size("wet_front") + drawn.size("wet_back")
    assert drawn.band(1) == pytest.approx(tails + drawn.usual("over_former"), rel=0.005)
    assert drawn.circles(drawn.usual("former_used"), "thin") == [(0, 0)]


def test_a_strip_pressed_together_leaves_its_bar_at_a_tangent() -> None:
    # the exact length on one line (Wikipedia, Belt problem), with nothing between the two sides
    r, c = 3.0, 8.0
    path = forming.over_bar(r, 5, 4, (c, 0))
    over = 2 * math.sqrt(c**2 - r**2) + r * (math.pi + 2 * math.asin(r / c))
    assert walk(path, closed=False) == pytest.approx(5 + 4 + over, rel=1e-3)
    assert all(math.hypot(x, y) >= r - 1e-9 for x, y in path)


def test_a_folded_strip_is_two_drops_and_half_a_turn(worked: Any) -> None:
    drawn = Drawn(worked, "folded", 1)  # the ribbon is 0.4 mm thick: at this scale one line
    strips = [points for kind, points, closed in drawn.pen.lines if kind == "cut" and not closed]
    assert [walk(points, closed=False) for points in strips] == [pytest.approx(drawn.usual("first_cut"), rel=0.005)]


@pytest.mark.parametrize(("name", "longest"), [("folded", 7), ("held", 30)])
def test_a_fringe_hangs_from_its_first_drop_to_its_last(worked: Any, name: str, longest: int) -> None:
    part = worked.main.parts[name]
    drops = part.drops()
    assert (drops[0], drops[longest]) == pytest.approx((part.first.usual, part.last.usual))
    assert sum(drops) / len(drops) == pytest.approx(worked.main.figures[f"{name}.mean"].value.usual)
    drawn = Drawn(worked, name)
    deepest = max(y for kind, points, closed in drawn.pen.lines if closed and kind == "cut" for _, y in points)
    assert deepest / drawn.k == pytest.approx(part.last.usual)


def test_a_ring_of_stones_has_its_seats_on_the_circle_and_none_overlap(worked: Any) -> None:
    drawn = Drawn(worked, "stones")
    seats = drawn.circles(drawn.size("drill"))
    assert len(seats) == drawn.usual("stones")
    assert all(math.hypot(*at) == pytest.approx(drawn.size("wet_around") / 2) for at in seats)
    assert min(math.dist(a, b) for a, b in combinations(seats, 2)) == pytest.approx(drawn.usual("wet_pitch"), abs=0.02)
    assert drawn.usual("wet_pitch") > drawn.usual("drill")
    assert drawn.size("wet_pitch").words in drawn.words


def marks(drawn: Drawn) -> dict[str, float]:
    """Where each arrow of a straight wire stands, by the words its line leads to; mm from the wire's left end."""
    lines = [points for kind, points, _ in drawn.pen.lines if kind == "thin"]
    feet = {(round(b[0], 6), round(b[1], 6)): a[0] for a, b in lines}
    return {w: feet[at] / drawn.k for (x, y), w in drawn.pen.texts for at in feet if math.dist(at, (x, y)) < 1}


def test_the_marks_of_a_head_pin_stand_at_the_lengths_the_figures_say(worked: Any) -> None:
    drawn = Drawn(worked, "pin")
    d, beyond, end = 0.6438, drawn.size("beyond"), drawn.usual("end")
    loop = math.pi * (2.5 + d)
    places = [beyond - end, beyond - drawn.usual("neck") - loop, beyond - drawn.usual("neck"), beyond, beyond + 8]
    assert sorted(marks(drawn).values()) == pytest.approx([*places, drawn.size("cut")], abs=0.01)
    assert f"neck to {beyond.words}" in drawn.words
    assert f"cut {drawn.size('cut').words}" in drawn.words


def test_a_wire_s_marks_say_where_they_stand(worked: Any) -> None:
    for name in ("pin", "bought", "wrapped"):
        for words, at in marks(Drawn(worked, name)).items():
            assert float(words.rsplit(" ", 1)[1]) == pytest.approx(at, abs=0.051), words


@pytest.mark.parametrize(("name", "beads"), [("pin", 1), ("wrapped", 2)])
def test_the_beads_lie_where_the_wire_is_left_straight(worked: Any, name: str, beads: int) -> None:
    drawn = Drawn(worked, name)
    found = sorted(x for x, _ in drawn.circles(8))
    assert len(found) == beads
    assert found[0] - 4 >= drawn.size("beyond") - 1e-9
    assert found[-1] + 4 <= drawn.size("beyond") + drawn.usual("stack") + 1e-9


def test_what_repeats_in_a_chain_is_a_link_with_its_ring(worked: Any) -> None:
    drawn = Drawn(worked, "chain")
    assert "18.0 repeats" in drawn.words
    at, _ = next(t for t in drawn.pen.texts if t[1] == "18.0 repeats")
    dimensions = [points for kind, points, _ in drawn.pen.lines if kind == "thin" and points[0][1] == points[1][1]]
    level = min(dimensions, key=lambda points: abs(points[0][1] - at[1]))
    assert (level[1][0] - level[0][0]) / drawn.k == pytest.approx(18)


def test_a_chain_shows_its_end_rings_and_few_of_its_links(worked: Any) -> None:
    drawn = Drawn(worked, "chain")
    closed = [points for kind, points, closed in drawn.pen.lines if kind == "cut" and closed and len(points) > 4]
    # two edges each: three links, two rings between them, three at the ends
    assert len(closed) == 2 * (3 + 2 + 3)
    assert "clasp" in drawn.words


def test_a_box_stands_on_its_base(worked: Any) -> None:
    drawn = Drawn(worked, "box", 1)
    boxes = [(min(x for x, _ in p), max(x for x, _ in p)) for _, p, closed in drawn.pen.lines if closed and len(p) == 4]
    wide = drawn.size("wet_across")
    assert sum(hi - lo == pytest.approx(wide) for lo, hi in boxes) == 3  # from above, the lid, the base
    assert sum(hi - lo == pytest.approx(drawn.size("lip_across")) for lo, hi in boxes) == 1


@pytest.mark.parametrize("name", PARTS)
def test_a_diagram_fits_its_column_at_the_scale_it_says(worked: Any, name: str) -> None:
    drawing = diagrams(worked, worked.main)[name]
    assert drawing.width <= WIDE + 1
    assert drawing.height <= TALL + 2
    assert "; drawn at scale " in drawing.says


@pytest.mark.parametrize("name", PARTS)
@pytest.mark.parametrize("inches", [False, True])
def test_no_words_of_a_diagram_lie_on_each_other(worked: Any, name: str, inches: bool) -> None:  # noqa: FBT001
    rounder = Rounder(inches=inches)
    part = worked.main.parts[name]

    def size(figure: str) -> Any:
        return rounder.size(worked.main.figures[f"{name}.{figure}"])

    for k in SCALES:
        extent, pen = Extent(), Boxes()
        part.diagram(extent, size, k)
        if extent.width <= WIDE and extent.height <= TALL - 4:
            part.diagram(pen, size, k)
            for (one, a), (other, b) in combinations(pen.boxes, 2):
                apart = a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]
                assert apart, f"{one} and {other}"
            return
    pytest.fail("it fits at no scale")


class Boxes(Recorder):
    """A pen that remembers what room its words take."""

    def __init__(self) -> None:
        super().__init__()
        self.boxes: list[tuple[str, tuple[float, float, float, float]]] = []

    def text(self, at: tuple[float, float], words: str, **how: Any) -> None:
        extent = Extent()
        extent.text(at, words, **how)
        self.boxes.append((words, (extent.left, extent.top, extent.right, extent.bottom)))


@pytest.mark.parametrize("name", PARTS)
def test_the_words_for_those_who_do_not_see_it_are_in_the_studio_s_unit(worked: Any, name: str) -> None:
    assert " in" not in Drawn(worked, name).says.replace(" in ", " ").replace(" inside", "")
    said = Drawn(worked, name, rounder=Rounder(inches=True)).says
    assert said
    assert " mm" not in said


@pytest.mark.parametrize(
    ("mm", "like", "words"),
    [(12.7, "25.0", "12.7"), (12.7, "25,0", "12,7"), (12.7, "63/64", "1/2"), (12.7, "0.984", "1/2"), (0, "25.0", "0.0")],
)
def test_a_length_beside_a_figure_is_written_as_the_figure_is(mm: float, like: str, words: str) -> None:
    from sheetgen.base.figure import Size
    from sheetgen.base.like import worded

    assert worded(mm, Size(25, like)) == words


@pytest.mark.parametrize("name", [*(n for n in PARTS if n not in {"chain", "hooked"}), *SEEN])
def test_a_view_starts_at_the_middle_of_its_top(worked: Any, name: str) -> None:
    extent = Extent()
    reach = worked.main.parts[name].view(extent)
    assert extent.top == pytest.approx(0, abs=1.2 if name == "tube" else 0.35)
    assert 0 < reach <= extent.bottom + 1e-6
    assert extent.left < 0 < extent.right


@pytest.mark.parametrize(
    ("name", "hangs"),
    [
        ("link", 19), ("eight", 17), ("hook", 24.1), ("ring", 6), ("ellipse", 10), ("washer", 13.5), ("disc", 15),
        ("drop", 25), ("seat", 8), ("metal", 19), ("strand", 56), ("held", 60),
    ],
)  # fmt: skip
def test_the_next_part_hangs_where_a_hand_would_measure(worked: Any, name: str, hangs: float) -> None:
    # a link of 20 mm over all in wire of 1 mm: 19 to the inner wall; an S-hook leans, its bends under each other
    assert worked.main.parts[name].view(Extent()) == pytest.approx(hangs, abs=0.6 if name == "washer" else 0.05)


def test_a_hook_hangs_with_its_bends_under_each_other(worked: Any) -> None:
    pen = Recorder()
    part = worked.main.parts["hook"]
    part.view(pen)
    points = pen.lines[0][1]
    assert min(y for _, y in points) == pytest.approx(0, abs=0.01)
    highest, lowest = (pick(points, key=lambda p: p[1]) for pick in (min, max))
    assert (highest[0], lowest[0]) == pytest.approx((0, 0), abs=0.1)


def test_a_view_hangs_below_the_one_it_hangs_from(library: Any) -> None:
    parts = {
        "disc": SEEN["disc"] + ", at: '0 mm, 0 mm'",
        "drop": SEEN["drop"] + ", hangs from: disc",
        "pin": PARTS["pin"] + ", hangs from: drop",
    }
    library.write("hung/project.yaml", project(parts))
    version = library.worked("hung").main
    drawing = finished(version)
    assert drawing is not None
    pin = Extent()
    version.parts["pin"].view(pin)
    assert f"{15 + 25 + pin.bottom:.0f} mm high" in drawing.says


def test_the_belt_of_an_open_link_touches_both_pegs() -> None:
    path = sketches.belt(3, 2, 12, crossed=False)
    assert min(math.hypot(x, y) for x, y in path) == pytest.approx(3, abs=0.01)
    assert min(math.dist((12, 0), p) for p in path) == pytest.approx(2, abs=0.01)
