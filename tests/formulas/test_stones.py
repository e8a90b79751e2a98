"""Rows and rings of stones, their seats, sizes and weights."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from sheetgen.base.interval import Interval
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.stones import (
    bezel_strip_oval,
    bezel_strip_round,
    pp_mm,
    ring_count,
    ring_gap,
    row_count,
    row_gap,
    seat_wet,
    ss_mm,
)


def test_a_30_mm_line_takes_eleven_2_mm_stones() -> None:
    # independent script, row C10.7, on the floor's edge
    assert row_count(30, 1.5, 2, 0.5) == 11
    assert row_gap(30, 1.5, 2, 11) == pytest.approx(0.5, abs=1e-9)


def test_a_5_6_mm_line_takes_three_1_mm_stones_in_spite_of_binary() -> None:
    # independent script, row C10.7: (5.6 − 2.4 + 0.1) ÷ 1.1 is 2.9999999999999996
    assert row_count(5.6, 1.2, 1.0, 0.1) == 3


@pytest.mark.parametrize(("circle", "stone", "gap", "count"), [(12, 2, 0.35, 15), (4, 2, 0, 6)])
def test_a_ring_of_stones_is_counted_by_chords(circle: float, stone: float, gap: float, count: int) -> None:
    # independent script, row C10.8; the arc rule says 16 for the first
    assert ring_count(circle, stone, gap) == count


rows = st.tuples(st.floats(1, 200), st.floats(0, 5), st.floats(0.5, 10), st.floats(0, 3))


@given(rows)
def test_a_row_is_full_one_stone_more_does_not_go_in(row: tuple[float, float, float, float]) -> None:
    length, margin, stone, gap = row
    assume(2 * margin + stone <= length)
    n = row_count(length, margin, stone, gap)
    room = length - 2 * margin
    assert n * stone + (n - 1) * gap <= room + 1e-6
    assert (n + 1) * stone + n * gap > room


@given(rows)
def test_the_equal_gap_is_never_less_than_the_gap_asked_for(row: tuple[float, float, float, float]) -> None:
    length, margin, stone, gap = row
    assume(2 * margin + 2 * stone + gap <= length)
    n = row_count(length, margin, stone, gap)
    assume(n > 1)
    equal = row_gap(length, margin, stone, n)
    assert equal >= gap - 1e-6
    assert 2 * margin + n * stone + (n - 1) * equal == pytest.approx(length)


@given(st.floats(1, 80), st.floats(0.5, 8), st.floats(0, 2))
def test_a_ring_is_full_by_measuring_between_neighbours(circle: float, stone: float, gap: float) -> None:
    # distance of neighbouring centres, and one stone more
    assume(stone + gap <= circle)
    n = int(ring_count(circle, stone, gap))

    def apart(count: int) -> float:
        turn = 2 * math.pi / count
        return math.dist((circle / 2, 0), (circle / 2 * math.cos(turn), circle / 2 * math.sin(turn)))

    assert apart(n) >= stone + gap - 1e-6
    assert apart(n + 1) < stone + gap + 1e-9
    assert ring_gap(circle, stone, n) >= gap - 1e-6


def test_a_bezel_round_an_18_by_13_oval_is_50_27_mm() -> None:
    # scipy, row C10.9; a supplier's mean-diameter rule gives 49.951
    assert bezel_strip_oval(18, 13, 0.4) == pytest.approx(50.2685, abs=0.0001)
    assert math.pi * (15.5 + 0.4) == pytest.approx(49.951, abs=0.001)


def test_a_bezel_round_a_round_stone_is_pi_times_stone_and_strip() -> None:
    # metal supplier's formula page
    assert bezel_strip_round(8, 0.4) == pytest.approx(math.pi * 8.4)


@pytest.mark.parametrize("n", range(9, 21))
def test_pp_9_to_20_are_tenths_of_a_millimetre(n: int) -> None:
    # a supplier's size conversion reference
    assert pp_mm(n).low == pytest.approx(0.6 + 0.1 * n, abs=1e-9)
    assert pp_mm(n).high == pytest.approx(0.7 + 0.1 * n, abs=1e-9)


@pytest.mark.parametrize(
    ("n", "low", "high"), [(1, 0.80, 0.90), (2, 0.90, 1.00), (5, 1.20, 1.30), (6, 1.30, 1.35), (7, 1.35, 1.40)]
)
def test_small_pp_sizes_are_those_of_the_table(n: int, low: float, high: float) -> None:
    # a supplier's size conversion reference; a crystal maker's page agrees on PP 1 and 2
    assert (pp_mm(n).low, pp_mm(n).high) == (low, high)


@pytest.mark.parametrize(
    ("n", "low", "high"),
    [
        (12, 3.0, 3.2),  # a costume-stone shop's note
        (16, 3.8, 4.0),
        (20, 4.6, 4.8),
        (21, 4.80, 4.90),  # a supplier's size conversion reference
        (30, 6.32, 6.50),
        (39, 8.16, 8.41),
        ("00", 0.90, 1.00),
        (5, 1.70, 1.90),
        (9, 2.50, 2.70),
    ],
)
def test_ss_sizes_are_those_of_the_tables(n: float | str, low: float, high: float) -> None:
    assert ss_mm(n) == Interval((low + high) / 2, low, high)


@pytest.mark.parametrize(("n", "near"), [(21, "PP 20"), (24, "PP 20"), (32, "PP 20"), (0, "PP 1"), (9.5, "PP")])
def test_a_pp_size_that_was_never_read_is_not_made_up(n: float, near: str) -> None:
    with pytest.raises(CannotBe) as refused:
        pp_mm(n)
    assert near in refused.value.help
    assert "mm" in refused.value.help


@pytest.mark.parametrize(("n", "near"), [(13, "SS 12"), (22, "SS 21"), (50, "SS 39"), ("x", "SS 000"), (-4, "SS 000")])
def test_an_ss_size_that_was_never_read_is_not_made_up(n: float | str, near: str) -> None:
    with pytest.raises(CannotBe) as refused:
        ss_mm(n)
    assert near in refused.value.help


def test_a_row_or_a_ring_with_no_room_for_its_stones_is_refused() -> None:
    with pytest.raises(CannotBe):
        row_count(10, 4.5, 2, 0.5)
    with pytest.raises(CannotBe):
        row_gap(10, 1, 2, 5)
    with pytest.raises(CannotBe):
        ring_gap(4, 2, 7)
    with pytest.raises(CannotBe):
        ring_count(2, 2, 0.5)


@given(st.floats(1, 10), st.floats(0.05, 0.3), st.floats(0, 0.3), st.floats(0, 0.3))
def test_a_stone_always_goes_into_its_fired_seat(stone: float, clearance: float, one: float, other: float) -> None:
    # worst case of the range; clearance 0.1 to 0.2 mm is common practice
    low, high = sorted((one, other))
    hole = seat_wet(stone, clearance, high)
    assert hole * (1 - high) == pytest.approx(stone + clearance)
    assert hole * (1 - low) >= stone + clearance - 1e-9
