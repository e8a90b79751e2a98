"""What jars in a layout is told with its sheet and page, and what only looks like it is not."""

from __future__ import annotations

import re
from typing import Any

import pytest

from sheetgen.render.job import Job, Paper
from sheetgen.render.pdf import Printer

HEAD = (
    "<!doctype html><html lang='en'><head><meta charset='utf-8'><title>x</title><style>"
    "@page { size: 100mm 100mm; margin: 10mm } html { font: 10pt/1.4 'Source Sans Pro' } body, p, h2 { margin: 0 } "
    ".high { height: 70mm; border: 1pt solid #000 } .next { break-before: page }"
)
FULL = '<div class="high"></div>'
HALF = '<div style="height: 40mm; border: 1pt solid #000"></div>'


@pytest.fixture(scope="module")
def printer() -> Any:
    return Printer()


@pytest.fixture
def told(printer: Any) -> Any:
    """What is told of a page with this body and these rules."""

    def of(body: str, css: str = "", most_sides: int = 0) -> list[str]:
        html = f"{HEAD}{css}</style></head><body>{body}</body></html>"
        [printout] = printer.printed(Job((html,), (Paper("card"),), most_sides=most_sides))
        return [str(doubt) for doubt in printout.warnings]

    return of


def test_a_page_under_a_third_full_is_told(told: Any) -> None:
    # two lines of 10 pt by 1.4, the second to its descender: 4.94 + 4.3 of 80 mm
    assert told(f"{FULL}<p class='next'>One.<br>Two.</p>") == ["card, page 2: it is only 12 % full"]


@pytest.mark.parametrize(
    "body",
    [
        "<p>A sheet of one page may be short.</p>",
        f"{FULL}<p class='next' data-may-be-short>One template.</p>",
        f"{FULL}<div class='next' style='border-bottom: 1pt solid #000; height: 30mm'></div>",
        f"{FULL}<div class='next'><svg xmlns='http://www.w3.org/2000/svg' width='30mm' height='30mm'></svg></div>",
    ],
    ids=["one page", "may be short", "a box to write in", "a drawing"],
)
def test_a_page_that_may_be_short_or_is_full_enough_is_not(body: str, told: Any) -> None:
    assert told(body) == []


def test_a_page_is_as_full_as_its_last_words_that_can_be_read(told: Any) -> None:
    hidden = "<p style='visibility: hidden; margin-top: 50mm'>Two.</p>"
    assert told(f"{FULL}<p class='next'>One.</p>{hidden}") == ["card, page 2: it is only 6 % full"]


CAUTION = "<p data-told='kiln' data-with='step-4'>Hot kiln.</p>"
STEP = "<div data-step='4'><h2>Take out</h2><p>Take it out.</p></div>"


def test_a_caution_on_the_page_before_its_step_is_told(told: Any) -> None:
    parted = f"{FULL}{CAUTION}<div class='next'>{STEP}{HALF}</div>"
    assert told(parted) == ["card, page 1: the caution 'Hot kiln.' stands apart from its step on page 2"]


def test_a_caution_on_the_page_of_its_step_is_not(told: Any) -> None:
    assert told(f"{FULL}<div class='next'>{CAUTION}{STEP}{HALF}</div>") == []
    assert told(STEP.replace("<h2>", f"{CAUTION}<h2>")) == []


def test_a_list_that_goes_on_on_page_2_is_told_and_one_that_begins_there_is_not(told: Any) -> None:
    rows = "".join(f"<tr><td>Tool {i}</td></tr>" for i in range(12))
    table = f"<table data-list>{rows}</table>"
    assert told(f"<div class='high' style='height:50mm'></div>{table}") == [
        "card, page 1: the list 'Tool 0' is split before page 2"
    ]
    assert told(f"{FULL}<div class='next'>{table}</div>") == []
    assert told(f"{FULL}<div class='next high' style='height:50mm'></div>{table}") == []


