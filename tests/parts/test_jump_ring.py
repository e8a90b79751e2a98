"""Jump rings from the rods in the drawer, and from coils of a length."""

from __future__ import annotations

import math
from typing import Any

import pytest

from sheetgen.base.pen import Recorder
from sheetgen.draw.kinds import diagram, view

RING = {"wire": "round-1", "inside": "5 mm"}


def test_the_nearest_owned_rod_is_chosen_and_everything_after_is_worked_from_it(workshop: Any) -> None:
    ring = workshop("jump ring", wire="round-1", inside="5.3 mm", count=10)
    assert ring.usual("rod_used") == 5
    assert ring.usual("inner") == 5
    assert ring.usual("one") == pytest.approx(math.pi * 6)
    assert ring.usual("outside") == 7


def test_a_rod_given_by_hand_decides_the_inside_with_its_springback(workshop: Any) -> None:
    ring = workshop("jump ring", wire="round-1", rod="6 mm", springback="5 %")
    assert ring.usual("inner") == pytest.approx(6.3)
    assert ring.usual("one") == pytest.approx(math.pi * 7.3)


def test_a_coil_gives_a_ring_for_each_thickness_of_wire(workshop: Any) -> None:
    # section 6: n from a coil is floor(Lc / d)
    ring = workshop("jump ring", **RING, count=45, coil="20.9 mm", tails="30 mm")
    assert ring.usual("per_coil") == 20
    assert ring.usual("coils") == 3
    assert ring.usual("wire_length") == pytest.approx(45 * ring.usual("one") + 3 * 30)


def test_one_more_ring_would_not_come_from_the_spool(workshop: Any) -> None:
    ring = workshop("jump ring", **RING, tails="20 mm")
    n = ring.usual("per_spool")
    assert n * ring.usual("one") + 20 <= 10_000 < (n + 1) * ring.usual("one") + 20


def test_every_coil_from_a_spool_leaves_its_own_ends(workshop: Any) -> None:
    # Brute force: coil after coil, each with its tails, until the spool has not one ring more.
    ring = workshop("jump ring", **RING, tails="20 mm", coil="12.5 mm")
    one, most, left, rings = ring.usual("one"), int(12.5), 10_000.0, 0
    while left >= one + 20:
        coil = min(most, int((left - 20) // one))
        rings, left = rings + coil, left - coil * one - 20
    assert ring.usual("per_spool") == rings


def test_a_spool_of_no_known_length_promises_no_pieces(workshop: Any) -> None:
    assert "it.per_spool" not in workshop("jump ring", wire="by-weight", inside="5 mm").figures


def test_wire_sold_by_weight_is_taken_by_weight(workshop: Any) -> None:
    ring = workshop("jump ring", wire="by-weight", inside="5 mm", count=20)
    grams = ring.usual("wire_length") / 1000 * 10.36 * math.pi / 4
    assert workshop.taken(ring) == {"by-weight": pytest.approx(grams)}


@pytest.mark.parametrize(("inside", "to_the_ounce"), [(2, 503), (3, 374), (4, 298), (5, 248)])
def test_rings_to_the_troy_ounce_are_those_reckoned_for_a_ring_makers_table(
    workshop: Any, inside: int, to_the_ounce: int
) -> None:
    # sterling, 19 AWG: the maker prints about 500, 370, 291, 239 (section 6)
    ring = workshop("jump ring", wire="awg-19", rod=f"{inside} mm")
    assert 31.1034768 / ring.usual("mass") == pytest.approx(to_the_ounce, abs=1)


def test_a_saw_cut_takes_its_width_of_metal(workshop: Any) -> None:
    ring = workshop("jump ring", **RING, kerf="0.4 mm")
    assert ring.usual("mass") == pytest.approx((math.pi * 6 - 0.4) / 1000 * 7.0372, rel=1e-4)


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"wire": "round-1", "inside": "5 mm", "coil": "0.7 mm"}, "coil", "1 mm or more"),
        ({"wire": "round-1", "inside": "5 mm", "rod": "5 mm"}, "inside", "give one"),
        ({"wire": "round-1", "inside": "7 mm"}, "inside", "6 mm and 8 mm"),
        ({"wire": "round-1", "rod": "7 mm"}, "rod", "6 mm and 8 mm"),
        ({"wire": "awg-14", "rod": "1 mm"}, "rod", "1.7 mm or more"),
        ({"wire": "round-1", "shape": "oval", "inside": "8 mm"}, "shape", "inside width"),
        (
            {"wire": "round-1", "shape": "oval", "inside": "8 mm", "inside_width": "4 mm", "rod": "4 mm"},
            "rod",
            "write shape: round",
        ),
    ],
)
def test_a_ring_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    assert any(at == field and helps in helped for at, _, helped in workshop.refused("jump ring", **fields))


def test_a_ring_with_neither_inside_nor_rod_asks_for_one(workshop: Any) -> None:
    assert any("inside or rod is wanted" in told for _, told, _ in workshop.refused("jump ring", wire="round-1"))


def test_a_ring_or_a_coil_longer_than_its_spool_is_told(workshop: Any) -> None:
    # 10 m of wire, 20 mm for the ends: 9980 ÷ (π × 6) is 529 rings, and 530 are one too many for one coil
    assert not workshop.refused("jump ring", **RING, count=529)
    ((at, told, helped),) = workshop.refused("jump ring", **RING, count=530)
    assert (at, helped) == ("wire", "wind shorter coils, by coil: 529 mm or less")
    assert "holds 10000 mm a pack" in told
    assert not workshop.refused("jump ring", **RING, count=530, coil="529 mm")
    assert workshop.refused("jump ring", **RING, count=800, coil="530 mm")
    ((at, told, _),) = workshop.refused("jump ring", **RING, tails="9990 mm")
    assert at == "wire"
    assert "one ring" in told


def test_an_oval_without_its_inside_asks_for_it(workshop: Any) -> None:
    found = workshop.refused("jump ring", wire="round-1", shape="oval", rod="5 mm")
    assert {"shape", "rod"} <= {at for at, _, _ in found}


@pytest.mark.parametrize("shape", ["round", "oval", "ellipse"])
def test_the_ring_is_drawn_with_its_sizes(workshop: Any, shape: str) -> None:
    wide = {} if shape == "round" else {"inside_width": "4 mm"}
    part = workshop("jump ring", wire="round-1", inside="8 mm", shape=shape, **wide).part
    pen = Recorder()
    assert "wire 1\u00a0mm" in diagram(pen, part, 1)
    assert view(pen, part) == 9  # the next part's wire lies on its own
    reach = max(y for _, points, _ in pen.lines for _, y in points)
    assert reach == pytest.approx(10, abs=0.02)
