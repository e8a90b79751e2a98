"""Rounding, once, when words are put on the page."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.interval import Interval, interval
from sheetgen.base.rounding import Rounder, to_step, up_for_buying
from sheetgen.model.numbers import Numbers

if TYPE_CHECKING:
    from sheetgen.base.figure import Rounding
    from sheetgen.base.printed import Printed

HALVES = Rounder(step=0.5)
TENTHS = Rounder(step=0.1)
WHOLE = Rounder(step=1)
INCHES = Rounder(inches=True)
COMMA = Rounder(step=0.5, point=",")
sizes = st.floats(0.1, 500)


def size(rounder: Rounder, value: Interval | float, rounding: Rounding, unit: str = "mm") -> Printed:
    """A number as the page prints it."""
    return Numbers(rounder).printed(interval(value), unit, rounding)


@pytest.mark.parametrize(
    ("x", "rounding", "words"),
    [
        (24.1758, "bench", "24"),
        (24.25, "bench", "24.5"),
        (24.2499, "bench", "24"),
        (24.01, "bench up", "24.5"),
        (24.0, "bench up", "24"),
        (24.4999999999999, "bench up", "24.5"),
        (24.99, "bench down", "24.5"),
        (3.2967, "tenth", "3.3"),
        (3.0, "tenth", "3"),
        (41.2, "millimetre", "41"),
        (41.2, "millimetre up", "42"),
        (323.1, "centimetre most", "330"),
        (1.2908459, "fine", "1.29"),
        (0.75, "fine", "0.75"),
        (3.0, "fine", "3"),
    ],
)
def test_a_size_is_rounded_to_what_a_hand_can_do(x: float, rounding: Rounding, words: str) -> None:
    assert size(HALVES, x, rounding).words == words


@pytest.mark.parametrize(
    ("x", "words"),
    [
        (25.4, "1"),
        (25.4 * 1.5, "1 1/2"),
        (25.4 * 21 / 64, "21/64"),
        (24.1758, "61/64"),  # 0.95180 in is 60.9 sixty-fourths
        (50.8 + 25.4 / 64, "2 1/64"),
        (25.4 / 200, "0"),
    ],
)
def test_an_inch_is_cut_to_a_sixty_fourth(x: float, words: str) -> None:
    assert size(INCHES, x, "bench").words == words


@given(sizes)
def test_an_inch_is_the_nearest_sixty_fourth_and_prints_as_what_it_is(x: float) -> None:
    # second opinion: Python's fractions
    printed = size(INCHES, x, "bench")
    assert abs(float(printed) - x) <= 25.4 / 128 + 1e-9
    total = sum(Fraction(word) for word in printed.words.split())
    assert float(total) * 25.4 == pytest.approx(float(printed))
    assert total.denominator in {1, 2, 4, 8, 16, 32, 64}


@given(sizes, st.sampled_from([0.1, 0.25, 0.5, 1]))
def test_a_rounded_size_is_within_half_a_step(x: float, step: float) -> None:
    assert abs(to_step(x, step) - x) <= step / 2 + 1e-9
    assert to_step(x, step, "bench up") >= x - 1e-6
    assert to_step(x, step, "bench down") <= x + 1e-6


@given(sizes, st.sampled_from(["bench", "bench up", "bench down", "tenth"]))
def test_the_words_say_the_very_number_that_is_drawn(x: float, rounding: Rounding) -> None:
    """The printed size and the template share one number."""
    for rounder in (HALVES, TENTHS, WHOLE):
        printed = size(rounder, x, rounding)
        assert float(printed.words) == pytest.approx(float(printed), abs=1e-9)


@pytest.mark.parametrize("step", [0.25, 0.2, 0.05, 0.125, 0.75])
@given(x=sizes)
def test_any_bench_step_prints_all_its_decimals(step: float, x: float) -> None:
    printed = size(Rounder(step=step), x, "bench")
    assert float(printed.words) == pytest.approx(float(printed), abs=1e-9)


def test_a_studio_that_writes_commas_gets_commas() -> None:
    assert size(COMMA, 24.4, "bench").words == "24,5"
    assert COMMA.range(Interval(17.3, 17.13, 17.52), 1) == "17,1 – 17,6"


@pytest.mark.parametrize(
    ("low", "high", "printed"),
    [
        (17.13, 17.52, "17.1 – 17.6"),
        (17.1, 17.5, "17.1 – 17.5"),
        (17.0, 17.0, "17.0"),
        (17.01, 17.01, "17.0 – 17.1"),
        (0.0, 0.04, "0.0 – 0.1"),
        (436.3, 444.8, "436 – 445"),
        (170.5, 170.5, "170.5"),
        (114.0, 114.0, "114"),
    ],
)
def test_a_range_is_printed_no_narrower_than_it_is(low: float, high: float, printed: str) -> None:
    assert HALVES.range(Interval((low + high) / 2, low, high), 1) == printed


@given(sizes, sizes)
def test_a_printed_range_holds_all_of_its_range(a: float, b: float) -> None:
    low, high = sorted((a, b))
    for rounder, scale in ((HALVES, 1.0), (INCHES, 25.4)):
        ends = rounder.range(Interval(low, low, high), 1).split(" – ")
        assert float(ends[0]) * scale <= low + 1e-6
        assert float(ends[-1]) * scale >= high - 1e-6


@given(st.floats(0.001, 5000))
def test_what_is_bought_is_never_too_little_and_never_a_step_too_much(x: float) -> None:
    bought = up_for_buying(x)
    step = 0.1 if x < 1 else 0.5 if x < 10 else 1 if x < 100 else 5
    assert x - 1e-6 <= bought < x + step + 1e-6


@pytest.mark.parametrize(("x", "words"), [(-3.25, "−3.25"), (-0.001, "0"), (0.0, "0"), (1234.56, "1234.6")])
def test_a_number_below_nothing_has_a_true_minus(x: float, words: str) -> None:
    assert HALVES.words(x, "mm") == words


def test_a_thickness_in_inches_is_a_decimal_as_on_a_gauge() -> None:
    # 16 AWG is 0.0508 in: Machinery's Handbook table by fluids
    assert INCHES.words(1.2908459, "mm", "fine") == "0.051"
    assert INCHES.unit("mm") == "in"
    assert INCHES.unit("g") == "g"


@pytest.mark.parametrize(
    ("x", "rounding", "words"), [(7.4, "whole", "7"), (7.5, "whole", "8"), (7.01, "whole up", "8")]
)
def test_a_count_is_whole(x: float, rounding: Rounding, words: str) -> None:
    assert size(HALVES, x, rounding, "").words == words


def test_what_must_be_enough_is_printed_at_the_high_end_of_its_range() -> None:
    # beads that vary make 26.4 to 27.1 mm of wire: the bench is told the most
    assert size(HALVES, Interval(26.8, 26.4, 27.1), "bench most").words == "27.5"
    assert size(HALVES, Interval(26.8, 26.4, 27.1), "bench up").words == "27"
    assert size(HALVES, Interval(26.8, 26.4, 27.1), "millimetre most").words == "28"
    assert size(HALVES, Interval(26.8, 26.4, 27.1), "centimetre most").words == "30"


def test_a_long_size_is_cut_to_whole_millimetres() -> None:
    assert size(HALVES, 318.3, "bench up").words == "319"
    assert size(HALVES, 99.7, "bench up").words == "100"
