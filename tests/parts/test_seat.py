"""Seat: one hole for one stone. The test silver shrinks 8 to 10 % in its plane and its thickness."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

SEAT = {"clay": "silver", "stone": "glass-2", "thickness": "0.75 mm"}  # 1.95 to 2 mm across, 1.5 mm high


def test_a_seat_takes_the_largest_stone_at_the_largest_shrinkage(stocked: Any) -> None:
    seat = stocked("seat", **SEAT)
    assert not seat.troubles
    assert seat.usual("seat") == pytest.approx((2 + 0.1) / 0.90)
    assert seat.usual("drill") == 2.4  # owned: 2.3 would be too small for 2.333
    assert seat.usual("drill") * 0.90 >= 2 + 0.1
    # the loosest is the smallest stone in the hole that shrank least
    assert seat.usual("loosest") == pytest.approx(2.4 * 0.92 - 1.95)


def test_its_depth_and_its_floor_ask_for_whole_layers(stocked: Any) -> None:
    seat = stocked("seat", **SEAT, floor="0.5 mm")
    assert seat.usual("depth") == pytest.approx(1.5 / 0.90)
    assert seat.usual("needed") == pytest.approx(2 / 0.90)
    assert seat.usual("layers") == 3  # 2.22 ÷ 0.75 = 2.96
    floor = 3 * 0.75 - 1.5 / 0.90
    assert (seat["fired_floor"].low, seat["fired_floor"].high) == pytest.approx((floor * 0.90, floor * 0.92))


@settings(max_examples=40)
@given(st.integers(0, 14), st.integers(0, 20), st.integers(2, 20))
def test_one_layer_less_would_leave_too_thin_a_floor(stocked: Any, proud: int, floor: int, thick: int) -> None:
    fields = {"proud": f"{proud / 10} mm", "floor": f"{floor / 10} mm", "thickness": f"{thick / 10} mm"}
    seat = stocked("seat", **{**SEAT, **fields})
    assert seat["fired_floor"].low >= floor / 10 - 1e-9
    assert ((seat.usual("layers") - 1) * thick / 10 - seat.usual("depth")) * 0.90 < floor / 10 + 1e-9


def test_a_stone_stands_at_least_as_deep_as_it_was_asked_to(stocked: Any) -> None:
    seat = stocked("seat", **SEAT, proud="0.3 mm")
    assert seat["stands"].high == pytest.approx(0.3)
    assert seat["stands"].low == pytest.approx(1.5 - 1.2 / 0.90 * 0.92)


def test_an_oval_stone_has_a_seat_of_two_sizes_and_no_drill(stocked: Any) -> None:
    seat = stocked("seat", clay="silver", stone="oval-18", thickness="2 mm")
    assert not seat.troubles
    assert (seat.usual("seat"), seat.usual("seat_width")) == pytest.approx((18.1 / 0.9, 13.1 / 0.9))
    assert "it.drill" not in seat.figures


def test_the_published_brilliant_weighs_what_is_published(stocked: Any) -> None:
    # ★ gemmology course pages: round 6.05–6.11 × 3.63 (average 6.08): 0.8185 ct
    seat = stocked("seat", clay="silver", stone="diamond-6", thickness="2 mm", clearance="0.1 mm")
    assert seat.blamed(seat.errors[0]) == "stone"  # no drill of 6.9 mm is owned
    assert seat.usual("carats") == pytest.approx(0.8185, abs=1e-4)


@pytest.mark.parametrize(
    ("fields", "blamed", "help_"),
    [
        ({"stone": "flat-3"}, "stone", "2.5 mm"),
        ({"stone": "diamond-6"}, "stone", "2.5 mm"),
        ({"proud": "1.5 mm"}, "proud", "less than 1.5 mm"),
        ({"width": "2.8 mm"}, "width", "3.1 mm or more"),
        ({"thickness": "0 mm"}, "thickness", "more than 0 mm"),
    ],
)
def test_a_seat_that_cannot_be_is_refused_at_its_field(
    stocked: Any, fields: dict[str, str], blamed: str, help_: str
) -> None:
    seat = stocked("seat", **{**SEAT, **fields})
    assert any(seat.blamed(t) == blamed and help_ in t.help for t in seat.errors)


def test_a_stone_of_no_known_height_is_told_so(stocked: Any) -> None:
    seat = stocked("seat", clay="silver", stone="flat-3", thickness="1 mm")
    assert any("how high" in t.message for t in seat.errors)
