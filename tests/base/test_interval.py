"""Low, usual and high, carried to the last step."""

from __future__ import annotations

import math
import operator
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.interval import Interval, between, ceil, floor, interval, over

if TYPE_CHECKING:
    from collections.abc import Callable

real = st.floats(-1000, 1000)
share = st.floats(0, 1)


@st.composite
def intervals(draw: Any) -> Interval:
    low, usual, high = sorted(draw(st.tuples(real, real, real)))
    return Interval(usual, low, high)


def inside(x: float, s: Interval) -> bool:
    slack = 1e-9 * max(1, abs(s.low), abs(s.high))
    return s.low - slack <= x <= s.high + slack


@pytest.mark.parametrize("operation", [operator.add, operator.sub, operator.mul, operator.truediv])
@given(a=intervals(), b=intervals(), p=share, q=share, up=st.booleans())
def test_whatever_the_true_values_are_the_result_lies_in_its_range(
    operation: Callable[[Any, Any], Any], *, a: Interval, b: Interval, p: float, q: float, up: bool
) -> None:
    # the defining property of interval arithmetic
    if operation is operator.truediv:
        # a divisor that cannot be nothing
        b = b + (0.01 - b.low) if up else b - (0.01 + b.high)
    x = a.low + p * (a.high - a.low)
    y = b.low + q * (b.high - b.low)
    assert inside(operation(x, y), operation(a, b))
    assert operation(a, b).usual == pytest.approx(operation(a.usual, b.usual))


@given(a=intervals(), n=real)
def test_a_plain_number_may_stand_on_either_side(a: Interval, n: float) -> None:
    assert n + a == a + n
    assert n * a == a * n
    assert n - a == -(a - n)
    assert interval(n) == Interval(n, n, n)


def test_a_divisor_that_may_be_nothing_is_refused() -> None:
    with pytest.raises(ZeroDivisionError):
        interval(1) / Interval(1, -1, 2)
    with pytest.raises(ZeroDivisionError):
        1 / between(0, 3)


@pytest.mark.parametrize(
    ("usual", "low", "high"), [(1, 2, 3), (4, 2, 3), (2, 3, 1), (math.nan, 1, 2), (1, -math.inf, 2), (1, 0, math.inf)]
)
def test_an_interval_that_cannot_be_is_refused(usual: float, low: float, high: float) -> None:
    with pytest.raises(ValueError, match="an interval wants"):
        Interval(usual, low, high)


def test_a_function_is_taken_at_every_corner() -> None:
    # 20 mm at 8 to 10 % shrinkage: 20 ÷ 0.92 to 20 ÷ 0.90
    found = over(lambda size, s: size / (1 - s), 20.0, Interval(0.09, 0.08, 0.10))
    assert (found.low, found.usual, found.high) == pytest.approx((21.7391, 21.9780, 22.2222), abs=1e-4)


def test_the_middle_of_a_range_is_its_usual_value() -> None:
    assert between(12, 24) == Interval(18, 12, 24)


def test_three_that_fit_exactly_are_three() -> None:
    # (5.6 − 2.4 + 0.1) ÷ 1.1 is 3, and 2.9999999999999996 in binary
    assert floor((5.6 - 2.4 + 0.1) / 1.1) == 3
    assert ceil((5.6 - 2.4 + 0.1) / 1.1) == 3
    assert ceil(0.1 + 0.2 - 0.3) == 0


@given(st.integers(-10_000, 10_000))
def test_a_whole_number_is_neither_raised_nor_lowered(n: int) -> None:
    assert floor(float(n)) == ceil(float(n)) == n


@given(st.floats(-1e6, 1e6))
def test_floor_and_ceiling_enclose(x: float) -> None:
    assert floor(x) <= x + 1e-9
    assert ceil(x) >= x - 1e-9
    assert ceil(x) - floor(x) in {0, 1}
