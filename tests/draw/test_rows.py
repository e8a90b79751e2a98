"""Rows of the finished view: what is worn closed lies closed, every piece at its own length and hung in the next."""

from __future__ import annotations

import math
import re
from itertools import pairwise
from typing import Any

import pytest
from shapely.geometry import Polygon

from sheetgen.base.pen import Extent, Recorder
from sheetgen.draw import findings, rows, way
from sheetgen.draw.bits import bead, between, ring
from sheetgen.draw.finished import finished
from sheetgen.draw.laid import laid
from sheetgen.draw.paper import Paper
from sheetgen.draw.sparing import OFF, spared
from sheetgen.facts.findings import FORMS

DESIGNS = (
    "buoy-drops", "eddy-earrings", "lantern-pull", "limpet-buttons", "saltpan-brooch", "sedge-bookmark",
    "shingle-keeper", "slackwater-strand", "sounding-bracelet", "tideline-band", "towline-bracelet",
)  # fmt: skip
METAL_ALONE = {
    "Copper, sterling ear wires", "Sterling, wrist 160 mm", "Copper medal, wrist 160 mm", "Bronze tags", "UK N½",
    "Standard clay", "Copper clay", "Bronze clay, coat", "Sterling clay, US 7", "Bronze clay",
}  # fmt: skip
"""Versions that are of another metal, or of the same size by another name, and of the same outline."""


def row_of(version: Any) -> tuple[list[Any], int]:
    """The bits of the first row in a version's view."""
    return rows.row(version, next(one.row for one in version.view if one.row))


def drawn_row(version: Any, pen: Any) -> Any:
    """The first row in a version's view on a pen, and its joints."""
    bits, first = row_of(version)
    closed = next(one.closed for one in version.view if one.row)
    on, joints = way.closed(bits, first) if closed else way.led_back(bits)
    laid(pen, bits, on, joints)
    return [on.at(s) for s in joints]


@pytest.mark.parametrize("design", DESIGNS)
def test_every_version_has_its_view_drawn_and_told(demo: Any, design: str) -> None:
    worked = demo.worked(design)
    for version in worked.versions.values():
        drawing = finished(version, worked.rounder)
        assert drawing is not None, version.title
        assert len(drawing.says) > 60, version.title
        assert "{{" not in drawing.says
        assert not re.search(r"[a-z]_[a-z]", drawing.says), "a name of arithmetic is no word"


@pytest.mark.parametrize("design", DESIGNS)
def test_a_version_of_another_size_looks_another(demo: Any, design: str) -> None:
    worked = demo.worked(design)
    main = finished(worked.main, worked.rounder)
    assert main is not None
    for version in worked.versions.values():
        if version is not worked.main and version.title not in METAL_ALONE:
            drawing = finished(version, worked.rounder)
            assert drawing is not None
            assert drawing.svg.partition("</title>")[2] != main.svg.partition("</title>")[2], version.title


@pytest.mark.parametrize(
    ("design", "figure"),
    [("towline-bracelet", "closed"), ("sounding-bracelet", "inside_all"), ("slackwater-strand", "strand")],
)
def test_what_is_drawn_closed_goes_round_as_far_as_the_sheet_says(demo: Any, design: str, figure: str) -> None:
    # by Ramanujan's girth of an ellipse through the joints, which no drawing uses; chords fall short of it, and the
    # outermost joint of the outermost point, by less than three hundredths
    for version in demo.worked(design).versions.values():
        joints = drawn_row(version, Extent())
        a = (max(x for x, _ in joints) - min(x for x, _ in joints)) / 2
        b = a / way.SLENDER
        girth = math.pi * (3 * (a + b) - math.sqrt((3 * a + b) * (a + 3 * b)))
        assert girth == pytest.approx(version.figures[figure].value.usual, rel=0.03), version.title
        assert math.dist(joints[0], joints[-1]) < 0.01, "it closes"


def test_a_bookmark_is_drawn_as_long_as_its_pieces_together(demo: Any) -> None:
    for version in demo.worked("sedge-bookmark").versions.values():
        extent, pen = Extent(), Recorder()
        drawn_row(version, extent)
        drawn_row(version, pen)
        spots = [p for _, points, _ in pen.lines for p in points]
        spots += [(x - wide / 2, y) for _, (x, y), wide, _ in pen.ovals]
        above, below = (min(x for x, y in spots if (y < 15) == up and (up or y > 25)) for up in (True, False))
        # three strips of 3 mm swing 2.85 mm to each side, and are drawn 2.6 mm wide
        bend = extent.right - way.BEND - 2.85 - 1.29
        drawn = (bend - above) + (bend - below) + math.pi * way.BEND
        # plait; tag from tip to hole; two rings; two loops of 1.8 mm with half their wire; loop, cap and tassel
        plait, tassel = (version.figures[name].value.usual for name in ("plait", "tassel"))
        pieces = plait + (26 - 1.6) + 2 * 4 + 2 * (1.8 + 0.5) + 3 + 12 + tassel
        assert drawn == pytest.approx(pieces, rel=0.01)


