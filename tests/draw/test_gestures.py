"""Gestures: what a craftsperson would see on the drawing, looked up on its strokes."""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ET
from itertools import combinations
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from shapely.geometry import Polygon

from sheetgen.base.pen import Extent, Recorder
from sheetgen.checking import checked
from sheetgen.draw.diagrams import diagrams
from sheetgen.draw.gestured import TALL, WIDE, scene_of
from sheetgen.draw.gestures import gestures
from sheetgen.draw.gestures.crimp import lobes
from sheetgen.draw.gestures.knot_beside_a_bead import overhand
from sheetgen.draw.gestures.surgeons_knot import FIRST, SECOND, WAYS, twist
from sheetgen.draw.made import plaited
from sheetgen.draw.woven import Strand, woven
from sheetgen.facts.gestures import GESTURES, OF, keyed
from sheetgen.parts.catalogue import kinds
from sheetgen.pipeline import work_through

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.pen import Point
    from sheetgen.model.worked import Worked, WorkedVersion

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def demo() -> dict[str, Worked]:
    """The demonstration library, worked."""
    return {one.name: one for one in work_through(ROOT).worked}


class Drawn:
    """One gesture at one scale, and what may be asked of it."""

    def __init__(self, version: WorkedVersion, name: str, part: str, k: float) -> None:
        self.pen, self.scene, self.k = Recorder(), scene_of(name, part, version), k
        self.says = gestures()[name].draw(self.pen, self.scene, k)

    def at(self, words: str) -> Point:
        """Where words stand."""
        return next(at for at, said in self.pen.texts if said == words)

    def faces(self) -> list[list[Point]]:
        """Closed outlines, the largest first."""
        found = [points for kind, points, closed in self.pen.lines if closed and kind == "cut"]
        return sorted(found, key=lambda points: -abs(area(points)))

    def uprights(self) -> Iterator[float]:
        """How long the upright lines of its dimensions are, mm of the piece."""
        for kind, points, _ in self.pen.lines:
            if kind == "thin" and len(points) == 2 and abs(points[0][0] - points[1][0]) < 1e-9:
                yield abs(points[0][1] - points[1][1]) / self.k


@pytest.fixture(scope="module")
def draw(demo: dict[str, Worked]) -> Any:
    """What draws a gesture of a design's main version."""

    def drawn(design: str, gesture: str, part: str, k: float = 4.0) -> Drawn:
        return Drawn(demo[design].main, gesture, part, k)

    return drawn


def area(points: Sequence[Point]) -> float:
    """By the trapezoids under its edges."""
    ends = zip(points, [*points[1:], points[0]], strict=True)
    return sum((bx - ax) * (ay + by) / 2 for (ax, ay), (bx, by) in ends)


def box(points: Sequence[Point]) -> tuple[float, float, float, float]:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)


def test_words_and_drawings_of_the_gestures_agree() -> None:
    assert set(gestures()) == set(GESTURES)
    for name, told in GESTURES.items():
        assert OF not in name, "a step could not name it"
        assert told.about.endswith(".")
        assert set(told.of) <= set(kinds()), name


def test_every_gesture_is_shown_by_a_design(demo: dict[str, Worked]) -> None:
    shown = {name for one in demo.values() for step in one.main.steps for name, _ in step.gestures}
    assert shown == set(GESTURES)


def test_every_gesture_of_every_version_fits_beside_its_step_and_says_what_it_shows(demo: dict[str, Worked]) -> None:
    for one in demo.values():
        for version in one.versions.values():
            drawn = diagrams(version)
            for name in {keyed(*asked) for step in version.steps for asked in step.gestures}:
                drawing = drawn[name]  # KeyError: it fits at no scale
                assert drawing.width <= WIDE + 1, name
                assert drawing.height <= TALL + 1, name
                assert len(drawing.says) > 60, name
                assert not drawing.says.endswith("."), name
                read = ET.fromstring(drawing.svg)  # noqa: S314 - drawn by our own pen
                sizes = [float(text.get("font-size", 0)) for text in read.iter() if "font-size" in text.attrib]
                assert min(sizes, default=3.0) >= 3.0, "8.5 pt is the least that is read off a copy"


