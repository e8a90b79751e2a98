"""Forms of straights and arcs: their length along the drawn line, and how they are read."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString

from sheetgen.base.bend import read_bends
from sheetgen.base.tree import Wrong


def drawn(form: Any) -> LineString:
    return LineString(form.drawn().lines[0][1])


def test_an_ear_wire_is_as_long_as_its_drawn_line(workshop: Any) -> None:
    form = "arc 2 mm 360, straight 4 mm, arc 10 mm 180, straight 18 mm, arc 60 mm 15 left"
    wire = workshop("bent wire", wire="round-1", form=form)
    assert wire.usual("one") == pytest.approx(drawn(wire).length, rel=1e-4)
    assert wire.usual("one") == pytest.approx(math.pi * 3 + 4 + math.pi * 5.5 + 18 + math.radians(15) * 30.5)


def test_a_half_turn_to_the_right_comes_back_beside_itself(workshop: Any) -> None:
    points = drawn(workshop("bent wire", wire="round-1", form="straight 10 mm, arc 5 mm 180, straight 10 mm")).coords
    assert points[-1][0] - points[0][0] == pytest.approx(6)  # one rod and one wire apart
    assert points[-1][1] - points[0][1] == pytest.approx(0, abs=1e-9)


def test_left_is_the_mirror_of_right(workshop: Any) -> None:
    right = drawn(workshop("bent wire", wire="round-1", form="straight 10 mm, arc 5 mm 90"))
    left = drawn(workshop("bent wire", wire="round-1", form="straight 10 mm, arc 5 mm 90 left"))
    assert left.length == pytest.approx(right.length)
    assert left.coords[-1][0] - left.coords[0][0] == pytest.approx(right.coords[0][0] - right.coords[-1][0])


def test_a_form_is_read_with_decimal_commas_gauges_and_sums(workshop: Any) -> None:
    wire = workshop("bent wire", wire="round-1", form="straight 2,5 mm, arc (2 mm + 1 mm) 90°; straight 1/2 in")
    assert wire.usual("one") == pytest.approx(2.5 + math.pi * 4 / 4 + 12.7)


def test_a_range_in_the_form_stays_a_range(workshop: Any) -> None:
    wire = workshop("bent wire", wire="round-1", form="straight 10-12 mm, arc 4 mm 180")
    assert wire["one"].high - wire["one"].low == pytest.approx(2)


def test_a_form_larger_than_a_page_is_drawn_in_full(workshop: Any) -> None:
    wire = workshop("bent wire", wire="round-1", form="straight 400 mm")
    assert drawn(wire).length == 400


@pytest.mark.parametrize(
    ("form", "helps"),
    [
        ("straight 12 mm, curve 5 mm 180", "arc 5 mm 180"),
        ("straight 12 mm, arc 5 mm", "its degrees"),
        ("straight 12 mm, arc 180", "its degrees"),
        ("straight 12 mm, , straight 3 mm", "straight 12 mm"),
        ("arc 5 mm 9000", "at most 720"),
        ("straight 12", "such as 38 mm"),
        ("arc 5 furlongs 90", ""),
        ("straight 0 mm", "straight 12 mm"),
        ("straight -3 mm", "0 mm or more"),
    ],
)
def test_a_form_that_cannot_be_read_is_told_at_its_field(workshop: Any, form: str, helps: str) -> None:
    found = workshop.refused("bent wire", wire="round-1", form=form)
    assert found
    assert all(at == "form" for at, _, _ in found)
    assert any(helps in helped for _, _, helped in found)


def test_a_trouble_points_at_the_piece_and_not_at_the_line(workshop: Any) -> None:
    (trouble,) = workshop.make("bent wire", wire="round-1", form="straight 12 mm, bend 5 mm 90").troubles
    assert trouble.place.column == len("    form: straight 12 mm, ") + 1


def test_a_bend_tighter_than_its_wire_and_a_rod_not_owned_are_doubts(workshop: Any) -> None:
    tight = workshop.refused("bent wire", wire="awg-14", form="straight 9 mm, arc 1.5 mm 90")
    assert any("1.7 mm or more" in helped for _, _, helped in tight)
    form = "arc 5 mm 90, arc 30 mm 90"
    ((_, told, helped),) = workshop.refused("bent wire", wire="round-1", form=form)
    assert "30 mm" in told
    assert "12 mm" in helped


@given(st.text(alphabet="straightcl 0123456789.,;()mm°-", max_size=60))
def test_no_text_whatever_breaks_the_reader(text: str) -> None:
    try:
        assert all(0 <= piece.at < len(text) for piece in read_bends(text))
    except Wrong as wrong:
        assert wrong.help  # noqa: PT017 - either outcome is right
