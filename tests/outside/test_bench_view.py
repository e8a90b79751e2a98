"""A design followed at the bench: one step a screen, cautions before it, and what the device keeps of it."""

from __future__ import annotations

import io
from datetime import datetime
from typing import TYPE_CHECKING, Any

import pdfplumber
import pytest

from tests.outside.axe import axe_finds

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from playwright.sync_api import Browser, Page

PHONE, DESK, TWICE = (390, 844), (1280, 900), (195, 422)  # the last is a phone at 200 %
DESIGN, OTHER = "buoy-drops/index.html", "shingle-keeper/index.html"
HOT, WAIT, SET = "step-11", "wait-1", "step-3"  # Fire; Let the tubes set, 10 – 20 min; the step before it
SWIPE = """([from, to]) => {
  const touch = (x) => new Touch({identifier: 1, target: document.body, clientX: x, clientY: 400})
  const send = (kind, touches, changedTouches) => document.body.dispatchEvent(
    new TouchEvent(kind, {bubbles: true, touches, changedTouches}))
  send('touchstart', [touch(from)], [touch(from)])
  send('touchend', [], [touch(to)])
}"""
FORBIDDEN = "Object.defineProperty(window, 'localStorage', {get() { throw new DOMException('no', 'SecurityError') }})"
FULL = "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError') }"
BREAKS = {
    "as a screen is shown": "scrollTo = () => { throw new Error('broken') }",
    "as its words are filled in": "Element.prototype.toggleAttribute = () => { throw new Error('broken') }",
    "as it begins": 'Storage.prototype.getItem = () => \'{"ticks": 5, "clocks": [[1]], "read": 7, "at": {}}\'',
}

CALLED = """document.addEventListener('readystatechange', () => {
  document.getElementById('%s').dataset.name = 'constructor'
  document.getElementById('%s').dataset.name = '__proto__'
})"""
"""Two steps by names that every object of a script has, before the bench view looks at them."""


@pytest.fixture
def opened(browser: Browser, site: Path) -> Iterator[Any]:
    """Opens the design on a device of its own, from its folder or from an address, at a hash."""
    made = []

    def view(
        at: str = "",
        *,
        size: tuple[int, int] = PHONE,
        scheme: Any = "light",
        script: bool = True,
        first: str = "",
        noon: bool = False,
    ) -> Page:
        context = browser.new_context(
            viewport={"width": size[0], "height": size[1]},
            color_scheme=scheme,
            java_script_enabled=script,
            has_touch=True,
            timezone_id="UTC",
        )
        made.append(context)
        if noon:
            context.clock.install(time=datetime.fromisoformat("2026-03-02T12:00:00+00:00"))
        if first:
            context.add_init_script(first)
        page = context.new_page()
        page.goto(at if "://" in at else (site / DESIGN).as_uri() + at)
        return page

    yield view
    for context in made:
        context.close()


def read_all(page: Page) -> None:
    """Whoever is at the bench reads every caution that comes before the step."""
    while page.locator(".read").is_visible():
        page.locator(".read").click()


def here(page: Page) -> str:
    return str(page.locator(".here").get_attribute("id"))


@pytest.fixture(params=["from a folder", "from a host"])
def address(request: pytest.FixtureRequest, site: Path) -> str:
    if request.param == "from a folder":
        return ""
    return f"{request.getfixturevalue('host').at}/sheets/{(site / DESIGN).relative_to(site)}"


def test_a_step_that_was_ticked_and_the_place_are_there_the_next_day(opened: Any, address: str) -> None:
    page = opened(address)
    page.get_by_text("Start at the bench").click()
    read_all(page)
    assert here(page) == "step-1"  # what was read is done with
    page.locator(".here .see").click()
    page.get_by_role("button", name="Next").click()
    page.reload()
    assert here(page) == "step-2"
    page.get_by_role("button", name="Close").click()
    page.reload()
    assert page.locator(".go").first.inner_text() == "Go on: 2 Roll and cut"
    page.locator(".go").first.click()
    assert here(page) == "step-2"
    page.get_by_role("button", name="Back").click()
    assert page.locator(".here input").is_checked()
    page.go_back()
    assert page.locator("#need").is_visible()


NUMBERED = """[...document.querySelectorAll('[data-step]')].map((each) =>
  [each.id, (each.querySelector('.no') || {}).textContent])"""
"""Every row's address, with the number that is printed at it."""