def test_the_numbers_of_a_gesture_are_printed_figures(demo: dict[str, Worked]) -> None:
    for one in demo.values():
        drawn = diagrams(one.main)
        printed = {figure.printed.words for figure in one.main.figures.values()}
        # or what the project gives itself, such as a thickness in cards
        for part in one.main.parts.values():
            printed |= {part.length(number.usual, "fine").words for number in part.numbers.values()}
        for name in {keyed(*asked) for step in one.main.steps for asked in step.gestures}:
            read = ET.fromstring(drawn[name].svg)  # noqa: S314 - drawn by our own pen
            texts = [text.text or "" for text in read.iter() if text.tag.endswith("text")]
            numbers = {text for text in texts if text.replace(".", "").isdigit()} - {"1", "2", "3", "4"}
            assert numbers <= printed, (one.name, name)


def test_the_legs_of_an_eye_lie_under_the_cap_and_in_the_slip(draw: Any) -> None:
    it = draw("buoy-drops", "eye in a cap", "cap")
    caps = it.faces()[:2]
    rim = max(box(face)[3] for face in caps)
    crown = min(box(face)[1] for face in caps)
    dots = [centre for kind, centre, _, _ in it.pen.ovals if kind == "solid"]
    # slip only under the cap, and between the two walls of the tube
    assert min(y for _, y in dots) > crown
    bore = it.scene.others[[one.kind for one in it.scene.others].index("tube")].figures["wet_inside"].printed / 2 * it.k
    assert max(abs(x) for x, _ in dots) < bore
    wires = [points for kind, points, closed in it.pen.lines if kind == "cut" and not closed]
    lowest, highest = max(y for run in wires for _, y in run), min(y for run in wires for _, y in run)
    assert highest < crown < lowest < rim, "the loop stands above the cap, the legs end under it"


def test_the_stem_of_an_eye_has_room_in_its_hole(draw: Any) -> None:
    it = draw("buoy-drops", "eye in a cap", "cap")
    left, right = sorted(it.faces()[:2], key=lambda face: box(face)[0])
    hole = box(right)[0] - box(left)[2]
    drill = next(one for one in it.scene.others if one.kind == "hole").figures["drill_used"].printed
    assert hole == pytest.approx(drill * it.k, rel=0.1)


def test_a_wrapped_loop_leaves_the_neck_that_its_figure_says(draw: Any) -> None:
    for part in ("link", "drop"):
        it = draw("eddy-earrings", "wrapped loop", part)
        neck = it.scene.piece.figures["neck"].printed
        assert it.at(neck.words)
        # both extension lines of the dimension lie a neck apart
        levels = {round(points[0][1], 6) for kind, points, _ in it.pen.lines
                  if kind == "thin" and len(points) == 2 and abs(points[0][1] - points[1][1]) < 1e-9}  # fmt: skip
        assert any(math.isclose(abs(a - b), neck * it.k) for a in levels for b in levels)


def test_a_wrapped_loop_is_wound_as_often_as_its_figure_says(draw: Any) -> None:
    it = draw("eddy-earrings", "wrapped loop", "link")
    turns = [points for kind, points, closed in it.pen.lines if closed and kind == "cut"]
    assert len(turns) == it.scene.piece.numbers["wraps"].usual


def test_a_crimp_that_is_pressed_is_flatter_than_an_open_one_and_its_wall_no_longer(draw: Any) -> None:
    inside, tall = 13.0, 4.3
    half = math.pi * (inside - tall) / 4
    flat = lobes(half, tall, 0.0)
    wide, high = box(flat)[2] - box(flat)[0], box(flat)[3] - box(flat)[1]
    assert high < inside / 2 < inside < wide
    around = sum(math.dist(a, b) for a, b in zip(flat, [*flat[1:], flat[0]], strict=True))
    assert around == pytest.approx(math.pi * inside, rel=0.01), "a wall bends, and does not stretch"
    assert "one wire on each side" in draw("slackwater-strand", "crimp", "middle_wire").says


