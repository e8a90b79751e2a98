"""Names that begin alike are told apart by what only one of them has."""

from __future__ import annotations

import pytest

from sheetgen.base.spelling import told_apart

STONE = "Glass stone 2 mm, glass, round"
CLEAR = "Glass stone 2 mm, clear, glass, round"
SMOKE = "Glass stone 2 mm, smoke, glass, round"


@pytest.mark.parametrize(
    ("names", "told"),
    [
        ([STONE], ["Glass stone 2 mm"]),
        ([STONE, SMOKE], ["Glass stone 2 mm", "Glass stone 2 mm smoke"]),
        ([CLEAR, SMOKE], ["Glass stone 2 mm clear", "Glass stone 2 mm smoke"]),
        ([SMOKE, CLEAR, STONE], ["Glass stone 2 mm smoke", "Glass stone 2 mm clear", "Glass stone 2 mm"]),
        (["Wire, 20 AWG, soft", "Wire, 20 AWG, hard"], ["Wire soft", "Wire hard"]),
        (["Wire, copper, 20 AWG", "Wire, copper, 16 AWG", "Wire, silver, 20 AWG"],
         ["Wire copper 20 AWG", "Wire copper 16 AWG", "Wire silver"]),
        (["Bur", "Bur"], ["Bur", "Bur"]),
    ],
)  # fmt: skip
def test_a_colour_is_called_by_its_own_word_and_never_by_what_all_have(names: list[str], told: list[str]) -> None:
    assert told_apart(names) == told
