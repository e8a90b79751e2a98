"""Scatter: the bound on strewn stones against packings that are known and against layouts in rows."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon

from sheetgen.formulas.packing import bundle_ratio
from sheetgen.formulas.scatter import most_scattered

PLATE = {"clay": "still", "stone": "small-2", "clearance": "0 mm", "thickness": "2 mm", "margin": "1 mm"}


@pytest.mark.parametrize("n", [*range(2, 12), 13, 18, 19])
def test_no_known_packing_in_a_circle_passes_the_bound(n: int) -> None:
    # Wikipedia, Circle packing in a circle: n circles of diameter 1 in one of the published ratio
    room = bundle_ratio(n) - 1
    assert most_scattered(math.pi / 4 * room**2, math.pi * room, 1) >= n


def test_seven_in_a_circle_of_three_is_both_bound_and_packing() -> None:
    # Wikipedia, Circle packing in a circle
    assert most_scattered(math.pi / 4 * 2**2, math.pi * 2, 1) == 7


def in_rows(wide: float, tall: float, spacing: float) -> int:
    """How many middles fit in rows, every other row set half a place on."""
    rows = math.floor(tall / (spacing * math.sqrt(3) / 2) + 1e-9) + 1
    full = math.floor(wide / spacing + 1e-9) + 1
    short = math.floor((wide - spacing / 2) / spacing + 1e-9) + 1 if wide >= spacing / 2 else 0
    return sum(full if i % 2 == 0 else short for i in range(rows))


@given(st.floats(2, 80), st.floats(2, 80), st.floats(0.8, 6))
def test_stones_laid_in_rows_never_pass_the_bound(wide: float, tall: float, spacing: float) -> None:
    assert in_rows(wide, tall, spacing) <= most_scattered(wide * tall, 2 * (wide + tall), spacing)


def test_a_full_triangle_of_rows_reaches_the_bound() -> None:
    # 5 to a side, 15 in all, in the triangle between the outermost middles: Groemer's theorem holds with equality
    assert most_scattered(math.sqrt(3) / 4 * 4**2, 12, 1) == 15


def test_a_share_is_counted_down_and_weighed(stocked: Any) -> None:
    strewn = stocked("scatter", **PLATE, across="22 mm", share="30 %", gap="0.6 mm")
    assert not strewn.troubles
    assert strewn.usual("area") == pytest.approx(math.pi * 100)
    assert strewn.usual("stones") == 30  # 0.3 × 100π ÷ π
    assert strewn.usual("covered") == pytest.approx(30)
    assert strewn.usual("clay_mass") == pytest.approx(math.pi * 121 * 2 * 5 / 1000)
    assert next(take.amount.usual for take in strewn.part.takes) == 30


@settings(max_examples=40)
@given(st.integers(100, 500), st.integers(100, 500), st.integers(5, 30))
def test_the_bound_of_a_plate_is_that_of_its_middles(stocked: Any, wide: int, tall: int, gap: int) -> None:
    sizes = {"across": f"{wide / 10} mm", "down": f"{tall / 10} mm", "gap": f"{gap / 10} mm"}
    strewn = stocked("scatter", **PLATE, shape="rectangle", number="1", **sizes)
    # middles keep the margin and half a stone from every edge
    assert strewn.usual("most") >= in_rows(wide / 10 - 4, tall / 10 - 4, 2 + gap / 10)
    assert strewn.usual("stones") == 1


def oval(across: float, down: float) -> Polygon:
    """An oval as an outline of very many sides."""
    turns = [i / 20000 * math.tau for i in range(20000)]
    return Polygon([(across / 2 * math.cos(t), down / 2 * math.sin(t)) for t in turns])


def test_the_area_inside_an_even_margin_of_an_oval_is_what_shapely_measures(stocked: Any) -> None:
    strewn = stocked("scatter", **PLATE, shape="oval", across="30 mm", down="12 mm", gap="0.6 mm", number="5")
    assert strewn.usual("area") == pytest.approx(oval(30, 12).buffer(-1, quad_segs=64).area, rel=1e-4)


def test_an_oval_too_slim_for_its_margin_is_bounded_by_an_oval_that_holds_all_that_keeps_it(stocked: Any) -> None:
    slim = PLATE | {"margin": "3 mm"}
    strewn = stocked("scatter", **slim, shape="oval", across="30 mm", down="12 mm", gap="0.6 mm", number="5")
    assert strewn.usual("area") == pytest.approx(math.pi / 4 * 24 * 6)
    assert oval(24, 6).buffer(0.001).contains(oval(30, 12).buffer(-3, quad_segs=64))


@pytest.mark.parametrize(
    ("fields", "blamed", "help_"),
    [
        ({"share": "90 %"}, "share", "% or less"),
        ({"number": "500"}, "number", "or fewer"),
        ({"share": "0 %"}, "share", "1 % or more"),
        ({"share": "130 %"}, "share", "1 or less"),
        ({"across": "3.5 mm"}, "across", "more than 4 mm"),
        ({"gap": "0.2 mm"}, "gap", "0.5 mm or more"),
        ({"down": "12 mm"}, "down", "take it out"),
        ({"shape": "oval", "down": "3 mm"}, "down", "more than 4 mm"),
    ],
)
def test_a_scatter_that_cannot_be_is_refused_at_its_field(
    stocked: Any, fields: dict[str, str], blamed: str, help_: str
) -> None:
    strewn = stocked("scatter", **{**PLATE, "across": "22 mm", "gap": "0.6 mm", **fields})
    assert strewn.blamed(strewn.errors[0]) == blamed
    assert help_ in strewn.errors[0].help


def test_the_share_that_is_offered_is_taken(stocked: Any) -> None:
    plate = {**PLATE, "across": "22 mm", "gap": "0.6 mm"}
    offered = stocked("scatter", **plate, share="90 %").errors[0].help.split(" or")[0]
    assert not stocked("scatter", **plate, share=offered).errors


@settings(max_examples=20)
@given(st.integers(150, 400))
def test_a_gap_that_is_left_out_keeps_the_clay_between_two_seats(stocked: Any, across: int) -> None:
    strewn = stocked("scatter", clay="silver", stone="glass-2", across=f"{across / 10} mm", thickness="2.5 mm")
    assert not strewn.errors
    assert strewn.figures["it.wet_spacing"].printed - 2.4 >= 0.5 - 1e-9
    # (2.4 + 0.5) × 0.91 − 2 of finished gap
    assert strewn.usual("least_gap") == pytest.approx(0.639)


def test_a_plate_too_thin_for_its_stones_is_refused_with_one_that_works(stocked: Any) -> None:
    # stones of 1.4 mm and a floor of 0.5, in clay that does not shrink
    plate = {**PLATE, "across": "22 mm", "gap": "0.6 mm"}
    [told] = stocked("scatter", **{**plate, "thickness": "1.8 mm"}).errors
    assert told.help.startswith("1.9 mm or more")
    assert "waive: {least-floor" in told.help
    assert not stocked("scatter", **{**plate, "thickness": "1.9 mm"}).errors
    assert not stocked("scatter", **{**plate, "thickness": "1.8 mm"}, floor="0.4 mm").errors
    assert not stocked("scatter", **{**plate, "thickness": "1.8 mm"}, depth="1 mm").errors