def begun(page: Page) -> str:
    """What the page offers to go on with."""
    return str(page.locator(".go").first.inner_text())


def test_the_place_goes_with_whoever_works_on_and_not_with_whoever_looks(opened: Any) -> None:
    page = opened(f"#{SET}")
    read_all(page)
    page.get_by_role("button", name="Next").click()
    page.get_by_role("button", name="Start the clock").click()
    page.get_by_role("button", name="Next").click()
    assert here(page) == "step-4"
    page.locator(".clocks a").click()
    assert here(page) == WAIT
    page.locator(".clocks a", has_text="Go on: 4 ").click()
    assert here(page) == "step-4"
    page.evaluate("location.hash = 'step-8'")
    page.locator("#step-8.here").wait_for()
    page.get_by_role("button", name="Close").click()
    assert begun(page).startswith("Go on: 4 ")
    page.evaluate("location.hash = 'step-8'")
    page.locator(".here .see").click()  # who ticks there works there
    page.get_by_role("button", name="Close").click()
    assert begun(page).startswith("Go on: 8 ")


def test_the_address_of_a_step_has_the_number_that_is_printed_at_it(opened: Any, site: Path) -> None:
    for design in (DESIGN, OTHER):
        page = opened((site / design).as_uri())
        sections = page.evaluate(NUMBERED)
        steps = [(address, number) for address, number in sections if number]
        assert steps == [(f"step-{n}", str(n)) for n in range(1, len(steps) + 1)]
        waits = [address for address, number in sections if not number]
        assert waits == [f"wait-{n}" for n in range(1, len(waits) + 1)]
        old = opened((site / design).as_uri() + f"#step-{len(sections)}")  # waits were counted once
        assert not old.locator(".here").count()
        assert old.locator("[data-step]:visible").count() == len(sections)


def test_what_is_done_is_said_to_be_done_and_may_be_begun_again(opened: Any) -> None:
    page = opened("#step-16")
    read_all(page)
    page.locator(".here .see").click()
    page.get_by_role("button", name="Done").click()
    assert begun(page) == "Done. Begin again"
    page.reload()
    assert begun(page) == "Done. Begin again"
    page.locator(".go").first.click()
    assert here(page) == "safety"
    read_all(page)
    assert here(page) == "step-1"
    assert page.locator("input:checked").count() == 0


def ticked(opened: Any, *, noon: bool = False) -> Page:
    """The page after a step was ticked and the bench closed."""
    page: Page = opened(f"#{SET}", noon=noon)
    read_all(page)
    page.locator(".here .see").click()
    page.get_by_role("button", name="Close").click()
    return page


def test_a_knuckle_clears_nothing_that_the_device_keeps(opened: Any) -> None:
    page = ticked(opened, noon=True)
    clear = page.get_by_role("button", name="Clear my ticks")
    clear.scroll_into_view_if_needed()
    box = clear.bounding_box()
    assert box
    for x in (2, box["width"] / 2, box["width"] - 2):  # twice at one place, wherever that is on the button
        for _ in range(2):
            page.mouse.click(box["x"] + x, box["y"] + box["height"] / 2)
        assert page.locator("input:checked").count() == 1
    page.clock.fast_forward(9000)  # whoever goes away has not said so
    clear.focus()
    for _ in range(2):
        page.keyboard.press("Enter")
    assert clear.is_visible()
    assert page.locator("input:checked").count() == 1


def test_two_touches_clear_what_the_device_keeps(opened: Any) -> None:
    page = ticked(opened)
    page.get_by_role("button", name="Clear my ticks").click()
    page.get_by_role("button", name="Clear them").click()
    assert page.locator("input:checked").count() == 0
    assert page.evaluate("localStorage.length") == 0
    assert page.locator(".go").first.inner_text() == "Start at the bench"


def test_a_link_to_a_hot_step_shows_its_warning_alone_first_and_the_button_names_it(opened: Any, address: str) -> None:
    page = opened(address)
    page.goto(f"{page.url}#{HOT}")
    page.reload()
    said = []
    while page.locator(".read").is_visible():
        assert page.locator(".here .warning").is_visible()
        assert not page.locator(".here .do").is_visible()
        assert not page.get_by_role("button", name="Next").is_visible()
        page.keyboard.press("ArrowRight")  # neither a key nor a swipe passes a warning over
        page.evaluate(SWIPE, [300, 100])
        said.append(page.locator(".read").inner_text())
        page.locator(".read").click()
    assert "Dust of kiln fibre" in said[0]
    assert "Hot kiln" in said[-1]
    assert here(page) == HOT
    assert page.locator(".here .warning .one").is_visible()
    assert page.locator(".here .do").is_visible()
    page.reload()
    assert page.locator(".here .do").is_visible()


