"""The emergency number, where a caution is told in full, how long is waited: no theme leaves out or alters them."""

from __future__ import annotations

import re
from typing import Any

import pytest

from sheetgen.draw.templates import draw
from sheetgen.render.handout import Sheets
from sheetgen.render.marks import Marks
from sheetgen.render.musts import checked_html
from sheetgen.render.theme import Theme


@pytest.fixture
def handout(demo: Any) -> Any:
    worked, marks = demo.worked("buoy-drops"), Marks()
    sheet = Sheets(worked, worked.main, draw(worked, worked.main, ["A4"])).handout(marks, ())
    return Theme("plain", []).page("handout.html.j2", sheet=sheet, density=""), marks


def told(page: str, marks: Marks) -> list[str]:
    return [str(fault) for fault in checked_html(page, marks.must, marks.may, tuple(marks.given.items()))]


@pytest.mark.parametrize(
    "what", ["the emergency number", "where it is told in full", "the time of the wait"], ids=["call", "where", "wait"]
)
def test_what_is_left_out_or_altered_is_told(what: str, handout: Any) -> None:
    page, marks = handout
    must = next(one for one in marks.must if one.what.startswith(what))
    mark = re.compile(rf'(<span class="\w+" data-\w+="{must.id}">)(.*?)(</span>)')
    assert mark.search(page)
    assert [fault for fault in told(page, marks) if must.what in fault] == []
    [gone] = [fault for fault in told(mark.sub("", page), marks) if must.what in fault]
    assert gone.endswith("is not printed")
    [altered] = [fault for fault in told(mark.sub(r"\g<1>step 7\g<3>", page), marks) if must.what in fault]
    assert "reads 'step 7' in place of" in altered
