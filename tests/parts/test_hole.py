"""Hole: a starter hole and the wire that must pass. The test silver shrinks 8 to 10 %; drills 2 to 2.5 mm are owned."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sheetgen.base.pen import Extent, Recorder
from sheetgen.draw.kinds import mark

HOLE = {"clay": "silver", "edge": "1.5 mm"}
WIRE = 1.2908459  # 16 AWG, GNU Units 2.22


def test_a_hole_is_drilled_larger_by_what_the_fire_takes(stocked: Any) -> None:
    hole = stocked("hole", **HOLE, opening="2 mm")
    assert not hole.troubles
    assert hole.usual("drill_used") == 2.2  # 2 ÷ 0.91 = 2.198
    assert (hole["fired"].low, hole["fired"].high) == pytest.approx((1.98, 2.024))


def test_its_middle_is_marked_the_edge_and_half_the_drill_away(stocked: Any) -> None:
    hole = stocked("hole", **HOLE, drill="2.4 mm")
    assert hole.usual("wet_middle") == pytest.approx(1.5 / 0.91 + 1.2)
    # and fires to the edge that was asked for
    assert hole.usual("wet_middle") * 0.91 - 2.4 * 0.91 / 2 == pytest.approx(1.5)


def test_for_a_wire_alone_the_hole_passes_it_at_the_largest_shrinkage(stocked: Any) -> None:
    hole = stocked("hole", **HOLE, for_wire="copper-16awg", clearance="0.5 mm")
    # (1.29 + 0.5) ÷ 0.90 = 1.99: the 2 mm drill is the smallest that is enough
    assert hole.usual("drill_used") == 2
    assert hole.usual("room") == pytest.approx(2 * 0.90 - WIRE)
    assert hole.usual("room") >= 0.5


def test_a_ring_reaches_round_the_corner_of_the_rim(stocked: Any) -> None:
    hole = stocked("hole", **HOLE, opening="2 mm", for_wire="copper-16awg", thickness="2 mm")
    assert hole.usual("least_ring") == pytest.approx(math.hypot(1.5, 2 * 0.92))


@settings(max_examples=30)
@given(st.floats(0, 1))
def test_no_smaller_drill_in_the_drawer_would_have_done(stocked: Any, clearance: float) -> None:
    hole = stocked("hole", **HOLE, for_wire="copper-16awg", clearance=f"{clearance:.3f} mm")
    need = (WIRE + round(clearance, 3)) / 0.90
    fitting = [d for d in (2, 2.2, 2.3, 2.4, 2.5) if d >= need - 1e-9]
    if fitting and fitting[0] <= need + 0.5:
        assert hole.usual("drill_used") == fitting[0]
    else:
        assert hole.blamed(hole.errors[0]) == "for wire"


@pytest.mark.parametrize(
    ("fields", "blamed", "help_"),
    [
        ({"opening": "2 mm", "drill": "2.2 mm"}, "drill", "take one of them out"),
        ({"drill": "2.1 mm"}, "drill", "2 mm and 2.2 mm"),
        ({"opening": "4 mm"}, "opening", "2.5 mm"),
        ({"opening": "2 mm", "width": "4.9 mm"}, "width", "5.1 mm or more"),
        ({"opening": "2 mm", "place": "3 mm, 4 mm"}, "place", "drilled in"),
        ({"opening": "2 mm", "edge": "0 mm"}, "edge", "more than 0 mm"),
        ({"opening": "2 mm", "for_wire": "glass-2"}, "for wire", "copper-16awg"),
    ],
)
def test_a_hole_that_cannot_be_is_refused_at_its_field(
    stocked: Any, fields: dict[str, str], blamed: str, help_: str
) -> None:
    hole = stocked("hole", **{**HOLE, **fields})
    assert hole.blamed(hole.errors[0]) == blamed
    assert help_ in hole.errors[0].help


@pytest.mark.parametrize("by", ["opening", "drill"])
def test_a_hole_too_small_for_its_wire_names_a_size_that_passes_it(stocked: Any, by: str) -> None:
    # 2 mm wire: a drill of 2.2 may fire to 1.98; the next owned is 2.3
    hole = stocked("hole", **HOLE, for_wire="thick-2", **{by: "2.2 mm" if by == "drill" else "2 mm"})
    assert hole.blamed(hole.errors[0]) == by
    assert "1.98 mm" in hole.errors[0].message
    offered = hole.errors[0].help.split(" or")[0]
    mended = stocked("hole", **HOLE, for_wire="thick-2", **{by: offered})
    assert not mended.errors
    assert mended.usual("drill_used") == 2.3


def test_a_hole_by_nothing_is_told_what_it_may_go_by(stocked: Any) -> None:
    assert any("or the wire that must pass" in t.message for t in stocked("hole", **HOLE).errors)


def test_an_edge_that_pulls_out_is_refused_and_may_be_waived(stocked: Any) -> None:
    hole = stocked("hole", clay="silver", opening="2 mm", edge="0.8 mm")
    assert len(hole.errors) == 1
    assert hole.blamed(hole.troubles[0]) == "edge"
    assert "least-edge" in hole.troubles[0].help


# On the template of its part

HOLED = """\
title: Holed
revision: 1
date: 2026-01-10
summary: A plate with a hole.
makes: 1 plate
level: first piece
parts:
  plate:
    kind: cut shape
    clay: silver
    thickness: 4 cards
{plate}
  hole:
    kind: hole
    clay: silver
    opening: 2 mm
    drilled in: plate
{hole}
steps:
  - title: Cut
    parts: [plate, hole]
  - title: Dry
    wait: drying
    does: [test]
  - title: Fire
    firing: silver
