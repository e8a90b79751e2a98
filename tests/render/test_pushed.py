"""What a page has no room for is printed on the next one, and printed once."""

from __future__ import annotations

import io
import re
from pathlib import Path
from typing import Any

import pdfplumber
import pytest

from sheetgen.draw.templates import draw
from sheetgen.facts.cautions import CAUTIONS
from sheetgen.render.handout import Sheets
from sheetgen.render.marks import Marks
from sheetgen.render.pdf import Printer
from sheetgen.render.theme import Theme

PAGE = "@page { size: 210mm 297mm; margin: 22mm 15mm 28mm }"
STEP = "  - title: {}\n    caution: [{}]\n    text: |\n"
WORK = "".join(f"      Line {i} of the long work.\n\n" for i in range(40))


@pytest.fixture(scope="module")
def printer() -> Any:
    return Printer()


@pytest.fixture(scope="module")
def sheet(libraries: Any, tmp_path_factory: pytest.TempPathFactory) -> Any:
    """A handout with every caution in two long steps, as HTML, and what it must say."""
    library = libraries.make(tmp_path_factory.mktemp("pushed"))
    each = list(CAUTIONS)
    steps = "".join(
        STEP.format(title, ", ".join(names)) + WORK for title, names in (("One", each[:16]), ("Two", each[16:]))
    )
    library.change("link/project.yaml", "steps:\n", f"steps:\n{steps}")
    worked, marks = library.worked("link"), Marks()
    handout = Sheets(worked, worked.main, draw(worked, worked.main, worked.studio.paper)).handout(marks, ())
    return Theme("plain", []).page("handout.html.j2", sheet=handout, density=""), marks


@pytest.mark.parametrize("gone", [0, 170, *range(190, 215, 4)])
def test_a_list_and_a_long_box_are_printed_once_wherever_the_page_ends(gone: int, sheet: Any, printer: Any) -> None:
    html, marks = sheet
    filler = f'\\1<div style="height: {gone}mm; border: .6pt solid #000"></div>'
    html = re.sub("(<body[^>]*>)", filler, html, count=1)
    html = html.replace("</head>", f"<style>{PAGE}</style></head>")
    assert printer.print(html, "handout", marks.must, marks.may).faults == ()


def test_what_a_step_warns_of_may_not_be_gathered_at_the_end_of_the_sheet(sheet: Any, printer: Any) -> None:
    html, marks = sheet
    html = html.replace("</head>", f"<style>{PAGE}</style></head>")
    warned = [one for one in marks.must if one.step and one.what.startswith(("the caution", "the reminder"))]
    assert len(warned) > len(CAUTIONS) / 2
    for one in warned:
        said = re.search(f'<span class="said" data-told="{one.id}">.*?</span>', html)
        assert said
        html = html.replace(said[0], "").replace("</body>", f"<p>{said[0]}</p></body>")
    faults = printer.print(html, "handout", marks.must, marks.may).faults
    assert len(faults) == len(warned)
    assert all(fault.endswith("stands outside of its step") for fault in faults)


@pytest.mark.parametrize("gone", range(216, 236, 3))
def test_the_heading_of_a_session_its_rule_and_its_time_stand_on_one_page(gone: int, printer: Any) -> None:
    css = (Path(__file__).parents[2] / "themes/plain/paper.css").read_text(encoding="utf-8")
    session = '<div class="session"><span class="time">65 min</span><b>Session 1</b></div><div class="step">Work.</div>'
    html = f"<html lang='en'><head><title>T</title><style>{css}{PAGE}</style></head><body><h1>T</h1>"
    out = printer.print(f'{html}<div style="height: {gone}mm"></div>{session}</body></html>', "handout", (), ())
    with pdfplumber.open(io.BytesIO(out.pdf)) as pdf:
        told = [(page.extract_text(), len(page.rects)) for page in pdf.pages]
    # a rule is drawn as what lies between two rectangles: those of the session and of its step
    assert [(text.count("Session 1 65 min"), drawn) for text, drawn in told if drawn] == [(1, 4)]
