"""The library's first page says what was begun on this device, and where to go on; of nothing begun it says nothing."""

from __future__ import annotations

import shutil
from typing import TYPE_CHECKING

import pytest

from tests.outside.axe import axe_finds

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from playwright.sync_api import Browser, Page

MARK = "<img src=x onerror=document.title='caught'>"


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """One device; what it keeps lasts from page to page."""
    shown = browser.new_page(viewport={"width": 390, "height": 844})
    faults: list[str] = []
    shown.on("pageerror", lambda one: faults.append(str(one)))
    yield shown
    shown.close()
    assert faults == []


def begin(page: Page, design: Path, steps: int) -> str:
    """Work on to a step; its title."""
    page.goto(design.as_uri())
    page.locator("a.go").click()
    for _ in range(steps):
        while page.locator(".read").is_visible():
            page.locator(".read").click()
        page.locator(".turn .next").click()
    while page.locator(".read").is_visible():
        page.locator(".read").click()
    return str(page.locator(".here").get_attribute("data-name"))


def told(page: Page, site: Path) -> list[str]:
    page.goto("about:blank")
    page.goto((site / "index.html").as_uri())
    page.wait_for_load_state("networkidle")
    return [one.inner_text().replace("\n", ": ") for one in page.locator(".begun li").all()]


def test_what_was_begun_stands_first_with_the_step_to_go_on_with_and_leads_there(page: Page, site: Path) -> None:
    assert told(page, site) == []
    assert (
        page.evaluate("performance.getEntriesByType('resource').filter(one => one.name.includes('designs')).length")
        == 0
    )
    step = begin(page, site / "buoy-drops" / "copper-clay" / "index.html", 3)
    assert told(page, site) == [f"Buoy drops, Copper clay: Go on: {step}"]
    assert page.locator(".begun h2").inner_text() == "Begun on this device"
    assert axe_finds(page, "what was begun") == []
    page.locator(".begun a").click()
    assert page.url == (site / "buoy-drops" / "copper-clay" / "index.html").as_uri()
    assert page.locator("a.go").inner_text().endswith(step)
    page.get_by_role("button", name="Clear my ticks").click()
    page.get_by_role("button", name="Clear them").click()
    assert told(page, site) == []


def test_a_clock_that_runs_is_told_with_its_times_as_the_page_of_the_design_says_them(page: Page, site: Path) -> None:
    begin(page, site / "buoy-drops" / "index.html", 3)
    for _ in range(30):
        if page.locator(".here .run button").first.is_visible():
            break
        page.locator(".read" if page.locator(".read").is_visible() else ".turn .next").click()
    step = page.locator(".here").get_attribute("data-name")
    page.get_by_role("button", name="Start the clock").click()
    says = page.locator(".here .run p:visible").inner_text()
    assert says.startswith("Ready ")
    assert told(page, site) == [f"Buoy drops, Silver, short: Go on: {step}: {step}. {says}"]
    assert axe_finds(page, "a clock that runs") == []
    page.clock.install()  # somebody comes back to the page when it is over
    page.clock.fast_forward(96 * 3_600_000)
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    assert f"{step}. Over, since " in page.locator(".begun li").inner_text()


def test_of_one_design_in_other_units_the_place_is_the_same(page: Page, site: Path) -> None:
    step = begin(page, site / "buoy-drops" / "in-inches.html", 2)
    assert told(page, site) == [f"Buoy drops, Silver, short: Go on: {step}"]


def test_what_was_begun_in_another_library_on_the_same_disk_is_not_told(page: Page, site: Path, tmp_path: Path) -> None:
    shutil.copytree(site, tmp_path / "another")
    begin(page, tmp_path / "another" / "shingle-keeper" / "index.html", 2)
    assert told(page, site) == []
    assert len(told(page, tmp_path / "another")) == 1


@pytest.mark.parametrize("there", ["{", "7", "null", '{"at": 1, "ticks": 7}'])
def test_whatever_is_kept_under_the_name_of_a_design_the_page_is_whole(page: Page, site: Path, there: str) -> None:
    begin(page, site / "buoy-drops" / "index.html", 1)
    page.evaluate("there => { for (const name of Object.keys(localStorage)) localStorage[name] = there }", there)
    assert all(one.startswith("Buoy drops") for one in told(page, site))
    assert page.locator(".card").count() > 1


def test_a_step_that_is_called_by_markup_is_words(page: Page, site: Path) -> None:
    begin(page, site / "buoy-drops" / "index.html", 1)
    evil = f'{{"at": "{MARK}"}}'
    page.evaluate("there => { for (const name of Object.keys(localStorage)) localStorage[name] = there }", evil)
    assert told(page, site) == [f"Buoy drops, Silver, short: Go on: {MARK}"]
    assert page.locator("img[src=x]").count() == 0