"""
SQUARE = {"shape": "rectangle", "across": "20 mm", "down": "30 mm"}
PATH = "M-5 10 L15 10 L15 40 L-5 40 Z"  # a drawing whose origin is no corner of it


@pytest.fixture
def holed(libraries: Any, tmp_path: Any) -> Any:
    """What comes of a plate with a hole in it: what was found wrong, and the hole as it was worked."""

    def make(plate: dict[str, str], **hole: str) -> tuple[list[Any], Any]:
        told = ["\n".join(f"    {k.replace('_', ' ')}: {v}" for k, v in fields.items()) for fields in (plate, hole)]
        text = HOLED.format(plate=told[0], hole=told[1])
        library = libraries.make(tmp_path, {**libraries.FLAT_FILES, "holed/project.yaml": text})
        outcome = library.check("holed")
        return list(outcome.troubles), outcome.worked[0].main.parts["hole"] if outcome.worked else None

    return make


def middles(hole: Any) -> list[tuple[float, float]]:
    return [one.centre for one in hole.drilled]


def test_a_hole_stands_its_edge_away_from_the_middle_of_a_side(holed: Any) -> None:
    # 20 × 30 is cut 22.0 × 33.0; 1.5 ÷ 0.91 + 2.2 ÷ 2 = 2.75, marked 2.7
    troubles, hole = holed(SQUARE, beside="left and right")
    assert not troubles
    assert middles(hole) == [pytest.approx((2.7, 16.5)), pytest.approx((19.3, 16.5))]
    assert {(one.width, one.height) for one in hole.drilled} == {(2.2, 2.2)}


def test_a_hole_may_be_placed_on_its_part(holed: Any) -> None:
    # 5 and 12 mm finished from the upper left corner: that and 1 ÷ 0.91 of it on the wet template
    troubles, hole = holed(SQUARE, place="5 mm, 12 mm")
    assert not troubles
    assert middles(hole) == [pytest.approx((5 / 0.91, 12 / 0.91))]
    assert "wet_middle" not in hole.figures


@pytest.mark.parametrize("across", ["20 mm", "30 mm"])
def test_on_an_own_outline_a_hole_stands_where_the_drawing_shows(holed: Any, across: str) -> None:
    # the drawing is 20 wide and 30 high from (-5, 10) on: (0, 20) is a quarter across and a third down, at any size
    troubles, hole = holed({"shape": "outline", "path": PATH, "across": across}, place="0 mm, 20 mm")
    assert not troubles
    wide = {"20 mm": 22.0, "30 mm": 33.0}[across]  # 21.98 and 32.97, cut to a tenth
    assert middles(hole) == [pytest.approx((wide / 4, wide * 1.5 / 3))]


@pytest.mark.parametrize(
    ("place", "blamed", "says"),
    [("25 mm, 12 mm", "place", "outside"), ("1.2 mm, 12 mm", "edge", "left beside the hole")],
)
def test_a_hole_placed_off_its_part_or_at_its_rim_is_refused(holed: Any, place: str, blamed: str, says: str) -> None:
    troubles, _ = holed(SQUARE, place=place, edge="1.5 mm")
    [found] = [t for t in troubles if t.severity == "error"]
    assert says in found.message
    assert found.place.source.line(found.place.line).split(":")[0].strip() == blamed


def test_a_placed_hole_is_marked_from_the_left_and_the_top(holed: Any) -> None:
    _, hole = holed(SQUARE, place="5 mm, 12 mm")
    pen, around = Recorder(), Extent(0, 0, 22, 33)
    assert mark(pen, hole, around) == "Ø 2.2\u00a0mm"
    [(kind, middle, wide, tall)] = pen.ovals
    assert (kind, wide, tall) == ("cut", 2.2, 2.2)
    assert middle == pytest.approx((5 / 0.91, 12 / 0.91))
    assert {words for _, words in pen.texts} == {"5.5", "13.2"}  # 5.49 and 13.19
