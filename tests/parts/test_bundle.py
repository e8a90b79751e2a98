"""Bundles of cords: packed again by distance, and tried in ends and caps."""

from __future__ import annotations

import math
from itertools import combinations
from typing import Any

import pytest


def ring(n: int, radius: float, turn: float = 0) -> list[tuple[float, float]]:
    return [
        (radius * math.cos(turn + 2 * math.pi * i / n), radius * math.sin(turn + 2 * math.pi * i / n)) for i in range(n)
    ]


PACKED = {
    3: ring(3, 2 / math.sqrt(3)),
    4: ring(4, math.sqrt(2)),
    5: ring(5, 1 / math.sin(math.pi / 5)),
    7: [(0.0, 0.0), *ring(6, 2)],
    8: [(0.0, 0.0), *ring(7, 1 / math.sin(math.pi / 7))],
}


@pytest.mark.parametrize("n", PACKED)
def test_cords_of_one_millimetre_radius_lie_in_the_bundle_without_overlap(workshop: Any, n: int) -> None:
    bundle = workshop("cord bundle", fibre="cord-2", cords=n)
    assert min(math.dist(a, b) for a, b in combinations(PACKED[n], 2)) >= 2 - 1e-9
    widest = 2 * max(math.hypot(*centre) + 1 for centre in PACKED[n])
    assert bundle.usual("across") == pytest.approx(widest)


@pytest.mark.parametrize(("n", "ratio"), [(7, 3), (11, 3.9238044), (13, 4.236068), (19, 4.863703)])
def test_the_published_circles_come_out(workshop: Any, n: int, ratio: float) -> None:
    # C12.1, C12.2, C12.4: Wikipedia, Circle packing in a circle
    assert workshop("cord bundle", fibre="cord-2", cords=n).usual("across") == pytest.approx(2 * ratio, abs=1e-5)


def test_many_cords_go_by_their_fill_which_is_a_range(workshop: Any) -> None:
    bundle = workshop("cord bundle", fibre="thread", cords=100)
    areas = [100 * math.pi / 4 * 0.25 / (math.pi / 4 * d**2) for d in (bundle["across"].low, bundle["across"].high)]
    assert areas == [pytest.approx(0.75), pytest.approx(0.5)]


def test_strips_go_by_their_area(workshop: Any) -> None:
    bundle = workshop("cord bundle", fibre="ribbon-3", cords=24, fill=0.6)
    assert 24 * 3 * 0.4 / (math.pi / 4 * bundle.usual("across") ** 2) == pytest.approx(0.6)


def test_the_binding_is_turns_round_the_bundle_and_two_tails(workshop: Any) -> None:
    bundle = workshop("cord bundle", fibre="cord-2", cords=3, thread="thread", turns=8, end="crimp-end-6", count=2)
    assert bundle.usual("binding") == pytest.approx(8 * math.pi * (bundle.usual("across") + 0.5) + 150)
    cut = 10 * math.ceil((8 * math.pi * (4 / math.sqrt(3) + 2 + 0.5) + 150) / 10)  # three cords: 2 + 4 ÷ √3 across
    assert bundle.usual("bound") == pytest.approx(bundle.usual("across") + 1)
    assert workshop.taken(bundle) == {"crimp-end-6": 2, "thread": 2 * cut}


def test_it_goes_into_the_end_as_long_as_the_end_is_wider(workshop: Any) -> None:
    assert workshop("cord bundle", fibre="cord-2", cords=7, end="crimp-end-6").usual("room_in_end") == pytest.approx(0)
    (found,) = workshop.refused("cord bundle", fibre="cord-2", cords=8, end="crimp-end-6")
    assert found[0] == "end"
    assert found[2].startswith("7 cords")


def test_a_bundle_that_goes_in_only_when_drawn_tight_is_a_doubt(workshop: Any) -> None:
    tried = workshop("cord bundle", fibre="thread", cords=90, end="crimp-end-6")
    (doubt,) = tried.troubles
    assert doubt.severity == "warning"
    assert tried["across"].low < 6 < tried["across"].high


def test_the_smallest_end_that_takes_the_bundle_at_its_loosest_is_told(workshop: Any) -> None:
    bundle = workshop("cord bundle", fibre="thread", cords=90, thread="cord-2")
    loosest = 0.5 * math.sqrt(90 / 0.5) + 2 * 2
    assert bundle["least_inside"].high == pytest.approx(loosest)
    printed = bundle.figures["it.least_inside"].printed
    assert loosest <= printed <= loosest + 0.01


@pytest.mark.parametrize(("end", "most"), [("crimp-end-6", 40), ("cap-12", 200)])
def test_the_most_strips_told_are_the_most_that_go_in(workshop: Any, end: str, most: int) -> None:
    field = "end" if end == "crimp-end-6" else "cap"
    found = workshop.refused("cord bundle", fibre="ribbon-3", cords=most, **{field: end})
    told = int(found[0][2].split()[0])
    inside = {"crimp-end-6": 6, "cap-12": 12}[end]
    areas = [n * 3 * 0.4 / 0.5 for n in (told, told + 1)]
    assert areas[0] <= math.pi / 4 * inside**2 < areas[1]


def test_a_binding_longer_than_its_spool_is_refused(workshop: Any) -> None:
    found = workshop.refused("cord bundle", fibre="cord-2", cords=3, thread="thread", tails="10 m")
    assert found[0][0] == "thread"


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"cords": "40", "cap": "cap-12"}, "cap", "19 cords at the most, or one of 17.9 mm or more inside"),
        ({"cords": "4", "end": "clasp-unknown"}, "end", "add its inside"),
        ({"cords": "3", "end": "crimp-end-6", "thread": "thread", "turns": "12"}, "turns", "10 turns or fewer"),
        ({"cords": "30", "fill": "0.75-0.5"}, "fill", "for a range"),
        ({"cords": "0"}, "cords", "1 or more"),
    ],
)
def test_a_bundle_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("cord bundle", fibre="cord-2", **fields)
    assert any(at == field and helps in helped for at, _, helped in found)
