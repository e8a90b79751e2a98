"""Ring blanks of sheet and wire, by published ring sizes."""

from __future__ import annotations

import math
from typing import Any

import pytest

BAND = {"sheet": "sterling-15", "width": "4 mm"}


def test_the_blank_is_inside_and_thickness_times_pi(workshop: Any) -> None:
    # C3.4: inside 17.35, thickness 1.5: 59.22 mm
    assert workshop("ring blank", **BAND, size="17.35 mm").usual("meets") == pytest.approx(59.22, abs=0.01)


def test_a_band_wider_than_4_mm_is_half_a_millimetre_longer(workshop: Any) -> None:
    narrow = workshop("ring blank", **BAND, size="US 7")
    wide = workshop("ring blank", sheet="sterling-15", width="4.1 mm", size="US 7")
    plain = workshop("ring blank", sheet="sterling-15", width="4.1 mm", size="US 7", wide_band="as given")
    assert wide.usual("meets") - narrow.usual("meets") == pytest.approx(0.5)
    assert plain.usual("meets") == pytest.approx(narrow.usual("meets"))


@pytest.mark.parametrize(
    ("size", "inside"), [("US 4", 14.88), ("ISO 54", 17.2), ("UK Q", 57.5 / math.pi), ("JP 1", 13)]
)
def test_every_system_of_sizes_comes_to_its_published_inside(workshop: Any, size: str, inside: float) -> None:
    # C4.1, C4.2, C4.4: ISO 8653 table, US chart, BS 6820 by GNU Units; Japanese size 1 is 13 mm
    blank = workshop("ring blank", wire="round-1", size=size)
    assert blank.usual("meets") / math.pi - 1 == pytest.approx(inside, abs=0.06)


def test_a_wire_ring_takes_wire_and_a_band_takes_sheet(workshop: Any) -> None:
    ring = workshop("ring blank", wire="round-1", size="US 7", count=2)
    band = workshop("ring blank", **BAND, size="US 7", count=2)
    assert workshop.taken(ring) == {"round-1": pytest.approx(2 * 58.5)}  # 57.6 + 0.5, up to a half
    assert workshop.taken(band) == {"sterling-15": pytest.approx(2 * 60 * 4)}  # 59.1 + 0.5
    assert band.usual("mass") == pytest.approx(59.1 * 4 * 1.5 * 0.01036)


def test_the_closed_ring_measures_what_it_says_outside(workshop: Any) -> None:
    ring = workshop("ring blank", wire="round-1", size="18 mm")
    assert ring.usual("outside") == pytest.approx(ring.usual("meets") / math.pi + 1)


def test_the_strip_is_drawn_as_it_is_cut(workshop: Any) -> None:
    band = workshop("ring blank", **BAND, size="US 7")
    xs = [x for kind, points, _ in band.drawn().lines if kind == "cut" for x, _ in points]
    assert max(xs) - min(xs) >= band.usual("cut")
    assert max(xs) - min(xs) == pytest.approx(band.usual("cut"), abs=0.5)


def test_a_bangle_is_no_finger_and_is_drawn_in_full(workshop: Any) -> None:
    bangle = workshop("ring blank", **BAND, size="62 mm")
    assert "it.us" not in bangle.figures
    xs = [x for kind, points, _ in bangle.drawn().lines if kind == "cut" for x, _ in points]
    assert max(xs) - min(xs) == pytest.approx(bangle.usual("cut"), abs=0.5)


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"sheet": "sterling-15", "size": "US 7"}, "sheet", "width: 4 mm"),
        ({"sheet": "sterling-15", "wire": "round-1", "width": "4 mm", "size": "US 7"}, "sheet", "give one"),
        ({"wire": "round-1", "width": "4 mm", "size": "US 7"}, "width", "take it out"),
        ({"sheet": "sterling-15", "width": "4 mm", "size": "5 mm"}, "size", "6 mm or more"),
        ({"sheet": "sterling-15", "width": "0 mm", "size": "US 7"}, "width", "more than 0 mm"),
    ],
)
def test_a_blank_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    assert any(at == field and helps in helped for at, _, helped in workshop.refused("ring blank", **fields))


def test_a_blank_of_no_metal_asks_for_one(workshop: Any) -> None:
    assert any("sheet or wire is wanted" in told for _, told, _ in workshop.refused("ring blank", size="US 7"))
