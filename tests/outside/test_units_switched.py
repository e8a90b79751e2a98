"""The units of a page are switched without a server and without a script; with one, the last choice is remembered."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from playwright.sync_api import Browser, Page

DESIGN, VERSION, OTHER = "buoy-drops", "shingle-keeper/bronze-clay", "shingle-keeper"
INCHES = "in-inches.html"


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A page of a device that remembers nothing yet."""
    context = browser.new_context()
    yield context.new_page()
    context.close()


def at(site: Path, path: str) -> str:
    return f"{site.as_uri()}/{path}"


def test_the_last_choice_is_remembered_from_a_folder_and_for_every_design(page: Page, site: Path) -> None:
    page.goto(at(site, f"{DESIGN}/index.html#step-3"))
    page.get_by_role("link", name="In inches", exact=True).click()
    page.wait_for_url(at(site, f"{DESIGN}/{INCHES}#step-3"))
    for path in (f"{DESIGN}/index.html", f"{OTHER}/index.html", f"{VERSION}/index.html"):
        page.goto(at(site, path))
        page.wait_for_url(at(site, path.replace("index.html", INCHES)))
    page.get_by_role("link", name="In mm", exact=True).click()
    page.wait_for_url(at(site, f"{VERSION}/index.html"))
    page.goto(at(site, f"{OTHER}/{INCHES}"))
    page.wait_for_url(at(site, f"{OTHER}/index.html"))


def test_who_goes_back_comes_to_where_they_were_before_the_design_and_not_into_a_ring(page: Page, site: Path) -> None:
    page.goto(at(site, "index.html"))
    page.goto(at(site, f"{DESIGN}/index.html"))
    page.get_by_role("link", name="In inches", exact=True).click()
    page.wait_for_url(at(site, f"{DESIGN}/{INCHES}"))
    page.go_back()
    page.wait_for_url(at(site, "index.html"))


def test_who_has_not_chosen_stays_where_a_link_has_led(page: Page, site: Path) -> None:
    page.goto(at(site, f"{DESIGN}/{INCHES}"))
    page.wait_for_timeout(200)
    assert page.url == at(site, f"{DESIGN}/{INCHES}")


def test_a_word_of_a_stranger_in_what_is_remembered_leads_nowhere(page: Page, site: Path) -> None:
    page.goto(at(site, f"{DESIGN}/index.html"))
    page.evaluate("localStorage.setItem('units of the bench', 'javascript:alert(1)')")
    page.reload()
    page.wait_for_timeout(200)
    assert page.url == at(site, f"{DESIGN}/index.html")


def test_where_nothing_may_be_remembered_the_links_lead_all_the_same(page: Page, site: Path) -> None:
    page.add_init_script("Object.defineProperty(window, 'localStorage', { get() { throw new Error('forbidden') } })")
    page.goto(at(site, f"{DESIGN}/index.html"))
    page.get_by_role("link", name="In inches", exact=True).click()
    page.wait_for_url(at(site, f"{DESIGN}/{INCHES}"))


def test_without_script_two_links_do_it(browser: Browser, site: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(at(site, f"{DESIGN}/index.html"))
    page.get_by_role("link", name="In inches", exact=True).click()
    page.wait_for_url(at(site, f"{DESIGN}/{INCHES}"))
    page.get_by_role("link", name="In mm", exact=True).click()
    page.wait_for_url(at(site, f"{DESIGN}/index.html"))
    context.close()
