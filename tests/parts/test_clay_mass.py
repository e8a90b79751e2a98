"""Clay by mass: what is taken, what goes back. Still clay: 5 g/cm³, 90 % metal, 25 g a packet, 20 % allowed."""

from __future__ import annotations

from typing import Any

import pytest

PIECE = {"clay": "still", "mass": "2.5 g", "count": "6"}


def test_what_is_taken_is_what_stays_what_goes_back_and_what_is_lost(stocked: Any) -> None:
    clay = stocked("clay by mass", **PIECE)
    assert not clay.troubles
    assert clay.usual("taken") == pytest.approx(6 * 2.5 * 1.2)
    assert clay.usual("offcuts") == pytest.approx(3)
    # offcuts lose 3 to 10 % when they are rolled again: common practice
    assert (clay["back"].low, clay["back"].high) == pytest.approx((3 * 0.90, 3 * 0.97))
    assert (clay["used_up"].low, clay["used_up"].high) == pytest.approx((15 + 0.09, 15 + 0.3))
    assert clay.usual("used_up") + clay.usual("back") == pytest.approx(clay.usual("taken"))


def test_the_allowance_is_the_clays_own_unless_the_part_has_one(stocked: Any) -> None:
    assert stocked("clay by mass", **PIECE, rolling="50 %").usual("taken") == pytest.approx(22.5)
    assert stocked("clay by mass", **PIECE, rolling="0 %").usual("offcuts") == 0


def test_shopping_counts_the_allowance_once(stocked: Any) -> None:
    [take] = stocked("clay by mass", **PIECE).part.takes
    assert take.amount.usual == pytest.approx(15)  # stock adds its 20 % as for every part


def test_a_finished_weight_asks_for_the_binder_too(stocked: Any) -> None:
    clay = stocked("clay by mass", clay="still", weight="9 g")
    assert clay.usual("clay_mass") == pytest.approx(10)
    assert clay.usual("fired_mass") == pytest.approx(9)


def test_a_slab_holds_the_clay_that_is_rolled(stocked: Any) -> None:
    clay = stocked("clay by mass", **PIECE, thickness="1.5 mm")
    assert clay.usual("area") * 1.5 * 5 / 1000 == pytest.approx(2.5)
    assert clay.usual("side") ** 2 * 1.5 * 5 / 1000 == pytest.approx(18)


@pytest.mark.parametrize(("mass", "pieces"), [("2.5 g", 10), ("2.6 g", 9), ("0.1 g", 250), ("8.3 g", 3), ("25 g", 1)])
def test_so_many_pieces_and_no_more_are_in_a_packet(stocked: Any, mass: str, pieces: int) -> None:
    assert stocked("clay by mass", clay="still", mass=mass).usual("from_packet") == pieces


@pytest.mark.parametrize(
    ("fields", "blamed", "help_"),
    [
        ({"weight": "2 g"}, "mass", "give one"),
        ({"mass": "0 g"}, "mass", "more than 0 g"),
        ({"mass": "2.5 mm"}, "mass", "25 g"),
        ({"rolling": "120 %"}, "rolling", "1 or less"),
        ({"thickness": "0 mm"}, "thickness", "more than 0 mm"),
        ({"count": "1.5"}, "count", "whole number"),
    ],
)
def test_clay_that_cannot_be_is_refused_at_its_field(
    stocked: Any, fields: dict[str, str], blamed: str, help_: str
) -> None:
    clay = stocked("clay by mass", **{**PIECE, **fields})
    assert clay.blamed(clay.errors[0]) == blamed
    assert help_ in clay.errors[0].help


def test_a_piece_of_no_mass_is_told_what_it_wants(stocked: Any) -> None:
    [trouble] = stocked("clay by mass", clay="still").errors
    assert trouble.message == "it: mass or weight is wanted, one of the two"


def test_a_piece_heavier_than_its_packet_is_doubted(stocked: Any) -> None:
    clay = stocked("clay by mass", clay="still", weight="30 g")
    assert not clay.errors
    assert clay.troubles[0].help.startswith("22.5 g or less")
