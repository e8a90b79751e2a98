"""What a style sheet hides on a screen is told, and what only looks like it is not."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from sheetgen.render.job import Must
from sheetgen.render.marked_html import read_marked
from sheetgen.render.musts import checked_html
from sheetgen.render.screen_css import hides

KILN = Must("kiln", "Hot kiln. It burns.", "the caution Hot kiln of step 2", "step-2")
HEAT = Must("heat", "650\u00a0°C", "the number Heat of step 2", "step-2")
DUST = Must("dust", "Silica dust. Wet the bench.", "the caution Silica dust")
MUST = (DUST, KILN, HEAT)
PAGE = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Fire</title>
<style>{}</style></head><body><main>
<details><summary>Read before you begin</summary><p data-told="dust">Silica dust. Wet the bench.</p></details>
<section class="step" data-step="step-2"><h3>Fire</h3>
<div class="warning"><p><span class="said" data-told="kiln"><b>Hot kiln.</b> It burns.</span></p></div>
<p>Fire at <span class="n" data-n="heat">650&nbsp;°C</span> for 30 minutes.</p><p class="not">If not: fire again.</p>
</section></main></body></html>"""
SCREEN = Path(__file__).parents[2] / "themes" / "plain" / "screen.css"


def told(css: str, page: str = PAGE) -> list[str]:
    """The ids of what is told to be missing from the page with this style."""
    return [fault.id for fault in checked_html(page.replace("{}", css), MUST)]


@pytest.mark.parametrize(
    "css",
    [
        ".said { display: none }",
        ".warning { display: none }",
        ".warning { DISPLAY: None !important }",
        ".step > .warning p { visibility: hidden }",
        "[data-told=kiln] { opacity: 0 }",
        "[data-told=kiln] { opacity: 1% }",
        ".said { font-size: 0 }",
        ".said { font: 1px/1 sans-serif }",
        ".said { color: transparent }",
        ".said { color: rgb(0 0 0 / 0) }",
        ".said { -webkit-text-fill-color: transparent }",
        ".said { position: absolute; left: -9999px }",
        ".warning { margin-left: -200vw }",
        ".warning { text-indent: -100em }",
        ".warning { transform: translateX(-3000px) }",
        ".warning { transform: scale(0) }",
        ".warning { clip: rect(0, 0, 0, 0); position: absolute }",
        ".warning { clip-path: inset(50%) }",
        ".warning { height: 1px; overflow: hidden }",
        ".warning { max-height: 0; overflow: hidden }",
        ".warning { content-visibility: hidden }",
        ".warning { filter: opacity(0) }",
        ".said { text-decoration: line-through }",
        ".said { direction: rtl; unicode-bidi: bidi-override }",
        ".said b { display: none }",
        ".warning::first-line { font-size: 0 }",
        ":root { --x: none } .said { display: var(--x) }",
        ".step { .warning { display: none } }",
        ".step { & > .warning { display: none } }",
        "@media (max-width: 40rem) { .said { display: none } }",
        "@media screen, print { .said { display: none } }",
        "@supports (display: grid) { .said { display: none } }",
        "@layer own { .said { display: none } }",
        ".warning { @media screen { display: none } }",
        ".no-such, .said { display: none }",
        ":nth-child(1 of .said) { display: none }",
    ],
)
def test_a_caution_that_the_style_sheet_hides_is_told(css: str) -> None:
    assert "kiln" in told(css)
    assert "dust" not in told(css) or ":nth-child" in css


@pytest.mark.parametrize("css", ["main { display: none }", "* { opacity: 0 }", "@import url('other.css');"])
def test_what_hides_all_hides_each(css: str) -> None:
    assert told(css) == ["dust", "kiln", "heat"]


def test_a_style_sheet_that_stands_elsewhere_may_hide_all() -> None:
    link = '<link rel="stylesheet" href="http://example.invalid/own.css">'
    assert told("", PAGE.replace("<style>", f"{link}<style>")) == ["dust", "kiln", "heat"]
    assert told("", PAGE.replace("<style>", f"{link.replace('stylesheet', 'icon')}<style>")) == []


