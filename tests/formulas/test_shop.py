"""Casting, sheet, waste, and pieces out of a slab."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.buying import (
    clay_returned,
    grid_count,
    least_slabs,
    length_of_roll,
    most_by_area,
    pieces_from_stock,
    stock_for_pieces,
    with_waste,
    with_yield,
)
from sheetgen.formulas.mass import disc_mass, sheet_mass, slab_area


def test_waste_on_the_need_and_yield_on_the_buy_are_not_the_same() -> None:
    # section 16: × 1.10 against ÷ 0.90 = × 1.111
    assert with_waste(100, 0.10) == pytest.approx(110)
    assert with_yield(100, 0.90) == pytest.approx(111.1, abs=0.05)


@given(st.floats(10, 2000), st.floats(1, 100), st.floats(0, 2))
def test_one_piece_more_would_not_come_out_of_the_stock(stock: float, piece: float, kerf: float) -> None:
    count = pieces_from_stock(stock, piece, kerf)
    if count:
        assert stock_for_pieces(count, piece, kerf) <= stock + 1e-6
    assert stock_for_pieces(count + 1, piece, kerf) > stock


def test_a_hundred_millimetres_give_nineteen_5_mm_pieces_with_a_saw_of_0_3() -> None:
    # counting: 18 × 5.3 + 5 = 100.4 is too long for 19, so 18
    assert pieces_from_stock(100, 5, 0.3) == 18
    assert pieces_from_stock(100.4, 5, 0.3) == 19


@given(st.floats(20, 200), st.floats(20, 200), st.floats(3, 60), st.floats(3, 60), st.floats(0, 5))
@settings(max_examples=50)
def test_a_grid_never_overfills_its_slab(long: float, wide: float, length: float, width: float, gap: float) -> None:
    count = grid_count(long, wide, length, width, gap)
    assert count <= most_by_area(long * wide, length * width)
    assert least_slabs(count * length * width, long * wide) <= 1
    assert count == grid_count(long, wide, width, length, gap)


def test_offcut_clay_comes_back_less_a_little() -> None:
    # common practice: 3 to 10 % is lost
    assert clay_returned(20, 0.10) == pytest.approx(18)


# ★ Hopper and Turton C1a, as shipped with hyperpack 1.3.0: sixteen pieces that fill 20 × 20
HOPPER_TURTON = [
    (2, 12), (7, 12), (8, 6), (3, 6), (3, 5), (5, 5), (3, 12), (3, 7),
    (5, 7), (2, 6), (3, 2), (4, 2), (3, 4), (4, 4), (9, 2), (11, 2),
]  # fmt: skip


def test_sixteen_rectangles_that_fill_a_slab_need_no_more_than_one_by_area() -> None:
    # ★ Hopper and Turton C1a
    assert least_slabs(sum(w * h for w, h in HOPPER_TURTON), 20 * 20) == 1
    assert sum(w * h for w, h in HOPPER_TURTON) == 400


@pytest.mark.parametrize(
    ("squares", "area"),
    [
        ((2, 4, 6, 7, 8, 9, 11, 15, 16, 17, 18, 19, 24, 25, 27, 29, 33, 35, 37, 42, 50), 112 * 112),
        ((1, 4, 7, 8, 9, 10, 14, 15, 18), 33 * 32),
    ],
)
def test_squares_that_fill_a_slab_are_never_said_to_need_two(squares: tuple[int, ...], area: int) -> None:
    # perfect squared square of order 21 and a squared rectangle, as remembered; areas add up
    assert least_slabs(sum(n * n for n in squares), area) == 1


def test_a_25_mm_disc_of_0_8_sterling_weighs_4_07_grams() -> None:
    # independent script, row C15.4
    assert disc_mass(25, 0.8, 10.36) == pytest.approx(4.068, abs=0.001)
    assert sheet_mass(100, 1, 10) == pytest.approx(1)
    assert slab_area(1, 1, 10) == pytest.approx(100)


@pytest.mark.parametrize(
    ("pieces", "roll"),
    [
        (0, 0),
        (1, 27),
        (3, 27),  # 3 × 94 is 282 of 300 mm
        (4, 54),
        (10, 94),  # four rows of three would be 108; turned, ten lie side by side on 270 mm
        (12, 108),  # four rows of three; turned, two rows of eleven and so 188
    ],
)
def test_three_pieces_of_94_mm_lie_side_by_side_on_a_roll_of_300_mm(pieces: int, roll: float) -> None:
    assert length_of_roll(pieces, 27, 94, 300) == roll


def test_a_piece_as_wide_as_the_roll_lies_alone_and_a_wider_one_nowhere() -> None:
    assert length_of_roll(5, 400, 300, 300) == 2000
    with pytest.raises(CannotBe, match="wider than the roll"):
        length_of_roll(5, 400, 301, 300)
