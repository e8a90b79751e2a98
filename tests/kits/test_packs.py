"""Packs to buy, against counting every way."""

from __future__ import annotations

import itertools
import random
from decimal import Decimal
from fractions import Fraction
from math import ceil

import pytest

from sheetgen.base.supply import Pack
from sheetgen.base.trouble import CannotBe
from sheetgen.kits.packs import common_step, to_buy


def pack(holds: str, price: str | None = None, at_least: int = 1) -> Pack:
    return Pack(Fraction(holds), None if price is None else Decimal(price), at_least)


def best_by_counting(need: Fraction, packs: list[Pack]) -> tuple[Fraction, ...]:
    """Cost, content and packs of the best way, every way counted: in quarters and in cents."""
    ways = []
    quarters = [int(p.holds * 4) for p in packs]
    cents = [int((p.price or 0) * 100) for p in packs]
    for each in itertools.product(*(range(max(ceil(need / p.holds), p.at_least) + 1) for p in packs)):
        held = sum(map(int.__mul__, each, quarters))
        if held < need * 4 or any(0 < n < p.at_least for n, p in zip(each, packs, strict=True)):
            continue
        if all(p.price is not None for p in packs):
            ways.append((sum(map(int.__mul__, each, cents)), -held, sum(each)))
        else:
            ways.append((sum(each), held, 0))
    first, second, third = min(ways)
    if all(p.price is not None for p in packs):
        return Fraction(first, 100), Fraction(second, 4), Fraction(third)
    return Fraction(first), Fraction(second, 4), Fraction(third)


def test_two_thousand_random_drawers_are_filled_as_cheaply_as_by_counting_every_way() -> None:
    dice = random.Random(16)  # noqa: S311 - a drawer, no secret
    for _ in range(2000):
        packs = [
            Pack(
                Fraction(dice.choice([2, 3, 4, 5, 7, 10, 25]), dice.choice([1, 1, 2, 4])),
                None if dice.random() < 0.03 else Decimal(dice.randint(20, 900)) / 100,
                dice.choice([1, 1, 1, 2, 3]),
            )
            for _ in range(dice.randint(1, 3))
        ]
        need, have = Fraction(dice.randint(0, 60), 4), Fraction(dice.randint(0, 12), 4)
        bought = to_buy(need, have, packs)
        if need <= have:
            assert bought.packs == ()
            assert bought.left == have - need
            continue
        assert bought.left >= 0
        assert all(many >= one.at_least for one, many in bought.packs)
        number = Fraction(sum(many for _, many in bought.packs))
        expected = best_by_counting(need - have, list(dict.fromkeys(packs)))
        if all(p.price is not None for p in packs):
            assert (Fraction(bought.cost or 0), -bought.holds, number) == expected, (need, have, packs)
        else:
            assert (number, bought.holds, Fraction(0)) == expected, (need, have, packs)


def test_two_large_packs_at_their_least_number_can_be_cheaper_than_many_small_ones() -> None:
    # 100 g at 139 and 25 g at 38: 120 g are 5 × 38 = 190 or 139 + 38 = 177; large ones from two on are 278
    assert to_buy(120, 0, [pack("25", "38"), pack("100", "139")]).told("g") == "1 × 25 g + 1 × 100 g"
    alone = to_buy(120, 0, [pack("25", "38"), pack("100", "139", 2)])
    assert (alone.told("g"), alone.cost, int(alone.left)) == ("5 × 25 g", Decimal(190), 5)
    # 190 g: 8 × 38 = 304, and two large ones 278
    more = to_buy(190, 0, [pack("25", "38"), pack("100", "139", 2)])
    assert (more.told("g"), more.cost, int(more.left)) == ("2 × 100 g", Decimal(278), 10)


def test_a_least_number_may_hold_far_more_than_is_needed() -> None:
    # the only size is sold from twelve on
    bought = to_buy(3, 1, [pack("10", "4.50", 12)])
    assert (bought.told(""), bought.cost, int(bought.left)) == ("12 × 10", Decimal("54.00"), 118)


