"""Box of clay: walls on a base. Volumes by shapely, fits by adding up. The test silver shrinks 8 to 10 %."""

from __future__ import annotations

from typing import Any

import pytest
from shapely.geometry import box as rectangle

BOX = {"clay": "silver", "across": "30 mm", "down": "22 mm", "wall_height": "6 mm", "thickness": "1 mm"}


@pytest.mark.parametrize("corners", ["butted", "mitred"])
def test_the_walls_weigh_the_frame_between_outside_and_inside(stocked: Any, corners: str) -> None:
    made = stocked("box", **BOX, corners=corners)
    assert not made.troubles
    wide, tall, high = 30 / 0.91, 22 / 0.91, 6 / 0.91
    frame = rectangle(0, 0, wide, tall).difference(rectangle(1, 1, wide - 1, tall - 1))
    solid = frame.area * high + wide * tall  # walls, and a base of 1 mm
    assert made.usual("fired_mass") == pytest.approx(solid * 7 / 1000 * 0.92)


def test_butted_walls_fit_between_each_other(stocked: Any) -> None:
    made = stocked("box", **BOX)
    assert made.usual("wall_down") + 2 * 1 == pytest.approx(made.usual("wet_down"))
    assert made.usual("wall_strip") == pytest.approx(2 * 30 / 0.91 + 2 * (22 / 0.91 - 2))


def test_mitred_walls_all_run_full_length_and_lose_their_corners(stocked: Any) -> None:
    made = stocked("box", **BOX, corners="mitred")
    assert made.usual("wall_down") == pytest.approx(22 / 0.91)
    lost = made.usual("clay_mass") * 0.92 - made.usual("fired_mass")
    # at each of eight ends a triangle of thickness × thickness ÷ 2 is cut away
    assert lost == pytest.approx(8 * (1 * 1 / 2) * (6 / 0.91) * 7 / 1000 * 0.92)


def test_sizes_of_the_inside_come_out_inside(stocked: Any) -> None:
    made = stocked("box", **BOX, sizes_are="inside")
    assert made.usual("inside_across") == pytest.approx(30)
    assert made.usual("wet_across") == pytest.approx(30 / 0.91 + 2)
    assert (made["inside_down"].low, made["inside_down"].high) == pytest.approx((22 / 0.91 * 0.90, 22 / 0.91 * 0.92))


def test_a_lid_with_a_lip_goes_in_with_room_on_both_sides(stocked: Any) -> None:
    made = stocked("box", **BOX, lid="with a lip", clearance="0.4 mm")
    lip = made.usual("lip_across") * 0.91
    assert made.usual("inside_across") - lip == pytest.approx(0.8)
    plain, flat = stocked("box", **BOX), stocked("box", **BOX, lid="flat")
    lid = flat.usual("clay_mass") - plain.usual("clay_mass")
    assert lid == pytest.approx(30 / 0.91 * 22 / 0.91 * 7 / 1000)
    more = made.usual("clay_mass") - flat.usual("clay_mass")
    assert more == pytest.approx(made.usual("lip_across") * made.usual("lip_down") * 7 / 1000)


def test_its_height_is_wall_and_base(stocked: Any) -> None:
    made = stocked("box", **BOX, base_thickness="2 mm")
    assert made["fired_height"].high == pytest.approx(6 / 0.91 * 0.92 + 2 * 0.92)


def test_the_template_shows_the_base_and_one_wall_of_each_length(stocked: Any) -> None:
    made = stocked("box", **BOX)
    boxes = [
        (max(x for x, _ in p), max(y for _, y in p) - min(y for _, y in p))
        for k, p, _ in made.drawn().lines
        if k == "cut"
    ]
    assert boxes == [pytest.approx((33.0, 24.2)), pytest.approx((33.0, 6.6)), pytest.approx((22.2, 6.6))]


@pytest.mark.parametrize(
    ("fields", "blamed", "help_"),
    [
        ({"across": "2 mm"}, "across", "2.73 mm or more"),
        ({"down": "1.5 mm"}, "down", "2.73 mm or more"),
        ({"lid": "with a lip", "clearance": "11 mm"}, "clearance", "less than 10 mm"),
        ({"thickness": "0 mm"}, "thickness", "more than 0 mm"),
        ({"wall_height": "-1 mm"}, "wall height", "more than 0 mm"),
    ],
)
def test_a_box_that_cannot_be_is_refused_at_its_field(
    stocked: Any, fields: dict[str, str], blamed: str, help_: str
) -> None:
    made = stocked("box", **{**BOX, **fields})
    assert made.blamed(made.errors[0]) == blamed
    assert help_ in made.errors[0].help


def test_a_deep_box_is_doubted_and_not_refused(stocked: Any) -> None:
    made = stocked("box", **{**BOX, "wall_height": "15 mm"})
    assert not made.errors
    [doubt] = made.troubles
    assert made.blamed(doubt) == "wall height"
    assert doubt.help == "11 mm or less"
