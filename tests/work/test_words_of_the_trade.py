"""What a person writes in words that are not ours is answered with ours."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.facts.bench import DOES
from sheetgen.work.deeds import OTHER_WORDS, SHAPES

PENDANT = "pendant/project.yaml"


@pytest.mark.parametrize(
    ("theirs", "ours"),
    [("anneal", "heat"), ("Ball", "heat"), ("sand", "refine"), ("file", "refine"), ("hammer", "harden"),
     ("wash", "rinse"), ("clean", "rinse"), ("wipe", "degrease"), ("mount", "set"), ("thread", "string")],
)  # fmt: skip
def test_another_word_of_the_trade_is_answered_with_ours(theirs: str, ours: str, library: Any) -> None:
    library.change(PENDANT, "does: [test]", f"does: [test, {theirs}]")
    [trouble] = library.check("pendant").troubles.errors
    assert trouble.message == f"a step does not '{theirs}'"
    assert trouble.help.startswith(f"write {ours}: ")


def test_what_is_shaped_needs_no_word(library: Any) -> None:
    library.change(PENDANT, "does: [test]", "does: [test, bend]")
    [trouble] = library.check("pendant").troubles.errors
    assert trouble.help.startswith("leave it out")


def test_no_word_of_the_trade_stands_for_two_of_ours() -> None:
    others = [one for line in OTHER_WORDS.values() for one in line.split(", ")]
    assert len(set(others)) == len(others)
    assert not (set(others) | SHAPES) & set(DOES)
    assert set(OTHER_WORDS) <= set(DOES)


@pytest.mark.parametrize("said", ["overnight", "two hours", "until cold"])
def test_a_wait_in_words_is_asked_for_as_a_time(said: str, library: Any) -> None:
    library.change(PENDANT, "    wait: drying\n", f"    wait: {said}\n")
    trouble = next(t for t in library.check("pendant").troubles.errors if said in t.message)
    assert (trouble.message, trouble.help) == (f"'{said}' is not a time", "drying, curing, or a time such as 12 h")


def test_minutes_in_words_are_asked_for_as_a_time(library: Any) -> None:
    library.change(PENDANT, "minutes: 10-15 min", "minutes: two")
    [trouble] = library.check("pendant").troubles.errors
    assert trouble.help == "a time such as 10 min or 10-15 min"


def test_a_name_misspelt_in_a_time_is_still_answered_with_the_name(library: Any) -> None:
    library.change(PENDANT, "  width: 20 mm\n", "  width: 20 mm\n  sanding: 4 min\n")
    library.change(PENDANT, "minutes: 10-15 min", "minutes: sandign")
    [trouble] = library.check("pendant").troubles.errors
    assert trouble.help == "did you mean 'sanding'?"
    library.change(PENDANT, "minutes: sandign", "minutes: 2 * sanding")
    # 2 × 4, and half as much again for a first piece
    assert library.main("pendant").steps[0].minutes.usual == 12
