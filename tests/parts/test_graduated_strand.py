"""Graduated strands, threaded again bead by bead."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

STRAND = {"largest": "10 mm", "smallest": "4 mm", "length": "450 mm"}


def threaded(largest: float, smallest: float, each_side: int) -> float:
    step = (largest - smallest) / each_side
    side = sum(smallest + step * i for i in range(each_side))
    return 2 * side + largest


@settings(max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(largest=st.integers(6, 20), smallest=st.integers(2, 6), length=st.integers(100, 900))
def test_the_strand_is_as_long_as_its_beads_and_a_pair_more_would_not_fit(
    workshop: Any, largest: int, smallest: int, length: int
) -> None:
    strand = workshop("graduated strand", largest=f"{largest} mm", smallest=f"{smallest} mm", length=f"{length} mm")
    n = int(strand.usual("each_side"))
    assert strand.usual("comes_out") == pytest.approx(threaded(largest, smallest, n))
    assert strand.usual("comes_out") <= length + 1e-6 < threaded(largest, smallest, n + 1) + 2e-6
    assert strand.usual("beads") == 2 * n + 1


def test_the_clasp_is_counted_in(workshop: Any) -> None:
    strand = workshop("graduated strand", **STRAND, clasp="clasp-16", thread="thread")
    assert strand.usual("room") == 434
    # 434 and 150 of tails are 584
    assert workshop.taken(strand) == {"thread": 590, "clasp-16": 1}


@pytest.mark.parametrize(
    ("change", "field", "helps"),
    [
        ({"smallest": "12 mm"}, "smallest", "10 mm or less"),
        ({"length": "17 mm"}, "length", "18 mm or more"),
        ({"length": "30 mm", "clasp": "clasp-16"}, "length", "34 mm or more"),
        ({"smallest": "9.9 mm"}, "smallest", "mm or less"),
    ],
)
def test_a_strand_that_cannot_be_is_told_at_its_field(
    workshop: Any, change: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("graduated strand", **STRAND | change)
    assert any(at == field and helps in helped for at, _, helped in found)


def test_the_thread_of_all_strands_is_what_is_cut(workshop: Any) -> None:
    strand = workshop("graduated strand", **STRAND | {"length": "450.3 mm"}, thread="thread", count=2)
    assert workshop.taken(strand)["thread"] == 2 * 610
