"""Tube, cut shape, dome, ring band and stone row: each reckoned a second way, and each refusing what cannot be.

The test silver shrinks 8 to 10 %, 9 % as a rule, weighs 7 g/cm³ wet and is 92 % metal.
"""

from __future__ import annotations

import math
import re
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from shapely.geometry import Polygon

TUBE = {"clay": "silver", "length": "22 mm", "inside": "8 mm", "thickness": "3 cards", "release sheet": "0.1 mm"}
DOME = {"clay": "silver", "across": "30 mm", "rise": "6 mm", "thickness": "1 mm"}
BAND = {"clay": "silver", "size": "US 7", "width": "5 mm", "thickness": "5 cards"}
ROW = {"clay": "silver", "along": "22 mm", "stone": "glass-2", "margin": "2 mm", "gap": "0.5 mm"}
DISC = {"clay": "silver", "shape": "disc", "across": "20 mm", "thickness": "1 mm"}
few = settings(max_examples=40)


def tenths(low: float, high: float) -> st.SearchStrategy[float]:
    return st.integers(round(low * 10), round(high * 10)).map(lambda n: n / 10)


# Tube


def test_a_tube_is_a_strip_round_former_and_sheet_along_the_middle_of_the_clay(tried: Any) -> None:
    tube = tried("tube", **TUBE)
    assert not tube.troubles
    assert tube.usual("former_wanted") == pytest.approx(8 / 0.91 - 0.2)
    assert tube.usual("former_used") == 9  # the nearest of 6, 7, 8, 9, 10 in the drawer
    # the length of the middle layer, walked in a thousand steps round the former
    radius = 9 / 2 + 0.1 + 0.75 / 2
    points = [(radius * math.cos(i * math.tau / 5000), radius * math.sin(i * math.tau / 5000)) for i in range(5000)]
    assert tube.usual("strip_meets") == pytest.approx(Polygon(points).length, abs=1e-4)
    assert tube.usual("strip_cut") == pytest.approx(31.3 + 4)  # 31.26, marked to a tenth; 4 mm of overlap as a rule
    assert (tube["fired_inside"].low, tube["fired_inside"].high) == pytest.approx((9.2 * 0.90, 9.2 * 0.92))
    # the clay of the joined tube is the solid between two cylinders, as long as it is cut: 24.18, by half millimetres
    solid = math.pi / 4 * (10.7**2 - 9.2**2) * 24 * 7 / 1000
    assert tube.usual("fired_mass") == pytest.approx(solid * 0.92, rel=0.002)
    assert tube.usual("fired_mass") == pytest.approx(31.3 * 24 * 0.75 * 7 / 1000 * 0.92)


def test_the_strip_of_a_published_former_is_as_long_as_published(tried: Any) -> None:
    # independent script, row C3.5: former 52.3, one sheet of 0.10, clay of 2.05128: 171.378 mm
    tube = tried("tube", **{**TUBE, "inside": "9 mm", "thickness": "2.05128 mm"})
    del tube
    wide = {k: v for k, v in TUBE.items() if k != "inside"} | {"former": "52.3 mm", "thickness": "2.05128 mm"}
    assert tried("tube", **wide).usual("strip_meets") == pytest.approx(171.378, abs=0.001)


def test_a_tube_wants_its_bore_or_its_former_and_not_both(tried: Any) -> None:
    [both] = tried("tube", **TUBE, former="9 mm").errors
    assert "one of the two" in both.message
    neither = tried("tube", **{k: v for k, v in TUBE.items() if k != "inside"}).errors
    assert {t.message for t in neither} == {both.message}


def test_a_bore_far_from_every_former_in_the_drawer_names_the_two_nearest(tried: Any) -> None:
    tube = tried("tube", **{**TUBE, "inside": "20 mm"})
    assert tube.blamed(tube.errors[0]) == "inside"
    # 20 ÷ 0.91 − 0.2 = 21.78; the largest owned is 10
    assert "21.78" in tube.errors[0].message
    assert "10 mm" in tube.errors[0].help


