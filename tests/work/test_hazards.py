"""Cautions that making a part always calls for, named or not."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.facts.cautions import CAUTIONS
from sheetgen.parts.catalogue import kinds


def test_wire_is_cut_with_a_caution_though_no_cutters_are_named(library: Any) -> None:
    step = library.main("link").steps[0]
    assert "wire ends" in [c.id for c in step.cautions]


def test_a_caution_of_a_part_stands_at_the_first_step_that_makes_it_only(library: Any) -> None:
    library.change(
        "link/project.yaml",
        "  - title: Bend\n",
        "  - title: Cut\n    parts: [links]\n    text: Cut it.\n  - title: Bend\n",
    )
    first, second = library.main("link").steps
    assert "wire ends" in [c.id for c in first.cautions]
    assert "wire ends" not in [c.id for c in second.cautions]


@pytest.mark.parametrize("kind", ["jump ring", "bent wire", "toggle clasp", "bezel cup", "metal disc", "slit strips"])
def test_kinds_that_cut_metal_or_fibre_carry_a_caution(kind: str) -> None:
    assert kinds()[kind].hazards


def test_a_bezel_cup_is_soldered_and_pickled_and_says_so() -> None:
    assert {"torch", "pickle"} <= set(kinds()["bezel cup"].hazards)


def test_every_hazard_of_a_kind_is_a_caution_there_is() -> None:
    for name, kind in kinds().items():
        assert set(kind.hazards) <= CAUTIONS.keys(), name
