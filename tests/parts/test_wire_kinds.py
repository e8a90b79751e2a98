"""Jump ring and figure-eight link: wire along its middle, reckoned a second way.

16 AWG is 1.2908459 mm (GNU Units 2.22); copper weighs 8.96 g/cm³ (periodictable).
"""

from __future__ import annotations

import math
import re
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.special import ellipe
from shapely.geometry import LineString, Point

WIRE = 1.2908459
RING = {"wire": "copper-16awg", "inside": "5 mm"}
LINK = {"wire": "copper-16awg", "loop": "6 mm", "second loop": "4 mm", "gap": "3 mm"}
few = settings(max_examples=30)


def test_a_round_ring_is_the_circle_through_the_middle_of_its_wire(tried: Any) -> None:
    ring = tried("jump ring", **RING, count=12)
    circle = Point(0, 0).buffer(2.5 + WIRE / 2, quad_segs=2000).exterior.length
    assert ring.usual("one") == pytest.approx(circle, rel=1e-6)
    assert ring.usual("outside") == pytest.approx(5 + 2 * WIRE)
    assert ring.usual("wire_length") == pytest.approx(12 * ring.usual("one") + 20)  # 20 mm for the coil's ends
    # the published copper wire table: 16 AWG is 7.818 lb in 1000 ft at 8.89 g/cm³
    a_metre = 7.818 * 453.59237 / 304.8 * 8.96 / 8.89
    assert ring.usual("mass") == pytest.approx(ring.usual("one") / 1000 * a_metre, rel=5e-4)


def test_an_oval_ring_with_straight_sides_is_the_stadium_round_it(tried: Any) -> None:
    ring = tried("jump ring", wire="copper-16awg", shape="oval", inside="12 mm", **{"inside width": "6 mm"})
    middle = LineString([(-3, 0), (3, 0)]).buffer(3 + WIRE / 2, quad_segs=4000).exterior.length
    assert ring.usual("one") == pytest.approx(middle, rel=1e-6)


def test_an_elliptic_ring_is_the_ellipse_and_a_turn_of_its_wire(tried: Any) -> None:
    ring = tried("jump ring", wire="copper-16awg", shape="ellipse", inside="12 mm", **{"inside width": "6 mm"})
    # Steiner's formula; scipy's elliptic integral
    assert ring.usual("one") == pytest.approx(4 * 6 * ellipe(1 - (3 / 6) ** 2) + math.pi * WIRE, rel=1e-7)


def test_a_sawn_ring_closes_smaller_by_the_cut(tried: Any) -> None:
    # 0.4 mm of kerf takes 0.13 mm off the inside (trade rule, section 6)
    ring = tried("jump ring", **RING, kerf="0.4 mm")
    assert ring.usual("closed") == pytest.approx(5 - 0.127, abs=0.001)
    assert ring.usual("mass") < tried("jump ring", **RING).usual("mass")


def test_the_weavers_ratio_is_inside_over_wire(tried: Any) -> None:
    assert tried("jump ring", **RING).usual("aspect") == pytest.approx(5 / WIRE)


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"inside": "1 mm"}, "inside", "1.3 mm or more"),
        ({"shape": "oval", "inside": "12 mm"}, "shape", "inside width"),
        ({"inside": "5 mm", "inside width": "4 mm"}, "inside width", "shape: oval"),
        ({"shape": "oval", "inside": "5 mm", "inside width": "7 mm"}, "inside width", "5 mm or less"),
        ({"inside": "5 mm", "kerf": "6 mm"}, "kerf", "saw blade"),
        ({"inside": "5 mm", "springback": "40 %"}, "springback", "0.3 or less"),
    ],
)
def test_a_ring_refuses_what_cannot_be_wound(fields: dict[str, Any], field: str, helps: str, tried: Any) -> None:
    ring = tried("jump ring", wire="copper-16awg", **fields)
    blamed = {ring.blamed(t): t.help for t in ring.errors}
    assert field in blamed or "it" in blamed, [str(t) for t in ring.errors]
    assert helps in blamed.get(field, blamed.get("it", ""))


