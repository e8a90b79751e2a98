"""Chain runs: counted again by hanging one link after another."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

CHAIN = {"length": "176 mm", "link": "12 mm", "ring": "5 mm", "wire": "1.3 mm"}


def hang(links: int, link: float, ring: float, wire: float, fittings: float) -> float:
    """Length over all, laid out piece by piece."""
    at = wire
    for n in range(links):
        at += link + (ring if n < links - 1 else 0)
    return at + fittings + wire


def test_the_length_is_that_of_the_pieces_laid_out_in_a_row(workshop: Any) -> None:
    chain = workshop("chain run", **CHAIN, clasp="clasp-16", end_rings=2)
    n = int(chain.usual("links"))
    assert chain.usual("over_all") == pytest.approx(hang(n, 12, 5, 1.3, 16 + 2 * 5))
    assert chain.usual("rings") == n - 1 + 2
    assert workshop.taken(chain) == {"clasp-16": 1}


@settings(max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(
    length=st.integers(60, 600),
    link=st.integers(60, 200).map(lambda n: n / 10),
    ring=st.integers(26, 60).map(lambda n: n / 10),
)
def test_one_link_less_would_be_too_short_and_one_more_too_long(
    workshop: Any, length: int, link: float, ring: float
) -> None:
    sizes = {"length": f"{length} mm", "link": f"{link} mm", "ring": f"{ring} mm", "wire": "1.3 mm"}
    over = int(workshop("chain run", **sizes, comes="no shorter").usual("links"))
    under = int(workshop("chain run", **sizes, comes="no longer").usual("links"))
    assert hang(over, link, ring, 1.3, 0) >= length - 1e-6
    assert over == 1 or hang(over - 1, link, ring, 1.3, 0) < length
    assert hang(under, link, ring, 1.3, 0) <= length + 1e-6 < hang(under + 1, link, ring, 1.3, 0) + 2e-6


def test_the_nearest_count_is_off_by_half_a_link_at_most(workshop: Any) -> None:
    chain = workshop("chain run", **CHAIN, comes="nearest")
    assert abs(chain.usual("over")) <= (12 + 5) / 2


def test_links_hooked_into_each_other_want_no_rings(workshop: Any) -> None:
    chain = workshop("chain run", length="100 mm", link="10 mm", wire="1 mm", measured="inside")
    assert (chain.usual("links"), chain.usual("inside")) == (10, 100)
    assert "it.rings" not in chain.figures


def test_a_link_known_as_a_range_makes_the_length_a_range(workshop: Any) -> None:
    chain = workshop("chain run", length="100 mm", link="9.9-10.1 mm", wire="1 mm", measured="inside")
    assert (chain["inside"].low, chain["inside"].high) == (pytest.approx(99), pytest.approx(101))


@pytest.mark.parametrize("measured", ["over all", "inside"])
def test_the_length_asked_stands_beside_the_length_it_comes_out_at(workshop: Any, measured: str) -> None:
    chain = workshop("chain run", **CHAIN, measured=measured)
    (line,) = chain.part.sizes
    links = int(chain.usual("links"))
    over = 2 * 1.3 if measured == "over all" else 0
    assert line.finished.usual == 176
    assert (int(line.made), line.counted) == (links, "links")
    assert line.fires.usual == pytest.approx(links * 12 + (links - 1) * 5 + over)


def test_a_clasp_made_as_a_part_adds_what_it_is_said_to(workshop: Any) -> None:
    open_, closed = (workshop("chain run", **CHAIN, **more) for more in ({}, {"closing": "34 mm"}))
    assert open_.usual("links") - closed.usual("links") == 34 / (12 + 5)
    assert closed.usual("inside") == open_.usual("inside")


@pytest.mark.parametrize(
    ("change", "field", "helps"),
    [
        ({"length": "10 mm", "comes": "no longer"}, "length", "14.6 mm or more"),
        ({"length": "20 mm", "clasp": "clasp-16", "end_rings": "1"}, "length", "35.6 mm or more"),
        ({"ring": "2 mm"}, "ring", "2.6 mm or more"),
        ({"clasp": "clasp-unknown"}, "clasp", "add its length"),
        ({"ring": "0 mm", "end_rings": "2"}, "end rings", "give ring"),
        ({"ring_wire": "11 mm"}, "ring wire", "10.7 mm or less"),
    ],
)
def test_a_chain_that_cannot_be_is_told_at_its_field(
    workshop: Any, change: dict[str, str], field: str, helps: str
) -> None:
    found = workshop.refused("chain run", **CHAIN | change)
    assert any(at == field and helps in helped for at, _, helped in found)