def test_a_step_that_goes_on_on_the_next_page_is_told(told: Any) -> None:
    figures = "<svg xmlns='http://www.w3.org/2000/svg' width='30mm' height='40mm'><title>Rod</title></svg>"
    step = f"<div data-step='1'><h2>Cut</h2><p>Cut the rod.</p><div style='break-before: page'>{figures}</div></div>"
    assert told(HALF + step) == ["card, page 1: the step 'Cut' is parted: it goes on on page 2"]


def test_more_sides_than_a_sheet_may_have_are_told(told: Any) -> None:
    assert told(FULL * 7, most_sides=6) == ["card: it has 7 sides, more than 6"]
    assert told(FULL * 6, most_sides=6) == []


def test_lines_that_lie_on_each_other_are_told(told: Any) -> None:
    # 20 pt letters take 0.93 of 7.06 mm from the top of d to the foot of p; lines 0.8 apart overlap by 0.9 mm
    assert told("<p style='font-size:20pt; line-height:.8'>dip<br>dip</p>") == [
        "card, page 1: 'dip' and 'dip' lie on each other"
    ]
    assert told("<p style='font-size:20pt; line-height:1'>dip<br>dip</p>") == []


@pytest.mark.parametrize(
    "body",
    [
        "<p>H<sub>2</sub>O, 4 mm<sup>2</sup> and <b style='font-size:16pt'>8.5</b> mm</p>",
        "<p style='float:left; width:40mm'>One beside</p><p style='float:left; width:39mm'>the other</p>",
        "<table><tr><td>One</td><td>Two<br>lines</td></tr><tr><td>One</td><td>Two</td></tr></table>",
        "<h1 style='line-height:1.05; font-size: 26pt; margin:0'>Deep jugs, properly glazed</h1>",
    ],
    ids=["raised and lowered", "floats", "cells", "a title of two lines"],
)
def test_letters_that_stand_side_by_side_do_not(body: str, told: Any) -> None:
    assert told(body) == []


def test_words_and_drawings_beyond_the_margin_or_cut_off_are_told(told: Any) -> None:
    drawing = "<svg xmlns='http://www.w3.org/2000/svg' width='82mm' height='20mm'><title>Rod</title></svg>"
    assert told(f"<div>{drawing}</div>") == ["card, page 1: a drawing goes 2.0 mm beyond the margin"]
    assert told(f"<div>{drawing.replace('82', '80')}</div>") == []
    assert told("<p style='position:relative; left:-3mm'>Rod</p>") == [
        "card, page 1: 'Rod' goes 3.0 mm beyond the margin"
    ]
    assert told("<p style='height:2mm; overflow:hidden'>Rod</p>") == ["card, page 1: 'Rod' is cut off"]
    assert told("<p style='height:0; overflow:hidden'>What stands in the foot</p><p>Rod</p>") == []
    clipped = f"<div style='width:40mm; overflow:hidden'>{drawing}</div>"
    assert told(clipped) == ["card, page 1: a drawing is cut off"]


def test_the_foot_of_a_page_is_not_beyond_its_margin(told: Any) -> None:
    assert told("<p>Rod</p>", "@page { @bottom-left { content: 'Rod, page ' counter(page) } }") == []


def test_words_wider_than_their_column_are_told(told: Any) -> None:
    cells = "<tr><td style='width:12mm; padding:0'>{}</td><td></td></tr>"
    table = f"<table style='table-layout:fixed; width:60mm'>{cells}</table>"
    [one] = told(table.format("Reibschalenring"))
    assert re.fullmatch(r"card, page 1: 'Reibschalenring' is 1\d\.\d mm wider than its column", one)
    assert told(table.format("Ring")) == []


