"""Chains and what they are made of: their clasp is counted in, and there are rings and links enough for them."""

from __future__ import annotations

from typing import Any

import pytest

PROJECT = """\
title: A chain
revision: 1
date: 2026-01-10
summary: A chain of long links with a toggle.
makes: 1 chain
level: experienced
choices:
  wire: copper-16awg
parts:
  links:
    kind: figure-eight link
    count: chain.count * chain.links
    wire: wire
    loop: 4 mm
    gap: 3 mm
  rings:
    kind: jump ring
    count: chain.count * chain.rings
    wire: wire
    inside: 5 mm
  chain:
    kind: chain run
    length: 180 mm
    link: links.pitch
    ring: rings.inner
    wire: links.wire.thickness
    end rings: 2
    closing: toggle.rod_used
  toggle:
    kind: toggle clasp
    wire: wire
    inside: 12 mm
steps:
  - title: Make
    parts: [links, rings, chain, toggle]
"""
CLOSED, RINGED = "    closing: toggle.rod_used\n", "    count: chain.count * chain.rings\n"
LINKED = "    count: chain.count * chain.links\n"
STEP = "[links, rings, chain, toggle]"


def troubles(library: Any, *changes: tuple[str, str]) -> list[Any]:
    """Every trouble and doubt of the chain with some words of its file changed."""
    text = PROJECT
    for old, new in changes:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    library.write("chain/project.yaml", text)
    return list(library.check("chain").troubles)


def wanted(library: Any) -> tuple[int, int]:
    """Links and rings that the chain takes."""
    troubles(library)
    figures = library.main("chain").figures
    return int(figures["chain.links"].value.usual), int(figures["chain.rings"].value.usual)


def test_a_chain_that_counts_its_clasp_in_and_has_its_rings_is_well(library: Any) -> None:
    assert not troubles(library)


def test_a_chain_that_names_no_clasp_while_there_is_one_is_a_trouble(library: Any) -> None:
    (found,) = troubles(library, (CLOSED, ""))
    assert found.severity == "error"
    assert "toggle" in found.message
    assert found.place.line == PROJECT[: PROJECT.index("  chain:")].count("\n") + 1
    assert "closing: toggle.rod_used" in found.help


def test_a_clasp_may_be_counted_in_by_way_of_a_figure_of_ones_own(library: Any) -> None:
    own = ("steps:", "figures:\n  shut: toggle.rod_used + 2 mm\nsteps:")
    assert not troubles(library, (CLOSED, "    closing: shut\n"), own)
    assert not troubles(library, (CLOSED, ""), ("length: 180 mm", "length: 200 mm - shut"), own)


def test_of_two_chains_one_may_hang_open(library: Any) -> None:
    tail = "  tail:\n    kind: chain run\n    length: 30 mm\n    link: 3 mm\n    wire: 0.7 mm\n  toggle:"
    second = (("  toggle:", tail), (STEP, "[links, rings, chain, tail, toggle]"))
    assert not troubles(library, *second)
    assert [t.severity for t in troubles(library, *second, (CLOSED, ""))] == ["error"]


def test_a_chain_that_says_it_closes_with_nothing_is_believed(library: Any) -> None:
    assert not troubles(library, (CLOSED, "    closing: 0 mm\n"))


def test_a_chain_with_a_bought_clasp_is_closed(library: Any) -> None:
    library.write("stock/clasp.yaml", "findings:\n  hook-16:\n    name: Hook\n    length: 16 mm\n")
    assert not troubles(library, (CLOSED, "    clasp: hook-16\n"))


def test_a_clasp_without_any_chain_is_no_trouble(library: Any) -> None:
    start, end = PROJECT.index("  links:"), PROJECT.index("  toggle:")
    assert not troubles(library, (PROJECT[start:end], ""), (STEP, "[toggle]"))


@pytest.mark.parametrize(("off", "severity"), [(-1, "error"), (0, ""), (2, "warning")])
def test_rings_are_as_many_as_the_chain_takes(library: Any, off: int, severity: str) -> None:
    rings = wanted(library)[1]
    found = troubles(library, (RINGED, f"    count: {rings + off}\n"))
    assert [t.severity for t in found] == [severity] * bool(severity)
    for one in found:
        assert f"{rings + off}" in one.message
        assert f"{rings}" in one.message
        assert one.place.line == PROJECT[: PROJECT.index(RINGED)].count("\n") + 1


def test_links_are_as_many_as_the_chain_takes(library: Any) -> None:
    links = wanted(library)[0]
    assert [t.severity for t in troubles(library, (LINKED, f"    count: {links - 1}\n"))] == ["error"]


def test_spare_rings_are_well_where_they_are_worked_from_the_chain(library: Any) -> None:
    assert not troubles(library, (RINGED, "    count: chain.count * chain.rings + 3\n"))
    own = ("steps:", "figures:\n  spare: chain.rings + 3\nsteps:")
    assert not troubles(library, (RINGED, "    count: spare\n"), own)


def test_too_few_are_too_few_however_they_are_worked(library: Any) -> None:
    (found,) = troubles(library, ("    length: 180 mm\n", "    count: 2\n    length: 180 mm\n"),
                        (RINGED, "    count: chain.rings\n"))  # fmt: skip
    assert found.severity == "error"
    assert "chain.count * chain.rings" in found.help


def test_rings_that_two_chains_share_are_those_of_both(library: Any) -> None:
    rings = wanted(library)[1]
    more = "  second:\n    kind: chain run\n    length: 60 mm\n    link: 12 mm\n    ring: rings.inner\n    wire: 1 mm\n"
    second = (("  toggle:", more + "    closing: 0 mm\n  toggle:"), (STEP, "[links, rings, chain, second, toggle]"))
    (found,) = troubles(library, *second)
    # 60 mm over all is 58 inside: 4 links of 12 mm and 3 rings of 5 mm are 63 mm, 3 and 2 would be 46 mm
    assert f"{rings}" in found.message
    assert f"{rings + 3}" in found.message
    both = (RINGED, "    count: chain.count * chain.rings + second.count * second.rings\n")
    assert not troubles(library, *second, both)