def test_clay_is_not_rolled_thicker_by_texturing_it(tried: Any) -> None:
    tube = tried("tube", **TUBE, **{"rolled first": "2 cards"})
    assert tube.blamed(tube.errors[0]) == "rolled first"
    assert tube.errors[0].help.startswith("0.75 mm")
    assert not tried("tube", **TUBE, **{"rolled first": "0.75 mm"}).errors


# Cut shape


def test_a_disc_is_cut_larger_by_what_the_fire_takes(tried: Any) -> None:
    # independent script, row C1.3: 30 mm at 8 to 10 %: cut 32.967, and it fires to 29.670 to 30.330
    disc = tried("cut shape", **{**DISC, "across": "30 mm"})
    wet = disc.usual("wet_disc")
    assert wet == pytest.approx(32.967, abs=0.001)
    assert (wet * 0.90, wet * 0.92) == pytest.approx((29.670, 30.330), abs=0.001)


SHAPES = [
    ("rectangle", "30 mm", "12 mm", 33.0 * 13.2),  # 32.97 and 13.19
    ("oval", "26 mm", "17 mm", 4 * quad(lambda x: 9.35 * math.sqrt(1 - (x / 14.3) ** 2), 0, 14.3)[0]),  # 28.57, 18.68
]


@pytest.mark.parametrize(("shape", "across", "down", "area"), SHAPES, ids=[s[0] for s in SHAPES])
def test_a_piece_weighs_its_area_by_its_thickness(shape: str, across: str, down: str, area: float, tried: Any) -> None:
    # second opinion for the oval: the integral of its outline, as it is cut to a tenth
    piece = tried("cut shape", clay="silver", shape=shape, across=across, down=down, thickness="1 mm")
    assert piece.usual("clay_mass") == pytest.approx(area * 7 / 1000, rel=1e-6)


def test_an_outline_has_the_area_that_shapely_finds(tried: Any) -> None:
    kite = Polygon([(0, 8), (10, 0), (20, 8), (10, 31)])
    piece = tried("cut shape", clay="silver", shape="outline", path="M0 8 L10 0 L20 8 L10 31 Z", thickness="1 mm")
    # 20 ÷ 0.91 = 21.98 is cut 22.0 wide, and all of it in proportion
    assert piece.usual("clay_mass") == pytest.approx(kite.area * 1.1**2 * 7 / 1000)
    assert piece.usual("wet_tall") == pytest.approx(31 * 1.1)
    half = tried("cut shape", clay="silver", shape="outline", path="M0 8 L10 0 L20 8 L10 31 Z", across="10 mm", thickness="1 mm")  # fmt: skip # noqa: E501
    assert half.usual("clay_mass") == pytest.approx(piece.usual("clay_mass") / 4)


def test_a_curved_outline_is_near_enough_to_its_curve(tried: Any) -> None:
    # four quarter arcs as cubic curves (0.5523 of the radius): a circle of 20 mm to 0.1 %
    k = 10 * 0.5522847
    path = (
        f"M10 0 C{10 + k} 0 20 {10 - k} 20 10 C20 {10 + k} {10 + k} 20 10 20 "
        f"C{10 - k} 20 0 {10 + k} 0 10 C0 {10 - k} {10 - k} 0 10 0 Z"
    )
    piece = tried("cut shape", clay="silver", shape="outline", path=path, thickness="1 mm")
    disc = tried("cut shape", **DISC)
    assert piece.usual("clay_mass") == pytest.approx(disc.usual("clay_mass"), rel=1e-3)


