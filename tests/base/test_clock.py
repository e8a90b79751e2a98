"""The clock: what an evening may look like, and how a minute is told."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.clock import clock, evening


@given(st.integers(0, 1439), st.integers(0, 1439))
def test_an_evening_that_is_told_is_read_again(begin: int, end: int) -> None:
    assert evening(f"{clock(begin)}-{clock(end)}") == ((begin, end) if begin < end else None)


@pytest.mark.parametrize("text", ["18:30–21:10", " 18:30 - 21:10 ", "18:30-21:10"])
def test_a_dash_is_a_dash(text: str) -> None:
    assert evening(text) == (1110, 1270)


@pytest.mark.parametrize("text", ["", "18:30", "18:30-", "half past six", "18:30-18:30", "18:30-24:01", "18:61-20:00"])
def test_what_is_no_span_of_one_day_is_none(text: str) -> None:
    assert evening(text) is None


def test_midnight_ends_a_day_and_begins_the_next() -> None:
    assert evening("18:00-24:00") == (1080, 1440)
    assert [clock(m) for m in (0, 1110.4, 1439.6, 1440, 1500)] == ["00:00", "18:30", "00:00", "00:00", "01:00"]
