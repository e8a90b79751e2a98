"""The page of a design in a browser: on a phone, on a desk, without script, and printed."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING, Any

import pdfplumber
import pytest

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from playwright.sync_api import Browser, Page

PHONE, DESK = (390, 844), (1280, 900)
UNFOLD = "document.querySelectorAll('details').forEach(each => { each.open = true })"
BOXES = """(what) => [...document.querySelectorAll(what)].map(each => {
  const box = each.getBoundingClientRect()
  return {told: each.textContent.trim().slice(0, 50), x: box.x, y: box.y + scrollY, right: box.right,
          width: box.width, height: box.height}
}).filter(each => each.width)"""
# The type of every word that is seen, px; of a drawing as it comes out on the screen.
TYPE = """(but = '') => {
  const found = [], walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
  while (walk.nextNode()) {
    const word = walk.currentNode, on = word.parentElement
    if (!word.textContent.trim() || !on.getClientRects().length || on.closest('script, .picture, .shape')) continue
    if (but && on.closest(but)) continue
    const size = parseFloat(getComputedStyle(on).fontSize), drawn = on.closest('svg') ? on.getScreenCTM() : {a: 1, b: 0}
    found.push([size * Math.hypot(drawn.a, drawn.b), word.textContent.trim().slice(0, 40)])
  }
  return found
}"""

# Words that stand out of what is touched, or out of their cell.
CUT_OFF = """() => [...document.querySelectorAll('a, button, summary, label, th, td, .chips, .sheets')]
  .filter(each => each.getClientRects().length && getComputedStyle(each).display !== 'inline')
  .filter(each => each.scrollWidth > each.clientWidth + 1 || each.scrollHeight > each.clientHeight + 2)
  .map(each => each.textContent.trim().slice(0, 50))"""


# All that a design needs lies in the drawer; the letters there, and those of what it is called.
FILLED = """() => {
  const home = document.querySelector('[data-drawer]').dataset.drawer
  const own = [...document.querySelectorAll('[data-own]')].map(each => each.dataset.own)
  const library = new URL(home || '.', location.href).pathname.replace(/[^/]*$/, '')
  localStorage.setItem('drawer ' + library, JSON.stringify(own))
}"""
JAMMED = """() => {
  const letters = (of) => {
    const range = document.createRange()
    range.selectNodeContents(of)
    return range.getBoundingClientRect()
  }
  return [...document.querySelectorAll('li:has(> .mine)')].map((row) =>
    letters(row.querySelector('.mine')).top - letters(row.querySelector('.what')).bottom)
}"""


@pytest.fixture(scope="module")
def large(chromium: Any) -> Iterator[Browser]:
    """A browser whose reader has asked for type twice as large."""
    opened = chromium("--blink-settings=defaultFontSize=32")
    yield opened
    opened.close()


@pytest.fixture
def opened(browser: Browser) -> Iterator[Any]:
    """Opens a page at a size, with or without script."""
    made = []

    def view(path: Path, size: tuple[int, int], *, script: bool = True) -> Page:
        context = browser.new_context(viewport={"width": size[0], "height": size[1]}, java_script_enabled=script)
        made.append(context)
        page = context.new_page()
        page.goto(path.as_uri())
        return page

    yield view
    for context in made:
        context.close()


@pytest.fixture(scope="session")
def designs(pages: list[Path]) -> list[Path]:
    """The pages that have steps."""
    return [path for path in pages if 'id="steps"' in path.read_text("utf-8")]


def test_the_first_step_begins_within_one_scroll_of_a_phone(designs: list[Path], opened: Any) -> None:
    assert len(designs) == 5
    for path in designs:
        step = opened(path, PHONE).evaluate(BOXES, ".step .title")[0]
        assert step["y"] < 2 * PHONE[1], f"{path}: {step}"


@pytest.mark.parametrize("size", [PHONE, (320, 568)], ids=["phone", "small phone"])
def test_what_begins_a_design_is_on_the_first_screen_of_a_phone(
    designs: list[Path], opened: Any, size: tuple[int, int]
) -> None:
    for path in designs:  # one has names of 56 letters
        button = opened(path, size).locator(".top > .go").bounding_box()
        assert button["y"] + button["height"] <= size[1], path


def test_on_a_screen_as_low_as_a_phone_s_at_200_per_cent_it_covers_no_word(designs: list[Path], opened: Any) -> None:
    for path in designs:
        page = opened(path, (195, 422))
        assert page.locator(".top > .go").evaluate("one => getComputedStyle(one).position") == "static", path


def beyond(page: Page, wide: int) -> list[Any]:
    """What stands out of a screen; what lies in a box that scrolls is not lost."""
    boxes = page.evaluate(BOXES, "body *:not(.wide *):not(svg *)")
    return [box for box in boxes if box["right"] > wide + 0.5 or box["x"] < -0.5]


def test_nothing_is_wider_than_the_screen_nor_than_half_a_phone_s(pages: list[Path], opened: Any) -> None:
    for path in pages:
        page = opened(path, PHONE)
        page.evaluate(UNFOLD)
        for wide in (195, 320, 390, 1280):  # the first is a phone at 200 %
            page.set_viewport_size({"width": wide, "height": 844})
            assert page.evaluate("document.documentElement.scrollWidth") == wide, path
            assert not beyond(page, wide), (path, wide)


def test_type_that_the_reader_wants_twice_as_large_is_so_and_fits_a_phone(large: Browser, pages: list[Path]) -> None:
    page = large.new_page(viewport={"width": PHONE[0], "height": PHONE[1]})
    for path in pages:
        page.goto(path.as_uri())
        page.evaluate(UNFOLD)
        assert page.evaluate("document.documentElement.scrollWidth") == PHONE[0], path
        assert not beyond(page, PHONE[0]), path
        # on a drawing letters stay as they are: it can be enlarged
        assert not [word for word in page.evaluate(TYPE, "svg") if word[0] < 32], path
        assert not [box for box in page.evaluate(CUT_OFF) if box], path


def test_whatever_is_touched_is_48_px_high(pages: list[Path], opened: Any) -> None:
    for path in pages:
        page = opened(path, PHONE)
        page.evaluate(UNFOLD)
        touched = page.evaluate(BOXES, "a[href], summary, label, button, input:not(label input)")
        assert touched
        assert not [box for box in touched if box["height"] < 48], path


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_no_word_is_smaller_than_16_px(pages: list[Path], opened: Any, size: tuple[int, int]) -> None:
    for path in pages:
        page = opened(path, size)
        page.evaluate(UNFOLD)
        assert not [word for word in page.evaluate(TYPE) if word[0] < 16], path


def test_the_page_of_a_design_is_set_in_three_faces_of_its_own(designs: list[Path], opened: Any) -> None:
    for path in designs:
        page = opened(path, PHONE)
        page.evaluate("document.fonts.ready.then(() => 0)")
        found = page.evaluate("[...document.fonts].filter((one) => one.status === 'loaded').map((one) => one.weight)")
        assert sorted(found) == ["400", "600", "700"], path


HEADS = """() => [...document.querySelectorAll('.session span span')].map((part) =>
  [part.textContent, part.getBoundingClientRect().height, parseFloat(getComputedStyle(part).lineHeight)])"""
"""The parts of what is said of a session, with their height and that of one line."""


@pytest.mark.parametrize("wide", [360, 390, 1280])
def test_no_part_of_what_is_said_of_a_session_is_broken_over_two_lines_or_begins_with_a_point(
    designs: list[Path], opened: Any, wide: int
) -> None:
    for path in designs:
        for told, height, line in opened(path, (wide, 844)).evaluate(HEADS):
            assert height < 1.5 * line, (path, told)
            assert told[:1] not in {"·", ","}, (path, told)


def test_the_title_stands_as_clear_of_the_choice_above_it_as_two_choices_do_of_each_other(
    site: Path, opened: Any
) -> None:
    page = opened(site / "buoy-drops/index.html", PHONE)
    title, choice = page.locator("h1").bounding_box(), page.locator(".about .sheets a").first.bounding_box()
    one, other = (page.locator(f".intro .sheets li:nth-child({n}) > *").bounding_box() for n in (1, 2))
    assert title["y"] - choice["y"] - choice["height"] >= other["x"] - one["x"] - one["width"]


def test_a_clock_is_started_when_the_numbers_of_the_firing_were_read(designs: list[Path], opened: Any) -> None:
    fired = 0
    for path in designs:
        for section in opened(path, PHONE).locator("section:has(> .run):has(> .figs)").all():
            numbers, clock = (section.locator(f":scope > {kind}").bounding_box() for kind in (".figs", ".run"))
            assert clock["y"] >= numbers["y"] + numbers["height"], path
            fired += 1
    assert fired


def test_a_step_warns_first_then_says_what_to_do_then_its_numbers(designs: list[Path], opened: Any) -> None:
    for path in designs:
        page = opened(path, PHONE, script=False)
        for section in page.locator("section.step").all():
            parts = [section.locator(f":scope > {kind}") for kind in (".title", ".warning", ".do", ".figs", ".see")]
            tops = [box["y"] for part in parts if part.count() and (box := part.first.bounding_box())]
            assert tops == sorted(tops)


@pytest.mark.parametrize("script", [True, False], ids=["with script", "without script"])
def test_the_bar_stays_and_what_it_leads_to_lands_below_it(site: Path, opened: Any, *, script: bool) -> None:
    page = opened(site / "buoy-drops/index.html", PHONE, script=script)
    for name, there in (("Print", "#print summary"), ("Steps", "#steps"), ("Need", "#need summary")):
        page.locator(".bar a", has_text=name).click()
        bar, reached = page.locator(".bar").bounding_box(), page.locator(there).bounding_box()
        assert bar["y"] == 0
        assert bar["height"] <= reached["y"] < 100
    assert page.locator("#need").get_by_text("Masking tape").is_visible()  # unfolded by the script, or by the browser


def test_on_a_desk_the_numbers_stand_beside_the_words(designs: list[Path], opened: Any) -> None:
    for path in designs:
        page = opened(path, DESK)
        steps = page.locator("section.step:has(> .figs)").all()
        assert steps
        for section in steps:
            title, words, numbers = (
                section.locator(f":scope > {kind}").bounding_box() for kind in (".title", ".do", ".figs")
            )
            assert numbers["x"] > words["x"] + words["width"]
            assert abs(numbers["y"] - title["y"]) < 8


def test_what_a_browser_prints_has_every_list_unfolded(site: Path, opened: Any) -> None:
    page = opened(site / "buoy-drops/index.html", PHONE, script=False)
    with pdfplumber.open(io.BytesIO(page.pdf(prefer_css_page_size=True))) as sheet:
        said = " ".join(page.extract_text() for page in sheet.pages)
    for words in (
        "Dust of kiln fibre",
        "Cool running water",
        "Masking tape",
        "Pin vise",
        "One drop weighs",
        "Hang the",
    ):
        assert words in said
    assert "Shingle keeper" not in said
    assert "All designs" not in said
    assert "Start at the bench" not in said


def test_what_a_browser_prints_says_nothing_of_scrolling_and_leaves_no_page_half_empty(site: Path, opened: Any) -> None:
    for design in ("buoy-drops", "shingle-keeper"):
        page = opened(site / design / "index.html", DESK)
        edges = dict.fromkeys(("top", "right", "bottom", "left"), "15mm")
        with pdfplumber.open(io.BytesIO(page.pdf(format="A4", margin=edges))) as sheet:
            full = [max(word["bottom"] for word in one.extract_words()) / one.height for one in sheet.pages]
            assert "crolls sideways" not in " ".join(one.extract_text() for one in sheet.pages)
        assert len(full) > 5
        assert min(full[:-1]) > 0.5, (design, full)


@pytest.mark.parametrize("medium", ["screen", "print"])
def test_what_lies_in_the_drawer_is_said_below_the_thing_and_never_over_it(
    site: Path, opened: Any, medium: Any
) -> None:
    page = opened(site / "buoy-drops/index.html", PHONE)
    page.evaluate(FILLED)
    page.reload()
    page.evaluate(UNFOLD)
    page.emulate_media(media=medium)
    gaps = page.evaluate(JAMMED)
    assert len(gaps) > 20
    assert min(gaps) >= -1  # one line of type below the other


def test_without_script_one_touch_leads_to_the_design_after_it_and_back_and_to_another_in_its_clay(
    site: Path, opened: Any
) -> None:
    for name in ("index.html", "in-inches.html"):
        page = opened(site / "buoy-drops" / name, PHONE, script=False)
        page.locator("a[rel=next]").click()
        assert page.url == (site / "shingle-keeper" / name).as_uri()
        page.locator("a[rel=prev]").click()
        assert page.url == (site / "buoy-drops" / name).as_uri()
        others = page.get_by_role("navigation", name="Other designs")
        assert others.get_by_role("heading").all_inner_texts() == ["Also in clay of this kind"]
        others.get_by_role("listitem").last.get_by_role("link", name="Shingle keeper", exact=True).click()
        assert page.url == (site / "shingle-keeper" / name).as_uri()