@pytest.mark.parametrize(
    ("changes", "field", "helps"),
    [
        ({"across": None}, "it", "20 mm"),
        ({"shape": "oval"}, "it", "12 mm"),
        ({"shape": "outline"}, "it", "path: M"),
        ({"path": "M0 0 L9 0 L5 9 Z"}, "path", "take it out"),
        ({"hole": "19.5 mm"}, "hole", "19 mm or less"),
    ],
)
def test_a_shape_wants_what_it_is_made_of(changes: dict[str, Any], field: str, helps: str, tried: Any) -> None:
    shape = tried("cut shape", **{k: v for k, v in (DISC | changes).items() if v})
    assert shape.blamed(shape.errors[0]) == field
    assert helps in shape.errors[0].help


def test_a_hole_as_large_as_is_offered_is_taken(tried: Any) -> None:
    assert not tried("cut shape", **DISC, hole="19 mm").errors


# Dome


def test_a_dome_is_cut_from_a_disc_of_the_area_of_its_middle(tried: Any) -> None:
    # solid geometry: a cap 30 × 6 outside lies on a ball of R = (225 + 36) ÷ 12 = 21.75; the middle of clay that is
    # 0.91 mm thick when fired lies half of that further in, over the same angle
    dome = tried("dome", **DOME)
    assert dome.usual("radius") == pytest.approx(21.75)
    middle = 21.75 - 0.91 / 2
    angle = math.acos(1 - 6 / 21.75)
    area, _ = quad(lambda a: math.tau * middle**2 * math.sin(a), 0, angle)
    assert dome.usual("disc") == pytest.approx(2 * math.sqrt(area / math.pi), rel=1e-6)
    assert dome.usual("wet_disc") == pytest.approx(dome.usual("disc") / 0.91)


def test_a_thin_dome_comes_near_to_the_published_disc(tried: Any) -> None:
    # independent script, table of section 9: 30 × 6 is cut from 32.311; clay of no thickness to speak of
    assert tried("dome", **{**DOME, "thickness": "0.001 mm"}).usual("disc") == pytest.approx(32.311, abs=0.001)


def test_the_ball_is_the_nearest_in_the_drawer(tried: Any) -> None:
    dome = tried("dome", **DOME)
    # 2 × (21.75 ÷ 0.91 − 1) = 45.80, of 20, 30, 35, 40, 50
    assert dome.usual("ball") == 50
    # The disc, 34.76 and cut by a template at 34.8, reaches so far round the middle of its clay, at 25.5; the outside
    # of the cap stands at 26.
    half = 2 * math.asin(34.8 / 2 / 2 / 25.5)
    assert dome.usual("rise_out") == pytest.approx(26 * (1 - math.cos(half)) * 0.91)
    assert dome.usual("width_out") == pytest.approx(2 * 26 * math.sin(half) * 0.91)
    assert dome.usual("wet_across") == pytest.approx(2 * 26 * math.sin(half))
    assert dome.usual("wet_high") == pytest.approx(26 - 25 * math.cos(half))  # its inner edge stands on the table


def test_the_disc_of_a_dome_as_it_is_printed_decides_what_it_weighs_and_how_it_comes_out(tried: Any) -> None:
    # ⌀ 34.76 is printed, drawn and cut as 34.8; its holes, 8.32, 2.20 and 2.20 wide, as 8.3 and 2.2
    dome = tried("dome", **DOME, hole="8 mm", holes=8, around="18 mm", opening="2 mm")
    assert dome.part.figures["wet_disc"].printed == pytest.approx(34.8)
    disc = math.pi / 4 * 34.8**2 * 1 * 7 / 1000
    holes = math.pi / 4 * (8.3**2 + 8 * 2.2**2) * 1 * 7 / 1000
    assert dome["clay_mass"].low == dome["clay_mass"].high == pytest.approx(disc)
    assert dome.usual("fired_mass") == pytest.approx((disc - holes) * 0.92)
    # only the fire is unsure of what has been cut
    assert dome["wet_across"].exact
    assert dome["rise_out"].high / dome["rise_out"].low == pytest.approx(0.92 / 0.90)


