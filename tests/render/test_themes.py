"""Whatever a theme does, a caution or a number that nobody can read is told, and what only looks like it is not."""

from __future__ import annotations

import base64
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from sheetgen.base.trouble import CannotBe, Misplaced
from sheetgen.render.job import Must
from sheetgen.render.musts import checked_html
from sheetgen.render.pdf import FONTS, Printer, font_files
from sheetgen.render.theme import Theme

HERE = Path(__file__).parent / "themes"
WRONG, HONEST = sorted((HERE / "wrong").glob("*.html")), sorted((HERE / "honest").glob("*.html"))
MUST = (
    Must(
        "kiln",
        "Hot kiln. It burns. Let it cool to room heat before you open it.",
        "the caution Hot kiln of step 2",
        "2",
    ),
    Must("kiln again", "Mind the hot kiln", "the reminder Hot kiln of step 3", "3"),
    Must("rod", "8.5\u00a0mm", "the number Rod 8.5 mm of step 1", "1"),
    Must("wire", "1\u00a01/2\u00a0in", "the number Wire 1 1/2 in of step 1", "1"),
    Must("heat", "650\u00a0°C", "the number Heat 650 °C of step 2", "2"),
)
MAY = (Must("spare", "12.5\u00a0mm", "the number Spare 12.5 mm of step 1"),)
NAMES = {one.id: one.what for one in (*MUST, *MAY)} | {"steps": "no step is marked", "rood": "marked as 'rood'"}
NAMES |= {"twice": "'2' is marked twice with data-step"}
# What a page on a screen says without its style sheet.
IN_WORDS = {
    "caution-left-out", "caution-shortened", "caution-turned-round", "caution-without-its-mark", "reminder-left-out",
    "number-without-its-point", "number-rounded", "number-of-another-unit", "number-without-its-unit",
    "number-left-out", "number-with-a-digit-hidden", "mixed-number-run-together", "mixed-number-closed-up",
    "number-right-once-and-wrong-once", "number-that-nobody-worked", "number-that-may-be-left-out-is-wrong",
    "no-step-is-marked", "caution-at-the-end-of-the-sheet", "caution-in-another-step", "number-in-another-step",
    "a-step-of-its-own-for-the-caution",
}  # fmt: skip


@pytest.fixture(scope="module")
def printer() -> Any:
    return Printer()


def lost(page: str) -> str:
    found = re.search("<!-- lost: (.*) -->", page)
    assert found
    return NAMES[found[1]]


def name(path: Path) -> str:
    return path.stem


@pytest.mark.parametrize("path", WRONG, ids=name)
def test_what_nobody_can_read_is_told_and_nothing_else(path: Path, printer: Any) -> None:
    page = path.read_text("utf-8")
    faults = printer.print(page, "handout", MUST, MAY).faults
    assert len(faults) == 1, faults
    assert lost(page) in faults[0]


@pytest.mark.parametrize("path", HONEST, ids=name)
def test_an_honest_page_is_told_of_nothing(path: Path, printer: Any) -> None:
    assert printer.print(path.read_text("utf-8"), "handout", MUST, MAY).faults == ()


@pytest.mark.parametrize("path", [path for path in WRONG if path.stem in IN_WORDS], ids=name)
def test_a_page_for_the_screen_is_held_to_its_words_too(path: Path) -> None:
    page = path.read_text("utf-8")
    faults = [str(fault) for fault in checked_html(page, MUST, MAY)]
    assert len(faults) == 1, faults
    assert lost(page) in faults[0]


@pytest.mark.parametrize("path", HONEST, ids=name)
def test_an_honest_page_for_the_screen_is_told_of_nothing(path: Path) -> None:
    page = path.read_text("utf-8")
    if path.stem == "unit-beside-a-big-number":  # a gap that only the style sheet makes
        page = page.replace("</b><small", "</b> <small")
    assert checked_html(page, MUST, MAY) == []


@pytest.mark.parametrize(
    "hides",
    [
        "hidden", "inert", 'aria-hidden="true"', 'style="display: none"', 'style="Visibility:hidden; color: red"',
        'style="opacity: 0"', 'style="font-size: 0"', 'style="position: absolute; left: -9999px"',
    ],
)  # fmt: skip
def test_a_caution_that_a_browser_hides_is_missing(hides: str) -> None:
    page = (HERE / "honest" / "plain.html").read_text("utf-8").replace('<div class="box">', f"<div {hides}>")
    [fault] = checked_html(page, MUST)
    assert str(fault) == "the caution Hot kiln of step 2 is printed, but nobody sees it: it is hidden"


@pytest.mark.parametrize("tag", ["noscript", "iframe", "dialog", "object", "textarea", "details"])
def test_a_caution_in_an_element_that_a_browser_does_not_show_is_missing(tag: str) -> None:
    page = (HERE / "honest" / "plain.html").read_text("utf-8")
    page = page.replace('<div class="box">', f"<{tag}>").replace("open it.</p></div>", f"open it.</p></{tag}>")
    [fault] = checked_html(page, MUST)
    assert fault.id == "kiln"


@pytest.mark.parametrize("mime", ["font/ttf", "text/plain"])
def test_a_type_face_of_the_themes_own_is_refused(mime: str, printer: Any) -> None:
    face = base64.b64encode(next(iter(font_files().values())).read_bytes()).decode()
    css = f"@font-face {{ font-family: Own; src: url('data:{mime};base64,{face}') }} .n {{ font-family: Own }}</style>"
    page = (HERE / "honest" / "plain.html").read_text("utf-8").replace("</style>", css)
    with pytest.raises(CannotBe, match="Font-face 'Own' cannot be loaded"):
        printer.print(page, "handout", MUST, MAY)


