"""Beside a step stands no number that a theme has made up: each is marked, or was in the words that it was given."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.model.view import Figure, Html, Matrix, MatrixRow, Row
from sheetgen.render.given import given, numbers
from sheetgen.render.job import Job, Must, Paper
from sheetgen.render.musts import checked_html
from sheetgen.render.pdf import Printer

MUST = (Must("rod", "8.5\u00a0mm", "the number Rod 8.5 mm of step 1", "step-1"),)
ROW = Row(
    "step",
    "step-1",
    1,
    "Cut 2 rods",
    "Cut",
    Html("10–15 min"),
    text=Html("<ol><li>Saw.</li><li>File 3 times.</li></ol>"),
)
PAGE = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Rod</title><style>
@page {{ size: 148mm 105mm; @bottom-left {{ content: 'page 12' }} }} html {{ font: 10pt/1.4 'Source Sans Pro' }} {css}
</style></head><body><p>Take 40 g of clay.</p><div data-step="step-1"><b class="no">1</b> <h2>Cut 2 rods</h2>
<small>10–15<br>min</small><p class="do">Cut <span data-n="rod">8.5&nbsp;mm</span>.</p>
<ol><li>Saw.</li><li>File 3 times.</li></ol>{more}</div></body></html>"""


@pytest.fixture(scope="module")
def printer() -> Any:
    return Printer()


@pytest.fixture
def told(printer: Any) -> Any:
    """What is told of the page with this style and these words, on paper and on a screen."""

    def of(css: str = "", more: str = "") -> tuple[list[str], list[str]]:
        html, has = PAGE.format(css=css, more=more), ((ROW.id, given(ROW)),)
        [out] = printer.printed(Job((html,), (Paper("card"),), MUST, given=has))
        return list(out.faults), [str(fault) for fault in checked_html(html, MUST, (), has)]

    return of


def test_the_numbers_of_its_words_are_a_steps_own(told: Any) -> None:
    assert told() == ([], [])
    assert told(more="<p>Step 1, 15 min: 2 rods</p><p>Have fun.</p>") == ([], [])
    assert told(more="<p>Rod 2 <b data-n='rod'>8.5&nbsp;mm</b> cm</p>") == ([], [])


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ("<p>Leave 9 mm.</p>", "9 mm"),
        ("<p>Wait 15 h.</p>", "15 h"),
        ("<p>Cut <b>9</b>.5 mm.</p>", "9.5 mm"),
        ("<p>Cut 2<b>7</b> rods.</p>", "27"),
        ("<p>Cut <span data-n='rod'>8.5&nbsp;mm</span> or 10 cm.</p>", "10 cm"),
    ],
    ids=["a number", "another unit", "in two pieces", "a digit put to one of its own", "beside a number of ours"],
)
def test_a_number_that_a_theme_adds_to_a_step_is_told(more: str, said: str, told: Any) -> None:
    fault = f"'step-1' prints {said}, which it was not given"
    assert told(more=more) == ([f"card, page 1: {fault}"], [fault])


def test_a_number_that_the_style_adds_is_told_on_paper(told: Any) -> None:
    [fault] = told(".do::after { content: ' Then 9 mm.' }")[0]
    assert fault.endswith("prints 9 mm, which it was not given")


def test_a_row_gives_the_numbers_of_all_its_words() -> None:
    figures = (Figure("Wire, 16 AWG", Html('<span data-n="n3">0.8</span>'), Html("mm"), long=False),)
    matrix = Matrix(("Cap, 4",), (MatrixRow("Length, mm", (Html("12.5"),)),))
    row = Row(
        "step",
        "step-7",
        6,
        "Cut",
        "Cut",
        Html("1 h 30 min"),
        notes=("Fire at 650 °C.",),
        figures=figures,
        matrix=matrix,
    )
    assert given(row) >= {"6", "1 h", "30 min", "30", "650 °C", "650", "16 AWG", "0.8 mm", "0.8", "4", "12.5"}
    assert "7" not in given(Row("step", "step-7", 6, "Cut", "Cut", Html("")))


def test_a_drawing_says_its_numbers_itself() -> None:
    row = Row(
        "step", "step-7", 6, "Cut", "Cut", Html(""), drawings=(Html("<svg width='56mm'><text>9.5 mm</text></svg>"),)
    )
    assert given(row) == {"6"}


def test_a_number_is_read_with_its_unit() -> None:
    assert numbers("1 1/2 in of 0.8\u00a0mm, 10\u2060–15 minutes at 650 °C.") == {
        "1",
        "1/2 in",
        "0.8 mm",
        "10",
        "15",
        "650 °C",
    }
