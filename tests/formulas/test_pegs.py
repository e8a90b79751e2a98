"""Figure-eights and long links on two pegs."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.pegs import crossed_belt, even_belt, inside_pitch, open_belt

pegs = st.floats(1, 20)
wires = st.floats(0.3, 3)


def drawn_crossed(r1: float, r2: float, c: float, steps: int = 40000) -> float:
    """Length of a crossed belt by walking its outline: two arcs as polylines, and the chords between them."""
    lean = math.acos((r1 + r2) / c)

    def arc(x: float, radius: float, start: float, end: float) -> list[tuple[float, float]]:
        angles = (start + (end - start) * i / steps for i in range(steps + 1))
        return [(x + radius * math.cos(a), radius * math.sin(a)) for a in angles]

    path = [
        *arc(0, r1, lean, 2 * math.pi - lean),
        *arc(c, r2, math.pi - lean, -math.pi + lean),
    ]
    return sum(math.dist(a, b) for a, b in zip(path, [*path[1:], path[0]], strict=True))


def drawn_open(r1: float, r2: float, c: float, around: int = 20000) -> float:
    """Length of an open belt as the outline of the hull of two polygons."""
    from shapely import MultiPoint  # noqa: PLC0415 - only this second opinion needs it

    turn = [2 * math.pi * i / around for i in range(around)]
    points = [(x + r * math.cos(a), r * math.sin(a)) for x, r in ((0, r1), (c, r2)) for a in turn]
    return float(MultiPoint(points).convex_hull.length)


def test_a_rope_round_wheels_of_6_and_1_is_49_94_long() -> None:
    # ★ puzzle page, rope round two wheels, centres 13 apart
    assert open_belt(12, 2, 13, 0) == pytest.approx(49.9390597721, abs=1e-9)


def test_a_figure_eight_on_6_and_4_mm_pegs_in_18_swg_takes_40_7_mm() -> None:
    # independent script, row C7.5; the handbook's series would be 0.3 mm short
    assert crossed_belt(5 + 1.2192, 8) == pytest.approx(40.6790, abs=0.001)
    r, c = (6 + 4) / 2 + 1.2192, 3 + 5
    series = math.pi * r + 2 * c + r * r / c
    assert series - crossed_belt(5 + 1.2192, 8) == pytest.approx(-0.306, abs=0.001)
    assert inside_pitch(6, 4, 3) == pytest.approx(13.0)


@given(pegs, pegs, wires)
def test_with_the_wire_filling_the_gap_a_figure_eight_is_two_full_circles(d1: float, d2: float, wire: float) -> None:
    # limit, row C7.6
    both = (d1 + d2) / 2 + wire
    assert crossed_belt(both, both) == pytest.approx(math.pi * (d1 + d2 + 2 * wire), abs=1e-4)


@pytest.mark.parametrize(("r1", "r2", "c"), [(3.6096, 2.6096, 8), (225, 100, 1950), (2, 2, 4.1), (1, 6, 7.5)])
def test_a_crossed_belt_is_as_long_as_its_drawn_outline(r1: float, r2: float, c: float) -> None:
    # polyline of 80000 points
    assert crossed_belt(r1 + r2, c) == pytest.approx(drawn_crossed(r1, r2, c), rel=1e-8)


@pytest.mark.parametrize(("r1", "r2", "c"), [(6, 1, 13), (2, 2, 9), (52.5, 196.5, 697)])
def test_an_open_belt_is_as_long_as_its_drawn_outline(r1: float, r2: float, c: float) -> None:
    # convex hull of 40000 points, shapely
    assert open_belt(2 * r1, 2 * r2, c, 0) == pytest.approx(drawn_open(r1, r2, c), rel=1e-6)


@given(pegs, st.floats(0, 20), wires)
def test_a_long_link_on_equal_pegs_is_a_stadium(d: float, gap: float, wire: float) -> None:
    # independent script, section 7: 2C + 2πr
    assert open_belt(d, d, gap + d, wire) == pytest.approx(2 * (gap + d) + math.pi * (d + wire))
    assert even_belt(d, gap + d, wire) == pytest.approx(open_belt(d, d, gap + d, wire))


@given(pegs, pegs, wires, st.floats(0, 30))
def test_a_figure_eight_takes_more_wire_than_a_long_link(d1: float, d2: float, wire: float, more: float) -> None:
    apart = wire + more + (d1 + d2) / 2
    assert crossed_belt((d1 + d2) / 2 + wire, apart) > open_belt(d1, d2, apart, wire)


@pytest.mark.parametrize(
    ("ratio", "short"), [(0.5, 0.0015), (0.7, 0.0051), (0.8, 0.0084), (0.9, 0.0135), (1.0, 0.0225)]
)
def test_the_handbooks_series_fails_on_short_links(ratio: float, short: float) -> None:
    # independent script, table of section 7
    series = math.pi * ratio + 2 + ratio**2
    assert 1 - series / crossed_belt(ratio, 1) == pytest.approx(short, abs=0.00006)


def test_wheels_that_overlap_or_swallow_each_other_are_refused() -> None:
    with pytest.raises(CannotBe):
        crossed_belt(3 + 3, 5)
    with pytest.raises(CannotBe):
        open_belt(12, 2, 4, 0)
