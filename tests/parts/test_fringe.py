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
    # 30 + 10 held + 2 to trim are 42, and 72: what is trimmed is cut to 10 mm, at 50 and 80
    assert fringe.usual("total") == pytest.approx(sum(drops(n, 50, 80, shape)))
    assert fringe.usual("mean") == pytest.approx(sum(drops(n, 30, 60, shape)) / n)
    assert fringe.usual("ends") == n
    folded = workshop("fringe", fibre="ribbon-3", strands=n, first="30 mm", last="60 mm", shape=shape, bar="4 mm")
    # section 12: 2 × drop + π (b + t) ÷ 2: 66.91 is cut at 67, and 126.91 at 127
    assert [math.ceil(2 * 30 + math.pi * 2.2), math.ceil(2 * 60 + math.pi * 2.2)] == [67, 127]
    assert folded.usual("total") == pytest.approx(sum(drops(n, 67, 127, shape)))
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


def test_500_strands_cut_at_21_need_10_5_m(workshop: Any) -> None:
    # 10.05 and 10 held are 20.05, which is cut at 21
    fringe = workshop("fringe", fibre="cord-2", strands=500, first="10.05 mm", count=2)
    assert fringe.usual("total") == 10_500
    assert workshop.taken(fringe) == {"cord-2": 21_000}


@pytest.mark.parametrize("n", range(3, 20))
def test_strands_cut_to_a_rulers_marks_take_no_more_than_the_even_series(workshop: Any, n: int) -> None:
    # 30.5 is cut at 31; from there to 61 each strand is cut to the nearest millimetre, a half up
    fringe = workshop("fringe", fibre="ribbon-3", strands=n, first="20.5 mm", last="51 mm")
    cut = [math.floor(strip + 0.5) for strip in drops(n, 31, 61, "slope")]
    ties = sum(1 for strip in drops(n, 31, 61, "slope") if abs(strip % 1 - 0.5) < 1e-9)
    assert sum(cut) == pytest.approx(fringe.usual("total") + ties / 2)


def test_the_step_as_cut_leads_from_the_first_strand_to_the_last(workshop: Any) -> None:
    folded = workshop("fringe", fibre="ribbon-3", strands=7, first="30 mm", last="60 mm", bar="4 mm")
    assert 67 + 6 * folded.usual("cut_step") == pytest.approx(127)


def test_a_roll_gives_as_many_strands_as_can_be_cut_from_it(workshop: Any) -> None:
    n = workshop("fringe", fibre="thread", strands=4, first="30.2 mm", last="50.2 mm").usual("per_roll")
    assert n * 61 <= 10_000 < (n + 1) * 61


def test_a_strand_longer_than_its_roll_is_refused(workshop: Any) -> None:
    (found,) = workshop.refused("fringe", fibre="thread", strands=2, first="10.2 m")
    assert found[:2] == ("fibre", "it: fibre holds 10000 mm a pack, and one strand is 10210 mm")


def test_the_margins_are_left_free_and_the_gap_is_evened_out(workshop: Any) -> None:
    fringe = workshop("fringe", fibre="ribbon-3", along="40 mm", margin="2 mm", gap="0.5 mm", first="30 mm")
    n = fringe.usual("strips")
    assert 2 * 2 + n * 3 + (n - 1) * 0.5 <= 40 < 2 * 2 + (n + 1) * 3 + n * 0.5
    assert 2 * 2 + n * 3 + (n - 1) * fringe.usual("even_gap") == pytest.approx(40)
    assert fringe.usual("even_gap") >= 0.5


def test_fibre_is_taken_for_every_fringe(workshop: Any) -> None:
    fringe = workshop("fringe", fibre="cord-2", strands=10, first="30 mm", count=2)
    assert workshop.taken(fringe) == {"cord-2": pytest.approx(2 * 10 * 40)}


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"strands": "20", "along": "40 mm", "first": "30 mm"}, "strands", "13 or fewer"),
        ({"along": "2 mm", "first": "30 mm"}, "along", "3 mm or more"),
        ({"along": "5 mm", "margin": "2 mm", "first": "30 mm"}, "along", "7 mm or more"),
        ({"strands": "13", "along": "40 mm", "margin": "2 mm", "first": "30 mm"}, "strands", "12 or fewer"),
        ({"along": "5 mm", "first": "30 mm", "last": "60 mm"}, "along", "room for 2 strands or more"),
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
