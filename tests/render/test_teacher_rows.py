"""How the tables of the teacher's sheet break on paper: never a row or two alone, the workings in even columns."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pdfplumber
import pytest
import weasyprint

CSS = (Path(__file__).parents[2] / "themes/plain/paper.css").read_text(encoding="utf-8")
PAGE = "@page { size: 210mm 120mm; margin: 15mm } .high { height: %dmm }"
FEWEST = 3  # rows that go over together


def printed(body: str, high: int) -> list[list[tuple[str, float, float]]]:
    """The rows of each page, which are called Row1, Row2, …: name, from the left and from the top, in pt."""
    html = f"<style>{CSS}{PAGE % high}</style><body class='teach' data-foot='Foot'><div class='high'></div>{body}"
    with pdfplumber.open(io.BytesIO(weasyprint.HTML(string=html).write_pdf())) as pdf:
        words = [page.extract_words() for page in pdf.pages]
    return [[(w["text"], w["x0"], w["top"]) for w in page if re.fullmatch(r"Row\d+", w["text"])] for page in words]


def table(kind: str, rows: range) -> str:
    told = "".join(f"<tr><td>Row{row}</td><td>2 × 3</td></tr>" for row in rows)
    return f"<table class='{kind}'><thead><tr><th>Part</th><th>Comes to</th></tr></thead><tbody>{told}</tbody></table>"


@pytest.mark.parametrize("kind", ["work", "tight"])
def test_a_table_that_goes_over_takes_three_rows_along(kind: str) -> None:
    breaks = set()
    for high in range(20, 88, 2):
        pages = printed(f"<div class='row'><h2>Versions</h2>{table(kind, range(12))}</div>", high)
        over = [len(page) for page in pages if page]
        assert sum(over) == 12
        assert over[-1] >= FEWEST
        breaks.add(tuple(over))
    assert len(breaks) > FEWEST  # it was broken at several places


def test_the_workings_end_in_even_columns() -> None:
    few = "".join(table("work", range(at, at + 4)) for at in range(0, 12, 4))
    (page,) = printed(f"<div class='columns'>{few}</div>", 1)
    columns = [[top for _, at, top in page if (at > page[0][1]) is right] for right in (False, True)]
    assert all(columns)
    assert abs(max(columns[0]) - max(columns[1])) < 80  # pt: less than a table of four rows with its head