def test_a_shank_s_rod_stands_as_high_over_the_mat_as_its_figure_says(draw: Any) -> None:
    it = draw("limpet-buttons", "folded shank", "shank")
    leg, foot = it.scene.wanted("wet_leg"), it.scene.wanted("wet_foot")
    assert any(length == pytest.approx(float(leg)) for length in it.uprights())
    assert it.at(leg.words)
    assert it.at(foot.words)
    rod = it.scene.piece.figures["former_used"].printed
    assert any(wide == pytest.approx(rod * it.k) for _, _, wide, _ in it.pen.ovals)
    section = it.faces()[0]
    # the strip lies round the rod, and its feet reach no lower than the mat
    assert box(section)[1] == pytest.approx(-(rod / 2 + it.scene.piece.numbers["thickness"].usual) * it.k, rel=0.01)
    assert box(section)[3] == pytest.approx(leg * it.k, abs=0.2)


def test_the_cards_under_a_rod_are_as_many_as_the_list_of_the_step_says(demo: dict[str, Worked], draw: Any) -> None:
    prop = demo["limpet-buttons"].main.figures["prop"].printed
    assert f"{round(prop / 0.25)} cards" in [
        words for _, words in draw("limpet-buttons", "folded shank", "shank").pen.texts
    ]


def test_a_bridge_lies_with_its_hole_so_far_under_the_top_of_the_rim(draw: Any) -> None:
    it = draw("saltpan-brooch", "bridge on a rim", "bridge", 1.0)
    below = it.scene.wanted("hole_below")
    across = next(one for one in it.scene.others if one.kind == "dome").figures["wet_across"].printed
    [bridge] = [points for points in it.faces() if len(points) > 10][:1]
    _, top, _, low = box(bridge)
    assert (top + low) / 2 == pytest.approx(below - across / 2, abs=0.05)
    # its ends rest on the rim, and stand out nowhere
    assert all(math.hypot(*p) <= across / 2 + 0.05 for p in bridge)
    assert max(math.hypot(*p) for p in bridge) > across / 2 - 1.0
    # the longer edge is the lower one
    longest = {y: max(x for x, b in bridge if abs(b - y) < 0.1) for y in (top, low)}
    assert longest[low] > longest[top]


