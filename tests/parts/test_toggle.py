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
    clasp = workshop("toggle clasp", wire="round-1", bar_wire="awg-14", inside="10 mm", count=2)
    assert workshop.taken(clasp) == {
        "round-1": pytest.approx(2 * (math.pi * 11 + 2)),
        "awg-14": pytest.approx(2 * (22 + 2)),
    }


def test_an_eye_in_the_bar_is_one_full_turn_more(workshop: Any) -> None:
    plain = workshop("toggle clasp", wire="round-1", inside="10 mm")
    eyed = workshop("toggle clasp", wire="round-1", inside="10 mm", eye="2 mm")
    assert eyed.usual("bar_one") - plain.usual("bar_one") == pytest.approx(math.pi * 3)


def test_the_owned_rod_decides_ring_and_bar(workshop: Any) -> None:
    clasp = workshop("toggle clasp", wire="round-1", inside="9.5 mm")
    assert (clasp.usual("rod_used"), clasp.usual("bar_made")) == (10, 22)


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"inside": "10 mm", "bar": "11 mm"}, "bar", "12 mm or more"),
        ({"inside": "2 mm", "bar_wire": "awg-14"}, "inside", "3.5 mm or more"),
        ({"inside": "10 mm", "eye": "0.5 mm"}, "eye", "1 mm or more"),
        ({"inside": "10 mm", "rod": "10 mm"}, "inside", "give one"),
        ({"rod": "11 mm"}, "rod", "10 mm and 12 mm"),
    ],
)
def test_a_clasp_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("toggle clasp", wire="round-1", **fields)
    assert any(at == field and helps in helped for at, _, helped in found)
