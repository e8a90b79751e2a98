"""Words as they stand in a sentence, and so many of something."""

from __future__ import annotations

import pytest

from sheetgen.base.spelling import counted, in_a_sentence, stopped


@pytest.mark.parametrize(
    ("written", "told"),
    [
        ("Fine-silver wire, 20 AWG", "fine-silver wire, 20 AWG"),
        ("A ring of two turns", "a ring of two turns"),
        ("Élan", "élan"),
        ("AWG wire", "AWG wire"),
        ("S hook", "S hook"),
        ("US 7", "US 7"),
        ("PP18 stone", "PP18 stone"),
        ("", ""),
    ],
)
def test_a_name_loses_its_capital_in_a_sentence_unless_it_is_a_sign(written: str, told: str) -> None:
    assert in_a_sentence(written) == told


@pytest.mark.parametrize(
    ("many", "told"), [(1, "1 ring"), (2, "2 rings"), ("1", "1 ring"), (1.5, "1.5 rings"), (0, "0 rings")]
)
def test_one_is_one_and_all_else_is_several(many: float | str, told: str) -> None:
    assert counted(many, "ring") == told


@pytest.mark.parametrize("said", ["Keep it wet.", "Is it dry?", "Stop!"])
def test_a_sentence_has_one_stop(said: str) -> None:
    assert stopped(said) == said
    assert stopped("Keep it wet") == "Keep it wet."
