"""A number in every case: what hangs together stays together, and nothing is told narrower than it is."""

from __future__ import annotations

import itertools
import math
import operator
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.cases import MOST, Cases, apply, uncertain
from sheetgen.base.interval import Interval, between

if TYPE_CHECKING:
    from collections.abc import Callable

real = st.floats(-100, 100)
share = st.floats(0, 1)


@st.composite
def intervals(draw: Any) -> Interval:
    low, usual, high = sorted(draw(st.tuples(real, real, real)))
    return Interval(usual, low, high)


def plus(a: Cases, b: Cases) -> Cases:
    return apply(operator.add, a, b)


def minus(a: Cases, b: Cases) -> Cases:
    return apply(operator.sub, a, b)


@given(intervals())
def test_a_number_less_itself_is_nothing(value: Interval) -> None:
    x = uncertain("x", value)
    assert minus(x, x).interval == Interval(0, 0, 0)


def test_two_numbers_of_one_size_are_two_inputs() -> None:
    value = between(2, 3)
    assert minus(uncertain("x", value), uncertain("y", value)).interval == Interval(0, -1, 1)


def test_a_ring_and_its_plug_shrink_as_one() -> None:
    # 20 mm and 19.8 mm cut, 8 to 10 %: between them 0.2 × 0.90 to 0.2 × 0.92, and never they touch
    shrinks = uncertain("clay.shrinkage", Interval(0.09, 0.08, 0.10))
    ring, plug = (apply(lambda s, cut=cut: cut * (1 - s), shrinks) for cut in (20.0, 19.8))
    found = minus(ring, plug).interval
    assert (found.low, found.usual, found.high) == pytest.approx((0.18, 0.182, 0.184))


@given(st.lists(intervals(), min_size=1, max_size=4), st.data())
def test_a_total_is_the_sum_of_its_parts_at_each_case(values: list[Interval], data: Any) -> None:
    inputs = [uncertain(f"x{i}", value) for i, value in enumerate(values)]
    parts = [data.draw(st.sampled_from(inputs)) for _ in range(5)]
    total = parts[0]
    for part in parts[1:]:
        total = plus(total, part)
    keys = tuple(sorted({key for part in parts for key in part.keys}))
    for at, corner in enumerate(total.over(keys)):
        assert corner == pytest.approx(sum(part.over(keys)[at] for part in parts), abs=1e-9)


@given(st.lists(intervals(), min_size=1, max_size=5))
def test_every_corner_is_there_once(values: list[Interval]) -> None:
    # second opinion: the corners as itertools lays them out
    inputs = [uncertain(f"x{i}", value) for i, value in enumerate(values)]
    found = apply(lambda *x: math.fsum(a * (i + 1) for i, a in enumerate(x)), *inputs)
    ends = [(v.low, v.high) if v.low != v.high else (v.usual,) for v in values]
    by_hand = [math.fsum(a * (i + 1) for i, a in enumerate(corner)) for corner in itertools.product(*ends)]
    assert sorted(found.ends) == pytest.approx(sorted(by_hand))


def test_what_is_exact_hangs_on_nothing() -> None:
    assert uncertain("x", Interval(3, 3, 3)).keys == ()
    assert plus(Cases(3.0), uncertain("x", between(1, 2))).keys == ("x",)


@given(st.lists(intervals(), min_size=MOST, max_size=MOST + 6), st.data())
def test_of_many_inputs_the_widest_view_is_taken_and_never_a_narrower_one(values: list[Interval], data: Any) -> None:
    """A number built by sums, differences and products with plain numbers, at true values drawn from each range."""
    inputs = [uncertain(f"x{i}", value) for i, value in enumerate(values)]
    true = [v.low + data.draw(share) * (v.high - v.low) for v in values]
    made: list[tuple[Cases, float]] = list(zip(inputs, true, strict=True))
    signs: list[Callable[[float, float], float]] = [operator.add, operator.sub]
    for one in range(1, len(values)):  # all of them meet
        sign = data.draw(st.sampled_from(signs))
        (a, x), (b, y) = made[-1] if one > 1 else made[0], made[one]
        made.append((apply(sign, a, b), sign(x, y)))
    for _ in range(data.draw(st.integers(0, 6))):  # and meet themselves again
        sign = data.draw(st.sampled_from(signs))
        a, x = data.draw(st.sampled_from(made))
        b, y = data.draw(st.sampled_from(made))
        factor = data.draw(st.sampled_from([-2.0, -1.0, 0.5, 1.0]))
        made.append((apply(lambda p, q, s=sign, f=factor: f * s(p, q), a, b), factor * sign(x, y)))
    for cases, value in made:
        slack = 1e-6 * max(1, abs(cases.low), abs(cases.high))
        assert cases.low - slack <= value <= cases.high + slack
        assert len(cases.ends) <= 2**MOST


def test_two_of_too_many_inputs_that_run_against_each_other_stay_apart() -> None:
    # a sum of nine, less its own opposite, is twice the sum: −18 to 18, and no single number
    inputs = [uncertain(f"x{i}", between(-1, 1)) for i in range(MOST + 1)]
    there, back = Cases(0.0), Cases(0.0)
    for one in inputs:
        there, back = plus(there, one), minus(back, one)
    twice = minus(there, back)
    assert twice.low <= -18
    assert twice.high >= 18
