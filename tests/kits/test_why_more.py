"""Why more is bought than the run needs, in a few words; of what is bought as it is needed nothing is said."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from sheetgen.base.rounding import Rounder
from sheetgen.base.supply import Pack
from sheetgen.kits.why_more import why_more
from sheetgen.runs import paper


def packs(*each: tuple[int, str, int]) -> tuple[Pack, ...]:
    return tuple(Pack(Fraction(holds), Decimal(price) if price else None, least) for holds, price, least in each)


def why(made: Any, *run: Any) -> str:
    [got] = made.lists(*run).got
    return why_more(got, Rounder()).replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("sizes", "needed", "says"),
    [
        (((10, "3", 1),), 10, ""),
        (((10, "3", 1),), 11, ""),  # the second pack is opened
        (((4, "4.60", 5),), 16, "fewer than 5 are not sold"),
        (((4, "4.60", 5),), 17, ""),  # five are needed
        (((4, "4.60", 5),), 24, ""),  # and six
        (((4, "4.60", 4),), 16, ""),
        (((10, "3", 1), (50, "5", 1)), 12, "1 × 50 costs no more than 2 × 10"),
        (((10, "5", 1), (50, "10", 1)), 12, "1 × 50 costs no more than 2 × 10"),
        (((10, "3", 1), (50, "5", 1)), 45, ""),  # five of 10 are 50 too
        (((10, "3", 1), (50, "16", 1)), 40, ""),
        (((10, "", 1), (50, "", 1)), 12, ""),  # nobody knows what it costs
    ],
)
def test_a_least_number_or_a_larger_pack_that_costs_no_more_is_the_reason(
    made: Any, sizes: Any, needed: int, says: str
) -> None:
    stone = made.stone()
    stone = replace(stone, supply=replace(stone.supply, packs=packs(*sizes)))
    assert why(made, made.kits(made.line(stone, needed), bags=1)) == says


@pytest.mark.parametrize(
    ("net", "least", "says"),
    [
        (15.5, 1, ""),  # a pack of 20 g holds one bag, and four bags would not go into three packs
        (8, 1, "a sealed pack or more for each kit"),
        (8, 5, "a sealed pack or more for each kit; fewer than 5 are not sold"),
    ],
)
def test_sealed_packs_are_one_for_each_kit(made: Any, net: float, least: int, says: str) -> None:
    clay = made.clay("Shut", "sealed", "20")
    clay = replace(clay, supply=replace(clay.supply, packs=packs((20, "8", least))))
    assert why(made, made.kits(made.line(clay, net), bags=4)) == says


def test_pieces_that_do_not_fill_their_lengths_want_more_of_them(made: Any) -> None:
    """21 of 465 mm are 9.765 m; two come out of a metre, so eleven. Of 500 mm two fill it."""
    assert why(made, made.kits(made.line(made.wire(), 465), bags=21)) == "the pieces do not come out of fewer lengths"
    assert why(made, made.kits(made.line(made.wire(), 500), bags=20)) == ""


@pytest.mark.parametrize(
    ("sizes", "pieces", "says"),
    [
        # 81 of 365 mm: 13 come out of 5 m, two out of 1 m. Seven of 5 m would do, at 357; six and two are 328.
        (((1000, "11", 1), (5000, "51", 1)), (365, 81), "cheaper than 7 × 5 m"),
        (((1000, "", 1), (5000, "", 1)), (365, 81), "less length than 7 × 5 m"),
        # one of 700 mm comes out of a metre, and two out of 1.5 m: 21 want eleven of 1.5 m, and no fewer do
        (((1000, "9", 1), (1500, "10", 1)), (700, 21), "the pieces do not come out of fewer lengths"),
    ],
)
def test_where_fewer_lengths_would_do_and_cost_more_that_is_the_reason(
    made: Any, sizes: Any, pieces: tuple[int, int], says: str
) -> None:
    wire = made.wire()
    wire = replace(wire, supply=replace(wire.supply, packs=packs(*sizes), saw_cut=Fraction(0)))
    long, many = pieces
    assert why(made, made.kits(made.line(wire, long), bags=many)) == says


def test_what_is_left_of_lengths_follows_from_the_numbers_that_are_printed(made: Any) -> None:
    """105 of 465 mm with cuts of 0.5 mm out of 4 m, eight each: 56 − 48.825 − 0.0525 m are left."""
    wire = made.wire()
    wire = replace(wire, supply=replace(wire.supply, packs=packs((4000, "5.80", 1)), saw_cut=Fraction(1, 2)))
    found: Any = paper.views(made.lists(made.kits(made.line(wire, 465), bags=105)))
    [[bought]] = [shop.items for shop in found["buy"].shops]
    told = (bought.needed, *bought.lost, *bought.packs, bought.left)
    assert [one.replace("\u00a0", " ") for one in told] == ["48.825 m", "and cuts 52.5 mm", "14 × 4 m", "7.1225 m"]
    [[left]] = [place.items for place in found["left"].places]
    assert [one.replace("\u00a0", " ") for one in (left.used, *left.lost)] == ["48.8775 m", "with cuts 52.5 mm"]


def test_ends_that_are_too_short_to_keep_are_said_with_what_is_used(made: Any) -> None:
    """Four of 120 mm out of half a metre leave 20 mm, which nobody keeps."""
    wire = made.wire()
    wire = replace(wire, supply=replace(wire.supply, packs=packs((500, "3", 1)), keep_from=Fraction(60)))
    [got] = made.lists(made.kits(made.line(wire, 120), bags=4)).got
    assert (got.sawn, got.too_short, got.left) == (0, 20, 0)


def test_the_list_on_paper_says_it_under_the_item(made: Any) -> None:
    stone = made.stone()
    stone = replace(stone, supply=replace(stone.supply, packs=packs((4, "4.60", 5))))
    found: Any = paper.views(made.lists(made.kits(made.line(stone, 16), bags=1)))["buy"]
    [shop] = found.shops
    assert [(item.name, item.packs, item.why) for item in shop.items] == [
        ("Stone", ("5 × 4",), "fewer than 5 are not sold")
    ]
