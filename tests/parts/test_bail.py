"""Bail: a strip over a straw, its length walked along a polyline. The test silver shrinks 8 to 10 %.

Tails are marked and the strip is cut to a tenth: 7 ÷ 0.91 = 7.69 is marked 7.7, and 9 ÷ 0.91 = 9.89 is marked 9.9.
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sheetgen.formulas.wrap import hung_over

BAIL = {"clay": "silver", "width": "6 mm", "front_tail": "7 mm", "back_tail": "9 mm", "thickness": "0.75 mm"}


def walked(points: list[tuple[float, float]]) -> float:
    return sum(math.dist(a, b) for a, b in pairwise(points))


def test_a_bail_is_half_a_turn_of_its_middle_and_two_tails(stocked: Any) -> None:
    bail = stocked("bail", **BAIL, inside="3.6 mm")
    assert not bail.troubles
    assert bail.usual("former_used") == 4  # 3.6 ÷ 0.91 = 3.96
    radius = (4 + 0.75) / 2
    turn = [(radius * math.cos(i * math.pi / 5000), radius * math.sin(i * math.pi / 5000)) for i in range(5001)]
    path = [(radius, -7.7), *turn, (-radius, -9.9)]
    assert bail.usual("strip") == pytest.approx(walked(path), abs=1e-4)
    assert (bail["fired_inside"].low, bail["fired_inside"].high) == pytest.approx((3.6, 3.68))
    # 25.06 is cut 25 long, and 6 ÷ 0.91 = 6.59 is cut 6.6 wide
    assert bail.usual("fired_mass") == pytest.approx(25 * 6.6 * 0.75 * 7 / 1000 * 0.92)


@given(st.floats(1, 10), st.floats(1.001, 8))
def test_a_strip_whose_ends_meet_under_the_rod_is_as_long_as_its_path(radius: float, times: float) -> None:
    drop = radius * times
    lean = math.asin(radius / drop)
    start, end = -lean, math.pi + lean
    arc = [start + (end - start) * i / 20000 for i in range(20001)]
    path = [(0.0, -drop), *((radius * math.cos(a), radius * math.sin(a)) for a in arc), (0.0, -drop)]
    assert hung_over(radius, drop) == pytest.approx(walked(path), rel=1e-6)


def test_tails_brought_together_take_more_strip_than_tails_apart(stocked: Any) -> None:
    apart = stocked("bail", **BAIL, former="4 mm")
    together = stocked("bail", **BAIL, former="4 mm", meeting="5 mm")
    assert together.usual("over_former") == pytest.approx(hung_over(2.375, 5.5))  # 5 ÷ 0.91 = 5.49
    assert together.usual("strip") > apart.usual("strip") + 2 * 5 / 0.91 - 2


def test_the_fold_lines_stand_a_tail_from_each_end(stocked: Any) -> None:
    bail = stocked("bail", **BAIL, inside="3.6 mm")
    folds = [points[0][0] for kind, points, _ in bail.drawn().lines if kind == "fold"]
    strip = 25.0  # 7.7 + 7.46 + 9.9 = 25.06, to half a millimetre, as a hand cuts it
    assert folds == pytest.approx([7.7, strip - 9.9])


@pytest.mark.parametrize(
    ("fields", "blamed", "help_"),
    [
        ({"inside": "3.6 mm", "former": "4 mm"}, "inside", "give one"),
        ({"former": "4.4 mm"}, "former", "4 mm and 5 mm"),
        ({"inside": "2 mm"}, "inside", "4 mm"),
        ({"former": "4 mm", "meeting": "2 mm"}, "meeting", "2.4 mm or more"),
        ({"inside": "3.6 mm", "width": "0 mm"}, "width", "more than 0 mm"),
    ],
)
def test_a_bail_that_cannot_be_is_refused_at_its_field(
    stocked: Any, fields: dict[str, str], blamed: str, help_: str
) -> None:
    bail = stocked("bail", **{**BAIL, **fields})
    assert bail.blamed(bail.errors[0]) == blamed
    assert help_ in bail.errors[0].help


def test_the_nearest_meeting_that_is_offered_works(stocked: Any) -> None:
    assert not stocked("bail", **BAIL, former="4 mm", meeting="2.4 mm").errors


def test_clay_thicker_than_its_loop_is_doubted(stocked: Any) -> None:
    bail = stocked("bail", **{**BAIL, "thickness": "4.5 mm"}, former="4 mm")
    assert not bail.errors
    assert bail.blamed(bail.troubles[0]) == "former"
