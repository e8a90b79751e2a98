"""Wrapped loops, coils, spirals, hooks."""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.coils import coil_length, coil_wire, spiral_across, spiral_wire
from sheetgen.formulas.gauges import awg
from sheetgen.formulas.paths import arc_length, ear_wire
from sheetgen.formulas.wrapped import close_wrap, turned_loop, wrapped_end, wrapped_link_inside, wrapped_neck


def test_one_close_wrap_of_millimetre_wire_takes_6_36_mm() -> None:
    # independent script, row C8.1
    assert close_wrap(1) == pytest.approx(6.36227, abs=1e-5)
    assert close_wrap(1) == pytest.approx(math.sqrt(4 * math.pi**2 + 1))


def test_a_close_wrap_is_as_long_as_a_drawn_helix() -> None:
    # polyline of 20000 points
    points = [(math.cos(2 * math.pi * i / 20000), math.sin(2 * math.pi * i / 20000), i / 20000) for i in range(20001)]
    drawn = sum(math.dist(a, b) for a, b in itertools.pairwise(points))
    assert close_wrap(1) == pytest.approx(drawn, abs=1e-7)


def test_a_wrapped_end_of_22_gauge_takes_27_1_mm() -> None:
    # independent script, row C8.2; the trade's rule of thumb is 30 mm
    d = awg(22)
    assert turned_loop(2.5, d) == pytest.approx(9.877, abs=0.001)
    assert close_wrap(d) == pytest.approx(4.096, abs=0.001)
    assert wrapped_neck(3, d) == pytest.approx(1.931, abs=0.001)
    assert wrapped_end(2.5, d, 3, wrapped_neck(3, d)) + 3 == pytest.approx(27.096, abs=0.001)


def test_the_3_cm_rule_holds_at_22_gauge_and_fails_at_21() -> None:
    # bead supplier's tutorial on wrapped loops; independent script, section 8
    assert wrapped_end(3, awg(22), 3, 3 * awg(22)) + 3 == pytest.approx(28.7, abs=0.05)
    assert wrapped_end(3, awg(21), 3, 3 * awg(21)) + 3 == pytest.approx(30.7, abs=0.05)


@given(st.floats(1, 20), st.floats(0.3, 3), st.floats(0, 3), st.integers(1, 30))
@settings(max_examples=40)
def test_a_coil_takes_the_wire_of_a_drawn_helix(inside: float, wire: float, gap: float, turns: int) -> None:
    # quad over the helix
    pitch, radius = wire + gap, (inside + wire) / 2
    drawn, _ = quad(lambda _: math.hypot(radius, pitch / (2 * math.pi)), 0, 2 * math.pi * turns)
    assert coil_wire(inside, wire, pitch, turns) == pytest.approx(drawn, rel=1e-9)


def test_a_close_coil_of_ten_turns_is_eleven_wires_long() -> None:
    # ten pitches and the wire itself
    assert coil_length(1, 1, 10) == pytest.approx(11)


@given(st.floats(0, 10), st.floats(0.3, 3), st.floats(0, 2), st.floats(0.5, 12))
@settings(max_examples=40)
def test_a_flat_spiral_takes_the_wire_of_numeric_integration(
    inside: float, wire: float, gap: float, turns: float
) -> None:
    # scipy quad of Archimedes' spiral
    start = (inside + wire) / 2 if inside else 0.0
    growth = (wire + gap) / (2 * math.pi)
    drawn, _ = quad(lambda turn: math.hypot(start + growth * turn, growth), 0, 2 * math.pi * turns, limit=200)
    assert spiral_wire(inside, wire, gap, turns) == pytest.approx(drawn, rel=1e-7)


def test_a_flat_spirals_width_is_its_end_and_the_turn_opposite() -> None:
    # plane geometry: three close turns of 1 mm from the centre reach 3 mm and 2.5 mm out, plus the wire
    assert spiral_across(3, 1, 1) == pytest.approx(3 + 2.5 + 1)


@given(st.floats(0, 20), st.floats(0, 360), st.floats(0.3, 3))
def test_a_bend_is_its_share_of_a_ring(inside: float, degrees: float, wire: float) -> None:
    assert arc_length(inside, degrees, wire) == pytest.approx(math.pi * (inside + wire) * degrees / 360)


def test_a_wrapped_link_holds_its_bead_and_two_ends() -> None:
    # sum of its parts
    assert wrapped_link_inside(8, 2.5, 0.6438, 3 * 0.6438) == pytest.approx(8 + 2 * (3 * 0.6438 + 0.6438 + 2.5))


def test_an_ear_wire_is_a_loop_a_front_a_bend_and_a_back() -> None:
    # sum of straights and arcs
    parts = math.pi * (2 + 0.8) + 8 + math.pi * (10 + 0.8) / 2 + 20
    assert ear_wire(2, 8, 10, 20, 0.8) == pytest.approx(parts)


def test_wire_cannot_lie_closer_than_itself_or_bend_backwards() -> None:
    with pytest.raises(CannotBe):
        coil_wire(4, 1, 0.5, 10)
    with pytest.raises(CannotBe):
        arc_length(4, -90, 1)
    with pytest.raises(CannotBe):
        spiral_across(0.5, 1, 1)