def test_a_wall_that_is_set_leans_over_its_stone_and_keeps_its_height(draw: Any) -> None:
    for design, part, figure in (("sounding-bracelet", "bezel", "strip"), ("shingle-keeper", "cup", "wall")):
        it = draw(design, "set bezel", part)
        walls = [face for face in it.faces() if box(face)[3] - box(face)[1] > 0 and box(face)[2] - box(face)[0] < 4]
        high = it.scene.piece.figures[figure].printed * it.k
        before, after = sorted(walls, key=lambda face: box(face)[0])[:2]
        assert box(before)[3] - box(before)[1] == pytest.approx(high)
        inside = after[: len(after) // 2]
        assert -box(inside)[1] < high, "what leans in stands lower"
        assert box(after)[2] - box(after)[0] > box(before)[2] - box(before)[0]


def test_a_bezel_is_pushed_first_from_opposite_sides(draw: Any) -> None:
    it = draw("sounding-bracelet", "set bezel", "bezel")
    one, two, three, four = (it.at(number) for number in "1234")
    middle = ((one[0] + two[0]) / 2, (three[1] + four[1]) / 2)
    assert one[0] < middle[0] < two[0]
    assert three[1] < middle[1] < four[1]


def test_the_eye_of_a_bar_is_left_open_by_what_the_figure_says(draw: Any) -> None:
    it = draw("sounding-bracelet", "toggle eye", "toggle", 3.0)
    left_open, eye = it.scene.figure("left_open"), it.scene.piece.figures["eye_used"].printed
    assert it.at(left_open.words)
    wires = [points for kind, points, closed in it.pen.lines if kind == "cut" and not closed and len(points) > 10]
    levels = sorted((box(points)[1], box(points)[3]) for points in wires if len(points) < 30)
    # the two arms from above that stand widest apart
    assert any(math.isclose(b[0] - a[1], left_open * it.k, rel_tol=0.01) for a in levels for b in levels), (
        "from edge to edge"
    )
    ring = min(
        (points for points in it.faces() if len(points) > 40), key=lambda points: box(points)[2] - box(points)[0]
    )
    assert box(ring)[2] - box(ring)[0] == pytest.approx(eye * it.k, rel=0.01)


def test_a_ring_is_opened_sideways_so_that_it_keeps_its_round(draw: Any) -> None:
    it = draw("eddy-earrings", "ring opened", "rings")
    assert [words for _, words in it.pen.texts] == ["open sideways", "never apart"]


def test_a_drill_ends_so_far_under_its_flag_as_the_seat_is_deep(draw: Any) -> None:
    depths = {
        ("buoy-drops", "seat_strip"): 6 * 0.25,  # six cards of strip
        ("lantern-pull", "ring_seats"): None,
        ("shingle-keeper", "floor"): None,
    }
    for (design, part), known in depths.items():
        it = draw(design, "flag on the drill", part, 5.0)
        figure = it.scene.figure("flag") or it.scene.figure("seat_depth")
        deep = known if known is not None else float(figure)
        point = max(
            y
            for kind, points, closed in it.pen.lines
            if kind == "cut" and len(points) == 5 and not closed
            for _, y in points
        )
        assert point == pytest.approx(deep * it.k)
        flag = next(points for points in it.faces() if box(points)[3] == 0 and box(points)[1] < 0)
        assert box(flag)[3] == 0, "the flag touches the clay"


def test_a_slanting_seam_is_as_long_as_its_figure_says(draw: Any) -> None:
    it = draw("tideline-band", "seam at a slant", "band")
    face, t = it.scene.wanted("seam_face"), it.scene.piece.numbers["thickness"].usual
    slopes = [
        math.dist(a, b) / it.k
        for points in it.faces()
        for a, b in zip(points, [*points[1:], points[0]], strict=True)
        if abs(a[0] - b[0]) > 0.1 and math.isclose(abs(a[1] - b[1]), t * it.k, rel_tol=1e-6)
    ]
    assert slopes
    assert all(length == pytest.approx(face, rel=0.02) for length in slopes)


class Covered(Recorder):
    """A pen that knows in which order it was covered."""

    def __init__(self) -> None:
        super().__init__()
        self.laid: list[Sequence[Point]] = []

    def cover(self, loops: Sequence[Sequence[Point]]) -> None:
        self.laid += loops


def test_of_two_strands_that_cross_the_nearer_one_is_laid_last() -> None:
    for near in (1.0, -1.0):
        pen = Covered()
        woven(pen, [Strand([(-5, 0, near), (5, 0, near)], 1), Strand([(0, -5, 0), (0, 5, 0)], 1)])
        level = box(pen.laid[-1])[2] > 1
        assert level == (near > 0)


def crossings(strands: Sequence[Sequence[tuple[float, float, float]]]) -> list[int]:
    """Along the first strand, whether it lies over (1) or under (-1) at each crossing."""
    first, found = strands[0], []
    others = [(strand, n) for n, strand in enumerate(strands)]
    for i in range(len(first) - 1):
        for strand, n in others:
            for j in range(len(strand) - 1):
                if n == 0 and abs(i - j) < 3:
                    continue
                if met(first[i], first[i + 1], strand[j], strand[j + 1]):
                    found.append(1 if first[i][2] > strand[j][2] else -1)
    return found


def met(a: Any, b: Any, c: Any, d: Any) -> bool:
    def side(p: Any, q: Any, r: Any) -> float:
        return float((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]))

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0


def test_a_knot_goes_over_and_under_in_turn() -> None:
    # an overhand knot has three crossings, met twice each on the way along it
    assert crossings([overhand(10)]) in ([1, -1] * 3, [-1, 1] * 3)


