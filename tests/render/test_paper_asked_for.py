"""Whatever a theme says of its pages, each is printed on the paper that was asked for, and lies on it."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from sheetgen.render.job import Job, Must, Paper
from sheetgen.render.pages import PAPERS, paper
from sheetgen.render.pdf import Printer

PLAIN = (Path(__file__).parent / "themes" / "honest" / "plain.html").read_text("utf-8")
ROD = Must("rod", "8.5\u00a0mm", "the number Rod 8.5 mm of step 1")
HEAD = "<!doctype html><html lang='en'><head><meta charset='utf-8'><title>Rod</title><style>"
BODY = (
    "</style></head><body><p>Cut <span data-n='rod'>8.5 mm</span> of rod.</p><p class='more'>Fire it.</p></body></html>"
)


@pytest.fixture(scope="module")
def printer() -> Any:
    return Printer()


@pytest.fixture
def told(printer: Any) -> Any:
    """What is told of a page with these rules, by its paper."""

    def of(css: str) -> dict[str, list[str]]:
        papers: list[Paper] = [paper(name, side, "1") for name, side in PAPERS.items()]
        outs = printer.printed(Job((HEAD + css + BODY,), tuple(papers), (ROD,)))
        return {paper.name: list(out.faults) for paper, out in zip(papers, outs, strict=True)}

    return of


@pytest.mark.parametrize(
    ("css", "page", "size"),
    [
        ("@page { size: A5 !important }", 1, "148 × 210"),
        ("@page :first { size: 148mm 210mm }", 1, "148 × 210"),
        ("@page wide { size: A3 landscape } .more { page: wide }", 2, "420 × 297"),
        ("@page { size: 297mm 210mm !important }", 1, "297 × 210"),
        ("@page { bleed: 5mm; marks: crop }", 1, "220 × 307"),
    ],
    ids=["whatever is asked for", "the first page", "some pages", "turned", "with room to trim"],
)
def test_a_page_of_another_size_than_its_paper_is_told(css: str, page: int, size: str, told: Any) -> None:
    said = f"A4, page {page}: it is {size} mm, in place of the 210 × 297 mm of its paper"
    assert said in told(css)["A4"]


def test_a_page_of_its_paper_is_told_of_nothing(told: Any) -> None:
    assert told("@page { size: A5; @bottom-left { content: 'Test Bench' } }") == {"A4": [], "Letter": []}


def test_a_number_at_the_foot_of_a4_that_letter_has_no_room_for_is_told(told: Any) -> None:
    # 290 mm from the top of A4; 8 mm higher on Letter, which ends at 279.4
    foot = "p { position: absolute; top: 268mm; left: 0 } .more { top: 0 }"
    said = "Letter, page 1: of '8.5 mm' nobody sees all: it lies outside of the page"
    assert told(foot) == {"A4": [], "Letter": [said]}