UNDER = """() => {
  const {left, right, top, bottom} = document.querySelector('.read').getBoundingClientRect()
  return [top + 2, (top + bottom) / 2, bottom - 2].filter((y) => y > 0 && y < innerHeight - 1).some((y) =>
    !document.elementFromPoint((left + right) / 2, y).closest('.read'))
}"""
"""Whether something lies over what says that a caution was read, as far as that is on the screen."""


@pytest.mark.parametrize("size", [PHONE, (375, 667), TWICE, DESK], ids=["phone", "small phone", "200 %", "desk"])
def test_nothing_lies_over_what_says_that_a_caution_was_read(opened: Any, size: tuple[int, int]) -> None:
    page = opened(f"#{HOT}", size=size)
    while page.locator(".read").is_visible():
        for down in range(0, page.evaluate("document.documentElement.scrollHeight"), 40):
            page.evaluate("(down) => scrollTo(0, down)", down)
            assert not page.evaluate(UNDER), f"{size}, {down} px down"
        page.locator(".read").click()


def test_a_clock_says_when_a_wait_is_over_by_the_clock(opened: Any) -> None:
    page = opened(f"#{WAIT}", noon=True)
    read_all(page)
    page.get_by_role("button", name="Start the clock").click()
    assert "Ready between 12:10 and 12:20." in page.locator(".here .run").inner_text()
    page.clock.set_fixed_time("2026-03-02T12:15:00Z")  # the phone was locked
    page.reload()
    assert "since 12:10. Over at 12:20." in page.locator(".here .run").inner_text()
    page.get_by_role("button", name="Next").click()
    page.clock.set_fixed_time("2026-03-03T09:00:00Z")
    page.reload()
    assert page.locator(".clocks").inner_text() == "Let the tubes set. Over, since Mon 12:20."
    page.locator(".clocks a").click()
    page.get_by_role("button", name="Stop the clock").click()
    assert page.get_by_role("button", name="Start the clock").is_visible()


def test_what_leads_on_to_a_session_says_that_it_waits_until_the_clock_says_that_it_may_be_ready(opened: Any) -> None:
    page = opened("#wait-3", noon=True)  # Dry the eyes in the caps, 6 - 12 h; then session 3
    read_all(page)
    on = page.locator(".turn .next")
    assert on.inner_text() == "Next: Session 3, after the wait"
    page.get_by_role("button", name="Start the clock").click()
    assert on.inner_text() == "Next: Session 3, after the wait"
    page.clock.set_fixed_time("2026-03-02T17:59:00Z")
    page.reload()
    assert on.inner_text() == "Next: Session 3, after the wait"
    page.clock.set_fixed_time("2026-03-02T18:01:00Z")
    page.reload()
    assert on.inner_text() == "Next: Session 3"


def test_the_clocks_of_a_design_that_is_done_stand_on_top_no_more(opened: Any) -> None:
    page = opened("#wait-6")
    read_all(page)
    page.get_by_role("button", name="Start the clock").click()
    page.get_by_role("button", name="Next").click()
    read_all(page)
    assert page.locator(".clocks").is_visible()
    page.get_by_role("button", name="Next").click()
    read_all(page)
    page.get_by_role("button", name="Done").click()
    assert begun(page) == "Done. Begin again"
    assert not page.locator(".clocks").is_visible()


def test_a_knuckle_on_a_running_clock_does_not_stop_it(opened: Any) -> None:
    page = opened(f"#{WAIT}", noon=True)
    read_all(page)
    run = page.locator(".here .run")
    page.get_by_role("button", name="Start the clock").click()
    stop = page.get_by_role("button", name="Stop the clock")
    box = stop.bounding_box()
    assert box
    for x in (2, box["width"] / 2, box["width"] - 2):  # twice at one place, wherever that is on the button
        for _ in range(2):
            page.mouse.click(box["x"] + x, box["y"] + box["height"] / 2)
        assert "Ready between 12:10 and 12:20." in run.inner_text()
        assert stop.is_visible()
    stop.focus()
    for _ in range(2):
        page.keyboard.press("Enter")
    assert stop.is_visible()
    stop.click()
    page.clock.fast_forward(9000)  # whoever goes away has not said so
    assert stop.is_visible()
    stop.click()
    assert "Ready between" in run.inner_text()
    page.get_by_role("button", name="Stop it").click()
    assert page.get_by_role("button", name="Start the clock").is_visible()