def test_a_surgeon_s_knot_goes_twice_round_and_then_once_the_other_way() -> None:
    low, other = twist(10, 2, 0, FIRST, WAYS[0])
    up, another = twist(6, 2, -9, SECOND, WAYS[1])
    first, second = crossings([low, other]), crossings([up, another])
    assert len(first) == 5, "twice round"
    assert len(second) == 3, "once round"
    assert first[0] == -second[0], "the other way"
    assert first == [first[0] * (-1) ** i for i in range(5)]


def test_an_end_is_led_back_into_two_beads_through_its_crimp(draw: Any) -> None:
    it = draw("slackwater-strand", "end led back", "middle_wire", 2.0)
    bead = it.scene.piece.fields["bead"].length.usual
    beads = [centre for _, centre, wide, _ in it.pen.ovals if centre[0] < 0 and wide == pytest.approx(bead * it.k)]
    assert len(beads) == 2
    crimps = it.faces()
    assert len(crimps) == 2, "a wall above and one below"
    assert all(box(face)[0] > max(x for x, _ in beads) for face in crimps)
    ring = max(wide for _, centre, wide, _ in it.pen.ovals if centre[0] > box(crimps[0])[2])
    assert ring > 4 * it.k


def test_what_hangs_by_its_last_loop_is_drawn_with_it_on_top_and_an_ear_wire_with_it_at_its_foot(draw: Any) -> None:
    above = {}
    for design, part in (("sedge-bookmark", "stem"), ("eddy-earrings", "ear_wire")):
        it = draw(design, "last loop", part, 2.0)
        loop = max((points for _, points, _ in it.pen.lines), key=len)  # what is bent round, and not only out
        _, top, _, low = box(loop)
        above[part] = sum(y < (top + low) / 2 for _, y in loop) / len(loop)
    assert above["ear_wire"] < 0.5 < above["stem"]


def test_what_is_said_of_a_coil_stands_right_under_it(draw: Any) -> None:
    it = draw("sedge-bookmark", "cut coil", "rings", 2.0)
    across = it.scene.piece.figures["outside"].value.usual * it.k
    # its middle is level with that of the two cuts, which are 7.8 apart; then a line of labels and a gap
    assert it.at("one turn")[1] == pytest.approx(7.8 / 2 + across / 2 + 4.2, abs=0.3)


def test_a_tassel_s_binding_is_hidden_in_its_cap(draw: Any) -> None:
    it = draw("sedge-bookmark", "tassel", "bundle", 2.0)
    cap = it.scene.piece.fields["cap"]
    walls = it.faces()[:2]
    for wall in walls:
        assert box(wall)[3] - box(wall)[1] == pytest.approx((cap.depth + 0.5) * it.k)
    inside = max(box(face)[0] for face in walls), min(box(face)[2] for face in walls)
    bound = it.scene.piece.figures["bound"].value.usual * it.k
    assert abs(inside[0] - inside[1]) < cap.inside * it.k
    assert bound < cap.inside * it.k


@pytest.mark.parametrize(
    ("written", "message", "helped"),
    [
        ("wraped loop of it", "there is no gesture 'wraped loop'", "did you mean 'wrapped loop'?"),
        ("wrapped loop of its", "there is no part 'its'", "did you mean 'it'?"),
        ("wrapped loop", "'wrapped loop' is a gesture, and no part", "say of which part: wrapped loop of it"),
        ("plait of it", "'plait' cannot be drawn of a wrapped-loop link", "of a part of kind slit strips"),
    ],
)
def test_a_gesture_that_cannot_be_drawn_is_told_at_its_word(
    drawn_library: Any, written: str, message: str, helped: str
) -> None:
    drawn_library.write(
        "asked/project.yaml", PROJECT.format(part="kind: wrapped-loop link, wire: awg-22, bead: bead-8", asked=written)
    )
    [trouble] = troubles(drawn_library, "asked")
    assert trouble.message == message
    assert trouble.help == helped


def test_a_gesture_that_wants_a_figure_of_the_project_says_which(drawn_library: Any) -> None:
    part = "kind: bail, clay: silver, inside: 6 mm, width: 4 mm, front tail: 8 mm, back tail: 6 mm, thickness: 1 mm"
    drawn_library.write("asked/project.yaml", PROJECT.format(part=part, asked="folded shank of it"))
    found = [one.message for one in troubles(drawn_library, "asked")]
    assert "'folded shank' is drawn by the figure 'wet leg' and 'wet foot'" in found


