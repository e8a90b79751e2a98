"""Sets of chain ends, counted again piece by piece."""

from __future__ import annotations

from typing import Any

import pytest

SET = {"link": "3 mm", "first": "20 mm", "step": "6.5 mm", "pieces": 7}


def test_the_set_is_the_sum_of_its_pieces(workshop: Any) -> None:
    ends = workshop("chain ends", **SET, lost=1, count=2, chain="cable-chain")
    pieces = [7 + 2 * i for i in range(7)]  # 20 mm is nearest to 7 links, 6.5 mm to 2
    assert ends.usual("links_first") == pieces[0]
    assert ends.usual("links_last") == pieces[-1]
    assert ends.usual("links_set") == sum(pieces)
    assert ends.usual("links_all") == 2 * (sum(pieces) + 7)
    assert workshop.taken(ends) == {"cable-chain": pytest.approx(2 * (sum(pieces) + 7) * 3)}


def test_lengths_come_out_in_whole_links(workshop: Any) -> None:
    ends = workshop("chain ends", **SET)
    assert (ends.usual("first_out"), ends.usual("step_out"), ends.usual("last_out")) == (21, 6, 57)


def test_pieces_of_one_length_have_no_step(workshop: Any) -> None:
    ends = workshop("chain ends", link="3 mm", first="30 mm", pieces=4)
    assert ends.usual("links_last") == 10


@pytest.mark.parametrize(
    ("change", "field", "helps"),
    [
        ({"step": "1 mm"}, "step", "3 mm is one link"),
        ({"link": "0 mm"}, "link", "more than 0 mm"),
        ({"first": "1 mm"}, "first", "1 links"),
        ({"step": "-6 mm"}, "step", "0 mm or more"),
    ],
)
def test_a_set_that_cannot_be_is_told_at_its_field(
    workshop: Any, change: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("chain ends", **SET | change)
    assert any(at == field and helps in helped for at, _, helped in found)