SEEN = """(svg) => {
  const box = svg.getBoundingClientRect(), {width, height} = svg.viewBox.baseVal
  const scale = Math.min(box.width / width, box.height / height)
  return {wide: width * scale, tall: height * scale, of: svg.closest('.figs, dialog').clientWidth}
}"""
"""How large a drawing comes out within its element, and how wide that is which it stands in."""


@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_a_drawing_at_the_bench_takes_its_room_and_no_more_than_the_screen_has(
    opened: Any, site: Path, size: tuple[int, int]
) -> None:
    found = 0
    for design in (DESIGN, OTHER):
        page = opened((site / design).as_uri(), size=size)
        steps = page.locator("[data-step]:has(.drawn:not(.wide))").all()
        for address in [step.get_attribute("id") for step in steps]:
            page.evaluate("(at) => { location.hash = at }", address)
            page.locator(".here").wait_for()
            read_all(page)
            for drawing in page.locator(".here .drawn:not(.wide) svg").all():
                seen = drawing.evaluate(SEEN)
                assert seen["tall"] < size[1], address
                assert seen["wide"] >= 0.6 * seen["of"] or seen["tall"] > 0.5 * size[1], (address, seen)
                found += 1
    assert found > 10


@pytest.mark.parametrize("put_back", ["a touch", "Enter", "Escape"])
@pytest.mark.parametrize("at", ["", "#step-9"], ids=["in the page", "at the bench"])
def test_a_drawing_is_enlarged_to_the_screen_and_put_back(opened: Any, at: str, put_back: str) -> None:
    page = opened(at)
    if at:
        page.locator(".here").wait_for()
        read_all(page)
    drawing, large = page.locator("#step-9 .drawn"), page.locator("dialog.large")
    before = drawing.locator("svg").evaluate(SEEN)
    if put_back == "a touch":
        drawing.click()
    else:
        drawing.focus()
        page.keyboard.press("Enter")
    seen = large.locator("svg").evaluate(SEEN)
    assert seen["wide"] > before["wide"]
    assert seen["wide"] > 0.9 * PHONE[0] or seen["tall"] > 0.9 * PHONE[1]
    page.keyboard.press("ArrowRight")
    page.evaluate(SWIPE.replace("document.body", "document.querySelector('dialog')"), [300, 100])
    assert large.is_visible()
    if put_back == "a touch":
        large.click()
    else:
        page.keyboard.press(put_back)
    assert not large.is_visible()
    assert page.evaluate("document.activeElement.closest('section').id") == "step-9"
    assert page.locator(".here").count() == bool(at)


def test_steps_by_names_that_a_script_knows_are_followed_as_any_other(opened: Any) -> None:
    page = opened(f"#{WAIT}", first=CALLED % (WAIT, HOT))
    read_all(page)
    assert here(page) == WAIT
    page.get_by_role("button", name="Start the clock").click()
    assert page.get_by_role("button", name="Stop the clock").is_visible()
    page.goto(f"{page.url.partition('#')[0]}#{HOT}")
    page.reload()
    for _ in range(9):  # a caution that stays unread would be asked for without end
        if page.locator(".read").is_visible():
            page.locator(".read").click()
    assert here(page) == HOT
    assert page.locator(".here .do").is_visible()
    page.reload()
    assert page.locator(".here .do").is_visible()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_an_empty_box_to_tick_has_an_edge_as_dark_or_light_as_the_words_beside_it(opened: Any, scheme: str) -> None:
    page = opened(f"#{SET}", scheme=scheme)
    read_all(page)
    box, words, ground = page.locator(".here .see input"), page.locator(".here .see span"), page.locator("html")
    colour = "(each, what) => getComputedStyle(each)[what]"
    assert box.evaluate(colour, "borderTopColor") == words.evaluate(colour, "color")
    assert box.evaluate(colour, "backgroundColor") == ground.evaluate(colour, "backgroundColor")
    assert box.evaluate(colour, "appearance") == "none"  # the browser's own fills it with grey


