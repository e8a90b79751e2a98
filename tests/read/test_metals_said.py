"""A metal is never guessed: one alloy taken for another is a melted piece."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.facts.metals import METALS
from sheetgen.parts.described import words_told

OTHERS = "stock/others.yaml"
WIRE = "    thickness: 16 awg\n"


@pytest.mark.parametrize("said", ["silver 935", "silver", "argent silver", "stirling", "nickel"])
def test_a_metal_that_is_not_known_is_answered_with_all_and_with_no_guess(said: str, library: Any) -> None:
    library.change(OTHERS, WIRE, f"{WIRE}    metal: {said}\n")
    trouble = next(t for t in library.check().troubles.errors if "not a metal" in t.message)
    assert "did you mean" not in trouble.help
    assert all(metal in trouble.help for metal in METALS)
    # hallmarks: 925 parts in a thousand are sterling, 999 fine silver
    assert "sterling (silver 925)" in trouble.help
    assert "fine silver (silver 999)" in trouble.help


def test_the_list_of_words_names_the_metals() -> None:
    assert all(metal in words_told() for metal in METALS)


@pytest.mark.parametrize(("temper", "hard"), [("hard", True), ("half hard", True), ("soft", False)])
def test_half_hard_wire_is_hard_and_soft_wire_is_not(temper: str, hard: bool, library: Any) -> None:  # noqa: FBT001
    library.change(OTHERS, WIRE, f"{WIRE}    temper: {temper}\n")
    [wire] = library.main("link").steps[0].uses
    assert wire.hard is hard


def test_a_temper_that_there_is_not_is_told_with_those_there_are(library: Any) -> None:
    library.change(OTHERS, WIRE, f"{WIRE}    temper: springy\n")
    trouble = next(t for t in library.check().troubles.errors if "a temper" in t.message)
    assert trouble.help == "hard, half hard, soft"
