"""Finished views: every part from the front, its top in the middle, and the next one hung where it would hang."""

from __future__ import annotations

import math
import re
from itertools import combinations
from typing import Any

import pytest
from shapely.geometry import LineString, MultiPolygon, Polygon, box

from sheetgen.base.pen import Extent, Recorder
from sheetgen.draw import kinds, views
from sheetgen.draw.finished import finished
from sheetgen.draw.pens import Strokes
from sheetgen.pipeline import work_through

PARTS = (
    "link", "eight", "wrapped", "pin", "bought", "hook", "bent", "zigzag", "folded", "held", "ring", "ellipse",
    "stones", "row", "bail", "pressed", "box", "tray", "tube", "band", "dome", "disc", "drop", "washer", "seat",
    "cup", "clasp", "strewn", "walled", "chain", "hooked",
    "spiral", "coil", "metal", "blank", "strand", "necklace", "wrist",
)  # fmt: skip


@pytest.mark.parametrize("name", PARTS)
def test_a_view_starts_at_the_middle_of_its_top(all_drawn: Any, name: str) -> None:
    extent = Extent()
    reach = kinds.view(extent, all_drawn.main.parts[name])
    # a tube is seen a little from above; a closed strand has its clasp above
    assert extent.top == pytest.approx(
        0, abs={"tube": 1.2, "wrist": 3.2, "necklace": 3.2, "chain": 3.2}.get(name, 0.35)
    )
    assert 0 < reach <= extent.bottom + 0.3
    assert extent.left < 0 < extent.right


@pytest.mark.parametrize(
    ("name", "hangs"),
    [
        ("link", 19), ("eight", 17), ("hook", 24.8), ("ring", 6), ("ellipse", 10), ("washer", 13.5), ("disc", 15),
        ("drop", 25), ("clasp", 9), ("strewn", 14), ("walled", 18.8), ("hooked", 65.2),
        ("seat", 1.975), ("metal", 19), ("strand", 56), ("held", 60),
    ],
)  # fmt: skip
def test_the_next_part_hangs_where_a_hand_would_measure(all_drawn: Any, name: str, hangs: float) -> None:
    # a link of 20 mm over all in wire of 1 mm: 19 to the inner wall; an S-hook leans, its bends under each other:
    # 5 ÷ 2 + 1 + √(5.5² + 18.5²) + 4 ÷ 2
    reach = kinds.view(Extent(), all_drawn.main.parts[name])
    assert reach == pytest.approx(hangs, abs=0.6 if name == "washer" else 0.05)


def test_a_closed_chain_has_all_its_links_on_a_round_of_its_length(all_drawn: Any) -> None:
    part, pen = all_drawn.main.parts["chain"], Recorder()
    kinds.view(pen, part)
    links, rings = (part.figures[name].value.usual for name in ("links", "rings"))
    assert sum(closed for _, _, closed in pen.lines) == 2 * (links + rings)  # both edges of each wire
    around = part.figures["inside"].value.usual / math.pi
    extent = Extent()
    kinds.view(extent, part)
    assert extent.width == pytest.approx(around + part.numbers["across"].usual + 2, abs=1)


class Layers(Recorder):
    """A pen that knows which cover lies uppermost at a point."""

    def __init__(self) -> None:
        super().__init__()
        self.laid: list[Polygon] = []

    def cover(self, loops: Any) -> None:
        outline, *openings = sorted((Polygon(loop) for loop in loops), key=lambda loop: -loop.area)
        self.laid.append(outline.difference(MultiPolygon(openings)))


def test_each_link_of_a_chain_lies_once_over_the_next_and_once_under_it() -> None:
    # links of 10 mm in wire of 1 mm, 4 mm wide inside: the wires cross left and right of where the insides meet
    pen, links = Layers(), 3
    views.chain(pen, [(10, 4, 1)] * links)
    for i in range(links - 1):
        both = pen.laid[i].intersection(pen.laid[i + 1])
        crossings = [both.intersection(box(x, -9, x + 9, 99)).representative_point() for x in (-9, 0)]
        over = [max(n for n, laid in enumerate(pen.laid) if laid.contains(at)) for at in crossings]
        assert sorted(n < links for n in over) == [False, True]  # a later cover is of the earlier link, laid over again
        assert i + 1 in over


