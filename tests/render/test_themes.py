"""Whatever a theme does, a caution or a number that nobody can read is told, and what only looks like it is not."""

from __future__ import annotations

import base64
import re
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
        2,
    ),
    Must("kiln again", "Mind the hot kiln", "the reminder Hot kiln of step 3", 3),
    Must("rod", "8.5\u00a0mm", "the number Rod 8.5 mm of step 1", 1),
    Must("wire", "1\u00a01/2\u00a0in", "the number Wire 1 1/2 in of step 1", 1),
    Must("heat", "650\u00a0°C", "the number Heat 650 °C of step 2", 2),
)
MAY = (Must("spare", "12.5\u00a0mm", "the number Spare 12.5 mm of step 1"),)
NAMES = {one.id: one.what for one in (*MUST, *MAY)} | {"steps": "no step is marked", "rood": "marked as 'rood'"}
# What a page on a screen says without its style sheet.
IN_WORDS = {
    "caution-left-out", "caution-shortened", "caution-turned-round", "caution-without-its-mark", "reminder-left-out",
    "number-without-its-point", "number-rounded", "number-of-another-unit", "number-without-its-unit",
    "number-left-out", "number-with-a-digit-hidden", "mixed-number-run-together", "mixed-number-closed-up",
    "number-right-once-and-wrong-once", "number-that-nobody-worked", "number-that-may-be-left-out-is-wrong",
    "no-step-is-marked",
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
    "hides", ["hidden", 'style="display: none"', 'style="Visibility:hidden; color: red"', 'style="opacity: 0"']
)
def test_a_caution_that_a_browser_hides_is_missing(hides: str) -> None:
    page = (HERE / "honest" / "plain.html").read_text("utf-8").replace('<div class="box">', f"<div {hides}>")
    [fault] = checked_html(page, MUST)
    assert str(fault) == "the caution Hot kiln of step 2 is printed, but nobody sees it: it is hidden"


@pytest.mark.parametrize("tag", ["noscript", "iframe", "dialog", "object"])
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


def test_what_the_whole_sheet_must_have_is_asked_for_whatever_steps_it_prints(printer: Any) -> None:
    page = (HERE / "honest" / "one-step-left-out.html").read_text("utf-8")
    bench = Must("dust", "Silica dust. Wet the bench.", "the caution Silica dust")
    assert printer.print(page, "card", (*MUST, bench)).faults == ("card, the caution Silica dust is not printed",)
