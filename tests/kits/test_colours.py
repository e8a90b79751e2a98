"""Colours on seats, and what is to spare."""

from __future__ import annotations

import random
from fractions import Fraction
from typing import Any

import pytest

from sheetgen.base.trouble import CannotBe
from sheetgen.kits.colours import By, Colourway, in_a_bag, in_a_pot, in_bags


def way(by: By, **colours: Any) -> Colourway:
    return Colourway(by, tuple((name, Fraction(str(number))) for name, number in colours.items()))


def test_thirty_bags_are_allotted_each_by_itself_and_a_pot_for_thirty_once() -> None:
    # 12 × 60 % = 7.2 and 4.8: 7 + 5, thirty times; 360 × 60 % = 216 and 144
    mix = way("shares", clear="0.6", smoke="0.4")
    assert in_a_bag(mix, 12) == (("clear", 7), ("smoke", 5))
    assert in_bags(mix, 12, 30) == (("clear", 210), ("smoke", 150))
    assert in_a_pot(mix, 12, 30) == (("clear", 216), ("smoke", 144))


def test_what_is_counted_for_a_piece_is_counted_in_a_pot_too() -> None:
    assert in_a_pot(way("counts", clear=7, smoke=5), 12, 30) == (("clear", 210), ("smoke", 150))


def test_parts_scale_to_the_seats() -> None:
    # 14 × 7 ÷ 12 = 8.17 and 14 × 5 ÷ 12 = 5.83
    assert in_a_bag(way("parts", clear=7, smoke=5), 14) == (("clear", 8), ("smoke", 6))


def test_of_equal_fractions_the_first_named_gets_the_stone_that_is_over() -> None:
    # 2.5 and 2.5; and 10 ÷ 3 = 3.33 each, one over
    assert in_a_bag(way("parts", clear=1, smoke=1), 5) == (("clear", 3), ("smoke", 2))
    assert in_a_bag(way("parts", red=1, green=1, blue=1), 10) == (("red", 4), ("green", 3), ("blue", 3))


def test_a_thousand_mixes_are_whole_and_no_colour_is_a_stone_away_from_its_share() -> None:
    # largest remainder, by exact fractions: whoever gets a stone that is over has no smaller fraction than the rest
    dice = random.Random(5)  # noqa: S311 - colours, no secret
    for _ in range(1000):
        parts = [dice.randint(1, 40) for _ in range(dice.randint(1, 7))]
        seats = dice.randint(0, 90)
        got = [n for _, n in in_a_bag(way("parts", **{f"c{i}": p for i, p in enumerate(parts)}), seats)]
        due = [Fraction(seats * p, sum(parts)) for p in parts]
        assert sum(got) == seats
        over = [n > d // 1 for n, d in zip(got, due, strict=True)]
        assert all(n - d // 1 in {0, 1} for n, d in zip(got, due, strict=True))
        rank = [(d % 1, -i) for i, d in enumerate(due)]
        assert min((r for r, o in zip(rank, over, strict=True) if o), default=(1, 0)) > max(
            (r for r, o in zip(rank, over, strict=True) if not o), default=(-1, 0)
        )


def test_counts_that_do_not_fill_the_seats_are_refused_and_offered_as_parts() -> None:
    with pytest.raises(CannotBe) as refused:
        in_a_bag(way("counts", clear=7, smoke=5), 14)
    assert refused.value.message == "12 counted, 14 seats"
    assert refused.value.help == "14 in all; or as parts, 7 : 5, which are clear 8, smoke 6 here"
    assert refused.value.field == "colourways"


@pytest.mark.parametrize(
    ("by", "colours", "told"),
    [
        ("shares", {"clear": "0.6", "smoke": "0.39"}, "the shares come to 99 %"),
        ("counts", {"clear": "6.5"}, "'clear' cannot be 6.5"),
        ("parts", {"clear": "0"}, "'clear' cannot be 0"),
        ("parts", {}, "a colourway wants a colour"),
    ],
)
def test_a_mix_that_there_cannot_be_is_refused(by: By, colours: dict[str, str], told: str) -> None:
    with pytest.raises(CannotBe) as refused:
        way(by, **colours)
    assert refused.value.message == told
    assert refused.value.help


def test_a_colour_named_twice_is_refused() -> None:
    with pytest.raises(CannotBe, match="stands twice"):
        Colourway("parts", (("clear", Fraction(1)), ("clear", Fraction(2))))


def test_shares_in_thirds_are_a_whole() -> None:
    third = Fraction(1, 3)
    assert in_a_bag(Colourway("shares", (("a", third), ("b", third), ("c", third))), 9) == (
        ("a", 3),
        ("b", 3),
        ("c", 3),
    )
