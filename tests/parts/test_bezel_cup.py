"""Bezel cup: strip, base and weight, by scipy and shapely."""

from __future__ import annotations

import math
from typing import Any

import pytest
from scipy.special import ellipe
from shapely.geometry import Polygon

CUP = {"strip": "silver-thin", "stone": "oval-18"}


def ellipse(long: float, narrow: float, steps: int = 3600) -> Polygon:
    turns = (i * math.tau / steps for i in range(steps))
    return Polygon([(long / 2 * math.cos(t), narrow / 2 * math.sin(t)) for t in turns])


def test_an_18_by_13_oval_takes_its_published_strip(stocked: Any) -> None:
    # independent script, row C10.9: perimeter 49.0119, and 50.2685 for a strip of 0.4 mm (here 0.3 and 0.1 of room)
    cup = stocked("bezel cup", **CUP)
    assert not cup.troubles
    assert cup.usual("strip_meets") == pytest.approx(50.2685, abs=1e-4)
    assert cup.usual("strip_meets") == pytest.approx(4 * 9 * ellipe(1 - (13 / 18) ** 2) + math.pi * 0.4)


def test_the_strip_runs_along_the_middle_of_its_metal(stocked: Any) -> None:
    cup = stocked("bezel cup", **CUP, room="0.2 mm")
    middle = ellipse(18, 13).buffer(0.1 + 0.3 / 2, 64)
    assert cup.usual("strip_meets") == pytest.approx(middle.length, rel=1e-4)


def test_the_base_is_the_stone_grown_by_room_wall_and_rim(stocked: Any) -> None:
    cup = stocked("bezel cup", **CUP, base="silver-thick", rim="0.5 mm")
    base = ellipse(18, 13).buffer(0.05 + 0.3 + 0.5, 64)
    left, top, right, bottom = base.bounds
    assert cup.usual("base_area") == pytest.approx(base.area, rel=1e-4)
    assert (cup.usual("base_across"), cup.usual("base_down")) == pytest.approx((right - left, bottom - top), rel=1e-5)
    # a millimetre of sheet is left between two, for the saw
    assert cup.usual("base_blank") == pytest.approx((right - left + 1) * (bottom - top + 1), rel=1e-5)
    wall = (ellipse(18, 13).buffer(0.35, 64).area - ellipse(18, 13).buffer(0.05, 64).area) * cup.usual("wall")
    assert cup.usual("mass") == pytest.approx(
        (wall * 10.49 + base.area * 0.6 * 10.36) / 1000, rel=2e-4
    )  # cut to a tenth


def test_a_round_stone_takes_pi_times_stone_room_and_strip(stocked: Any) -> None:
    # metal supplier's formula page: 3.14 × (diameter + thickness), here of the largest stone of the size
    cup = stocked("bezel cup", strip="silver-thin", stone="diamond-6", room="0 mm")
    assert cup.usual("strip_meets") == pytest.approx(math.pi * (6.11 + 0.3))
    assert cup.usual("base_across") == pytest.approx(6.11 + 2 * 0.8)
    assert cup.usual("base_area") == pytest.approx(math.pi / 4 * 7.7**2)  # as it is cut
    assert cup.usual("carats") == pytest.approx(0.8185, abs=1e-4)  # ★ gemmology course pages


def test_an_oval_brilliant_weighs_by_the_published_factor(stocked: Any) -> None:
    # ((length + width) ÷ 2)² × depth × 0.0062, a diamond forum post quoting GIA; in proportion to density
    cup = stocked("bezel cup", **CUP)
    assert cup.usual("carats") == pytest.approx(15.5**2 * 5 * 0.0062 * 2.65 / 3.52)


def test_wall_and_base_of_one_sheet_are_taken_together(stocked: Any) -> None:
    cup = stocked("bezel cup", **CUP, count="2")
    metal = sum(take.amount.usual for take in cup.part.takes if take.item.id == "silver-thin")
    strip = cup.figures["it.strip_cut"].printed  # 50.27 + 0.5, up to a half
    assert strip == 51
    assert metal == pytest.approx(2 * (strip * cup.usual("wall") + cup.usual("base_blank")))


def test_the_wall_goes_by_the_stone_or_by_its_own_height(stocked: Any) -> None:
    assert stocked("bezel cup", **CUP, reach="1 / 3", under="0.4 mm").usual("wall") == pytest.approx(0.4 + 5 / 3)
    assert stocked("bezel cup", **CUP, height="2.5 mm").usual("wall") == 2.5


def test_the_template_draws_strip_and_base_at_their_printed_size(stocked: Any) -> None:
    cup = stocked("bezel cup", **CUP)
    strip, base = [Polygon(points).bounds for kind, points, _ in cup.drawn().lines if kind == "cut"]
    assert strip == pytest.approx((0, 0, 51.0, 2.0))
    assert (base[2] - base[0], base[3] - base[1]) == pytest.approx((19.7, 14.7), abs=0.01)


@pytest.mark.parametrize(
    ("fields", "blamed", "help_"),
    [
        ({"stone": "flat-3"}, "stone", "give its height in stock"),
        ({"height": "6 mm"}, "height", "5 mm or less"),
        ({"height": "1 mm", "under": "1.5 mm"}, "height", "more than 1.5 mm"),
        ({"reach": "150 %"}, "reach", "1 or less"),
        ({"strip": "copper-16awg"}, "strip", "silver-thick"),
        ({"base": "glass-2"}, "base", "silver-thick"),
        ({"trim": "-1 mm"}, "trim", "0 mm or more"),
    ],
)
def test_a_cup_that_cannot_be_is_refused_at_its_field(
    stocked: Any, fields: dict[str, str], blamed: str, help_: str
) -> None:
    cup = stocked("bezel cup", **{**CUP, **fields})
    assert cup.blamed(cup.errors[0]) == blamed
    assert help_ in cup.errors[0].help
