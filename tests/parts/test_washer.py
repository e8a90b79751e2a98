"""Washer of clay: two circles, by template or by cutter. The test silver shrinks 8 to 10 %."""

from __future__ import annotations

import math
from typing import Any

import pytest
from shapely.geometry import Point

WASHER = {"clay": "silver", "thickness": "1 mm"}


def test_a_washer_weighs_what_the_ring_between_two_circles_weighs(stocked: Any) -> None:
    washer = stocked("washer", **WASHER, outside="18 mm", opening="9 mm")
    assert not washer.troubles
    ring = Point(0, 0).buffer(9 / 0.91, 720).difference(Point(0, 0).buffer(4.5 / 0.91, 720))
    assert washer.usual("fired_mass") == pytest.approx(ring.area * 7 / 1000 * 0.92, rel=1e-4)
    # what is lifted out of the middle is a quarter of the disc: half the diameter
    assert washer.usual("middle") == pytest.approx(washer.usual("clay_mass") / 4)


def test_two_cutters_from_the_drawer_decide_what_it_comes_out_at(stocked: Any) -> None:
    # wanted 19.78 and 9.89; owned 20 and 10
    washer = stocked("washer", **WASHER, outside="18 mm", opening="9 mm", cut_with="cutters")
    assert (washer.usual("cutter_outside"), washer.usual("cutter_opening")) == (20, 10)
    assert (washer["fired_opening"].low, washer["fired_opening"].high) == pytest.approx((9.0, 9.2))
    assert (washer["rim"].low, washer["rim"].high) == pytest.approx((4.5, 4.6))
    assert washer.usual("clay_mass") == pytest.approx(math.pi * 100 * 7 / 1000)


def test_one_cutter_may_be_given_and_the_other_side_drawn(stocked: Any) -> None:
    washer = stocked("washer", **WASHER, outside="18 mm", opening_cutter="8 mm")
    assert not washer.troubles
    assert washer.usual("wet_outside") == pytest.approx(18 / 0.91)
    ovals = sorted(width for kind, _, width, _ in washer.drawn().ovals if kind == "cut")
    assert ovals == pytest.approx([8, 19.8])  # 18 ÷ 0.91 = 19.78, printed and drawn to a tenth


@pytest.mark.parametrize(
    ("fields", "blamed", "help_"),
    [
        ({"outside": "10 mm", "opening": "9 mm"}, "opening", "8 mm or less"),
        ({"outside": "10 mm", "opening": "12 mm"}, "opening", "8 mm or less"),
        ({"outside": "10 mm", "opening_cutter": "10 mm"}, "opening cutter", "8.79 mm or less"),
        ({"outside": "18 mm", "opening": "9 mm", "opening_cutter": "10 mm"}, "opening", "take it out"),
        ({"outside_cutter": "21 mm", "opening": "9 mm"}, "outside cutter", "20 mm and 22 mm"),
        ({"outside": "35 mm", "opening": "9 mm", "cut_with": "cutters"}, "outside", "25 mm"),
        ({"outside": "0 mm", "opening": "9 mm"}, "outside", "more than 0 mm"),
    ],
)
def test_a_washer_that_cannot_be_is_refused_at_its_field(
    stocked: Any, fields: dict[str, str], blamed: str, help_: str
) -> None:
    washer = stocked("washer", **WASHER, **fields)
    assert washer.blamed(washer.errors[0]) == blamed
    assert help_ in washer.errors[0].help


def test_a_washer_wants_both_its_diameters(stocked: Any) -> None:
    washer = stocked("washer", **WASHER, outside="18 mm")
    assert any("wants its opening" in t.message for t in washer.errors)