def test_a_gesture_that_its_part_has_no_form_for_is_told_alike_by_a_check_and_by_all_that_draws(
    drawn_library: Any,
) -> None:
    """A straight and one arc are no first loop with its neck; each is drawn once by a check, and fitted by a page."""
    part = 'kind: bent wire, wire: awg-22, form: "straight 10 mm, arc 5 mm 90, straight 10 mm"'
    drawn_library.write("asked/project.yaml", PROJECT.format(part=part, asked="first loop of it"))
    found = [
        work_through(drawn_library.root, ["asked"]),
        checked(drawn_library.root, drawn_library.root / "none", ["asked"]),
    ]
    for outcome in found:
        [trouble] = [one for one in outcome.troubles if one.severity == "error"]
        assert trouble.message.startswith(
            "'first loop' cannot be drawn of 'it': its form has no straight with two arcs"
        )


def test_a_step_that_only_draws_a_gesture_works_on_its_part(drawn_library: Any) -> None:
    part = "kind: wrapped-loop link, wire: awg-22, bead: bead-8"
    drawn_library.write("asked/project.yaml", PROJECT.format(part=part, asked="it, wrapped loop of it"))
    [step] = work_through(drawn_library.root, ["asked"]).worked[0].main.steps
    assert step.diagrams == ("it", "wrapped loop of it")
    assert step.parts == ()
    assert step.pictured == ("it",)


PROJECT = """\
title: Asked
revision: 1
date: 2026-01-10
summary: A gesture is asked for.
makes: 1
level: experienced
parts: {{it: {{{part}}}}}
steps:
  - title: Make
    diagram: [{asked}]
"""


DIAGRAM = PROJECT[: PROJECT.index("diagram:")].count("\n") + 1  # its line


def troubles(library: Any, name: str) -> list[Any]:
    """What is wrong with what a project has drawn."""
    found = work_through(library.root, [name]).troubles
    return [one for one in found if one.place is not None and one.place.line == DIAGRAM]


def test_the_drawings_of_gestures_reach_no_further_than_is_measured(demo: dict[str, Worked]) -> None:
    """What is drawn again on an extent takes the same room, so that nothing is cut off at an edge."""
    version = demo["eddy-earrings"].main
    for name, part in {asked for step in version.steps for asked in step.gestures}:
        one, two = Extent(), Extent()
        for extent in (one, two):
            gestures()[name].draw(extent, scene_of(name, part, version), 2.0)
        assert one == two


def test_in_a_plait_the_outer_strip_goes_over_the_middle_one() -> None:
    # as the steps say it: right over the middle, left over the middle. A pen that knows what lies uppermost.
    laid: list[Polygon] = []

    class Layers(Recorder):
        def cover(self, loops: Any) -> None:
            laid.extend(Polygon(loop) for loop in loops)

    plaited(Layers(), 3.0, (0.0, 60.0), lambda s, x: (x, s))
    crossings = 0
    for one, other in combinations(laid, 2):
        crossing = one.intersection(other)
        # mm², of strips 2.6 mm wide: more than where two only touch; and not where the plait is cut off
        if crossing.area > 2 and 8 < crossing.centroid.y < 52:
            crossings += 1
            spots = sorted(other.exterior.coords, key=lambda spot: spot[1])
            begins, ends = (sum(x for x, _ in some) / len(some) for some in (spots[:5], spots[-5:]))
            assert abs(begins) > abs(ends), "the upper one comes in from the side"
    assert crossings > 20


def test_a_step_that_speaks_of_a_drawing_has_one(demo: dict[str, Worked]) -> None:
    for worked in demo.values():
        for version in worked.versions.values():
            for step in version.steps:
                text = " ".join(str(one) for one in (*step.text, *step.expect) if isinstance(one, str))
                if re.search(r"\bdrawing\b|\bas drawn\b|\bpicture\b", text):
                    assert step.diagrams or step.picture, (worked.name, version.title, step.title)
