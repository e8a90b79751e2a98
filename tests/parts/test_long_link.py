"""Long links: an open belt over two pegs, reckoned again round shapes and along points."""

from __future__ import annotations

import math
from typing import Any

import pytest
from shapely import MultiPoint
from shapely.geometry import Point


def test_equal_pegs_make_a_stadium(workshop: Any) -> None:
    link = workshop("long link", wire="round-1", inside="4 mm", length="20 mm")
    assert link.usual("clear") == pytest.approx(10)
    assert link.usual("one") == pytest.approx(2 * 14 + math.pi * 5)
    assert (link.usual("pitch"), link.usual("across")) == (18, 6)


def test_unequal_pegs_make_the_string_round_two_discs(workshop: Any) -> None:
    link = workshop("long link", wire="round-1", inside="6 mm", second_inside="2 mm", gap="7 mm")
    discs = [Point(0, 0).buffer(3.5, quad_segs=4000), Point(link.usual("centres"), 0).buffer(1.5, quad_segs=4000)]
    string = MultiPoint([p for d in discs for p in d.exterior.coords]).convex_hull.length
    assert link.usual("one") == pytest.approx(string, rel=1e-6)


def test_it_does_not_matter_which_peg_comes_first(workshop: Any) -> None:
    one = workshop("long link", wire="round-1", inside="6 mm", second_inside="2 mm", gap="7 mm")
    other = workshop("long link", wire="round-1", inside="2 mm", second_inside="6 mm", gap="7 mm")
    assert one.usual("one") == pytest.approx(other.usual("one"))


def test_the_published_belt_over_wheels_of_6_and_1(workshop: Any) -> None:
    # C7.2: radii 6 and 1 of the wire's middle, tangents of 12: a public puzzle page prints 49.9390597721
    form = "straight 12 mm, arc 1 mm 134.7602, straight 12 mm, arc 11 mm 225.2398"
    assert workshop("bent wire", wire="round-1", form=form).usual("one") == pytest.approx(49.93906, abs=1e-4)


def test_pegs_may_touch(workshop: Any) -> None:
    assert workshop("long link", wire="round-1", inside="3 mm", gap="0 mm").usual("pitch") == 6


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"inside": "5 mm", "length": "11 mm"}, "length", "12 mm or more"),
        ({"inside": "5 mm", "gap": "-1 mm"}, "gap", "0 mm or more"),
        ({"inside": "5 mm", "gap": "2 mm", "length": "20 mm"}, "gap", "give one"),
        ({"inside": "0.8 mm", "gap": "5 mm"}, "inside", "2 mm"),
        ({"peg": "4.5 mm", "gap": "2 mm"}, "peg", "4 mm and 5 mm"),
    ],
)
def test_a_long_link_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("long link", wire="round-1", **fields)
    assert any(at == field and helps in helped for at, _, helped in found)


def test_a_link_is_as_long_as_the_gap_that_the_jig_is_set_to(workshop: Any) -> None:
    # 14 AWG is 1.62773 mm: 20 − 2 × 1.62773 − 8 is 8.74454, set as 8.7
    link = workshop("long link", wire="awg-14", peg="4 mm", length="20 mm")
    assert link.usual("pitch") == pytest.approx(16.7)
    assert link.usual("one") == pytest.approx(2 * 12.7 + math.pi * 5.62773, abs=1e-4)
    assert link.usual("outside") == pytest.approx(16.7 + 2 * 1.62773, abs=1e-4)
