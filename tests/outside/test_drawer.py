"""What is in the drawer: ticked in short lists, kept on this device alone, and told on the page of a design."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import pytest

from tests.outside.axe import axe_finds
from tests.outside.test_find import design, laid

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from playwright.sync_api import Browser, Page

WIRE = "Copper wire, 20 AWG, soft"
PRINTED = "Copper wire, soft, 0.8 mm (20 AWG)"
DESIGNS = [
    design("band", "Band", 90, "2026-03-01", tools=["Kiln", "Knife"], places=["kiln", "clay bench"]),
    design(
        "loop",
        "Loop",
        20,
        "2026-03-02",
        clays=[],
        tools=["Pliers", "Cutters, flush"],
        places=["wire", "wire"],
        metals=[[WIRE, PRINTED]],
        needs=[[WIRE, "Pliers", "Cutters, flush"]],
    ),
]


@pytest.fixture
def at(tmp_path: Path) -> str:
    return (laid(tmp_path / "ours", DESIGNS) / "index.html").as_uri()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """One device; what it keeps lasts from page to page."""
    shown = browser.new_page(viewport={"width": 390, "height": 844})
    faults: list[str] = []
    shown.on("pageerror", lambda one: faults.append(str(one)))
    yield shown
    shown.close()
    assert faults == []


def opened(page: Page, at: str) -> None:
    page.goto("about:blank")
    page.goto(at)
    page.locator(".find summary", has_text="drawer").click()
    page.locator(".drawer details").first.wait_for(state="attached")


def tick(page: Page, *names: str) -> None:
    for name in names:
        box = page.get_by_label(name, exact=True)
        if not box.is_visible():
            box.locator("xpath=ancestor::details[1]/summary").click()
        box.check()


def ticked(page: Page) -> list[str]:
    return [one.inner_text() for one in page.locator(".drawer li:has(:checked)").all() if one.is_visible()]


def kept(page: Page) -> Any:
    [told] = page.evaluate("Object.entries(localStorage).filter(([name]) => name.startsWith('drawer'))") or [("", "[]")]
    return json.loads(told[1])


def status(page: Page) -> str:
    return str(page.locator(".drawer [role=status]:visible").first.inner_text())


def test_the_tools_stand_by_their_place_in_the_order_of_a_bench_each_list_folded(page: Page, at: str) -> None:
    opened(page, at)
    told = ["Clays 1", "Wire and sheet 1", "Tools: clay bench 1", "Tools: wire 2", "Tools: kiln 1"]
    shown = [one.inner_text() for one in page.locator(".drawer summary").all() if one.is_visible()]
    assert shown == told
    assert not page.get_by_label("Kiln", exact=True).is_visible()


def test_a_wire_is_ticked_by_the_name_that_a_list_of_needs_prints_and_is_lacking_without(page: Page, at: str) -> None:
    opened(page, at)
    tick(page, "Pliers", "Cutters, flush")
    first = page.locator(".cards:not([hidden]) > .card").first
    assert f"Lacks: {PRINTED}" in first.inner_text()
    tick(page, PRINTED)
    assert "Lacks nothing" in first.inner_text()


def test_a_few_letters_narrow_the_lists_and_what_is_ticked_comes_first(page: Page, at: str) -> None:
    opened(page, at)
    tick(page, "Kiln", "Knife")
    narrow = page.get_by_label("Narrow the lists")
    for letters, left in {"cut": ["Cutters, flush"], "0.8": [PRINTED], "k": ["Knife", "Kiln"], "saw": []}.items():
        narrow.fill(letters)
        rows = [one.inner_text() for one in page.locator(".drawer li").all() if one.is_visible()]
        assert rows == left, letters
        assert page.get_by_text("Nothing is called so.").is_visible() == (not left)
        assert status(page) == "2 ticked, kept on this device"
    narrow.fill("s")
    tick(page, "Silver clay")
    narrow.fill("")
    assert page.locator(".drawer li:visible").all_inner_texts() == ["Silver clay", "Knife", "Kiln"]
    page.get_by_label("Find", exact=True).fill("band loop")
    assert page.locator(".fewer button").all_inner_texts() == ["Without ‘band’: 1", "Without ‘loop’: 1"]
    assert axe_finds(page, "the drawer, and nothing found") == []


def test_what_a_hand_ticks_is_kept_for_the_next_visit_by_the_library_and_one_touch_clears_it(
    page: Page, at: str, tmp_path: Path
) -> None:
    opened(page, at)
    tick(page, "Kiln", "Knife")
    assert status(page) == "2 ticked, kept on this device"
    page.goto("about:blank")
    page.goto(at)
    unused = "By what is in the drawer: 2 kept, not in use"
    assert page.locator(".find summary", has_text="drawer").inner_text() == unused
    assert page.locator(".cards:not([hidden]) .note", has_text="Lacks").count() == 0  # nobody asked for it yet
    assert "have" not in page.url
    opened(page, at)
    assert ticked(page) == []  # to look into it is not to use it
    assert page.locator(".find summary", has_text="drawer").inner_text() == unused
    page.get_by_role("button", name="Use my drawer: 2").click()
    assert sorted(ticked(page)) == ["Kiln", "Knife"]
    assert page.locator(".find summary", has_text="drawer").inner_text() == "By what is in the drawer: 2 kept"
    assert page.locator(".found").inner_text() == "2 of 2 designs, by the drawer"
    assert page.locator(".cards:not([hidden]) .note", has_text="Lacks").count() == 2
    page.get_by_label("Knife", exact=True).uncheck()
    assert kept(page) == ["Kiln"]
    other = (laid(tmp_path / "another", DESIGNS) / "index.html").as_uri()
    opened(page, other)  # files of one disk may share what is kept
    assert ticked(page) == []
    opened(page, at)
    page.get_by_role("button", name="Use my drawer: 1").click()
    page.get_by_role("button", name="Show all designs").click()
    assert (ticked(page), kept(page)) == ([], ["Kiln"])  # what is looked for is let go, and not what is had
    page.get_by_role("button", name="Clear the drawer").click()
    assert kept(page) == []
    opened(page, at)
    assert ticked(page) == []


def test_the_first_tick_of_a_hand_uses_what_is_kept_too(page: Page, at: str) -> None:
    opened(page, at)
    tick(page, "Kiln", "Knife")
    opened(page, at)
    tick(page, "Pliers")
    assert status(page) == "3 ticked, kept on this device"
    assert page.get_by_label("Kiln", exact=True).is_checked()
    assert sorted(kept(page)) == ["Kiln", "Knife", "Pliers"]


def test_a_drawer_that_was_cleared_is_put_back_by_a_touch_until_the_page_is_left(page: Page, at: str) -> None:
    opened(page, at)
    back = page.get_by_role("button", name="Put them back")
    tick(page, "Kiln", "Knife")
    assert not back.is_visible()
    page.get_by_role("button", name="Clear the drawer").click()
    assert (ticked(page), kept(page)) == ([], [])
    assert back.inner_text() == "Put them back: 2"
    tick(page, "Pliers")  # what was ticked since stays
    back.click()
    assert sorted(ticked(page)) == sorted(kept(page)) == ["Kiln", "Knife", "Pliers"]
    assert status(page) == "3 ticked, kept on this device"
    assert not back.is_visible()
    page.get_by_role("button", name="Clear the drawer").click()
    opened(page, at)
    assert not back.is_visible()


def test_a_drawer_that_came_with_an_address_is_not_kept_until_somebody_says_so(page: Page, at: str) -> None:
    opened(page, at)
    tick(page, "Kiln")
    page.goto("about:blank")
    page.goto(f"{at}#have=Pliers&have=Knife")
    page.locator(".found").get_by_text("2 of 2").wait_for()
    assert ticked(page) == ["Knife", "Pliers"]
    assert kept(page) == ["Kiln"]
    tick(page, PRINTED)  # a hand's own tick goes to what is kept, and nothing else does
    assert kept(page) == ["Kiln", WIRE]
    page.get_by_role("button", name="Use my drawer: 2").click()
    assert ticked(page) == [PRINTED, "Kiln"]
    assert status(page) == "2 ticked, kept on this device"
    page.goto("about:blank")
    page.goto(f"{at}#have=Pliers&have=Knife")
    page.get_by_role("button", name="Keep these 2 instead").click()
    assert sorted(kept(page)) == ["Knife", "Pliers"]


@pytest.mark.parametrize("there", ["{", "7", '{"a": 1}', "[[1], null, {}]"])
def test_whatever_stands_in_the_place_of_the_drawer_the_page_is_whole(page: Page, at: str, there: str) -> None:
    opened(page, at)
    tick(page, "Kiln")
    page.evaluate("there => { for (const name of Object.keys(localStorage)) localStorage[name] = there }", there)
    opened(page, at)
    assert ticked(page) == []
    tick(page, "Knife")
    assert "Knife" in kept(page)


def test_a_design_says_which_of_what_it_needs_is_in_the_drawer_in_whatever_units_and_ticks_nothing(
    page: Page, site: Path
) -> None:
    opened(page, (site / "index.html").as_uri())
    tick(page, "Kiln, with a programmer", "Slats", "Copper wire, soft, 0.8 mm (20 AWG)", "Copper clay, two-phase")
    for at in ("buoy-drops/index.html", "buoy-drops/in-inches.html", "buoy-drops/copper-clay/index.html"):
        page.goto((site / at).as_uri())
        page.locator("#need summary").click()
        marked = page.locator("#needed li:has(.mine)")
        marked.first.wait_for()
        names = [one.inner_text().partition(":")[0].partition(",")[0] for one in marked.locator(".what").all()]
        clay = ["Copper clay"] if "copper" in at else []
        assert sorted(names) == sorted([*clay, "Copper wire", "Kiln", "Slats"]), at
        assert page.locator("#need summary").inner_text().endswith(f", {len(names)} in your drawer")
        assert page.locator("#needed :checked").count() == 0
        assert axe_finds(page, at) == []
    page.locator("#needed input").first.check()
    page.reload()
    page.locator("#need summary").click()
    assert page.locator("#needed :checked").count() == 1
    opened(page, (site / "index.html").as_uri())
    page.get_by_role("button", name="Clear the drawer").click()
    page.goto((site / "buoy-drops" / "index.html").as_uri())
    page.locator("#need summary").click()
    assert page.locator(".mine").count() == 0