def test_a_drawn_bracelet_has_all_its_links_and_rings(demo: Any) -> None:
    for version in demo.worked("towline-bracelet").versions.values():
        pen = Recorder()
        drawn_row(version, pen)
        links = int(version.figures["links_needed"].value.usual)
        edges = sum(closed for _, _, closed in pen.lines)
        assert edges == 2 * links + 2 * (links - 1) + 3  # both edges of each; the hook, and both of its eye


def test_a_drawn_strand_has_its_agates_and_a_knot_beside_each_glass_bead(demo: Any) -> None:
    for version in demo.worked("slackwater-strand").versions.values():
        pen = Recorder()
        drawn_row(version, pen)
        wide = [wide for _, _, wide, _ in pen.ovals]
        glass = int(version.figures["glass_strung"].value.usual)
        assert sum(one == pytest.approx(1.5) for one in wide) == glass + 2
        assert len(wide) == 13 + glass + glass + 2
        largest = max(pen.ovals, key=lambda one: one[2])
        assert largest[1][0] == pytest.approx(0, abs=0.1), "the largest in the middle below"
        assert largest[1][1] > 0


def test_stiff_pieces_reach_straight_from_joint_to_joint() -> None:
    bits = [*between([ring(14, 5, 1.3)] * 9, ring(5, 2.5, 1)), bead(8, 8)]
    on, joints = way.closed(bits, 1)
    spots = [on.at(s) for s in joints]
    for bit, (a, b) in zip(bits, pairwise(spots), strict=True):
        assert math.dist(a, b) == pytest.approx(bit.long, abs=0.001)
    middle = (spots[0][0] + spots[1][0]) / 2
    assert middle == pytest.approx(0, abs=0.05)


def test_wire_in_a_row_goes_over_the_next_on_one_side_only() -> None:
    pen = Paper(outline="thin")
    bits = [ring(10, 6, 1)] * 12
    on, joints = way.closed(bits, 1)
    laid(pen, bits, on, joints)
    covers = [re.findall(r'd="([^"]*)"', mark)[0] for mark in pen.marks if 'fill="#fff"' in mark]
    assert len(covers) == 2 * len(bits), "each once, and once again where it lies over its neighbour"
    for again in covers[len(bits) :]:
        outline = max((Polygon(spots(run)) for run in again.split("Z") if run.strip()), key=lambda one: one.area)
        assert outline.area < 0.3 * math.pi * 9 * 5, "a corner of the link, and not the half of it"


def test_an_opening_runs_against_its_outline() -> None:
    # both clockwise, as a square and a smaller one in it are written
    square = [(0.0, 0.0), (9.0, 0.0), (9.0, 9.0), (0.0, 9.0)]
    pen = Paper()
    pen.cover([square, [(x / 3 + 3, y / 3 + 3) for x, y in square]])
    outer, inner = (Polygon(spots(run)).exterior for run in re.findall(r"M([^Z]*)Z", pen.marks[0]))
    assert outer.is_ccw != inner.is_ccw


def test_points_are_left_out_only_where_no_eye_misses_them() -> None:
    turn = [(5 * math.cos(i / 100), 5 * math.sin(i / 100)) for i in range(300)]
    kept = spared(turn)
    assert len(kept) < 40
    # midway between two points of a round of 5 mm, a chord lies a²/8r off it
    assert max(math.dist(a, b) ** 2 / (8 * 5) for a, b in pairwise(kept)) <= OFF * 1.1


def test_every_form_of_a_finding_can_be_drawn() -> None:
    assert set(FORMS) == set(findings.FORMS)


def test_a_hook_shows_so_far_past_its_link_as_stock_says(demo: Any) -> None:
    bits, _ = row_of(demo.main("towline-bracelet"))
    hook, extent = bits[-1], Extent()
    hook.draw(extent)
    # 16 mm from the inside of its eye to the inside of its bend, and a wire of 1.3 mm beyond each
    assert (extent.top, extent.bottom) == pytest.approx((0, 16 + 2 * 1.3), abs=0.02)


def spots(run: str) -> list[tuple[float, float]]:
    """The points of a path's run."""
    numbers = [float(one) for one in re.findall(r"-?[\d.]+", run)]
    return list(zip(numbers[::2], numbers[1::2], strict=True))


def test_a_brooch_pin_from_behind_has_its_hinge_right_and_its_open_catch_left(demo: Any) -> None:
    pin, pen = findings.bit(demo.main("saltpan-brooch").view[-1].part), Recorder()
    assert pin is not None
    pin.draw(pen)
    shafts = [points for kind, points, _ in pen.lines if kind == "thin"]
    [mouth] = [points for kind, points, closed in pen.lines if kind == "cut" and not closed]
    assert all(math.dist(*ends) > 15 for ends in shafts)  # from hinge to catch
    assert all(begin > 0 > end for (begin, _), (end, _) in shafts)
    assert max(x for x, _ in mouth) < 0
