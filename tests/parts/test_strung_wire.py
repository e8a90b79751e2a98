"""Stringing wire with its tails and crimps."""

from __future__ import annotations

from typing import Any

import pytest


def test_a_strand_is_cut_150_mm_longer_than_it_is(workshop: Any) -> None:
    # section 11: finished length + 150 mm, two crimped ends of 75 mm (common practice)
    assert workshop("strung wire", thread="thread", length="450 mm").usual("cut") == 600


def test_all_strands_of_all_pieces_are_taken_with_their_crimps(workshop: Any) -> None:
    strung = workshop("strung wire", thread="thread", length="450 mm", strands=3, count=2, crimp="crimp-1")
    assert workshop.taken(strung) == {"thread": pytest.approx(6 * 600), "crimp-1": 12}


def test_the_total_is_that_of_the_strands_as_they_are_cut(workshop: Any) -> None:
    # 450.2 + 150 is cut at 601: six of them are 3606, and not 3601.2
    strung = workshop("strung wire", thread="thread", length="450.2 mm", strands=3, count=2)
    assert strung.usual("wire_length") == 3606
    assert workshop.taken(strung) == {"thread": 3606}


def test_a_strand_longer_than_its_spool_is_refused(workshop: Any) -> None:
    (found,) = workshop.refused("strung wire", thread="thread", length="9.9 m")
    assert found[:2] == ("thread", "it: thread holds 10000 mm a pack, and one strand is 10050 mm")


def test_one_more_strand_would_not_come_from_the_spool(workshop: Any) -> None:
    n = workshop("strung wire", thread="thread", length="450 mm").usual("per_spool")
    assert n * 600 <= 10_000 < (n + 1) * 600


@pytest.mark.parametrize(
    ("fields", "field", "helps"),
    [
        ({"thread": "thick-thread", "crimp": "crimp-1"}, "crimp", "2.8 mm or more"),
        ({"thread": "thick-thread", "bead": "bead-8"}, "bead", "1.4 mm or more"),
        ({"thread": "thread", "bead": "tiny-hole"}, "bead", "1 mm or more"),
        ({"thread": "thread", "crimp": "crimp-1", "tail": "4 mm"}, "tail", "50 mm"),
        ({"thread": "thread", "tail": "-4 mm"}, "tail", "0 mm or more"),
    ],
)
def test_what_does_not_go_through_is_told_at_its_field(
    workshop: Any, fields: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("strung wire", length="450 mm", **fields)
    assert any(at == field and helps in helped for at, _, helped in found)