@pytest.mark.parametrize(("formed", "tool"), [("over", ("dome former", 50)), ("in", ("cup former", 2 * 21.75 / 0.91))])
def test_a_dome_lists_the_ball_or_the_cup_that_shapes_it(formed: str, tool: tuple[str, float], tried: Any) -> None:
    # no cups are owned: the one that fits its outside exactly is asked for
    [(kind, size)] = tried("dome", **DOME, formed=formed).part.tools
    assert (kind, size) == (tool[0], pytest.approx(tool[1]))


def test_clay_too_thick_for_its_cup_is_refused(tried: Any) -> None:
    dome = tried("dome", **{**DOME, "across": "3 mm", "rise": "1 mm", "thickness": "3 mm"}, formed="in")
    assert [dome.blamed(t) for t in dome.errors] == ["thickness"]


def test_a_dome_on_the_ball_that_fits_comes_out_as_it_was_asked_for(tried: Any) -> None:
    # A finished cap 30 × 6 of radius 21.75, formed on the ball of 2 × (21.75 ÷ 0.91 − 1) that fits it exactly.
    dome = tried("dome", **DOME)
    exact = 2 * (dome.usual("radius") / 0.91 - 1)
    middle = exact / 2 + 0.5
    half = 2 * math.asin(dome.usual("wet_disc") / 4 / middle)
    assert (exact / 2 + 1) * (1 - math.cos(half)) * 0.91 == pytest.approx(6, abs=0.01)
    assert 2 * (exact / 2 + 1) * math.sin(half) * 0.91 == pytest.approx(30, abs=0.05)


@pytest.mark.parametrize(
    ("changes", "field", "helps"),
    [
        ({"rise": "16 mm"}, "rise", "15 mm or less"),
        ({"hole": "28 mm"}, "hole", "26 mm or less"),
        ({"holes": "6"}, "holes", "around"),
        ({"holes": "12", "around": "15 mm", "opening": "3.5 mm"}, "opening", "2.8 mm or less"),
        ({"holes": "6", "around": "27 mm", "opening": "3 mm"}, "around", "25 mm or less"),
        ({"holes": "3", "around": "8 mm", "opening": "3 mm", "hole": "5 mm"}, "around", "10 mm or more"),
    ],
)
def test_a_dome_refuses_what_tears_or_does_not_fit(changes: dict[str, Any], field: str, helps: str, tried: Any) -> None:
    dome = tried("dome", **(DOME | changes))
    found = [t for t in dome.errors if dome.blamed(t) == field]
    assert found, [str(t) for t in dome.troubles]
    assert helps in found[0].help


def test_a_deep_dome_is_a_doubt_and_no_fault(tried: Any) -> None:
    dome = tried("dome", **{**DOME, "rise": "13 mm"})
    assert [(t.severity, dome.blamed(t)) for t in dome.troubles if "crease" in t.message] == [("warning", "rise")]


# Ring band


def test_a_ring_fired_to_us_7_is_wound_on_us_8_86(tried: Any) -> None:
    # independent script, row C4.8: s 9 %, one sheet of 0.10: former 18.836 mm, US 8.86; a former is marked in tenths
    band = tried("ring band", **BAND)
    assert band.usual("former_wanted") == pytest.approx(18.836, abs=0.002)
    assert band.usual("former") == pytest.approx(18.8)
    assert band.usual("former_us") == pytest.approx((18.8 / 25.4 - 0.458) / 0.032)
    assert band.usual("former_us") == pytest.approx(8.86, abs=0.06)  # a tenth of a millimetre is an eighth of a size
    assert band.usual("fired_inside") == pytest.approx((18.8 + 0.2) * 0.91)
    assert band.usual("fired_us") == pytest.approx(7, abs=0.05)
    assert band.usual("fired_iso") == pytest.approx(54.42, abs=0.15)  # table of section 4
    assert band.usual("fired_jp") == pytest.approx(14.0, abs=0.15)


