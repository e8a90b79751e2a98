"""Toggle clasps: the bar holds in its ring, and goes through it."""

from __future__ import annotations

import math
from typing import Any

import pytest


def test_the_bar_reaches_past_the_ring_at_both_ends(workshop: Any) -> None:
    # a beading site: at least 10 mm longer than the ring is across
    clasp = workshop("toggle clasp", wire="round-1", inside="10 mm")
    assert clasp.usual("outside") == 12
    assert clasp.usual("bar_made") == 22
    assert clasp.usual("slim") == 11


def test_without_any_margin_the_bar_is_still_the_inside_and_two_wires(workshop: Any) -> None:
    clasp = workshop("toggle clasp", wire="round-1", inside="10 mm", beyond="0 mm")
    assert clasp.usual("bar_made") == pytest.approx(10 + 2 * 1)


def test_ring_and_bar_are_cut_from_their_own_wires(workshop: Any) -> None:
    sizes = {"wire": "round-1", "bar_wire": "awg-14", "inside": "10 mm", "bar_eye": "soldered"}
    clasp = workshop("toggle clasp", **sizes, count=2)
    # a ring of π × 11 and 2 mm is cut at 37 mm, to the half millimetre
    assert workshop.taken(clasp) == {"round-1": pytest.approx(2 * 37), "awg-14": pytest.approx(2 * (22 + 2))}


def test_ring_and_bar_of_one_wire_are_both_taken_of_it(workshop: Any) -> None:
    clasp = workshop("toggle clasp", wire="round-1", inside="10 mm", bar_eye="soldered", count=2)
    assert workshop.taken(clasp) == {"round-1": pytest.approx(2 * (37 + 24))}


def test_an_eye_in_the_bar_is_one_full_turn_more(workshop: Any) -> None:
    plain = workshop("toggle clasp", wire="round-1", inside="10 mm", bar_eye="soldered")
    eyed = workshop("toggle clasp", wire="round-1", inside="10 mm", eye="2.5 mm")
    assert eyed.usual("bar_one") - plain.usual("bar_one") == pytest.approx(math.pi * 3.5)
    assert "it.eye_used" not in plain.figures


def test_the_eye_is_wound_twice_as_wide_as_its_wire_unless_it_says_soldered(workshop: Any) -> None:
    # common practice; AWG 14 is 1.62773 mm (GNU Units 2.22)
    clasp = workshop("toggle clasp", wire="round-1", bar_wire="awg-14", inside="10 mm")
    assert clasp.usual("eye_used") == pytest.approx(2 * 1.62773, abs=1e-5)
    assert clasp.usual("bar_one") == pytest.approx(22 + math.pi * 3 * 1.62773, abs=1e-4)


def test_the_owned_rod_decides_ring_and_bar(workshop: Any) -> None:
    clasp = workshop("toggle clasp", wire="round-1", inside="9.5 mm")
    assert (clasp.usual("rod_used"), clasp.usual("bar_made")) == (10, 22)


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"inside": "10 mm", "bar": "11 mm"}, "bar", "12 mm or more"),
        ({"inside": "2 mm", "bar_wire": "awg-14"}, "inside", "3.3 mm or more"),
        ({"inside": "10 mm", "eye": "0.5 mm"}, "eye", "1 mm or more"),
        ({"inside": "10 mm", "eye": "0 mm"}, "eye", "bar eye: soldered"),
        ({"inside": "10 mm", "eye": "2 mm", "bar_eye": "soldered"}, "eye", "bar eye: wound"),
        ({"inside": "10 mm", "rod": "10 mm"}, "inside", "give one"),
        ({"rod": "11 mm"}, "rod", "10 mm and 12 mm"),
    ],
)
def test_a_clasp_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("toggle clasp", wire="round-1", **fields)
    assert any(at == field and helps in helped for at, _, helped in found)
