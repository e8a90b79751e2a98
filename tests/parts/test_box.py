"""Box of clay: walls on a base. Volumes by shapely, fits by adding up. The test silver shrinks 8 to 10 %.

Base, walls and lip are cut, so what follows them is worked from them to a tenth: 30 ÷ 0.91 = 32.97 is cut 33.0 wide,
22 ÷ 0.91 = 24.18 is cut 24.2, and walls of 6 ÷ 0.91 = 6.59 are cut 6.6 high.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from shapely.geometry import box as rectangle

from sheetgen.parts.box import Box

WIDE, TALL, HIGH = 33.0, 24.2, 6.6
BOX = {"clay": "silver", "across": "30 mm", "down": "22 mm", "wall_height": "6 mm", "thickness": "1 mm"}


@pytest.mark.parametrize("corners", ["butted", "mitred"])
def test_the_walls_weigh_the_frame_between_outside_and_inside(stocked: Any, corners: str) -> None:
    made = stocked("box", **BOX, corners=corners)
    assert not made.troubles
    frame = rectangle(0, 0, WIDE, TALL).difference(rectangle(1, 1, WIDE - 1, TALL - 1))
    solid = frame.area * HIGH + WIDE * TALL  # walls, and a base of 1 mm
    assert made.usual("fired_mass") == pytest.approx(solid * 7 / 1000 * 0.92)


def test_butted_walls_fit_between_each_other(stocked: Any) -> None:
    made = stocked("box", **BOX)
    assert made.usual("wall_down") == pytest.approx(TALL - 2 * 1)
    assert made.usual("wall_strip") == pytest.approx(2 * WIDE + 2 * (TALL - 2))


def test_mitred_walls_all_run_full_length_and_lose_their_corners(stocked: Any) -> None:
    made = stocked("box", **BOX, corners="mitred")
    assert made.usual("wall_down") == pytest.approx(TALL)
    lost = made.usual("clay_mass") - made.usual("fired_mass") / 0.92
    # at each of eight ends a triangle of thickness × thickness ÷ 2 is cut away; the strip of 114.4 is cut as 115
    assert lost == pytest.approx((8 * (1 * 1 / 2) + 115 - 2 * (WIDE + TALL)) * HIGH * 7 / 1000)


def test_the_clay_is_that_of_the_strip_as_it_is_rolled(stocked: Any) -> None:
    # 2 × (33 + 22.2) = 110.4 is rolled 111 long
    made = stocked("box", **BOX)
    assert made.usual("clay_mass") == pytest.approx((111 * HIGH + WIDE * TALL) * 7 / 1000)


def test_sizes_of_the_inside_come_out_inside(stocked: Any) -> None:
    made = stocked("box", **BOX, sizes_are="inside")
    assert made.usual("wet_across") == pytest.approx(30 / 0.91 + 2)
    assert made.usual("inside_across") == pytest.approx(30, abs=0.05)
    # 24.18 + 2 is cut 26.2, and 24.2 is left between the walls
    assert (made["inside_down"].low, made["inside_down"].high) == pytest.approx((24.2 * 0.90, 24.2 * 0.92))


def test_inside_and_lip_are_worked_from_what_is_cut(stocked: Any) -> None:
    made = stocked("box", **BOX, lid="with a lip", clearance="0.4 mm")
    assert made.usual("inside_across") == pytest.approx((WIDE - 2) * 0.91)
    assert made.usual("lip_across") == pytest.approx(WIDE - 2 - 2 * 0.4 / 0.91)
    assert made.usual("fired_height") == pytest.approx((HIGH + 1) * 0.91)


def inches(words: str) -> Fraction:
    """A mixed fraction as it is printed."""
    return sum((Fraction(word) for word in words.split()), Fraction(0))


@given(st.integers(160, 500), st.integers(160, 500), st.integers(3, 24))
@example(223, 215, 10)  # was a whole 64th off
@settings(max_examples=40, deadline=None)
def test_a_box_in_inches_closes(inched: Any, across: int, down: int, walls: int) -> None:
    """Printed in 64ths, walls between walls make up the base to half of one, however thick they are."""
    fields = {"across": f"{across / 10} mm", "down": f"{down / 10} mm", "thickness": f"{walls / 10} mm"}
    made = inched("box", **BOX | fields, lid="with a lip", clearance="0.3 mm")
    assert not made.errors
    thick, room = Fraction(2 * walls, 254), Fraction(6, 254) / Fraction(91, 100)
    printed = {name: inches(made.figures[f"it.{name}"].printed.words) for name in
               ("wet_across", "wet_down", "wall_down", "lip_across", "lip_down")}  # fmt: skip
    assert abs(printed["wall_down"] + thick - printed["wet_down"]) <= Fraction(1, 128)
    for way in ("across", "down"):
        assert abs(printed[f"lip_{way}"] + thick + room - printed[f"wet_{way}"]) <= Fraction(1, 128)
    # what is drawn is what is printed
    assert made.part[Box.wall_down] == pytest.approx(float(printed["wall_down"]) * 25.4)


@pytest.mark.parametrize("down", ["0.8 in", "1 in", "1 1/2 in"])
def test_walls_of_whole_64ths_close_exactly(inched: Any, down: str) -> None:
    made = inched("box", **BOX | {"down": down, "thickness": "3/64 in"})
    base, wall = (inches(made.figures[f"it.{name}"].printed.words) for name in ("wet_down", "wall_down"))
    assert wall + 2 * Fraction(3, 64) == base


def test_a_lid_with_a_lip_goes_in_with_room_on_both_sides(stocked: Any) -> None:
    made = stocked("box", **BOX, lid="with a lip", clearance="0.4 mm")
    assert made.usual("inside_across") - made.usual("lip_across") * 0.91 == pytest.approx(0.8)
    plain, flat = stocked("box", **BOX), stocked("box", **BOX, lid="flat")
    lid = flat.usual("clay_mass") - plain.usual("clay_mass")
    assert lid == pytest.approx(WIDE * TALL * 7 / 1000)
    more = made.usual("clay_mass") - flat.usual("clay_mass")
    # 31 − 0.8 ÷ 0.91 = 30.12 and 22.2 − 0.88 = 21.32, cut to a tenth
    assert more == pytest.approx(30.1 * 21.3 * 7 / 1000)


def test_its_height_is_wall_and_base(stocked: Any) -> None:
    made = stocked("box", **BOX, base_thickness="2 mm")
    assert made["fired_height"].high == pytest.approx(HIGH * 0.92 + 2 * 0.92)


def test_the_template_shows_the_base_and_one_wall_of_each_length(stocked: Any) -> None:
    made = stocked("box", **BOX)
    boxes = [
        tuple(max(side) - min(side) for side in zip(*p, strict=True)) for k, p, _ in made.drawn().lines if k == "cut"
    ]
    assert boxes == [pytest.approx((33.0, 24.2)), pytest.approx((33.0, 6.6)), pytest.approx((22.2, 6.6))]


@pytest.mark.parametrize(
    ("fields", "blamed", "help_"),
    [
        ({"across": "2 mm"}, "across", "2.8 mm or more"),
        ({"down": "1.5 mm"}, "down", "2.8 mm or more"),
        ({"lid": "with a lip", "clearance": "11 mm"}, "clearance", "9.9 mm or less"),
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


def test_a_narrow_box_may_be_built_by_who_knows_better(stocked: Any) -> None:
    # 2.5 ÷ 0.91 leaves 0.75 between two walls of 1: less than common practice, and more than nothing
    made = stocked("box", **{**BOX, "across": "2.5 mm"})
    assert made.blamed(made.errors[0]) == "across"
    assert "least-inside" in made.errors[0].help


def test_a_deep_box_is_doubted_and_not_refused(stocked: Any) -> None:
    made = stocked("box", **{**BOX, "wall_height": "15 mm"})
    assert not made.errors
    [doubt] = made.troubles
    assert made.blamed(doubt) == "wall height"
    assert doubt.help == "11 mm or less"
