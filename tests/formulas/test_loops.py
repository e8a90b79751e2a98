"""Jump rings, round and oval."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq, minimize
from scipy.special import ellipe
from shapely import Polygon

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.loops import (
    aspect_ratio,
    closed_inside,
    coil_for_rings,
    ellipse_perimeter,
    former_before_springback,
    linked_pitch,
    oval_wire_ellipse,
    oval_wire_stadium,
    ring_outside,
    ring_wire,
    rings_from_coil,
)


def test_a_quarter_of_the_earths_ellipse_is_ten_thousand_and_two_kilometres() -> None:
    # ★ WGS 84 quarter meridian, GIS Stack Exchange 71960
    assert ellipse_perimeter(2 * 6378.137, 2 * 6356.7523142) / 4 == pytest.approx(10001.966, abs=0.001)


def test_an_ellipse_of_half_axes_5_and_3_has_the_perimeter_that_scipy_gives() -> None:
    # scipy ellipe, quad agrees
    assert ellipse_perimeter(10, 6) == pytest.approx(25.526998863398, abs=1e-9)


def test_the_complete_elliptic_integral_of_one_half_is_that_of_the_tables() -> None:
    # Abramowitz & Stegun ch. 17 as remembered; scipy
    axis = math.sqrt(0.5)
    assert ellipse_perimeter(2, 2 * axis) / 4 == pytest.approx(1.3506438810, abs=1e-9)


@given(st.floats(0.01, 1))
def test_ellipses_of_every_shape_agree_with_scipy(ratio: float) -> None:
    # scipy.special.ellipe
    assert ellipse_perimeter(20, 20 * ratio) == pytest.approx(40 * ellipe(1 - ratio**2), rel=1e-12)


def test_an_oval_stone_of_18_by_13_measures_49_mm_around_and_the_mean_rule_is_short() -> None:
    # scipy; the rule π × mean diameter is 0.65 % short
    exact = ellipse_perimeter(18, 13)
    assert exact == pytest.approx(49.0119, abs=0.0001)
    assert 1 - math.pi * 15.5 / exact == pytest.approx(0.0065, abs=0.00005)


@pytest.mark.parametrize(("ratio", "short"), [(2, 0.027), (4, 0.084)])
def test_the_mean_diameter_rule_gets_worse_as_the_oval_gets_longer(ratio: float, short: float) -> None:
    # independent script, section 6
    assert 1 - math.pi * (ratio + 1) / 2 / ellipse_perimeter(ratio, 1) == pytest.approx(short, abs=0.0006)


def test_an_oval_ring_of_12_by_6_with_straight_sides_takes_35_96_mm() -> None:
    # independent script, row C6.7
    assert oval_wire_stadium(12, 6, 1.62773) == pytest.approx(35.963, abs=0.001)


def test_an_elliptic_ring_of_12_by_6_takes_34_18_mm() -> None:
    # independent script, row C6.8; shapely's offset agrees to 1e-7
    assert oval_wire_ellipse(12, 6, 1.62773) == pytest.approx(34.179, abs=0.001)


def test_the_middle_of_the_wire_is_a_parallel_curve_and_no_ellipse() -> None:
    # shapely offset of a 6000-point ellipse; an ellipse with longer axes is 0.12 mm short
    angle = np.linspace(0, 2 * math.pi, 6001)[:-1]
    inside = Polygon(np.column_stack([6 * np.cos(angle), 3 * np.sin(angle)]))
    d = 1.62773
    assert oval_wire_ellipse(12, 6, d) == pytest.approx(inside.buffer(d / 2, quad_segs=500).length, abs=1e-4)
    assert oval_wire_ellipse(12, 6, d) - ellipse_perimeter(12 + d, 6 + d) == pytest.approx(0.12, abs=0.006)


def test_a_5_mm_ring_in_0_051_inch_wire_has_an_aspect_ratio_of_3_86() -> None:
    # craft magazine's article on aspect ratio, 2017: 5 mm × 0.0394 in
    assert aspect_ratio(5 * 0.0394, 0.051) == pytest.approx(3.86, abs=0.005)


def test_a_saw_cut_of_0_4_mm_takes_0_13_mm_off_a_closed_ring() -> None:
    # independent script, section 6
    assert 5 - closed_inside(5, 0.4) == pytest.approx(0.13, abs=0.005)


@given(st.floats(1, 200), st.floats(0.2, 4))
def test_one_ring_more_would_not_come_out_of_the_coil(length: float, wire: float) -> None:
    count = rings_from_coil(length, wire)
    assert coil_for_rings(count, wire) <= length + 1e-6
    assert coil_for_rings(count + 1, wire) > length


def test_a_coil_of_ten_0_1_mm_turns_gives_ten_rings_in_spite_of_binary() -> None:
    # rule 2: 0.7 ÷ 0.1 is 6.999999999999999 in binary
    assert rings_from_coil(0.7, 0.1) == 7


@given(st.floats(1, 30), st.floats(0.3, 3))
def test_the_wire_in_a_ring_is_that_of_a_polygon_with_very_many_sides(inside: float, d: float) -> None:
    # polyline of 20000 sides on the wire's middle
    sides = 20000
    radius = (inside + d) / 2
    assert ring_wire(inside, d) == pytest.approx(sides * 2 * radius * math.sin(math.pi / sides), rel=1e-7)


def test_a_ring_that_springs_open_by_5_percent_is_wound_on_a_thinner_rod() -> None:
    # input measured on a trial coil
    assert former_before_springback(4.2, 0.05) == pytest.approx(4.0)


def test_an_oval_wider_than_long_is_told_which_side_comes_first() -> None:
    with pytest.raises(CannotBe) as refused:
        ellipse_perimeter(6, 12)
    assert refused.value.help == "the longer side first: 12 mm long, 6 mm wide"


@pytest.mark.parametrize("ratio", [2.5, 3.2, 5])
@pytest.mark.parametrize("together", [1, 2, 3])
def test_rings_through_each_other_are_pulled_apart_until_two_of_them_touch(ratio: float, together: int) -> None:
    # scipy: the least distance of every two middles of their wires, from all of their points, is one wire
    if together == 3 and ratio < 3:
        with pytest.raises(CannotBe, match="do not go through"):
            linked_pitch(ratio, 1, together)
        return
    r, places = (ratio + 1) / 2, [i - (together - 1) / 2 for i in range(together)]

    def clear(apart: float) -> float:
        least = math.inf
        for up in places:
            for out in places:

                def between(at: Any, up: float = up, out: float = out) -> Any:
                    a, b = at
                    across = (r * np.cos(a) - apart + r * np.cos(b)) ** 2
                    return across + (r * np.sin(a) - out) ** 2 + (up - r * np.sin(b)) ** 2

                turns = np.meshgrid(*[np.linspace(-1.5, 1.5, 120)] * 2)
                near = np.unravel_index(between(turns).argmin(), turns[0].shape)
                least = min(least, minimize(between, [t[near] for t in turns], tol=1e-14).fun)
        return math.sqrt(least) - 1

    assert linked_pitch(ratio, 1, together) == pytest.approx(brentq(clear, r, 2 * r - 0.3), abs=1e-6)
    if together == 1:
        assert linked_pitch(ratio, 1, together) == pytest.approx(ratio)


def test_a_ring_sold_by_6_mm_outside_in_0_81_mm_wire_has_an_inside_of_4_38() -> None:
    # blog, Buying the right rings, 2012
    assert aspect_ratio(4.38, 0.81) == pytest.approx(5.4, abs=0.02)
    assert ring_outside(4.38, 0.81) == pytest.approx(6)
