"""Domes, pans and cones from flat discs."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.domes import (
    across_on_ball,
    cap_area,
    cap_blank,
    cap_radius,
    hole_growth,
    hole_punched,
    hole_stretched,
    meridian_blank,
    middle_of_sheet,
    radius_in_cup,
    radius_over_former,
    rise_on_ball,
    stretched_thickness,
)
from sheetgen.formulas.pans import cone_cup_area, disc_of_area, neutral_circle_depth, pan_blank
from sheetgen.formulas.shrinkage import wet_size

domes = st.tuples(st.floats(5, 100), st.floats(0.01, 0.5)).map(lambda sh: (sh[0], sh[0] * sh[1]))


def test_half_a_ball_is_raised_from_a_disc_1_41_times_as_wide() -> None:
    # ★ Atkins, Practical Sheet and Plate Metal Work: disc radius = d ÷ 1.4
    assert cap_blank(25, 12.5) / 2 == pytest.approx(25 / 1.4, rel=0.0102)
    assert cap_blank(25, 12.5) == pytest.approx(25 * math.sqrt(2))


@given(domes)
def test_the_discs_radius_is_the_line_from_crown_to_rim(dome: tuple[float, float]) -> None:
    # ★ Atkins: hypotenuse of half-diameter and depth
    across, rise = dome
    assert cap_blank(across, rise) / 2 == pytest.approx(math.sqrt((across / 2) ** 2 + rise**2))


def test_a_pan_of_one_foot_radius_and_a_foot_and_a_half_deep_wants_a_disc_of_two_feet_radius() -> None:
    # Atkins, rule and figures
    assert pan_blank(2, 1.5) / 2 == pytest.approx(2.0, abs=1e-9)


def test_the_neutral_circle_of_a_five_inch_bowl_lies_1_6_inches_deep() -> None:
    # Atkins
    assert neutral_circle_depth(5) == pytest.approx(1.6, abs=0.01)


def test_a_slanting_cup_of_4_and_2_and_a_half_deep_has_28_5_square_inches() -> None:
    # Hodgson, Machines and Tools Employed in the Working of Sheet Metals
    area = cone_cup_area(4, 2, 2.5)
    assert area == pytest.approx(28.519, abs=0.003)
    assert disc_of_area(area) == pytest.approx(6.026, abs=0.001)


def test_a_cap_of_22_by_5_5_belongs_to_a_ball_of_13_75_radius() -> None:
    # independent script, row C9.7; integration agrees
    assert cap_radius(22, 5.5) == pytest.approx(13.750, abs=1e-4)
    assert cap_blank(22, 5.5) == pytest.approx(24.5967, abs=1e-4)


def test_half_a_ball_over_a_25_mm_former_in_2_mm_clay_wants_38_2_mm() -> None:
    # independent script, row C9.8: on the middle of the sheet, not 35.355
    radius = radius_over_former(12.5, 2)
    assert cap_blank(across_on_ball(radius, radius), radius) == pytest.approx(38.184, abs=0.001)


@pytest.mark.parametrize(
    ("across", "rise", "equal", "bent", "spread"),
    [
        (20, 2, 20.396, 20.529, 0.007),
        (22, 5.5, 24.597, 25.501, 0.037),
        (25, 5, 26.926, 27.587, 0.025),
        (30, 6, 32.311, 33.104, 0.025),
        (25, 12.5, 35.355, 39.270, 0.11),
    ],
)
def test_the_disc_lies_between_equal_area_and_equal_arc(
    across: float, rise: float, equal: float, bent: float, spread: float
) -> None:
    # independent script, table of section 9
    assert cap_blank(across, rise) == pytest.approx(equal, abs=0.001)
    assert meridian_blank(across, rise) == pytest.approx(bent, abs=0.001)
    assert bent / equal - 1 == pytest.approx(spread, abs=0.001)


@pytest.mark.parametrize(("across", "rise"), [(22, 5.5), (30, 6), (25, 12.5), (18, 1)])
def test_the_domes_area_is_that_of_numeric_integration(across: float, rise: float) -> None:
    # scipy quad over the dome's own outline
    radius = (across**2 / 4 + rise**2) / (2 * rise)
    area, _ = quad(lambda angle: 2 * math.pi * radius**2 * math.sin(angle), 0, math.acos(1 - rise / radius))
    assert cap_area(across, rise) == pytest.approx(area, rel=1e-8)
    assert math.pi / 4 * cap_blank(across, rise) ** 2 == pytest.approx(area, rel=1e-8)


@pytest.mark.parametrize(("share", "times"), [(0.1, 1.020), (0.25, 1.118), (0.5, 1.414)])
def test_a_hole_grows_as_the_sheet_stretches(share: float, times: float) -> None:
    # independent script, section 9
    assert hole_growth(100, 100 * share) == pytest.approx(times, abs=0.0005)
    assert stretched_thickness(100, 100 * share) == pytest.approx(1 / times**2, abs=0.001)


def test_a_six_inch_ball_wants_8_5_inch_discs_by_equal_area() -> None:
    # Holtzapffel makes it of 7.5 in discs, thinned to 78 %
    assert cap_blank(6, 3) == pytest.approx(8.485, abs=0.001)
    assert (7.5 / cap_blank(6, 3)) ** 2 == pytest.approx(0.78, abs=0.005)


@given(domes, st.floats(0.05, 0.9))
def test_a_punched_hole_keeps_the_area_of_the_sheet_taken_out(dome: tuple[float, float], share: float) -> None:
    # Archimedes: the little cap under the hole has the area of the punched disc
    across, rise = dome
    hole = across * share
    radius = cap_radius(across, rise)
    lost = cap_area(hole, radius - math.sqrt(radius**2 - hole**2 / 4))
    assert math.pi / 4 * hole_punched(hole, across, rise) ** 2 == pytest.approx(lost, rel=1e-6)


@given(domes, st.floats(0.05, 0.9))
def test_a_hole_that_stretches_is_punched_smaller(dome: tuple[float, float], share: float) -> None:
    across, rise = dome
    hole = across * share
    assert hole_stretched(hole, across, rise) <= hole
    assert hole_stretched(hole, across, rise) * hole_growth(across, rise) == pytest.approx(hole)


def test_a_flat_disc_is_its_own_blank() -> None:
    assert cap_blank(20, 0) == 20
    assert meridian_blank(20, 0) == 20
    assert hole_punched(3, 20, 0) == 3


@given(domes)
def test_width_and_rise_on_a_ball_belong_together(dome: tuple[float, float]) -> None:
    across, rise = dome
    radius = cap_radius(across, rise)
    assert across_on_ball(radius, rise) == pytest.approx(across, rel=1e-6)
    assert rise_on_ball(radius, across) == pytest.approx(rise, rel=1e-4, abs=1e-4)


@given(domes, st.floats(0, 0.3))
def test_a_dome_keeps_its_shape_as_it_shrinks(dome: tuple[float, float], s: float) -> None:
    across, rise = dome
    assert cap_blank(wet_size(across, s), wet_size(rise, s)) == pytest.approx(wet_size(cap_blank(across, rise), s))


def test_the_middle_of_a_thick_sheet_lies_half_its_thickness_inside() -> None:
    # solid geometry: half a ball of 27 mm outside in 2 mm sheet has its middle at 25 mm
    assert middle_of_sheet(27, 27, 13.5, 2) == pytest.approx(25)
    assert radius_in_cup(13.5, 2) == pytest.approx(12.5)


def test_a_dome_past_half_a_ball_is_refused_with_the_most_that_works() -> None:
    with pytest.raises(CannotBe, match="past half a ball") as refused:
        cap_blank(10, 8)
    assert refused.value.field == "rise"
    assert refused.value.help.startswith("5 mm or less")
    assert cap_blank(10, 5) > 0


def test_a_hole_wider_than_its_dome_is_refused() -> None:
    with pytest.raises(CannotBe) as refused:
        hole_punched(30, 20, 4)
    assert refused.value.field == "hole"


def test_a_dome_wider_than_its_ball_is_refused() -> None:
    with pytest.raises(CannotBe) as refused:
        rise_on_ball(10, 21)
    assert refused.value.help == "20 mm or less"
    with pytest.raises(CannotBe):
        across_on_ball(10, 11)
