"""Washer of clay: two circles, by template or by cutter. The test silver shrinks 8 to 10 %."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

import pytest
from shapely.geometry import Point

if TYPE_CHECKING:
    from pathlib import Path

WASHER = {"clay": "silver", "thickness": "1 mm"}
PROJECT = """\
title: Thin washer
revision: 1
date: 2026-01-10
summary: One washer.
makes: 1
level: experienced
parts:
  it:
    kind: washer
    clay: silver
    thickness: 1 mm
    outside: 10 mm
    opening: OPENING
steps:
  - title: Cut
    parts: [it]
    uses: [silver]
  - title: Dry
    wait: drying
    does: [test]
  - title: Fire
    firing: silver
"""


def test_a_washer_weighs_what_the_ring_between_two_circles_weighs(stocked: Any) -> None:
    washer = stocked("washer", **WASHER, outside="18 mm", opening="9 mm")
    assert not washer.troubles
    # 18 and 9 are cut at 19.78 and 9.89, which the template draws as 19.8 and 9.9
    ring = Point(0, 0).buffer(19.8 / 2, 720).difference(Point(0, 0).buffer(9.9 / 2, 720))
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
        ({"outside": "10 mm", "opening_cutter": "10 mm"}, "opening cutter", "8.8 mm or less"),
        ({"outside": "18 mm", "opening": "9 mm", "opening_cutter": "10 mm"}, "opening", "give one"),
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
    assert [t.message for t in washer.errors] == ["it: opening or opening cutter is wanted, one of the two"]


def test_what_is_cut_decides_what_it_fires_to(stocked: Any) -> None:
    # 18 ÷ 0.91 = 19.780, cut at 19.8; 9 ÷ 0.91 = 9.890, cut at 9.9
    washer = stocked("washer", **WASHER, outside="18 mm", opening="9 mm")
    assert (washer["fired_outside"].low, washer["fired_outside"].high) == pytest.approx((19.8 * 0.90, 19.8 * 0.92))
    assert washer.usual("rim") == pytest.approx((19.8 - 9.9) / 2 * 0.91)
    assert [(size.label, size.made) for size in washer.part.sizes] == [("outside", 19.8), ("opening", 9.9)]


@pytest.mark.parametrize("outside", ["4 mm", "9.7 mm", "10 mm", "17.3 mm", "33.35 mm"])
@pytest.mark.parametrize("field", ["opening", "opening_cutter"])
def test_the_widest_opening_offered_is_taken(outside: str, field: str, stocked: Any) -> None:
    narrow = stocked("washer", **WASHER, outside=outside, **{field: "40 mm"})
    [trouble] = [t for t in narrow.errors if "rim" in t.message]
    offered = trouble.help.split(" or less")[0]
    washer = stocked("washer", **WASHER, outside=outside, **{field: offered})
    assert not [t for t in washer.errors if "rim" in t.message]


def test_a_rim_thinner_than_is_usual_can_be_waived_and_no_rim_cannot(libraries: Any, tmp_path: Path) -> None:
    library = libraries.make(tmp_path)
    thin = PROJECT.replace("OPENING", "9 mm")
    library.write("thin/project.yaml", thin)
    assert any("least-rim" in t.help for t in library.check("thin").troubles.errors)
    library.write("thin/project.yaml", thin.replace("parts:", "waive: {least-rim: it is worn on a chain}\nparts:", 1))
    assert not library.check("thin").troubles.errors
    library.change("thin/project.yaml", "opening: 9 mm", "opening: 10 mm")
    assert ["leaves no rim" in t.message for t in library.check("thin").troubles.errors] == [True]
