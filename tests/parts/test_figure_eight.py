"""Figure-eight links on the pegs in the drawer."""

from __future__ import annotations

import math
from typing import Any

import pytest


def test_the_nearest_owned_pegs_are_chosen_and_the_length_is_kept(workshop: Any) -> None:
    link = workshop("figure-eight link", wire="round-1", loop="4.3 mm", length="16 mm")
    assert (link.usual("peg_used"), link.usual("second_used")) == (4, 4)
    assert link.usual("clear") == pytest.approx(16 - 2 - 8)
    assert link.usual("outside") == pytest.approx(16)


def test_pegs_given_by_hand_decide_the_loops(workshop: Any) -> None:
    # C7.5: pegs 6 and 4, gap 3, wire 1.2192 mm
    link = workshop("figure-eight link", wire="swg-18", peg="6 mm", second_peg="4 mm", gap="3 mm")
    assert link.usual("one") == pytest.approx(40.679, abs=0.001)
    assert link.usual("pitch") == pytest.approx(13)


def test_one_loop_may_be_given_by_its_size_and_the_other_by_its_peg(workshop: Any) -> None:
    link = workshop("figure-eight link", wire="round-1", loop="5 mm", second_peg="3 mm", gap="2 mm")
    assert link.usual("pitch") == pytest.approx(10)


def test_one_more_link_would_not_come_from_the_spool(workshop: Any) -> None:
    link = workshop("figure-eight link", wire="round-1", loop="5 mm", gap="2 mm")
    # a piece is cut to the millimetre, and the spool must hold so many of those
    n, cut = link.usual("per_spool"), math.ceil(link.usual("cut"))
    assert n * cut <= 10_000 < (n + 1) * cut


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"loop": "5 mm", "gap": "0.5 mm"}, "gap", "1 mm or more"),
        ({"loop": "5 mm", "length": "12.5 mm"}, "length", "13 mm or more"),
        ({"loop": "5 mm", "peg": "5 mm", "gap": "2 mm"}, "loop", "give one"),
        ({"loop": "9 mm", "gap": "2 mm"}, "loop", "6 mm"),
        ({"peg": "4.5 mm", "gap": "2 mm"}, "peg", "4 mm and 5 mm"),
        ({"loop": "5 mm", "second_loop": "9 mm", "gap": "2 mm"}, "second loop", "6 mm"),
        ({"loop": "5 mm", "second_loop": "4 mm", "second_peg": "4 mm", "gap": "2 mm"}, "second loop", "give one"),
        ({"loop": "5 mm", "gap": "1.22 mm", "wire": "swg-18"}, "gap", "1.3 mm or more"),
        ({"loop": "5 mm", "gap": "2 mm", "trim": "9980 mm"}, "wire", ""),
    ],
)
def test_a_link_that_cannot_be_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("figure-eight link", **{"wire": "round-1"} | fields)
    assert any(at == field and helps in helped for at, _, helped in found)
