"""What goes into a bag and into a pot, rounded up once."""

from __future__ import annotations

from fractions import Fraction

import pytest

from sheetgen.base.supply import Spares
from sheetgen.base.trouble import CannotBe
from sheetgen.kits.spares import counted, sealed, weighed

FIVE = Fraction(5, 100)


def test_thirty_bags_of_twelve_and_one_are_390_and_a_pot_for_thirty_is_378() -> None:
    # 12 × 1.05 = 12.6: 13 in a bag; 360 × 1.05 = 378 on the table
    bag = counted(12, FIVE)
    assert (int(bag.net), int(bag.spare), bag.why) == (12, 1, "allowance 5 %")
    assert bag.amount * 30 == 390
    assert counted(360, FIVE).amount == 378


@pytest.mark.parametrize(("net", "spare"), [(0, 0), (1, 1), (10, 1), (11, 2), (50, 5)])
def test_one_per_ten_is_one_for_each_ten_begun(net: int, spare: int) -> None:
    # common practice
    assert Spares(1, 10).of(net) == spare


def test_the_larger_of_spares_and_allowance_goes_in_and_never_both() -> None:
    one_per_ten = Spares(1, 10)
    # 20: two spares, or 1 of 5 %, or 5 of 25 %
    assert counted(20, FIVE, one_per_ten).amount == 22
    assert counted(20, Fraction(1, 4), one_per_ten).amount == 25
    assert counted(20, Fraction(1, 4), one_per_ten).why == "allowance 25 %, more than spares 1 per 10"
    assert counted(20, FIVE, one_per_ten).why == "spares 1 per 10, not less than the allowance of 5 %"


def test_each_colour_has_its_own_spare() -> None:
    # 7 clear and 5 smoke: one of each, where twelve of one colour would have two for the tens begun
    assert [counted(n, Fraction(0), Spares(1, 10)).spare for n in (7, 5, 12)] == [1, 1, 2]


def test_clay_is_weighed_off_as_its_card_prints_it_and_a_pot_of_it_once() -> None:
    # a scale shows halves under 10 g: 5.23 g are 5.5 in a bag, 165 for thirty; 156.9 in a pot are 160
    bag = weighed(Fraction("5.23"), Fraction(0))
    assert bag.amount == Fraction("5.5")
    assert bag.amount * 30 == 165
    assert weighed(Fraction("5.23") * 30, Fraction(0)).amount == 160


def test_what_is_sealed_goes_in_whole() -> None:
    # 8.2 g with 10 % are 9.02 g: two packs of 7 g
    bag = sealed(Fraction("8.2"), Fraction(1, 10), Fraction(7))
    assert (int(bag.amount), bag.why) == (14, "2 sealed, allowance 10 %")


def test_a_bag_of_clay_holds_as_much_as_is_rolled_at_once() -> None:
    # 4.116 g with 15 % are 4.73 g, and the slab of 76 × 12 × 1.5 mm weighs 9.576 g
    bag = weighed(Fraction("4.116"), Fraction(15, 100), at_once=Fraction("9.576"))
    assert (int(bag.amount), bag.why) == (10, "as much as is rolled at once")
    assert sealed(Fraction("4.116"), Fraction(15, 100), Fraction(7), at_once=Fraction("9.576")).amount == 14
    assert weighed(Fraction("4.116"), Fraction(15, 100), at_once=Fraction(3)).why == "allowance 15 %"


def test_spares_per_nothing_are_refused() -> None:
    with pytest.raises(CannotBe) as refused:
        Spares(1, 0)
    assert refused.value.message == "spares cannot be 1 per 0"
    assert refused.value.field == "spares"
    with pytest.raises(CannotBe):
        Spares(0, 10)
    with pytest.raises(CannotBe) as refused:
        counted(5, Fraction(-1, 10))
    assert refused.value.field == "allowance"
    with pytest.raises(CannotBe):
        sealed(Fraction(1), FIVE, Fraction(0))
