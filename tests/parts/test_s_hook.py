"""S-hooks, measured along the line that their template draws."""

from __future__ import annotations

import math
from typing import Any

import pytest
from shapely.geometry import LineString

HOOK = {"wire": "round-1", "upper": "5 mm", "lower": "3 mm", "length": "20 mm", "tip": "4 mm"}


def middle_line(hook: Any) -> LineString:
    (points,) = [points for kind, points, _ in hook.drawn().lines if kind == "centre"]
    return LineString(points)


def test_the_wire_is_as_long_as_the_drawn_middle_line(workshop: Any) -> None:
    hook = workshop("S-hook", **HOOK)
    assert hook.usual("one") == pytest.approx(middle_line(hook).length, rel=1e-4)


def test_the_hook_comes_out_as_long_and_as_wide_as_it_says(workshop: Any) -> None:
    hook = workshop("S-hook", **HOOK)
    left, top, right, bottom = middle_line(hook).buffer(0.5).bounds
    assert bottom - top == pytest.approx(20, abs=0.01)
    assert right - left == pytest.approx(hook.usual("across"), abs=0.01)


def test_owned_rods_decide_the_bends(workshop: Any) -> None:
    hook = workshop("S-hook", wire="round-1", upper="5.3 mm", length="20 mm")
    assert (hook.usual("upper_used"), hook.usual("lower_used")) == (5, 5)
    assert hook.usual("one") == pytest.approx(13 + 2 * math.pi * 3 + 6)


def test_a_chain_pulled_taut_gains_the_inside(workshop: Any) -> None:
    assert workshop("S-hook", **HOOK).usual("adds") == 18


@pytest.mark.parametrize(
    ("change", "field", "helps"),
    [
        ({"length": "5.5 mm"}, "length", "6 mm or more"),
        ({"tip": "30 mm"}, "tip", "16.5 mm or less"),
        ({"lower": "0.6 mm"}, "lower", "2 mm"),
        ({"upper": "15 mm", "length": "60 mm"}, "upper", "12 mm"),
        ({"rod": "5 mm"}, "upper", "give one"),
        ({"lower_rod": "3 mm"}, "lower", "give one"),
        ({"lower": "15 mm", "length": "60 mm"}, "lower", "12 mm"),
    ],
)
def test_a_hook_that_cannot_be_is_told_at_its_field(
    workshop: Any, change: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("S-hook", **HOOK | change)
    assert any(at == field and helps in helped for at, _, helped in found)
