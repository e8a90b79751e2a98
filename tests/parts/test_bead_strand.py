"""Bead strands, by the supplier's chart and by threading one bead more."""

from __future__ import annotations

import math
from typing import Any

import pytest


@pytest.mark.parametrize(("inches", "chart"), [(16, 50.8), (18, 57.15)])
def test_a_strand_of_8_mm_beads_holds_the_whole_beads_of_the_chart(workshop: Any, inches: int, chart: float) -> None:
    # C11.1 and C11.3: supplier's beads-per-inch chart
    strand = workshop("bead strand", bead="bead-8", length=f"{inches} in")
    assert strand.usual("beads") == int(chart)
    assert strand.usual("beads_have") == int(chart) + 1  # buy 58 for 18 in


def test_one_more_bead_with_its_knot_would_not_fit(workshop: Any) -> None:
    strand = workshop("bead strand", bead="bead-8", length="450 mm", knot="1.5 mm")
    n = strand.usual("beads")
    assert n * 8 + (n + 1) * 1.5 <= 450 < (n + 1) * 8 + (n + 2) * 1.5
    assert strand.usual("knots") == n + 1
    assert strand.usual("comes_out") == pytest.approx(n * 8 + (n + 1) * 1.5)


def test_uneven_beads_make_the_length_a_range_and_the_list_has_enough_of_the_smallest(workshop: Any) -> None:
    strand = workshop("bead strand", bead="bead-6-ish", length="406.4 mm")
    n = strand.usual("beads")
    assert (strand["comes_out"].low, strand["comes_out"].high) == (pytest.approx(n * 5.8), pytest.approx(n * 6.2))
    assert strand.usual("beads_have") * 5.8 >= 406.4 > (strand.usual("beads_have") - 1) * 5.8


def test_the_clasp_is_counted_in(workshop: Any) -> None:
    strand = workshop("bead strand", bead="bead-8", length="416 mm", clasp="clasp-16")
    assert (strand.usual("beads"), strand.usual("comes_out")) == (50, 416)


def test_thread_is_cut_for_beads_knots_and_tails(workshop: Any) -> None:
    strand = workshop(
        "bead strand", bead="bead-8", length="450 mm", knot="1.5 mm", knot_takes="7 mm", thread="thread", count=2
    )
    assert strand.usual("thread_cut") == pytest.approx(450 + strand.usual("knots") * 7 + 150)
    # thread is cut to 10 mm, up
    assert workshop.taken(strand)["thread"] == pytest.approx(2 * 10 * math.ceil(strand.usual("thread_cut") / 10))


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"bead": "bead-8", "length": "7 mm"}, "length", "8 mm or more"),
        ({"bead": "bead-8", "length": "20 mm", "clasp": "clasp-16"}, "length", "24 mm or more"),
        ({"bead": "bead-8", "length": "400 mm", "thread": "thick-thread"}, "thread", "1 mm or less"),
        ({"bead": "bead-8", "length": "400 mm", "thread": "thread", "knot": "2 mm"}, "knot", "tie ten on a trial"),
        ({"bead": "bead-8", "length": "400 mm", "knot": "0.5 mm"}, "knot", "more than 1 mm"),
        ({"bead": "bead-8", "length": "400 mm", "clasp": "clasp-unknown"}, "clasp", "add its length"),
    ],
)
def test_a_strand_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    assert any(at == field and helps in helped for at, _, helped in workshop.refused("bead strand", **fields))


def test_the_smallest_beads_of_a_knotted_strand_are_enough_and_one_less_is_not(workshop: Any) -> None:
    strand = workshop(
        "bead strand", bead="bead-6-ish", length="300 mm", knot="1 mm", thread="thread", **{"knot takes": "8 mm"}
    )
    n = strand.usual("beads_have")
    assert (n - 1) * 5.8 + n * 1 < 300 <= n * 5.8 + (n + 1) * 1


def test_a_hook_made_as_a_part_of_its_own_is_counted_in(workshop: Any) -> None:
    assert workshop("bead strand", bead="bead-8", length="200 mm", closing="24 mm").usual("beads") == 22


def test_the_thread_of_all_strands_is_what_is_cut(workshop: Any) -> None:
    # room 450.3 and 150 of tails are cut at 610, and 610 × 3 = 1830, not 3 × 600.3
    strand = workshop("bead strand", bead="bead-8", length="450.3 mm", thread="thread", count=3)
    assert workshop.taken(strand)["thread"] == 1830


def test_a_thread_longer_than_its_spool_is_refused(workshop: Any) -> None:
    found = workshop.refused("bead strand", bead="bead-8", length="9.9 m", thread="thread")
    assert [(at, message) for at, message, _ in found] == [
        ("thread", "it: thread holds 10000 mm a pack, and one strand is 10050 mm")
    ]


def test_a_strand_taken_from_its_own_length_varies_as_its_beads_do(workshop: Any) -> None:
    strand = workshop("bead strand", bead="bead-6-ish", length="406.4 mm")
    n = strand.usual("beads")
    assert (strand["rest"].low, strand["rest"].high) == (pytest.approx(406.4 - n * 6.2), pytest.approx(406.4 - n * 5.8))