def test_a_ring_blank_is_as_long_as_the_suppliers_rule_says(tried: Any) -> None:
    # row C3.4: inside 17.35, 1.5 thick: 59.22 mm; the rule is for metal, so nothing may shrink: wind on the fired size
    band = tried("ring band", **{**BAND, "size": f"{17.35 * 0.91:.4f} mm", "thickness": "1.5 mm", "turns": "0"})
    # wound on a former of 17.35, marked as 17.3 or 17.4: π × 0.05 off the rule at most
    assert band.usual("strip_meets") == pytest.approx(59.22, abs=0.01 + math.pi * 0.05)


@pytest.mark.parametrize(("width", "added"), [("5.9 mm", 0), ("6 mm", 0.4064), ("9 mm", 0.4064)])
def test_a_wide_band_is_half_a_size_larger(width: str, added: float, tried: Any) -> None:
    # common practice: half a US size, 0.5 × 0.032 in, from 6 mm
    band = tried("ring band", **{**BAND, "width": width})
    assert band.usual("inside") - 17.3228 == pytest.approx(added, abs=1e-9)
    as_given = tried("ring band", **{**BAND, "width": width}, **{"wide band": "as given"})
    assert as_given.usual("inside") == pytest.approx(17.3228)


@pytest.mark.parametrize("size", ["US 7", "UK N½", "ISO 54", "JP 14", "17.3 mm"])
def test_a_finger_may_be_given_in_any_system(size: str, tried: Any) -> None:
    # the four sizes are neighbours in the table of section 4
    assert tried("ring band", **{**BAND, "size": size}).usual("inside") == pytest.approx(17.27, abs=0.09)


def test_a_size_no_finger_has_is_refused(tried: Any) -> None:
    band = tried("ring band", **{**BAND, "size": "34 mm"})
    assert band.blamed(band.errors[0]) == "size"
    assert tried("ring band", **{**BAND, "size": "7"}).errors


# Stone row


def test_a_row_takes_as_many_stones_as_brute_force_lays(tried: Any) -> None:
    row = tried("stone row", **ROW)
    # stones of 2 mm laid one after another from 2 mm to 20 mm, half a millimetre apart
    at, laid = 2.0, 0
    while at + 2 <= 22 - 2 + 1e-9:
        laid, at = laid + 1, at + 2.5
    assert row.usual("stones") == laid == 7
    assert row.usual("even_gap") == pytest.approx((18 - 14) / 6)
    assert row.usual("wet_pitch") == pytest.approx((2 + 4 / 6) / 0.91)
    assert row.usual("wet_span") == pytest.approx(6 * row.usual("wet_pitch"))


@pytest.mark.parametrize(
    ("along", "margin", "gap", "count"), [("30 mm", "1.5 mm", "0.5 mm", 11), ("8.6 mm", "1.2 mm", "0.1 mm", 3)]
)
def test_a_row_on_the_very_edge_is_counted_full(along: str, margin: str, gap: str, count: int, tried: Any) -> None:
    # row C10.7: 27.5 ÷ 2.5 = 11 exactly; and (8.6 − 2.4 + 0.1) ÷ 2.1 = 3 exactly
    row = tried("stone row", **{**ROW, "along": along, "margin": margin, "gap": gap})
    assert row["stones"].usual == count


def test_a_seat_still_takes_its_stone_at_the_largest_shrinkage(tried: Any) -> None:
    row = tried("stone row", **ROW)
    # (2 + 0.1) ÷ 0.90 = 2.333; the drill not under it, of 2, 2.2, 2.3, 2.4, 2.5, is 2.4
    assert row.usual("seat") == pytest.approx(2.3333, abs=1e-4)
    assert row.usual("drill") == 2.4
    assert row.usual("drill") * 0.90 >= 2.1
    assert row.usual("loosest") == pytest.approx(2.4 * 0.92 - 1.95)


def test_seats_too_near_each_other_are_refused_with_a_gap_that_works(tried: Any) -> None:
    row = tried("stone row", **{**ROW, "gap": "0.1 mm"})
    assert row.blamed(row.errors[0]) == "gap"
    better = re.match(r"([\d.]+) mm or more", row.errors[0].help)
    assert better
    assert not tried("stone row", **{**ROW, "gap": f"{better[1]} mm"}).errors


