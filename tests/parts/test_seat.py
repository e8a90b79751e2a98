"""Seat: one hole for one stone. The test silver shrinks 8 to 10 % in its plane and its thickness."""

from __future__ import annotations

from fractions import Fraction
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
    # it is opened 1.7 deep, and what follows is worked from that
    assert seat.usual("needed") == pytest.approx(1.7 + 0.5 / 0.90)
    assert seat.usual("layers") == 4  # 2.256 ÷ 0.75 = 3.01
    floor = 4 * 0.75 - 1.7
    assert (seat["fired_floor"].low, seat["fired_floor"].high) == pytest.approx((floor * 0.90, floor * 0.92))


@settings(max_examples=40)
@given(st.integers(0, 14), st.integers(0, 20), st.integers(2, 20))
def test_one_layer_less_would_leave_too_thin_a_floor(stocked: Any, proud: int, floor: int, thick: int) -> None:
    fields = {"proud": f"{proud / 10} mm", "floor": f"{floor / 10} mm", "thickness": f"{thick / 10} mm"}
    seat = stocked("seat", **{**SEAT, **fields})
    depth, layers = seat.figures["it.depth"].printed, seat.usual("layers")
    assert seat["fired_floor"].low >= floor / 10 - 1e-9
    assert (layers * thick / 10 - depth) * 0.90 >= floor / 10 - 1e-9
    assert ((layers - 1) * thick / 10 - depth) * 0.90 < floor / 10 + 1e-9


def test_the_floor_is_what_the_depth_that_is_printed_leaves(stocked: Any) -> None:
    # 1.2 ÷ 0.90 is 1.33, opened 1.4 deep: one layer of 1.9 would leave (1.9 − 1.4) × 0.90 = 0.45 of the 0.5 asked for
    seat = stocked("seat", **{**SEAT, "thickness": "1.9 mm", "proud": "0.3 mm"})
    assert seat.figures["it.depth"].printed.words == "1.4"
    assert seat.usual("layers") == 2
    assert seat["fired_floor"].low == pytest.approx((2 * 1.9 - 1.4) * 0.90)


@settings(max_examples=40)
@given(st.integers(0, 14), st.integers(0, 20), st.integers(2, 40))
def test_in_inches_too_the_floor_is_what_the_printed_depth_leaves(
    inched: Any, proud: int, floor: int, thick: int
) -> None:
    fields = {"proud": f"{proud / 10} mm", "floor": f"{floor / 10} mm", "thickness": f"{thick / 10} mm"}
    seat = inched("seat", **{**SEAT, **fields})
    words = seat.figures["it.depth"].printed.words
    depth = 25.4 * float(sum(map(Fraction, words.split())))
    assert (seat.usual("layers") * thick / 10 - depth) * 0.90 >= floor / 10 - 1e-9
    assert seat["stands"].low == pytest.approx(1.5 - depth * 0.92)


def test_a_stone_stands_at_least_as_deep_as_it_was_asked_to(stocked: Any) -> None:
    seat = stocked("seat", **SEAT, proud="0.3 mm")
    # 1.2 ÷ 0.90, opened 1.4 deep
    assert seat["stands"].high == pytest.approx(1.5 - 1.4 * 0.90)
    assert seat["stands"].high <= 0.3
    assert seat["stands"].low == pytest.approx(1.5 - 1.4 * 0.92)


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


def test_too_little_clay_beside_a_seat_can_be_waived_with_a_reason(stocked: Any) -> None:
    assert stocked("seat", **SEAT, width="2.8 mm").errors
    assert not stocked("seat", **SEAT, width="2.8 mm\nwaive: {least-web: a bezel goes round it}").errors
