"""What a sheet of templates says of its bars, in a sentence that a ruler can follow."""

from __future__ import annotations

import pytest

from sheetgen.model.drawing import Drawing, TemplatePage
from sheetgen.render.sheets import bars


def page(along: str, upright: str) -> TemplatePage:
    return TemplatePage("A4", Drawing("", 180, 60, ""), (), bars=(along, upright))


@pytest.mark.parametrize(
    ("pages", "said"),
    [
        # 100 ÷ 97 = 1.031
        ([("100 mm", "100 mm")], "Both bars measure 100 mm, or print again: at 97 mm choose 103 %."),
        (
            [("100 mm", "100 mm"), ("100 mm", "50 mm")],
            "The long bar measures 100 mm, the short one 50 mm, or print again: at 97 mm choose 103 %.",
        ),
        # 4 ÷ 3.875 = 1.032
        ([("4 in", "4 in")], "Both bars measure 4 in, or print again: at 3 7/8 in choose 103 %."),
        ([("50 mm", "50 mm")], "Both bars measure 50 mm, or print again, larger or smaller."),
        ([], ""),
    ],
)
def test_the_bars_are_told_in_one_sentence_and_whole_per_cents(pages: list[tuple[str, str]], said: str) -> None:
    assert bars([page(*one) for one in pages]) == said