@given(along=tenths(8, 60), gap=tenths(0, 1))
@few
def test_the_gap_that_is_offered_always_works(along: float, gap: float, tried: Any) -> None:
    row = tried("stone row", **{**ROW, "along": f"{along} mm", "gap": f"{gap} mm"})
    for trouble in row.errors:
        offered = re.match(r"([\d.]+) mm or more", trouble.help)
        assert offered
        assert not tried("stone row", **{**ROW, "along": f"{along} mm", "gap": f"{offered[1]} mm"}).errors


@given(along=tenths(8, 60))
@few
def test_a_gap_that_is_left_out_keeps_the_clay_between_two_seats(along: float, tried: Any) -> None:
    row = tried("stone row", clay="silver", stone="glass-2", along=f"{along} mm")
    assert not row.errors
    # (2.4 + 0.5) × 0.91 − 2 of finished gap
    assert row.usual("least_gap") == pytest.approx(0.639)
    if row.usual("stones") > 1:
        assert row.usual("web") >= 0.5 - 1e-9
        assert (2 + row.usual("even_gap")) / 0.91 - 2.4 == pytest.approx(row.usual("web"))


def test_a_row_checks_the_clay_it_is_drilled_in(tried: Any) -> None:
    # a stone of 1.5 mm wants 1.5 ÷ 0.90 of wet clay, and half a millimetre fired under it 0.5 ÷ 0.90 more: 2.22
    dome = "dome\n  dome:\n    kind: dome\n    clay: silver\n    across: 30 mm\n    rise: 6 mm\n    thickness: {}"
    row = {"clay": "silver", "stone": "glass-2", "along": "22 mm"}
    thin = tried("stone row", **row, drilled_in=dome.format("1.14 mm"))
    assert any("rolled to 1.14" in t.message and "2.23" in t.message for t in thin.errors)
    thick = tried("stone row", **row, drilled_in=dome.format("2.25 mm"))
    assert not thick.errors
    assert len(thick.part.drilled) == thick.usual("stones")


def test_a_row_opened_part_way_leaves_a_floor_in_its_strip(tried: Any) -> None:
    strip = {**ROW, "gap": "0.7 mm", "width": "5 mm", "thickness": "1.5 mm"}
    refused = tried("stone row", **strip, depth="1.2 mm")
    assert refused.blamed(refused.errors[0]) == "depth"
    better = re.match(r"([\d.]+) mm or less", refused.errors[0].help)
    assert better
    assert float(better[1]) == pytest.approx(0.94)  # 1.5 − 0.5 ÷ 0.90, down
    assert not tried("stone row", **strip, depth=f"{better[1]} mm").errors
    assert not tried("stone row", **strip, depth="1.2 mm\nwaive: {least-floor: a plate goes under it}").errors


def test_stones_higher_than_the_strip_they_go_through_are_told(tried: Any) -> None:
    [told] = tried("stone row", **{**ROW, "gap": "0.7 mm", "width": "5 mm", "thickness": "1.5 mm"}).troubles
    assert told.severity == "warning"
    assert "1.5 mm high" in told.message
    assert not tried("stone row", **{**ROW, "gap": "0.7 mm", "width": "5 mm", "thickness": "1.75 mm"}).troubles


def test_a_strip_too_narrow_for_its_seats_is_refused_with_a_width_that_works(tried: Any) -> None:
    row = tried("stone row", **ROW, width="2.5 mm")
    assert row.blamed(row.errors[0]) == "width"
    better = re.match(r"([\d.]+) mm or more", row.errors[0].help)
    assert better
    assert not tried("stone row", **ROW, width=f"{better[1]} mm").errors


def test_no_drill_large_enough_is_a_trouble_at_the_stone(tried: Any) -> None:
    row = tried("stone row", **ROW, clearance="1 mm")
    assert row.blamed(row.errors[0]) == "stone"
    assert "2.5 mm" in row.errors[0].help


