"""A design that is kept by a touch works without a net; nothing is kept unasked, and nothing but what was asked."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from playwright.sync_api import Browser, BrowserContext, Page

STORED = """async () => {
  const found = []
  for (const name of await caches.keys()) {
    for (const one of await (await caches.open(name)).keys()) found.push(new URL(one.url).pathname)
  }
  return found.sort()
}"""
KEEP, DROP = "Keep this design for when there is no net", "Keep it no longer"


@pytest.fixture
def phone(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context(viewport={"width": 390, "height": 844})
    yield context
    context.close()


def kept(page: Page, address: str) -> None:
    page.goto(address)
    page.get_by_role("button", name=KEEP).click()
    page.get_by_text("Kept on this device.").wait_for()


def test_nothing_is_kept_and_no_worker_is_begun_before_a_touch(host: Any, phone: BrowserContext) -> None:
    page = phone.new_page()
    page.goto(f"{host.at}/sheets/buoy-drops/index.html")
    page.get_by_role("button", name=KEEP).wait_for()
    assert page.evaluate("caches.keys()") == []
    assert page.evaluate("navigator.serviceWorker.getRegistrations().then(all => all.length)") == 0


def test_a_kept_design_opens_without_a_net_with_its_style_its_sheets_and_by_its_folder(
    host: Any, phone: BrowserContext
) -> None:
    page = phone.new_page()
    kept(page, f"{host.at}/sheets/buoy-drops/index.html")
    host.down = True
    for address in ("buoy-drops/index.html", "buoy-drops/", "buoy-drops/index.html#step-3"):
        page.goto(f"{host.at}/sheets/{address}", wait_until="networkidle")
        assert page.locator("h1").text_content() == "Buoy drops · Silver, short"
        assert page.evaluate("getComputedStyle(document.body).margin") == "0px"
        assert page.evaluate("document.fonts.check('16px \"Source Sans Pro\"')")
    sheet = page.evaluate("fetch('handout-a4.pdf').then(one => one.status).catch(() => 'refused')")
    assert sheet == "refused"  # the policy lets no script fetch; the link does
    opened = phone.new_page()
    with pytest.raises(Exception, match="net::"):
        opened.goto(f"{host.at}/sheets/shingle-keeper/index.html")


def test_what_is_kept_is_the_design_s_own_files_and_what_its_page_loads_and_nothing_else(
    host: Any, phone: BrowserContext
) -> None:
    page = phone.new_page()
    kept(page, f"{host.at}/sheets/buoy-drops/index.html")
    page.goto(f"{host.at}/sheets/index.html")
    page.goto(f"{host.at}/sheets/shingle-keeper/index.html", wait_until="networkidle")
    stored = page.evaluate(STORED)
    own = [path for path in stored if path.startswith("/sheets/buoy-drops/")]
    assert {"/sheets/buoy-drops/index.html", "/sheets/buoy-drops/handout-a4.pdf"} <= {*own}
    assert "/sheets/buoy-drops/pictures/finished.svg" in own
    assert not [path for path in own if "/long/" in path]
    assert {path.removeprefix("/sheets/") for path in stored} - {path.removeprefix("/sheets/") for path in own} == {
        "style.css",
        "script.js",
        *(path for path in (one.removeprefix("/sheets/") for one in stored) if path.startswith("fonts/")),
    }


def test_a_new_revision_is_kept_in_place_of_the_old_one(host: Any, phone: BrowserContext) -> None:
    page = phone.new_page()
    kept(page, f"{host.at}/sheets/buoy-drops/index.html")
    path = host.folder / "sheets" / "buoy-drops" / "index.html"
    text = path.read_text("utf-8").replace("<h1>Buoy drops ", "<h1>Buoy drops, newer ")
    path.write_text(text.replace('data-as="2-', 'data-as="3-'), "utf-8")
    page.goto(f"{host.at}/sheets/buoy-drops/index.html")
    page.get_by_text("Kept on this device.").wait_for()
    for _ in range(100):
        names = " ".join(page.evaluate("caches.keys()"))
        if " 3-" in names and " 2-" not in names:
            break
        page.wait_for_timeout(50)
    assert " 3-" in names
    assert " 2-" not in names
    host.down = True
    page.goto(f"{host.at}/sheets/buoy-drops/index.html")
    assert page.locator("h1").text_content() == "Buoy drops, newer · Silver, short"


def test_one_touch_takes_all_of_it_away_again(host: Any, phone: BrowserContext) -> None:
    page = phone.new_page()
    kept(page, f"{host.at}/sheets/buoy-drops/index.html")
    page.get_by_role("button", name=DROP).click()
    page.get_by_role("button", name=KEEP).wait_for()
    assert page.evaluate("caches.keys()") == []


def test_of_two_kept_designs_one_is_taken_away_and_the_other_still_opens(host: Any, phone: BrowserContext) -> None:
    page = phone.new_page()
    for name in ("buoy-drops", "shingle-keeper"):
        kept(page, f"{host.at}/sheets/{name}/index.html")
    page.get_by_role("button", name=DROP).click()
    page.get_by_role("button", name=KEEP).wait_for()
    host.down = True
    page.goto(f"{host.at}/sheets/buoy-drops/index.html")
    assert page.locator("h1").text_content() == "Buoy drops · Silver, short"
    assert page.evaluate("getComputedStyle(document.body).margin") == "0px"


def test_what_cannot_be_kept_whole_is_not_kept_and_is_told(host: Any, phone: BrowserContext) -> None:
    (host.folder / "sheets" / "buoy-drops" / "handout-a4.pdf").unlink()
    page = phone.new_page()
    page.goto(f"{host.at}/sheets/buoy-drops/index.html")
    page.get_by_role("button", name=KEEP).click()
    page.get_by_text("It could not be kept").wait_for()
    assert not [path for path in page.evaluate(STORED) if "buoy-drops" in path]


def test_from_a_folder_nothing_is_offered(site: Path, phone: BrowserContext) -> None:
    page = phone.new_page()
    said: list[str] = []
    page.on("console", lambda one: said.append(one.text))
    page.goto((site / "buoy-drops" / "index.html").as_uri(), wait_until="networkidle")
    assert page.get_by_role("button", name=KEEP).count() == 0
    assert not said
