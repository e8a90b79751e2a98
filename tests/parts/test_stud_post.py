"""Stud posts: the lobe, the nut and the seat."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.base.pen import Recorder
from sheetgen.draw.kinds import diagram


def test_a_post_is_the_lobe_and_the_nut(workshop: Any) -> None:
    # 5 mm of lobe and 5 mm for the nut, the defaults
    post = workshop("stud post", wire="round-1", count=2)
    assert post.usual("stands") == 10
    assert workshop.taken(post) == {"round-1": 2 * 12}


def test_what_stands_in_a_seat_is_cut_too_and_does_not_stand_out(workshop: Any) -> None:
    post = workshop("stud post", wire="round-1", lobe="6 mm", nut="4.5 mm", seat="0.5 mm", trim="5 mm")
    assert (post.usual("stands"), post.usual("one"), post.usual("cut")) == (10.5, 11, 16)
    assert "0.5\u00a0mm of it in a seat" in diagram(Recorder(), post.part, 1)


@pytest.mark.parametrize(("wire", "helps"), [("awg-22", "0.7 mm or more"), ("awg-14", "1 mm or less")])
def test_a_post_of_unusual_wire_is_told_and_may_be_waived(workshop: Any, wire: str, helps: str) -> None:
    (found,) = workshop.refused("stud post", wire=wire)
    assert found[0] == "wire"
    assert helps in found[2]
    assert "waive: {post-wire:" in found[2]
