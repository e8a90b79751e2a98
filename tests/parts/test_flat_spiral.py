"""Flat spirals: Archimedes', reckoned again by integration and along the drawn line."""

from __future__ import annotations

import math
from typing import Any

import pytest
from scipy.integrate import quad
from shapely.geometry import LineString

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.coils import spiral_across, spiral_turns


@pytest.mark.parametrize("inside", [0, 2])
@pytest.mark.parametrize("gap", [0, 0.5])
def test_the_wire_is_the_integral_of_the_spiral(workshop: Any, inside: float, gap: float) -> None:
    spiral = workshop("flat spiral", wire="round-1", turns=6, inside=f"{inside} mm", gap=f"{gap} mm")
    growth, start = (1 + gap) / (2 * math.pi), (inside + 1) / 2 if inside else 0
    long, _ = quad(lambda a: math.hypot(start + growth * a, growth), 0, 12 * math.pi)
    assert spiral.usual("one") == pytest.approx(long, rel=1e-9)
    assert LineString(spiral.drawn().lines[0][1]).length == pytest.approx(long, rel=1e-3)


def test_the_width_through_the_outer_end_is_the_drawn_one(workshop: Any) -> None:
    spiral = workshop("flat spiral", wire="round-1", turns=5.25, inside="2 mm")
    line = LineString(spiral.drawn().lines[0][1])
    x, y = line.coords[-1]
    assert y == pytest.approx(0, abs=1e-9)
    left = min(x for x, y in line.coords if abs(y) < 0.2)
    assert x - left + 1 == pytest.approx(spiral.usual("wide"), abs=0.05)


def test_a_width_is_filled_with_quarter_turns_and_one_more_would_not_fit(workshop: Any) -> None:
    spiral = workshop("flat spiral", wire="round-1", across="20.3 mm", inside="2 mm")
    turns = spiral.usual("curled")
    assert turns * 4 == int(turns * 4)
    assert spiral.usual("wide") <= 20.3 < spiral_across(1.5 + turns + 0.25, 1, 1)


def test_turns_and_width_are_each_others_inverse() -> None:
    # 4.5 turns of 1.5 mm from 1.5 mm on end at 8.25 mm
    assert spiral_turns(spiral_across(8.25, 1.5, 1.0), 1.0, 1.5, 1.5) == pytest.approx(4.5)
    with pytest.raises(CannotBe):  # less than one turn
        spiral_turns(3.0, 1.0, 1.0, 1.5)


def test_a_straight_tail_is_added_as_it_is(workshop: Any) -> None:
    plain = workshop("flat spiral", wire="round-1", turns=3)
    tailed = workshop("flat spiral", wire="round-1", turns=3, tail="15 mm")
    assert tailed.usual("one") - plain.usual("one") == pytest.approx(15)


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"turns": "0.5"}, "turns", "1 or more"),
        ({"across": "2 mm"}, "across", "2.5 mm or more"),
        ({"across": "20 mm", "turns": "4"}, "across", "give one"),
    ],
)
def test_a_spiral_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("flat spiral", wire="round-1", **fields)
    assert any(at == field and helps in helped for at, _, helped in found)
