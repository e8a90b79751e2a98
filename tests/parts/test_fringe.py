"""Fringes, cut again strip by strip."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import pytest


def drops(n: int, first: float, last: float, shape: str) -> list[float]:
    """Every drop, strip by strip."""
    if shape == "slope":
        return [first + (last - first) * i / (n - 1) for i in range(n)]
    half = math.ceil(n / 2)
    side = [first + (last - first) * i / (half - 1) for i in range(half)]
    return side + side[: n - half][::-1]


@pytest.mark.parametrize("shape", ["slope", "point"])
@pytest.mark.parametrize("n", [3, 4, 5, 12, 13])
def test_the_strips_add_up_when_they_are_cut_one_by_one(workshop: Any, n: int, shape: str) -> None:
    fringe = workshop("fringe", fibre="ribbon-3", strands=n, first="30 mm", last="60 mm", shape=shape, trim="2 mm")
    held = sum(drop + 10 + 2 for drop in drops(n, 30, 60, shape))
    assert fringe.usual("total") == pytest.approx(held)
    assert fringe.usual("ends") == n
    folded = workshop("fringe", fibre="ribbon-3", strands=n, first="30 mm", last="60 mm", shape=shape, bar="4 mm")
    # section 12: 2 × drop + π (b + t) ÷ 2
    over = sum(2 * drop + math.pi * 4.4 / 2 for drop in drops(n, 30, 60, shape))
    assert folded.usual("total") == pytest.approx(over)
    assert folded.usual("ends") == 2 * n


def test_a_folded_strip_is_as_long_as_its_path_over_the_bar(workshop: Any) -> None:
    fringe = workshop("fringe", fibre="ribbon-3", strands=1, first="50 mm", bar="4 mm")
    turn = [(2.2 * math.cos(a), 2.2 * math.sin(a)) for a in (i * math.pi / 5000 for i in range(5001))]
    over = sum(math.dist(a, b) for a, b in pairwise(turn))
    assert fringe.usual("first_cut") == pytest.approx(100 + over, rel=1e-6)


def test_as_many_strips_as_the_edge_takes_and_no_more(workshop: Any) -> None:
    fringe = workshop("fringe", fibre="ribbon-3", along="40 mm", gap="0.5 mm", first="30 mm")
    n = fringe.usual("strips")
    assert n * 3 + (n - 1) * 0.5 <= 40 < (n + 1) * 3 + n * 0.5
    assert fringe.usual("fills") == pytest.approx(n * 3 + (n - 1) * 0.5)


def test_fibre_is_taken_for_every_fringe(workshop: Any) -> None:
    fringe = workshop("fringe", fibre="cord-2", strands=10, first="30 mm", count=2)
    assert workshop.taken(fringe) == {"cord-2": pytest.approx(2 * 10 * 40)}


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"strands": "20", "along": "40 mm", "first": "30 mm"}, "strands", "13 or fewer"),
        ({"along": "2 mm", "first": "30 mm"}, "along", "3 mm or more"),
        ({"strands": "2", "first": "30 mm", "last": "60 mm", "shape": "point"}, "strands", "3 strands or more"),
        ({"strands": "1", "first": "30 mm", "last": "60 mm"}, "strands", "2 strands or more"),
        ({"strands": "5", "first": "0 mm"}, "first", "more than 0 mm"),
    ],
)
def test_a_fringe_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("fringe", fibre="ribbon-3", **fields)
    assert any(at == field and helps in helped for at, _, helped in found)


def test_a_fringe_of_no_number_asks_for_one(workshop: Any) -> None:
    found = workshop.refused("fringe", fibre="ribbon-3", first="30 mm")
    assert any("strands: 12" in helped for _, _, helped in found)


def test_a_fringe_of_slit_strips_leaves_the_ribbon_to_the_slitting(workshop: Any) -> None:
    sizes = {"fibre": "ribbon-25", "strands": "6", "first": "60 mm", "width": "4 mm"}
    fringe = workshop("fringe", **sizes, **{"strips of": "it"})
    assert workshop.taken(fringe) == {}
    assert fringe.usual("fills") == pytest.approx(6 * 4)
    wide = workshop.make("fringe", **sizes | {"width": "30 mm"})
    assert (wide.blamed(wide.errors[0]), wide.errors[0].help) == ("width", "25 mm or less")
