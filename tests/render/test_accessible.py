"""A sheet can be read aloud: PDF/UA-1, by a validator that knows nothing of us."""

from __future__ import annotations

from typing import Any

import page as validator
import pytest

from sheetgen.base.trouble import CannotBe
from sheetgen.render.pdf import Printer

HEAD = (
    "<!doctype html><html lang='en'><head><meta charset='utf-8'><title>Rod and ring</title><style>"
    "@page { size: 100mm 60mm; margin: 8mm 8mm 12mm; @bottom-left { content: 'page ' counter(page) } }"
    ".float { float: right } .grey { background: #e8e8e8 } .no-break { break-inside: avoid }"
    "</style></head><body><h1>Rod and ring</h1>"
)
DRAWING = "<svg xmlns='http://www.w3.org/2000/svg' width='20mm' height='9mm'>{}<rect width='9' height='9'/></svg>"
ROWS = "<tr><td>Rod</td><td>8.5 mm</td><td></td></tr>" * 9
HEADS = "<thead><tr><th scope='col'>Part</th><th scope='col'>Size</th><th scope='col'>With</th></tr></thead>"
PICTURE = "data:image/svg+xml,%3Csvg xmlns=%22http://www.w3.org/2000/svg%22 width=%225%22 height=%225%22/%3E"


def table(*rows: str) -> str:
    return f"<table>{''.join(f'<tr>{row}</tr>' for row in rows)}</table>"


KEPT = {
    "a step": "<div class='no-break'><h2>Cut the rod</h2><p>Cut <b>8.5 mm</b>.</p>"
    f"<div class='float'>{DRAWING.format('<title>The rod</title>')}</div><p class='grey'>Dry. H<sub>2</sub>O</p></div>",
    "a table over two pages": f"<table>{HEADS}<tbody>{ROWS}</tbody></table>",
    "a table without heads": f"<table>{ROWS}</table>",
    "heads of rows": table("<th scope='row'>Rod</th><td>8.5</td><td>mm</td>"),
    "heads both ways, the corner one of them": table(
        "<th scope='col'>&nbsp;</th><th scope='col'>A</th>", "<th scope='row'>Rod</th><td>8.5</td>"
    ),
    "a head over a group of rows": table(
        "<th scope='col'>A</th><th scope='col'>B</th>",
        "<th colspan='2' scope='rowgroup'>Clay</th>",
        "<td>Rod</td><td>8.5</td>",
    ),
    "a title of a table": f"<table><caption>Sizes</caption>{HEADS}<tbody>{ROWS}</tbody></table>",
    "an empty cell in place of none": table("<td>Rod</td><td>Ring</td>", "<td>Knife</td><td></td>"),
    "lists": "<ol><li>Rod<ul><li>8.5 mm</li></ul></li></ol><dl><dt>Rod</dt><dd>8.5 mm</dd></dl>",
    "links": "<p id='here'><a href='#here'>step 4</a> and <a href='https://x.invalid/'>a page</a></p>",
    "a picture": f"<figure><img alt='The ring' src='{PICTURE}'><figcaption>The ring</figcaption></figure>",
    "headings one below the other": "<h2>Steps</h2><h3>Cut</h3><h2>Templates</h2>",
}
BROKEN = {
    "a row with fewer cells": table("<td>Rod</td><td>Ring</td>", "<td>Knife</td>"),
    "a cell that is not displayed": table("<td>Rod</td><td>Ring</td>", "<td>Knife</td><td style='display:none'></td>"),
    "a row that is a block": "<table><tr style='display:block'><td>Rod</td><td>Ring</td></tr></table>",
    "a cell that floats": table("<td>Rod</td><td style='position:absolute'>Ring</td>"),
    "one head over several columns": f"<table><thead><tr><th colspan='3'>Tools</th></tr></thead>{ROWS}</table>",
    "a column without a head": HEADS.join(["<table>", f"{ROWS}</table>"]).replace(
        "<th scope='col'>Part</th>", "<td></td>"
    ),
    "the head of a row that does not say so": table("<th>Rod</th><td>8.5</td>", "<th>Ring</th><td>9</td>"),
    "a head over several rows": table("<th scope='row' rowspan='2'>Rod</th><td>8</td>", "<td>9</td>"),
    "rows that span pages": f"<table>{ROWS}<tr><td rowspan='9'>Rod</td><td>1</td><td></td></tr>"
    + "<tr><td>2</td><td></td></tr>" * 8
    + "</table>",
    "a level of headings left out": "<h3>Cut</h3>",
    "a drawing without a title": DRAWING.format(""),
    "an item of a list that goes on on the next page": f"<ol><li>{'<p>Rod</p>' * 30}</li></ol>",
    "the sign of an item within it": "<ul style='list-style-position:inside'><li>Rod</li></ul>",
    "a box between a list and its items": "<dl><div><dt>Rod</dt><dd>8.5 mm</dd></div></dl>",
    "elements in a link": "<p id='here'><a href='#here'>step <b>4</b></a></p>",
}


@pytest.fixture(scope="module")
def printer() -> Any:
    return Printer()


def failures(pdf: bytes) -> list[str]:
    """What the validator says against a PDF."""
    report = validator.validate_pdf_bytes(pdf, profile="ua1")
    found = [f"{one.rule_id}: {one.message}" for one in report.failures]
    assert report.is_compliant == (not found)
    assert report.rules.total > 100
    return found


@pytest.mark.parametrize("body", KEPT.values(), ids=KEPT)
def test_html_that_keeps_the_rules_of_a_theme_can_be_read_aloud(body: str, printer: Any) -> None:
    assert failures(printer.print(f"{HEAD}{body}</body></html>", "x").pdf) == []


@pytest.mark.parametrize("body", BROKEN.values(), ids=BROKEN)
def test_html_that_breaks_one_cannot(body: str, printer: Any) -> None:
    assert failures(printer.print(f"{HEAD}{body}</body></html>", "x").pdf)


def test_a_picture_without_words_is_refused_where_it_is_printed(printer: Any) -> None:
    with pytest.raises(CannotBe, match="no required alt description"):
        printer.print(f"{HEAD}<img alt='' src='{PICTURE}'></body></html>", "x")