def test_what_turns_the_screens_begins_at_the_line_above_it(opened: Any) -> None:
    page = opened(f"#{SET}")
    read_all(page)
    bar, on = page.locator(".turn").bounding_box(), page.locator(".turn .next").bounding_box()
    assert on["y"] - bar["y"] <= 2  # the line is as thick


def test_keys_and_swipes_turn_the_screens(opened: Any) -> None:
    page = opened(f"#{SET}")
    read_all(page)
    page.keyboard.press("ArrowRight")
    assert here(page) == WAIT
    page.keyboard.press("ArrowLeft")
    assert here(page) == SET
    page.evaluate(SWIPE, [300, 100])
    assert here(page) == WAIT
    page.evaluate(SWIPE, [100, 300])
    assert here(page) == SET
    page.evaluate(SWIPE, [100, 130])
    assert here(page) == SET
    page.keyboard.press("Escape")
    assert page.locator("#need").is_visible()


def test_the_keyboard_alone_goes_through_a_step_in_its_order(opened: Any) -> None:
    page = opened(f"#{SET}")
    read_all(page)
    for wanted in ("H4", "DIV", "INPUT", "Back", "Next: wait"):  # the second is the drawing
        found = page.evaluate("document.activeElement.textContent.length < 20 ? "
                              "document.activeElement.textContent || document.activeElement.tagName "
                              ": document.activeElement.tagName")  # fmt: skip
        assert found == wanted
        page.keyboard.press("Tab") if wanted != "Next: wait" else page.keyboard.press("Enter")
    assert here(page) == WAIT


@pytest.mark.parametrize("size", [PHONE, TWICE, DESK], ids=["phone", "200 %", "desk"])
def test_what_a_knuckle_turns_is_48_px_at_least_and_nothing_is_too_wide(opened: Any, size: tuple[int, int]) -> None:
    page = opened(f"#{WAIT}", size=size)
    buttons = 0
    for _ in range(3):
        for button in page.locator("button:visible").all():
            box = button.bounding_box()
            assert box
            assert box["height"] >= 48
            buttons += 1
        assert page.evaluate("document.documentElement.scrollWidth") == size[0]
        read_all(page)
    assert buttons >= 8


@pytest.mark.parametrize("first", [FORBIDDEN, FULL], ids=["forbidden", "full"])
def test_where_nothing_can_be_kept_the_bench_works_and_says_so(opened: Any, first: str) -> None:
    page = opened(f"#{SET}", first=first)
    read_all(page)
    page.locator(".here .see").click()
    page.get_by_role("button", name="Next").click()
    page.get_by_role("button", name="Back").click()
    assert page.locator(".here input").is_checked()
    assert page.locator(".unkept").is_visible()


@pytest.mark.parametrize("first", BREAKS.values(), ids=list(BREAKS))
def test_where_the_script_fails_all_steps_can_be_read(opened: Any, first: str) -> None:
    page = opened(first=first)
    page.get_by_text("Start at the bench").click()
    page.wait_for_timeout(50)
    if page.locator(".here").count():  # it is whole: what was kept was only nonsense
        page.get_by_role("button", name="Close").click()
    assert page.locator("[data-step] .do").count() == page.locator("[data-step] .do:visible").count() > 20


def test_without_script_all_stands_in_one_page_and_nothing_that_needs_one(opened: Any) -> None:
    page = opened(script=False)
    assert page.locator("[data-step]:visible").count() == page.locator("[data-step]").count() > 20
    assert page.locator("button:visible").count() == 0
    assert page.locator(".bench:visible, .always:visible").count() == 0


def test_a_new_revision_says_so_and_keeps_ticks_only_where_it_is_asked_to(opened: Any) -> None:
    page = opened(f"#{SET}")
    read_all(page)
    page.locator(".here .see").click()
    page.evaluate(
        'for (const name in {...localStorage}) localStorage[name] = localStorage[name].replace(/"as":"/, \'$&older\')'
    )
    page.reload()
    assert page.get_by_text("has been revised since you were here").is_visible()
    assert page.locator("input:checked").count() == 0
    page.get_by_role("button", name="Keep mine").click()
    assert page.locator("input:checked").count() == 1
    page.evaluate(
        'for (const name in {...localStorage}) localStorage[name] = localStorage[name].replace(/"as":"/, \'$&older\')'
    )
    page.reload()
    page.get_by_role("button", name="Begin anew").click()
    page.reload()
    assert page.locator("input:checked").count() == 0
    assert not page.locator(".news").is_visible()


