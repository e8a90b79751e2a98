"""A pot of a mix given out to tables: every seat is filled, and nothing is over."""

from __future__ import annotations

from typing import TYPE_CHECKING

from hypothesis import given
from hypothesis import strategies as st

from sheetgen.base.exact import shared_out
from sheetgen.kits.colours import dealt

if TYPE_CHECKING:
    from fractions import Fraction

POTS = st.lists(st.integers(0, 40), min_size=1, max_size=4)


def test_five_and_four_of_two_colours_to_three_seats_each() -> None:
    """By hand, the colour of which most is due: clear, smoke, clear; smoke, clear, smoke; clear, smoke, clear."""
    assert dealt((("clear", 5), ("smoke", 4)), (3, 3, 3)) == [
        (("clear", 2), ("smoke", 1)),
        (("clear", 1), ("smoke", 2)),
        (("clear", 2), ("smoke", 1)),
    ]


@given(POTS, st.data())
def test_each_table_has_its_seats_filled_and_all_together_are_the_pot(many: list[int], data: st.DataObject) -> None:
    pot = tuple((str(i), n) for i, n in enumerate(many))
    rest, hands = sum(many), list[int]()
    while rest:
        hands.append(data.draw(st.integers(1, rest)))
        rest -= hands[-1]
    found = dealt(pot, hands)
    assert [sum(n for _, n in hand) for hand in found] == hands
    assert [sum(dict(hand)[name] for hand in found) for name, _ in pot] == many


@given(st.integers(0, 500), st.lists(st.fractions(0, 50), min_size=1, max_size=6).filter(any))
def test_what_is_shared_out_is_all_there_and_nobody_is_off_by_a_whole_one(whole: int, weights: list[Fraction]) -> None:
    found = shared_out(whole, weights)
    assert sum(found) == whole
    assert all(abs(n - weight / sum(weights) * whole) < 1 for n, weight in zip(found, weights, strict=True))
