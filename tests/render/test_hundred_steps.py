"""From a hundred steps on a bench card prints each number of a step in one line."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from sheetgen.draw.templates import draw
from sheetgen.render.given import given
from sheetgen.render.handout import Sheets
from sheetgen.render.marks import Marks
from sheetgen.render.ordered import HOW, Press
from sheetgen.render.pdf import Printer
from sheetgen.render.theme import Theme


def test_numbers_of_three_digits_fit_their_column(demo: Any) -> None:
    worked, marks = demo.worked("buoy-drops"), Marks()
    card = Sheets(worked, worked.main, draw(worked, worked.main, ["A4"])).card(marks)
    rows = tuple(replace(row, number=row.number + 188) if row.kind == "step" else row for row in card.rows)
    marks.given = {row.id: given(row) for row in rows if row.id in marks.given}
    ordered = Press(Theme("plain", []), ["A4"], "", "drops").ordered(
        "bench card", replace(card, rows=rows), marks, HOW["bench card"]
    )
    [out] = Printer().printed(ordered.job)
    assert out.faults == ()
    assert [doubt.words for doubt in out.warnings if "column" in doubt.words] == []