def test_a_number_drawn_as_a_fraction_of_the_face_is_told() -> None:
    assert told(".n { font-feature-settings: 'tnum', 'frac' }") == ["heat"]
    assert told(".n { font-variant-numeric: diagonal-fractions }") == ["heat"]
    assert told(".n { font-feature-settings: 'tnum', 'frac' 0; font-variant-numeric: tabular-nums }") == []


@pytest.mark.parametrize(
    "css",
    [
        SCREEN.read_text("utf-8"),
        "@media print { .said { display: none } }",
        "@media only print and (max-width: 90mm) { .said { display: none } }",
        ".not { display: none } .said:hover { opacity: 0 }",
        ".said::before { display: none } .said::-webkit-scrollbar { display: none }",
        ".said { opacity: .8; font-size: 12px; color: #333; margin: -2px 0 0 -20px; height: 10em; width: 0.5% }",
        ".warning { transform: rotate(-3deg) scale(.9); filter: none; clip-path: none; max-width: 40rem }",
        ".said { color: var(--ink); display: inline-block; left: 100%; text-indent: -1.2em }",
        "@keyframes away { to { opacity: 0 } } @font-face { font-family: x }",
        "/* .said { display: none } */",
    ],
)
def test_what_hides_nothing_that_must_be_read_is_not_told(css: str) -> None:
    assert told(css) == []


def test_a_caution_of_a_step_is_not_folded_away_but_that_of_the_bench_may_be() -> None:
    box = '<div class="warning">', "It burns.</span></p></div>"
    folded = PAGE.replace(box[0], "<details><summary>Mind</summary>" + box[0]).replace(box[1], box[1] + "</details>")
    [fault] = checked_html(folded.replace("{}", ""), MUST)
    assert fault.words == "the caution Hot kiln of step 2 is printed, but nobody sees it: it is folded away"
    assert told("", folded.replace("<details><summary>Mind", "<details open><summary>Mind")) == []
    assert told("", folded.replace("<details><summary>Mind", "<details open name='one'><summary>Mind")) == ["kiln"]
    around = PAGE.replace("<section", "<details><summary>Step 2</summary><section").replace(
        "</main>", "</details></main>"
    )
    assert told("", around) == ["kiln", "heat"]
    heading = PAGE.replace(box[0], "<details><summary>").replace(
        box[1], "It burns.</span></summary><p>More.</p></details>"
    )
    assert told("", heading) == []


@pytest.mark.parametrize("turn", ["<bdo dir='rtl'>", "<p dir='RTL'>", "&#x202e;", "<b style='direction: rtl'>"])
def test_words_that_run_from_right_to_left_are_told(turn: str) -> None:
    assert "heat" in told("", PAGE.replace('Fire at <span class="n"', f'Fire at {turn}<span class="n"'))


def test_a_comment_and_a_slip_of_the_markup_hide_nothing() -> None:
    assert told("", PAGE.replace("It burns.", "It <!-- really --> burns.")) == []
    assert told("", PAGE.replace("</b> It", "</i></b> It")) == []


def test_what_is_hidden_says_by_which_rule() -> None:
    [kiln] = [one for one in read_marked(PAGE.replace("{}", ".said { opacity: 0 }")) if one.id == "kiln"]
    assert (kiln.text, kiln.unseen) == ("", ".said { opacity: 0 }")


def test_a_size_that_can_be_read_hides_nothing() -> None:
    assert hides("font: 700 12px/1 sans-serif; height: 1.5em; scale: 1.2; zoom: 1.42") == ""
    assert hides("color: red; Font-Size: 1PX") == "font-size: 1px"


def test_a_design_whose_page_hides_its_cautions_is_not_published(library: Any, quick: None) -> None:  # noqa: ARG001
    own = library.root / "themes" / "plain"
    own.mkdir(parents=True)
    (own / "screen.css").write_text(SCREEN.read_text("utf-8") + ".minds { display: none }", "utf-8")
    outcome = library.publish("link")
    assert outcome.published == []
    [trouble] = outcome.troubles.errors
    assert "is printed, but nobody sees it: .minds { display: none }" in trouble.message
    assert str(trouble.place).endswith("themes/plain/project.html.j2:1:1")
