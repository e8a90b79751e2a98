"""Strips round formers: lengths and seams."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Point, box

from sheetgen.base.trouble import CannotBe
from sheetgen.facts import allowances
from sheetgen.formulas.wrap import (
    bend_allowance,
    bevel_overlap,
    bevelled,
    butt,
    former_for,
    inside_of_strip,
    inside_over,
    neutral_layer,
    neutral_of_right_angle,
    overlapped,
    round_former,
    strip_on_neutral,
    strip_round,
)


def test_one_millimetre_bent_square_round_one_takes_up_2_1_mm() -> None:
    # public page on the K-factor
    assert bend_allowance(90, 1, 1, 0.337) == pytest.approx(2.10, abs=0.005)
    assert neutral_layer(2.1, 90, 1, 1) == pytest.approx(0.3369, abs=0.0005)


def test_a_band_of_17_35_mm_inside_and_1_5_mm_thick_is_59_22_mm_long() -> None:
    # supplier article, Measuring a ring blank
    assert strip_round(17.35, 1.5) == pytest.approx(59.22, abs=0.01)
    assert butt(17.35, 1.5) == strip_round(17.35, 1.5)


def test_a_former_in_one_turn_of_sheet_makes_the_strip_longer() -> None:
    # independent script, row C3.5
    inside = inside_over(52.3, 0.10, 1)
    assert inside == pytest.approx(52.5)
    assert strip_round(inside, 2.05128) == pytest.approx(171.378, abs=0.001)


def test_two_walls_of_a_tenth_of_a_millimetre_sheet_are_0_63_mm_of_circumference() -> None:
    # independent script, section 3
    assert strip_round(inside_over(17, 0.1, 1), 1) - strip_round(17, 1) == pytest.approx(0.63, abs=0.005)


@pytest.mark.parametrize(
    ("thicknesses", "k"),
    [
        (allowances.SHARP_BEND_SOFT, 0.350),
        (allowances.SHARP_BEND_HALF_HARD, 0.407),
        (allowances.SHARP_BEND_HARD, 0.452),
    ],
)
def test_harder_metal_bends_further_from_its_inside(thicknesses: float, k: float) -> None:
    # Machinery's Handbook as remembered
    assert neutral_of_right_angle(thicknesses) == pytest.approx(k, abs=0.0005)
    assert bend_allowance(90, 3, 2, neutral_of_right_angle(thicknesses)) == pytest.approx(
        thicknesses * 2 + math.pi / 2 * 3
    )


@given(st.floats(1, 100), st.floats(0.1, 5))
def test_a_strip_closes_on_the_inside_it_was_cut_for(inside: float, thickness: float) -> None:
    assert inside_of_strip(strip_round(inside, thickness), thickness) == pytest.approx(inside)
    assert strip_on_neutral(inside, thickness, 0.5) == pytest.approx(strip_round(inside, thickness))


@given(st.floats(5, 100), st.floats(0, 0.5), st.integers(0, 3))
def test_a_former_and_its_sheet_make_up_the_inside(inside: float, sheet: float, turns: int) -> None:
    assert inside_over(former_for(inside, sheet, turns), sheet, turns) == pytest.approx(inside)


def test_wire_round_any_outline_grows_by_pi_thicknesses() -> None:
    # Steiner's formula; shapely's offset of a disc and of a rectangle
    disc, slab = Point(0, 0).buffer(5, quad_segs=4000), box(0, 0, 12, 7)
    for outline in (disc, slab):
        middle = outline.buffer(0.4, quad_segs=4000).length
        assert round_former(outline.length, 0.8) == pytest.approx(middle, abs=1e-5)


def test_a_cut_through_seam_wants_its_overlap_and_trim_on_top() -> None:
    # common practice: 3 to 6 mm
    assert overlapped(20, 2, 4, 1) == pytest.approx(math.pi * 22 + 5)


def test_a_bevel_at_45_degrees_laps_over_by_one_thickness() -> None:
    # plane geometry
    assert bevel_overlap(1.5, 45) == pytest.approx(1.5)
    assert bevelled(20, 1.5, 45) == pytest.approx(math.pi * 21.5 + 1.5)
    assert bevel_overlap(1.5, 90) == pytest.approx(0, abs=1e-12)


def test_a_sheet_that_fills_the_bore_is_refused() -> None:
    with pytest.raises(CannotBe) as refused:
        former_for(4, 1, 2)
    assert refused.value.field == "release sheet"


def test_a_strip_too_short_to_close_is_refused() -> None:
    with pytest.raises(CannotBe, match="too short to close"):
        inside_of_strip(3, 1)


@pytest.mark.parametrize(("inside", "thickness"), [(0, 1), (-3, 1), (10, 0), (float("inf"), 1), (float("nan"), 1)])
def test_a_ring_without_an_inside_or_a_thickness_is_refused(inside: float, thickness: float) -> None:
    with pytest.raises(CannotBe):
        strip_round(inside, thickness)


@pytest.mark.parametrize("angle", [0, -10, 91])
def test_a_bevel_that_does_not_cut_the_strip_is_refused(angle: float) -> None:
    with pytest.raises(CannotBe):
        bevel_overlap(1, angle)
