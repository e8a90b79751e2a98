"""A template is cut out as it is printed: whatever a theme does, one at another size, or altered, is told."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from sheetgen.model.drawing import Drawing
from sheetgen.render.job import Job, Paper
from sheetgen.render.marks import Marks
from sheetgen.render.pdf import Printer

HERE = Path(__file__).parent / "themes" / "drawn"
LID = Drawing(
    '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40" role="img">'
    '<title>Lid</title><path d="M5 5H55V35H5Z" fill="none" stroke="#000" stroke-width=".5"/>'
    '<path d="M20 20h10" stroke="#000" stroke-width=".2"/></svg>',
    60,
    40,
    "Lid",
)


@pytest.fixture(scope="module")
def told() -> Any:
    printer, marks = Printer(), Marks()
    marks.drawing(LID, "the lid")

    def of(path: Path) -> tuple[str, ...]:
        [out] = printer.printed(Job((path.read_text("utf-8"),), (Paper("card"),), drawn=tuple(marks.drawn)))
        return out.faults

    return of


@pytest.mark.parametrize("path", sorted((HERE / "wrong").glob("*.html")), ids=lambda path: path.stem)
def test_a_template_that_is_not_printed_as_it_was_drawn_is_told_in_one_sentence(path: Path, told: Any) -> None:
    lost = re.search("<!-- lost: (.*) -->", path.read_text("utf-8"))
    assert lost
    [fault] = told(path)
    assert "the lid " in fault
    assert lost[1] in fault


@pytest.mark.parametrize("path", sorted((HERE / "honest").glob("*.html")), ids=lambda path: path.stem)
def test_a_template_that_is_moved_or_framed_is_told_of_nothing(path: Path, told: Any) -> None:
    assert told(path) == ()
