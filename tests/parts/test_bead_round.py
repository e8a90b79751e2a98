"""Beads round a neck or wrist, laid again on their circle."""

from __future__ import annotations

import math
from typing import Any

import pytest

KIND = "beads round a neck or wrist"


def test_eight_millimetre_beads_on_a_neck_of_380_want_405(workshop: Any) -> None:
    # section 11: 380 + π × 8 = 405 mm
    beads = workshop(KIND, bead="bead-8", girth="380 mm")
    assert beads.usual("needed") == pytest.approx(405, abs=0.2)
    assert beads.usual("beads") == 51


def test_the_closed_strand_goes_round_the_girth_and_one_bead_less_would_not(workshop: Any) -> None:
    beads = workshop(KIND, bead="bead-8", girth="160 mm", ease="5 mm")
    n = int(beads.usual("beads"))

    def inside(count: int) -> float:
        """Girth of the skin inside: the thread's round less a turn of half a bead on each side."""
        return 2 * math.pi * (count * 8 / (2 * math.pi) - 4)

    assert inside(n) >= 165 > inside(n - 1)
    assert beads.usual("goes_round") == pytest.approx(inside(n))


def test_the_clasp_takes_the_place_of_beads(workshop: Any) -> None:
    plain = workshop(KIND, bead="bead-8", girth="380 mm")
    clasped = workshop(KIND, bead="bead-8", girth="380 mm", clasp="clasp-16")
    assert plain.usual("beads") - clasped.usual("beads") == 2


def test_thread_and_beads_are_taken_for_all(workshop: Any) -> None:
    beads = workshop(KIND, bead="bead-8", girth="380 mm", thread="thread", count=3)
    assert workshop.taken(beads) == {
        "bead-8": 3 * 51,
        "thread": 3 * 560,  # 380 + 8 π + 150 is 555.13
    }


def test_uneven_beads_keep_their_range(workshop: Any) -> None:
    beads = workshop(KIND, bead="bead-6-ish", girth="160 mm")
    assert beads["goes_round"].low < 160 < beads["goes_round"].high
    assert beads.usual("beads_have") >= beads.usual("beads")


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"bead": "bead-8", "girth": "20 mm"}, "girth", "24 mm or more"),
        ({"bead": "bead-8", "girth": "26 mm", "clasp": "clasp-60"}, "girth", "more than 60 mm"),
        ({"bead": "bead-8", "girth": "0 mm"}, "girth", "more than 0 mm"),
        ({"bead": "bead-8", "girth": "160 mm", "thread": "thick-thread"}, "thread", "1 mm or less"),
        ({"bead": "bead-8", "girth": "160 mm", "clasp": "clasp-unknown"}, "clasp", "add its length"),
    ],
)
def test_beads_that_cannot_close_are_told_at_their_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    assert any(at == field and helps in helped for at, _, helped in workshop.refused(KIND, **fields))


def test_round_beads_of_one_size_are_as_wide_as_they_are_long(workshop: Any) -> None:
    strand = workshop("beads round a neck or wrist", bead="bead-6-ish", girth="160 mm")
    n = strand.usual("beads")
    # strung of the smallest alone, and of the largest alone: round the thread less half a bead on either side
    ends = [n * bead - math.pi * bead for bead in (5.8, 6.2)]
    assert [strand["goes_round"].low, strand["goes_round"].high] == pytest.approx(ends)
