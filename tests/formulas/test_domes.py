"""Domes, pans and cones from flat discs."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.domes import cap_blank, cap_radius, hole_punched, hole_stretched, middle_of_sheet
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


def test_a_cap_of_22_by_5_5_belongs_to_a_ball_of_13_75_radius() -> None:
    # independent script, row C9.7; integration agrees
    assert cap_radius(22, 5.5) == pytest.approx(13.750, abs=1e-4)
    assert cap_blank(22, 5.5) == pytest.approx(24.5967, abs=1e-4)


def test_a_six_inch_ball_wants_8_5_inch_discs_by_equal_area() -> None:
    # Holtzapffel makes it of 7.5 in discs, thinned to 78 %
    assert cap_blank(6, 3) == pytest.approx(8.485, abs=0.001)
    assert (7.5 / cap_blank(6, 3)) ** 2 == pytest.approx(0.78, abs=0.005)


@given(domes, st.floats(0, 0.3))
def test_a_dome_keeps_its_shape_as_it_shrinks(dome: tuple[float, float], s: float) -> None:
    across, rise = dome
    assert cap_blank(wet_size(across, s), wet_size(rise, s)) == pytest.approx(wet_size(cap_blank(across, rise), s))


def test_a_hole_wider_than_its_dome_is_refused() -> None:
    with pytest.raises(CannotBe, match="hole_stretched"):
        hole_stretched(30, 20, 4)
    with pytest.raises(CannotBe, match="hole_punched"):
        hole_punched(30, cap_radius(20, 4))


@pytest.mark.parametrize(
    ("across", "rise", "equal"),
    [(20, 2, 20.396), (22, 5.5, 24.597), (25, 5, 26.926), (30, 6, 32.311), (25, 12.5, 35.355)],
)
def test_a_dome_wants_the_disc_of_its_area(across: float, rise: float, equal: float) -> None:
    # independent script, table of section 9; and scipy quad over the dome's own outline
    assert cap_blank(across, rise) == pytest.approx(equal, abs=0.001)
    radius = (across**2 / 4 + rise**2) / (2 * rise)
    area, _ = quad(lambda angle: 2 * math.pi * radius**2 * math.sin(angle), 0, math.acos(1 - rise / radius))
    assert math.pi / 4 * cap_blank(across, rise) ** 2 == pytest.approx(area, rel=1e-8)


@given(st.floats(5, 60), st.floats(0.05, 0.5), st.floats(0.05, 0.9))
def test_a_punched_hole_keeps_the_area_of_the_sheet_taken_out(across: float, deep: float, share: float) -> None:
    # Archimedes: a cap of height h on a ball of radius r has the area 2 π r h, and so has the punched disc
    hole, radius = across * share, cap_radius(across, across * deep)
    high = radius - math.sqrt(radius**2 - hole**2 / 4)
    assert math.pi / 4 * hole_punched(hole, radius) ** 2 == pytest.approx(2 * math.pi * radius * high, rel=1e-6)


@given(st.floats(5, 60), st.floats(0.05, 0.5), st.floats(0.05, 0.9))
def test_a_hole_that_stretches_is_punched_smaller(across: float, deep: float, share: float) -> None:
    # it grows with the disc, whose width becomes the dome's
    hole, rise = across * share, across * deep
    assert hole_stretched(hole, across, rise) <= hole
    assert hole_stretched(hole, across, rise) / hole == pytest.approx(across / math.sqrt(across**2 + 4 * rise**2))


def test_a_flat_disc_is_its_own_blank() -> None:
    assert cap_blank(20, 0) == 20


def test_the_middle_of_a_thick_sheet_lies_half_its_thickness_inside() -> None:
    # solid geometry: half a ball of 27 mm outside in 2 mm sheet has its middle at 25 mm
    assert middle_of_sheet(27, cap_radius(27, 13.5), 2) == pytest.approx(25)


def test_a_dome_past_half_a_ball_is_refused_with_what_holds() -> None:
    for cap in (cap_blank, cap_radius):
        with pytest.raises(CannotBe, match="across = 10, rise = 8") as refused:
            cap(10, 8)
        assert "rise ≤ across ÷ 2" in refused.value.help
        assert cap(10, 5) > 0
