"""Bezel strips round the largest stone of a size."""

from __future__ import annotations

import math
from typing import Any

import pytest
from scipy.special import ellipe
from shapely.affinity import scale
from shapely.geometry import Point


def test_an_oval_strip_is_the_published_one(workshop: Any) -> None:
    # C10.9: ellipse 18 × 13 and 0.4 mm of thickness: 50.2685 mm; the supplier's rule of means says 49.951
    strip = workshop("bezel strip", sheet="fine-04", stone="oval-18", high="3 mm", room="0 mm")
    assert strip.usual("meets") == pytest.approx(50.2685, abs=0.0001)


def test_an_oval_strip_is_the_line_half_a_thickness_outside_the_stone(workshop: Any) -> None:
    strip = workshop("bezel strip", sheet="fine-04", stone="oval-18", high="3 mm", room="0.2 mm")
    stone = scale(Point(0, 0).buffer(1, quad_segs=4000), 18.2 / 2, 13.2 / 2)
    assert strip.usual("meets") == pytest.approx(stone.buffer(0.2, quad_segs=64).exterior.length, rel=1e-5)
    exact = 4 * 9.1 * ellipe(1 - (6.6 / 9.1) ** 2) + math.pi * 0.4
    assert strip.usual("meets") == pytest.approx(exact, rel=1e-9)


def test_a_round_strip_goes_round_the_largest_stone_of_the_size(workshop: Any) -> None:
    strip = workshop("bezel strip", sheet="fine-04", stone="round-8", high="2 mm")
    assert strip.usual("meets") == pytest.approx(math.pi * (8.1 + 0.1 + 0.4))


def test_sheet_is_taken_by_area_with_what_is_filed_off(workshop: Any) -> None:
    strip = workshop("bezel strip", sheet="fine-04", stone="round-8", high="2 mm", count=3)
    assert workshop.taken(strip) == {"fine-04": pytest.approx(3 * 2 * 28), "round-8": 3}  # 27 + 1
    assert strip.usual("mass") == pytest.approx(27 * 2 * 0.4 * 0.01049)  # π × 8.6 to a tenth


def test_a_long_strip_is_drawn_in_full(workshop: Any) -> None:
    strip = workshop("bezel strip", sheet="fine-04", stone="huge-50", high="5 mm")
    xs = [x for kind, points, _ in strip.drawn().lines if kind == "cut" for x, _ in points]
    assert max(xs) - min(xs) == pytest.approx(strip.usual("cut"), abs=0.5)


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"stone": "round-8", "high": "0.3 mm"}, "high", "more than 0.4 mm"),
        ({"stone": "round-8", "high": "3.5 mm"}, "high", "less than 3 mm"),
        ({"stone": "crosswise", "high": "2 mm"}, "stone", "8 mm"),
        ({"stone": "round-8", "high": "2 mm", "room": "-1 mm"}, "room", "0 mm or more"),
    ],
)
def test_a_strip_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("bezel strip", sheet="fine-04", **fields)
    assert any(at == field and helps in told + helped for at, told, helped in found)