def test_at_one_price_the_most_content_is_bought_and_then_the_fewest_packs() -> None:
    assert to_buy(9, 0, [pack("10", "6"), pack("12", "6")]).told("m") == "1 × 12 m"
    assert to_buy(20, 0, [pack("10", "6"), pack("20", "12")]).told("m") == "1 × 20 m"


def test_a_tenth_of_a_gram_over_a_pack_wants_another_pack_and_a_sum_of_tenths_does_not() -> None:
    # three times 0.1 is 0.3 and not a hair more
    assert to_buy(Decimal("0.1") * 3, 0, [pack("0.3", "5")]).told("g") == "1 × 0.3 g"
    assert to_buy(Decimal("0.31"), 0, [pack("0.3", "5")]).told("g", ",") == "2 × 0,3 g"


def test_a_pack_without_a_price_is_bought_by_the_fewest_and_its_cost_is_not_known() -> None:
    bought = to_buy(30, 0, [pack("25"), pack("40"), pack("10", "2")])
    assert (bought.told("g"), bought.cost) == ("1 × 40 g", None)


def test_what_lies_in_the_drawer_goes_first() -> None:
    bought = to_buy(100, 60, [pack("25", "38")])
    assert (bought.told("g"), int(bought.left)) == ("2 × 25 g", 10)


def test_kilometres_in_packs_of_metres_are_counted_at_once() -> None:
    # 3 km of cord: 30 reels of 100 m, and no reel of 20 m is cheaper
    assert to_buy(3_000_000, 0, [pack("20000", "9"), pack("100000", "40")]).told("mm") == "30 × 100000 mm"


def test_ten_million_stones_are_bought_by_the_gross_and_only_the_last_by_tens() -> None:
    # a stone is 0.30 in tens and 0.25 by the gross; 69444 gross leave 64, and 7 tens for 21 are less than one more
    bought = to_buy(10_000_000, 0, [pack("10", "3"), pack("144", "36")])
    assert (bought.told(""), bought.cost) == ("7 × 10 + 69444 × 144", Decimal(2_500_005))
    # of a hundred fewer 69443 gross leave 108, and 11 tens for 33 are less than a gross
    assert to_buy(9_999_900, 0, [pack("10", "3"), pack("144", "36")]).told("") == "11 × 10 + 69443 × 144"


def test_of_many_hundreds_the_drawers_are_filled_as_cheaply_as_by_counting_every_way() -> None:
    dice = random.Random(61)  # noqa: S311 - a drawer, no secret
    for _ in range(300):
        holds = dice.sample([2, 3, 4, 5, 7], 2)
        packs = [pack(str(one), f"{dice.randint(1, 30)}", dice.choice([1, 1, 2, 4])) for one in holds]
        need = dice.randint(300, 500)
        bought = to_buy(need, 0, packs)
        number = Fraction(sum(many for _, many in bought.packs))
        assert (Fraction(bought.cost or 0), -bought.holds, number) == best_by_counting(Fraction(need), packs), packs


def test_sizes_share_their_largest_step() -> None:
    assert common_step([Decimal("0.75"), 2, Fraction(1, 2)]) == Fraction(1, 4)


@pytest.mark.parametrize(
    ("holds", "price", "least", "field"),
    [("0", "5", 1, "packs"), ("-1", "5", 1, "packs"), ("5", "0", 1, "price"), ("5", "5", 0, "at least")],
)
def test_a_pack_that_there_cannot_be_is_refused_at_its_field(holds: str, price: str, least: int, field: str) -> None:
    with pytest.raises(CannotBe) as refused:
        pack(holds, price, least)
    assert refused.value.field == field
    assert refused.value.help


def test_a_need_without_a_pack_to_buy_is_refused() -> None:
    with pytest.raises(CannotBe, match="no pack to buy"):
        to_buy(5, 1, [])
    assert to_buy(5, 5, []).packs == ()
    with pytest.raises(CannotBe) as refused:
        to_buy(5, -1, [pack("5")])
    assert refused.value.field == "have"


def test_sizes_without_a_step_worth_counting_in_are_refused_and_do_not_hang() -> None:
    with pytest.raises(CannotBe, match="cannot be counted out in steps of"):
        to_buy(5000, 0, [pack("12.3457", "5"), pack("1000.0001", "400")])