# What holds for all of clay


@given(size=tenths(1, 90))
@few
def test_what_is_cut_wet_fires_to_what_is_wanted(size: float, tried: Any) -> None:
    for s, end in ((0.09, "usual"), (0.08, "low"), (0.10, "high")):
        disc = tried("cut shape", **{**DISC, "across": f"{size} mm"})
        assert getattr(disc["wet_disc"], end) * (1 - s) == pytest.approx(size)
        row = tried("tube", **{**TUBE, "length": f"{size} mm"})
        assert getattr(row["wet_length"], end) * (1 - s) == pytest.approx(size)


@given(along=tenths(6, 80), margin=tenths(0, 2), gap=tenths(0, 2))
@few
def test_a_count_never_overfills_its_row_and_one_more_would_not_fit(
    along: float, margin: float, gap: float, tried: Any
) -> None:
    row = tried("stone row", **{**ROW, "along": f"{along} mm", "margin": f"{margin} mm", "gap": f"{gap} mm"})
    n = row.usual("stones")
    room = along - 2 * margin
    assert n * 2 + (n - 1) * gap <= room + 1e-6
    assert (n + 1) * 2 + n * gap > room - 1e-6
    if n > 1:
        assert row.usual("even_gap") >= gap - 1e-6
        assert n * 2 + (n - 1) * row.usual("even_gap") == pytest.approx(room)


@given(inside=tenths(5, 9))
@few
def test_a_former_in_the_drawer_is_never_far_from_the_one_that_is_wanted(inside: float, tried: Any) -> None:
    tube = tried("tube", **{**TUBE, "inside": f"{inside} mm"})
    if not tube.errors:
        wanted, used = tube.usual("former_wanted"), tube.usual("former_used")
        assert used in {6, 7, 8, 9, 10}
        assert abs(used - wanted) <= max(0.5, 0.1 * wanted) + 1e-9
        assert abs(used - wanted) == min(abs(owned - wanted) for owned in (6, 7, 8, 9, 10))


@pytest.mark.parametrize(
    ("kind", "fields"),
    [
        ("tube", TUBE),
        ("dome", DOME),
        ("ring band", BAND),
        ("cut shape", DISC),
        ("stone row", {**ROW, "width": "5 mm"}),
    ],
)
def test_metal_left_is_the_clays_share_and_never_more_than_the_clay(kind: str, fields: Any, tried: Any) -> None:
    part = tried(kind, **fields)
    assert 0 < part.usual("fired_mass") <= part.usual("clay_mass") * 0.92 + 1e-9
    assert part["clay_mass"].low <= part["clay_mass"].usual <= part["clay_mass"].high


def test_a_domes_hole_opens_to_what_was_asked_for_between_its_two_models(tried: Any) -> None:
    dome = tried("dome", **DOME, hole="8 mm")
    opened = next(size.fires for size in dome.part.sizes if size.figure == "wet_hole")
    assert opened.low < 8 < opened.high
    # Lambert's equal-area map: an opening of 8 on a sphere of 21.75, brought to the middle of the clay, 21.295.
    half = math.asin(8 / 2 / 21.75)
    assert dome.usual("hole_bent") == pytest.approx(4 * 21.295 * math.sin(half / 2) / 0.91, rel=1e-6)
    # Uniform stretch over the rim: the hole grows by √(1 + 4 × 6² ÷ 30²).
    assert dome.usual("hole_held") == pytest.approx(8 * 21.295 / 21.75 / math.sqrt(1.16) / 0.91, rel=1e-6)


def test_a_ring_that_no_former_makes_and_a_ring_of_unsure_size_are_doubted(tried: Any) -> None:
    band = tried("ring band", **(BAND | {"size": "US 15"}))
    assert any("past the end of a ring former" in str(t) for t in band.troubles)
    assert not any("past the end" in str(t) for t in tried("ring band", **BAND).troubles)
