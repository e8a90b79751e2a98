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


@pytest.mark.parametrize(
    ("change", "field", "helps"),
    [
        ({"length": "10 mm", "comes": "no longer"}, "length", "12 mm or more"),
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