@pytest.mark.parametrize("source", [f"url('{FONTS}SourceSansPro-Regular.ttf')", "local('Source Sans Pro')"])
def test_our_face_under_another_name_is_refused_for_its_features_would_be_the_themes(source: str, printer: Any) -> None:
    css = f"@font-face {{ font-family: Own; src: {source}; font-feature-settings: 'frac' }} .n {{ font-family: Own }}"
    page = (HERE / "honest" / "plain.html").read_text("utf-8").replace("</style>", f"{css}</style>")
    with pytest.raises(CannotBe, match="Font-face 'Own' cannot be loaded"):
        printer.print(page, "handout", MUST, MAY)


def test_a_template_cannot_change_the_style_of_the_next_sheet(tmp_path: Path) -> None:
    (tmp_path / "plain").mkdir()
    (tmp_path / "plain" / "own.html.j2").write_text("{{ styles.clear() }}", "utf-8")
    with pytest.raises(Misplaced, match="SecurityError"):
        Theme("plain", [tmp_path]).page("own.html.j2")


def test_a_fault_names_the_sheet_the_page_and_the_caution(printer: Any) -> None:
    page = (HERE / "wrong" / "one-point.html").read_text("utf-8").replace("size: 148mm", "size: 90mm")
    page = page.replace('<div class="step two"', '<div style="break-before: page" class="step two"')
    [fault] = printer.print(page, "handout A4", MUST).faults
    said = "is printed, but nobody sees it: it is set smaller than 6 pt"
    assert fault == f"handout A4, page 2: the caution Hot kiln of step 2 {said}"


def test_what_the_whole_sheet_must_have_is_asked_for_too(printer: Any) -> None:
    page = (HERE / "honest" / "plain.html").read_text("utf-8")
    bench = Must("dust", "Silica dust. Wet the bench.", "the caution Silica dust")
    assert printer.print(page, "card", (*MUST, bench)).faults == ("card, the caution Silica dust is not printed",)


def test_a_step_that_is_left_out_leaves_out_its_cautions_and_numbers(printer: Any) -> None:
    page = (HERE / "honest" / "plain.html").read_text("utf-8")
    page = re.sub('<div class="step two".*?(?=<div class="step three")', "", page, flags=re.DOTALL)
    faults = printer.print(page, "card", MUST).faults
    assert faults == tuple(f"card, {NAMES[one]} is not printed" for one in ("kiln", "heat"))


BENCH = Must("dust", "Silica dust. Wet the bench.", "the caution Silica dust")
DUST = '<p data-told="dust">Silica dust. Wet the bench.</p>'
# What is done in step 2 is marked too, and its caution comes before it.
BEFORE = tuple(replace(one, before="fire") if one.id == "kiln" else one for one in MUST)
DONE = (*BEFORE, Must("fire", "Fire at 650\u00a0°C for 30 minutes.", "what is done in the step 'Fire'", "2"))


@pytest.fixture
def acted() -> str:
    """The plain page, with what is done in its step 2 marked."""
    page = (HERE / "honest" / "plain.html").read_text("utf-8")
    return page.replace('<p class="heat">', '<p class="heat" data-told="fire">')


def places(page: str, printer: Any, must: tuple[Must, ...]) -> tuple[list[str], list[str]]:
    """What is told of a page on paper, and on a screen."""
    paper = [fault.partition(": ")[2] for fault in printer.print(page, "card", must).faults]
    return paper, [str(fault) for fault in checked_html(page, must)]


def test_a_caution_before_what_is_done_is_told_of_nothing(acted: str, printer: Any) -> None:
    assert places(acted, printer, DONE) == ([], [])


def test_a_caution_after_what_is_done_is_told(acted: str, printer: Any) -> None:
    box = re.search('<div class="box">.*?</div>', acted)
    assert box
    page = acted.replace(box[0], "").replace("for 30 minutes.</p>", f"for 30 minutes.</p>{box[0]}")
    late = ["the caution Hot kiln of step 2 stands after what is done there"]
    assert places(page, printer, DONE) == (late, late)


@pytest.mark.parametrize(
    "css",
    [
        ".two { display: flex; flex-direction: column-reverse }",
        ".two { position: relative; padding-bottom: 12mm } .box { position: absolute; bottom: 0; left: 0 }",
        ".box { position: relative; top: 8mm } .heat { position: relative; top: -8mm }",
    ],
    ids=["turned upside down", "placed under it", "changed round"],
)
def test_a_caution_that_the_style_lays_under_what_is_done_is_told(css: str, acted: str, printer: Any) -> None:
    page = acted.replace("</style>", f"{css}</style>")
    assert places(page, printer, DONE)[0] == ["the caution Hot kiln of step 2 stands after what is done there"]


def test_what_the_bench_warns_of_comes_before_the_first_step(acted: str, printer: Any) -> None:
    before = acted.replace('<div class="step one"', f'{DUST}<div class="step one"')
    assert places(before, printer, (*DONE, BENCH)) == ([], [])
    behind = ["the caution Silica dust stands after the first step begins"]
    within = acted.replace('<p class="rod">', f'{DUST}<p class="rod">')
    for page in (within, acted.replace("</body>", f"{DUST}</body>")):
        assert places(page, printer, (*DONE, BENCH)) == (behind, behind)
    moved = before.replace("</style>", "[data-told=dust] { position: absolute; bottom: 0 }</style>")
    assert places(moved, printer, (*DONE, BENCH))[0] == behind