@pytest.mark.parametrize(("wide", "said"), [(15.5, ["card, page 1: '8.5 to 9.25'"]), (16, [])])
def test_a_fixed_column_with_less_than_a_millimetre_to_spare_is_told(wide: float, said: list[str], told: Any) -> None:
    row = f"<tr><td style='width:{wide}mm; padding:0; white-space:nowrap'>8.5 to 9.25</td><td>mm</td></tr>"
    found = told(f"<table style='table-layout:fixed; width:60mm; border-collapse:collapse'>{row}</table>")
    assert [one.split(" fits")[0] for one in found] == said


def test_a_column_as_wide_as_its_words_make_it_is_not(told: Any) -> None:
    assert told("<table><tr><td style='padding:0; white-space:nowrap'>8.5 to 9.25</td><td>mm</td></tr></table>") == []


def test_columns_that_miss_each_other_by_less_than_a_millimetre_are_told(told: Any) -> None:
    pair = "<div style='float:left; width:40.4mm'><p>One</p></div><div style='float:{}; width:40mm'><p>Two</p></div>"
    assert told(pair.format("left")) == ["card, page 1: two columns miss standing side by side by 0.4 mm"]
    assert told(pair.replace("40.4", "40").format("right")) == []


def lines(count: int, css: str = "") -> str:
    return f"{HEAD}{css}</style></head><body>{'<p>Words of a line</p>' * count}</body></html>"


def pages(printout: Any) -> int:
    assert printout.pdf.startswith(b"%PDF")
    return int(printout.pages)


def sides(printer: Any, *htmls: str, most: int = 1, gives: float = 1) -> int:
    [printout] = printer.printed(Job(htmls, (Paper("card"),), most_pages=most, gives=gives))
    return pages(printout)


# 80 mm hold 16 lines of 4.94 mm.
TIGHT = "p { line-height: 1.2 }"  # 18 lines


def test_a_sheet_that_fits_stays_as_roomy_as_it_is(printer: Any) -> None:
    assert sides(printer, lines(16), "never laid out") == 1
    assert sides(printer, lines(18), "never laid out <", most=2) == 2


def test_a_sheet_too_long_by_a_few_lines_is_set_tighter(printer: Any) -> None:
    assert sides(printer, lines(18), lines(18, TIGHT)) == 1
    assert sides(printer, lines(18), lines(18, "p { line-height: 1.38 }"), lines(18, TIGHT), "never <") == 1


def test_where_nothing_takes_fewer_pages_the_roomiest_stays(printer: Any) -> None:
    job = Job((lines(20), lines(20, TIGHT)), (Paper("card"),), most_pages=1)
    assert printer.printed(job)[0].pdf == printer.print(lines(20), "card").pdf


def test_a_second_side_of_few_lines_is_saved_and_one_too_full_to_save_is_not_tried(printer: Any) -> None:
    # 34 lines on two sides of 16 leave 2 over, and tight they fit; of 40 there are 8 over, more than 0.1 of each side
    assert sides(printer, lines(34), lines(34, TIGHT), most=0, gives=0.1) == 2
    assert sides(printer, lines(40), "never laid out <", most=0, gives=0.1) == 3


def test_templates_at_the_end_do_not_count_as_a_last_page(printer: Any) -> None:
    template = "<p style='break-before:page' data-may-be-short>A disc</p></body>"
    roomy, tight = (page.replace("</body>", template) for page in (lines(18), lines(18, TIGHT)))
    assert sides(printer, roomy, tight) == 2


def test_papers_of_one_content_box_are_set_alike_and_another_for_itself(printer: Any) -> None:
    papers = (
        Paper("square"),
        Paper("wide", "@page { size: 120mm 110mm; margin: 15mm 20mm }"),
        Paper("high", "@page { size: 100mm 130mm; margin: 10mm }"),
    )
    square, wide, high = printer.printed(Job((lines(18), lines(18, TIGHT)), papers, most_pages=1))
    assert [pages(one) for one in (square, wide, high)] == [1, 1, 1]
    assert high.pdf == printer.print(lines(18, "</style><style>" + papers[2].css), "high").pdf
