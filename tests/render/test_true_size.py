"""What a sheet of templates says of its bars, in a sentence that a ruler can follow, and of its lines."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.draw.templates import draw
from sheetgen.model.drawing import Drawing, TemplatePage
from sheetgen.render.sheets import bars, lines


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


@pytest.mark.parametrize(
    ("name", "said"),
    [
        # a tube, rolled over its line of meeting, its ghost in dots; its seats have crosses
        ("buoy-drops", "Heavy: cut, wet. Dots: what it fires to. Chain: a middle, or where ends meet."),
        # wire alone, bent along its outline
        ("eddy-earrings", "Heavy: bend wire along it."),
    ],
)
def test_a_sheet_of_templates_tells_the_lines_that_are_on_it_and_no_others(name: str, said: str, demo: Any) -> None:
    worked = demo.worked(name)
    pages = draw(worked, worked.main, ["A4"]).pages["A4"]
    assert lines(pages, wet=name == "buoy-drops") == said
