"""Strips slit from wider ribbon."""

from __future__ import annotations

from typing import Any

import pytest

SLIT = {"fibre": "ribbon-25", "width": "3 mm", "length": "120 mm", "strips": 20}


@pytest.mark.parametrize("kerf", [0, 0.25])
def test_one_more_strip_would_not_fit_the_ribbon(workshop: Any, kerf: float) -> None:
    slit = workshop("slit strips", **SLIT, edge="1 mm", kerf=f"{kerf} mm")
    n = slit.usual("side_by_side")
    assert n * 3 + (n - 1) * kerf <= 23 < (n + 1) * 3 + n * kerf
    assert slit.usual("offcut") == pytest.approx(23 - n * 3 - (n - 1) * kerf)


def test_whole_lengths_of_ribbon_are_bought_for_all_the_pieces_together(workshop: Any) -> None:
    slit = workshop("slit strips", **SLIT, count=3, trim="5 mm")
    assert slit.usual("lengths") == 8  # 60 strips, 8 side by side
    assert slit.usual("spare") == 4
    assert workshop.taken(slit) == {"ribbon-25": pytest.approx(8 * 125)}


def test_a_strip_as_wide_as_the_ribbon_is_the_ribbon(workshop: Any) -> None:
    slit = workshop("slit strips", **SLIT | {"width": "25 mm"})
    assert (slit.usual("side_by_side"), slit.usual("lengths")) == (1, 20)


def test_a_length_longer_than_the_ribbon_is_refused(workshop: Any) -> None:
    (found,) = workshop.refused("slit strips", **SLIT | {"length": "4.9 m"}, trim="200 mm")
    assert found[:2] == ("fibre", "it: fibre holds 5000 mm a pack, and one length is 5100 mm")


@pytest.mark.parametrize(
    ("change", "field", "helps"),
    [
        ({"width": "26 mm"}, "width", "25 mm or less"),
        ({"width": "24 mm", "edge": "1 mm"}, "width", "23 mm or less"),
        ({"edge": "13 mm"}, "edge", "less than 12.5 mm"),
        ({"fibre": "cord-2"}, "fibre", "add its width"),
        ({"strips": "2.5"}, "strips", "whole number"),
    ],
)
def test_strips_that_cannot_be_are_told_at_their_field(
    workshop: Any, change: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("slit strips", **SLIT | change)
    assert any(at == field and helps in helped for at, _, helped in found)