def test_strewn_stones_lie_inside_their_margin_and_apart(all_drawn: Any) -> None:
    part, pen = all_drawn.main.parts["strewn"], Recorder()
    kinds.view(pen, part)
    spots = [(x, y - 7) for kind, (x, y), wide, _ in pen.ovals if kind == "thin" and wide == pytest.approx(2, abs=0.2)]
    assert len(spots) == 9
    assert all((x / 10) ** 2 + (y / 7) ** 2 < 1 for x, y in spots)
    assert min(math.dist(a, b) for a, b in combinations(spots, 2)) > 2


def test_a_hook_hangs_with_its_bends_under_each_other(all_drawn: Any) -> None:
    pen = Recorder()
    part = all_drawn.main.parts["hook"]
    kinds.view(pen, part)
    points = pen.lines[0][1]
    assert min(y for _, y in points) == pytest.approx(0, abs=0.01)
    highest, lowest = (pick(points, key=lambda p: p[1]) for pick in (min, max))
    assert (highest[0], lowest[0]) == pytest.approx((0, 0), abs=0.1)


def test_a_view_hangs_below_the_one_it_hangs_from(
    drawn_library: Any, drawn_parts: dict[str, str], drawn_project: Any
) -> None:
    parts = {
        "disc": drawn_parts["disc"] + ", at: '0 mm, 0 mm'",
        "drop": drawn_parts["drop"] + ", hangs from: disc",
        "pin": drawn_parts["pin"] + ", hangs from: drop",
    }
    drawn_library.write("hung/project.yaml", drawn_project(parts).replace("title: Drawn", "title: Hung"))
    version = drawn_library.worked("hung").main
    drawing = finished(version, drawn_library.worked("hung").rounder)
    assert drawing is not None
    pin = Extent()
    kinds.view(pin, version.parts["pin"])
    assert f"{15 + 25 + pin.bottom:.1f}\u00a0mm high" in drawing.says


@pytest.mark.parametrize(
    ("name", "wide", "high"),
    [
        ("dome", 25, 5),  # as wide and as high as it is to be
        ("disc", 15, 0.9),  # 1 mm of clay, which shrinks by a tenth
        ("tube", 8.7, 20),
        ("bail", 6.4 + 2 * 0.9, 8 + 6.4 / 2 + 0.9),  # a tail of 8 mm, half of its arch, its thickness
        ("washer", 18, 0.9),
    ],
)
def test_a_part_from_the_side_is_as_wide_and_as_high_as_it_is(
    all_drawn: Any, name: str, wide: float, high: float
) -> None:
    extent = Extent()
    reach = kinds.view(extent, all_drawn.main.parts[name], "side")
    assert (extent.left + extent.right) / 2 == pytest.approx(0, abs=0.01)
    assert extent.top == pytest.approx(0, abs=0.01)
    assert reach == pytest.approx(extent.bottom, abs=0.01)
    assert (extent.width, extent.height) == pytest.approx((wide, high), rel=0.05)


def test_a_part_that_lies_is_its_front_a_quarter_turn_round(all_drawn: Any) -> None:
    front, lying = Extent(), Extent()
    kinds.view(front, all_drawn.main.parts["walled"])
    reach = kinds.view(lying, all_drawn.main.parts["walled"], "lying")
    assert (lying.width, lying.height) == pytest.approx((front.height, front.width))
    assert (lying.left, lying.top) == pytest.approx((-lying.right, 0))
    assert reach == pytest.approx(front.width)


def test_a_dome_s_back_shows_how_thick_its_rim_is(all_drawn: Any) -> None:
    pen, part = Recorder(), all_drawn.main.parts["dome"]
    kinds.view(pen, part, "back")
    outer, inner = sorted((wide for _, _, wide, _ in pen.ovals), reverse=True)[:2]
    thick = part.figures["fired_thickness"].value.usual
    assert (outer - inner) / 2 == pytest.approx(thick)


VIEWED = """\
parts:
  ring: {kind: jump ring, wire: round-1, rod: 5 mm}
  other: {kind: jump ring, wire: round-1, rod: 5 mm}
  dome: {kind: dome, clay: silver, across: 25 mm, rise: 5 mm, thickness: 1 mm}
view:
"""


@pytest.fixture
def viewed(drawn_library: Any, drawn_project: Any) -> Any:
    """What works a project with a list of what stands in its view, and draws it."""

    def drawn(*lines: str) -> Any:
        text = drawn_project({"ring": "", "dome": "", "other": ""}).replace("title: Drawn", "title: Viewed")
        head, _, steps = text.partition("parts:\n")
        entries = "".join(f"  - {{{line}}}\n" for line in lines)
        drawn_library.write("viewed/project.yaml", head + VIEWED + entries + steps[steps.index("steps:") :])
        outcome = work_through(drawn_library.root, ["viewed"])
        return outcome.worked[0] if outcome.worked else [one.message for one in outcome.troubles]

    return drawn