def walked(first: float, second: float, gap: float, wire: float) -> float:
    """The path of a crossed wire by rubber band: the shortest way round both circles on opposite sides.

    From the first circle at angle a to the second at the mirrored angle, the straight and both arcs are measured, and
    the shortest of all such ways is searched for; no belt formula is used.
    """
    r1, r2 = (first + wire) / 2, (second + wire) / 2
    apart = gap + (first + second) / 2

    def length(a: float) -> float:
        x1, y1 = r1 * math.cos(a), r1 * math.sin(a)
        x2, y2 = apart - r2 * math.cos(a), -r2 * math.sin(a)
        return 2 * math.hypot(x2 - x1, y2 - y1) + (r1 + r2) * (math.tau - 2 * a)

    low, high = 0.0, math.pi / 2
    # the taut path is where the straight leaves the circle along its tangent
    for _ in range(200):
        a = (low + high) / 2
        x1, y1 = r1 * math.cos(a), r1 * math.sin(a)
        x2, y2 = apart - r2 * math.cos(a), -r2 * math.sin(a)
        leans = (x2 - x1) * math.cos(a) + (y2 - y1) * math.sin(a)
        low, high = (a, high) if leans > 0 else (low, a)
    return length(low)


def test_a_link_is_the_taut_path_round_two_pegs(tried: Any) -> None:
    link = tried("figure-eight link", **LINK)
    assert link.usual("one") == pytest.approx(walked(6, 4, 3, WIRE), abs=1e-6)
    assert link.usual("pitch") == pytest.approx(13)
    assert link.usual("outside") == pytest.approx(13 + 2 * WIRE)
    assert link.usual("centres") == pytest.approx(8)


def test_the_walked_path_itself_agrees_with_the_published_link() -> None:
    # row C7.5: pegs 6 and 4, gap 3, wire 1.2192: 40.6790 mm; the textbook's belt 450 and 200 at 1950: 4975 mm
    assert walked(6, 4, 3, 1.2192) == pytest.approx(40.6790, abs=0.001)
    assert walked(450, 200, 1950 - 325, 0) == pytest.approx(4975, abs=1)


def test_pegs_as_close_as_the_wire_want_two_full_circles(tried: Any) -> None:
    # limit: at a gap of the wire's thickness the path is 2π times both radii
    link = tried("figure-eight link", wire="copper-16awg", loop="6 mm", gap=f"{WIRE:.6f} mm")
    assert link.usual("one") == pytest.approx(math.tau * (6 + WIRE), abs=0.02)


def test_a_link_may_be_given_by_its_length(tried: Any) -> None:
    link = tried("figure-eight link", wire="copper-16awg", loop="4 mm", length="14 mm")
    gap = 14 - 2 * WIRE - 8
    assert link.usual("clear") == pytest.approx(gap)
    # a jig is set to 3.4 mm, and so it comes out
    assert link.usual("outside") == pytest.approx(round(gap, 1) + 8 + 2 * WIRE)
    assert link.usual("one") == pytest.approx(walked(4, 4, round(gap, 1), WIRE), abs=1e-6)


@pytest.mark.parametrize(("fields", "field"), [({"gap": "1 mm"}, "gap"), ({"length": "11 mm"}, "length")])
def test_a_link_without_room_to_cross_names_the_least_that_works(
    fields: dict[str, str], field: str, tried: Any
) -> None:
    link = tried("figure-eight link", wire="copper-16awg", loop="4 mm", **fields)
    assert link.blamed(link.errors[0]) == field
    least = re.match(r"([\d.]+) mm or more", link.errors[0].help)
    assert least
    assert not tried("figure-eight link", wire="copper-16awg", loop="4 mm", **{field: f"{least[1]} mm"}).errors


def test_a_link_wants_its_gap_or_its_length_and_not_both(tried: Any) -> None:
    assert tried("figure-eight link", wire="copper-16awg", loop="4 mm").errors
    assert tried("figure-eight link", **LINK, length="20 mm").errors


@given(first=st.integers(3, 12), second=st.integers(3, 12), gap=st.integers(2, 12))
@few
def test_every_link_is_the_taut_path(first: int, second: int, gap: int, tried: Any) -> None:
    fields = {"loop": f"{first} mm", "second loop": f"{second} mm", "gap": f"{gap} mm"}
    link = tried("figure-eight link", wire="copper-16awg", **fields)
    assert link.usual("one") == pytest.approx(walked(first, second, gap, WIRE), abs=1e-5)


@given(inside=st.integers(2, 30), count=st.integers(1, 200))
@few
def test_the_wire_for_all_rings_is_never_less_than_that_of_each(inside: int, count: int, tried: Any) -> None:
    ring = tried("jump ring", wire="copper-16awg", inside=f"{inside} mm", count=count)
    assert ring.usual("wire_length") >= count * math.pi * (inside + WIRE) - 1e-3
