"""Strips round formers: lengths and seams."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.wrap import former_for, inside_over, strip_round


def test_a_band_of_17_35_mm_inside_and_1_5_mm_thick_is_59_22_mm_long() -> None:
    # supplier article, Measuring a ring blank
    assert strip_round(17.35, 1.5) == pytest.approx(59.22, abs=0.01)


def test_a_former_in_one_turn_of_sheet_makes_the_strip_longer() -> None:
    # independent script, row C3.5
    inside = inside_over(52.3, 1, 0.10)
    assert inside == pytest.approx(52.5)
    assert strip_round(inside, 2.05128) == pytest.approx(171.378, abs=0.001)


def test_two_walls_of_a_tenth_of_a_millimetre_sheet_are_0_63_mm_of_circumference() -> None:
    # independent script, section 3
    assert strip_round(inside_over(17, 1, 0.1), 1) - strip_round(17, 1) == pytest.approx(0.63, abs=0.005)


@given(st.floats(5, 100), st.floats(0, 0.5), st.integers(0, 3))
def test_a_former_and_its_sheet_make_up_the_inside(inside: float, sheet: float, turns: int) -> None:
    assert inside_over(former_for(inside, turns, sheet), turns, sheet) == pytest.approx(inside)


def test_a_sheet_that_fills_the_bore_is_refused() -> None:
    with pytest.raises(CannotBe, match="former_for") as refused:
        former_for(4, 2, 1)
    assert refused.value.help == "valid for inside > 2 × turns × sheet"


@pytest.mark.parametrize(("inside", "thickness"), [(0, 1), (-3, 1), (10, 0), (float("inf"), 1), (float("nan"), 1)])
def test_a_ring_without_an_inside_or_a_thickness_is_refused(inside: float, thickness: float) -> None:
    with pytest.raises(CannotBe):
        strip_round(inside, thickness)


@given(st.floats(1, 100), st.floats(0.1, 5))
def test_a_strip_is_as_long_as_the_middle_of_its_thickness_is_round(inside: float, thickness: float) -> None:
    assert strip_round(inside, thickness) == pytest.approx(3.14159265359 * (inside + thickness))