def test_a_part_may_stand_in_a_view_twice_and_turned(viewed: Any) -> None:
    worked = viewed('part: dome, at: "0 mm, 0 mm"', 'part: dome, at: "31 mm, 0 mm", turned: side')
    drawing = finished(worked.main, worked.rounder)
    assert drawing is not None
    assert drawing.says.endswith("56\u00a0mm wide, 25\u00a0mm high: dome")
    assert "and turned" in drawing.says


def test_a_ring_that_hangs_in_a_ring_goes_over_it_on_one_side_and_under_it_on_the_other(viewed: Any) -> None:
    worked = viewed('part: ring, at: "0 mm, 0 mm"', "part: other, hangs from: ring")
    drawing = finished(worked.main, worked.rounder)
    assert drawing is not None
    covers = re.findall(r'<path d="([^"]*)" fill="#fff"', drawing.svg)
    loops = ([Polygon(spots(run)) for run in path.split("Z") if run.strip()] for path in covers)
    upper, lower, again = (max(found, key=lambda loop: loop.area) for found in loops)
    assert again.centroid.x > 0, "only on the right"
    assert again.bounds[0] == pytest.approx(0, abs=0.05)
    # the upper one is laid again where the lower one hid it, and nowhere else
    assert again.within(upper.buffer(0.1))
    assert again.bounds[1] >= lower.bounds[1] - 1.1


def spots(run: str) -> list[tuple[float, float]]:
    """The points of a path's run."""
    numbers = [float(one) for one in re.findall(r"-?[\d.]+", run)]
    return list(zip(numbers[::2], numbers[1::2], strict=True))


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("part: domes, turned: side", "there is no part 'domes'"),
        ("part: dome, turned: sideways", "turned cannot be 'sideways'"),
        ("part: ring, hangs from: other", "'other' does not stand in this view before it"),
        ('part: ring, at: "3 g, 0 mm"', "'3 g' is a mass"),
        ("part: ring, closed: [ring]", "an entry of the view shows one thing, and this one names 'part' and 'closed'"),
        ('at: "0 mm, 0 mm"', "an entry of the view shows one thing, and this one names nothing"),
        ("closed: [rings]", "'rings' is not in stock"),
        ("closed: [ring with others]", "'others' is not in stock"),
        ("led back: [plait of ring]", "a plait is made of slit strips, and 'ring' is jump ring"),
        ("led back: [tassel of tassels]", "there is no part 'tassels'"),
        ("finding: clasp-16", "stock does not say what 'clasp-16' is drawn as"),
    ],
)
def test_what_cannot_stand_in_a_view_is_told(viewed: Any, line: str, message: str) -> None:
    assert message in viewed(line)


@pytest.mark.parametrize(("design", "part", "turned"), [
    ("saltpan-brooch", "dome", "front"), ("limpet-buttons", "shell", "front"), ("limpet-buttons", "shell", "side"),
])  # fmt: skip
def test_a_texture_keeps_a_line_of_white_from_the_rim_and_from_every_hole(
    demo: Any, design: str, part: str, turned: str
) -> None:
    pen = Strokes()
    kinds.view(pen, demo.main(design).parts[part], turned)
    edges = [LineString(run) for kind, run, _ in pen.kept if kind == "cut"]
    lines = [LineString(run) for kind, run, _ in pen.kept if kind == "thin"]
    # a line is 0.21 mm wide, half of it on each side of where it is drawn
    assert min(line.distance(edge) for line in lines for edge in edges) >= 2 * 0.21 - 0.01
    assert min(line.length for line in lines) > 1


def test_a_dome_from_its_side_shows_the_holes_that_face_us_on_its_curve(demo: Any) -> None:
    shell, pen = demo.main("limpet-buttons").parts["shell"], Strokes()
    kinds.view(pen, shell, "side")
    _, *holes = [Polygon(run) for run in pen.closed("cut")]
    # of eight, one from the very front and one at 45 degrees on each side of it, on a circle of 14 mm
    assert sorted(hole.centroid.x for hole in holes) == pytest.approx([-7 * 0.7071, 0, 7 * 0.7071], abs=0.15)
    # 20 mm wide and 4 mm high is part of a ball of 14.5 mm round its middle, of which a circle of 14 mm is 1.8 mm down
    assert [hole.centroid.y for hole in holes] == pytest.approx([14.5 - math.sqrt(14.5**2 - 7**2)] * 3, abs=0.15)