def test_another_version_has_ticks_of_its_own(opened: Any) -> None:
    page = opened(f"#{SET}")
    read_all(page)
    page.locator(".here .see").click()
    first = page.url
    page.goto(first.replace("index.html", "long/index.html"))
    assert not page.locator(".news").is_visible()
    read_all(page)
    assert page.locator("input:checked").count() == 0
    page.goto(first)
    assert page.locator("input:checked").count() == 1


def test_nothing_of_an_address_made_by_a_stranger_is_written_into_the_page(opened: Any) -> None:
    evil = "%3Cimg%20id=evil%20src=x%20onerror=%22document.title='evil'%22%3E"
    page = opened(f"?find={evil}&at={evil}#{evil}")
    page.evaluate("location.hash = '<img id=evil src=x>'")
    page.get_by_text("Start at the bench").click()
    read_all(page)
    assert page.locator("#evil").count() == 0
    assert "evil" not in page.evaluate("document.body.textContent + document.title")
    bad = opened("#%E0%A4%A")  # no text in any alphabet
    assert bad.locator("[data-step]:visible").count() > 20


def test_nothing_is_sent_from_the_bench(opened: Any, host: Any) -> None:
    page = opened(f"{host.at}/sheets/{DESIGN}")
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.get_by_text("Start at the bench").click()
    read_all(page)
    for _ in range(5):
        page.get_by_role("button", name="Next").click()
        read_all(page)
    page.locator(".here .see").click()
    assert not [url for url in asked if ".woff" not in url and ".otf" not in url and ".ttf" not in url]


def test_the_screen_stays_awake_at_the_bench_and_no_longer(opened: Any) -> None:
    page = opened(
        first="awake = 0; Object.defineProperty(navigator, 'wakeLock', {value: {request: async () => "
        "{ awake += 1; return {release: async () => { awake -= 1 }} }}})"
    )
    page.get_by_text("Start at the bench").click()
    while page.evaluate("awake") != 1:  # a page may not be asked by `wait_for_function`: its policy forbids eval
        page.wait_for_timeout(10)
    page.get_by_role("button", name="Close").click()
    assert page.evaluate("awake") == 0


def test_at_the_bench_no_other_design_is_in_the_way(opened: Any) -> None:
    page = opened()
    others = page.get_by_role("navigation", name="Other designs")
    assert others.is_visible()
    page.get_by_text("Start at the bench").click()
    assert not others.is_visible()
    page.get_by_role("button", name="Close").click()
    assert others.is_visible()


def test_printed_from_the_bench_it_is_the_whole_sheet(opened: Any) -> None:
    page = opened(f"#{SET}")
    with pdfplumber.open(io.BytesIO(page.pdf(prefer_css_page_size=True))) as sheet:
        said = " ".join(page.extract_text() for page in sheet.pages)
    for words in ("Wind each strip", "Lay dry kiln fibre", "Masking tape"):
        assert words in said
    for words in ("I have read", "Start the clock", "Close\n"):
        assert words not in said


@pytest.mark.parametrize(
    ("design", "size", "scheme"),
    [(DESIGN, PHONE, "light"), (DESIGN, TWICE, "dark"), (OTHER, DESK, "dark")],
    ids=["phone, light", "200 %, dark", "desk, dark"],
)
def test_axe_finds_nothing_at_the_bench(
    opened: Any, site: Path, design: str, size: tuple[int, int], scheme: str
) -> None:
    page = opened((site / design).as_uri(), size=size, scheme=scheme)
    found = axe_finds(page, "the page, folded")
    page.get_by_text("Start at the bench").click()
    found += axe_finds(page, "cautions to be read")
    read_all(page)
    while not page.get_by_role("button", name="Start the clock").is_visible():
        page.get_by_role("button", name="Next").click()
        read_all(page)
    found += axe_finds(page, "a wait")
    page.get_by_role("button", name="Start the clock").click()
    page.get_by_role("button", name="Next").click()
    read_all(page)
    found += axe_finds(page, "a step, with a clock that runs")
    drawn = page.locator("[data-step]:has(.drawn)").last.get_attribute("id")
    page.evaluate("(at) => { location.hash = at }", drawn)
    page.locator(".here").wait_for()
    read_all(page)
    page.locator(f"#{drawn} .drawn").first.click()
    found += axe_finds(page, "a drawing, enlarged")
    assert not found, "\n".join(found)
