"""Finding a design: as a reader does it, in a browser, from a folder and a host; and against a plain search."""

from __future__ import annotations

import functools
import http.server
import io
import json
import re
import threading
import unicodedata
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any
from urllib.parse import quote

import pdfplumber
import pytest

from sheetgen.model.page import Entry
from sheetgen.model.printed import PLAIN
from sheetgen.model.worked import Publisher
from sheetgen.render.library import MOST, Had, library
from sheetgen.render.theme import Theme
from tests import benchmark_library

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from playwright.sync_api import Browser, Page

TITLES = ".card h3"
EVIL = "<img src=x onerror=document.title='caught'>"
HEBREW = "טבעת כסף"
LONG = "Bandring" * 25


def design(name: str, title: str, minutes: int, date: str, **more: Any) -> Entry:
    """An invented design of silver clay that wants a kiln and a knife."""
    told = {
        "level": "first piece",
        "time": f"{minutes} min",
        "whole": f"{minutes} min",
        "whole_minutes": minutes,
        "sessions": 1,
        "heat": "kiln",
        "clays": ["Silver clay"],
        "tools": ["Kiln", "Knife"],
        "materials": ["Silver clay"],
        "needs": [["Kiln", "Knife", "Silver clay"]],
        "chips": [["", "index.html", "handout-a4.pdf"]],
    }
    return Entry(name, title, revision="1", date=date, **{"summary": "", "minutes": minutes, **told, **more})


DESIGNS = [
    design(
        "band",
        "Band",
        90,
        "2026-03-01",
        techniques=["ring"],
        parts=["Band"],
        codes=["AF2SCY", "BRQ8T2"],
        whole="27\N{NARROW NO-BREAK SPACE}–\N{NARROW NO-BREAK SPACE}71\N{NO-BREAK SPACE}h",
        whole_minutes=71 * 60,
        sessions=4,
    ),
    design(
        "berries", "Brambles", 200, "2026-05-01", techniques=["Granulación", "berries"], summary="A sprig of berries."
    ),
    design(
        "brooch",
        "Brooch of shells",
        45,
        "2026-01-01",
        techniques=["brooch", "no kiln"],
        materials=["Brooch pins"],
        clays=[],
        tools=["Pliers"],
        needs=[["Pliers"]],
        heat="no kiln, no torch",
    ),
    design("evil", EVIL, 0, "2026-02-01", summary=EVIL, techniques=[EVIL], tools=[EVIL], needs=[[EVIL]]),
    design("hebrew", HEBREW, 30, "2026-06-01", heat="torch", tools=["Torch"], needs=[["Silver clay", "Torch"]]),
    design(
        "leaf",
        "Crème leaf",
        300,
        "2026-04-01",
        level="experienced",
        clays=["Bronze clay", "Silver clay"],
        materials=["Bronze clay"],
        tools=["Kiln"],
        needs=[["Bronze clay", "Kiln"], ["Kiln", "Silver clay"]],
        chips=[["Bronze", "index.html", ""], ["Silver", "silver/index.html", "silver/handout-a4.pdf"]],
    ),
    design("long", LONG, 60, "2026-01-02"),
]


def laid(folder: Path, entries: Sequence[Entry], trouble: dict[str, str] | None = None) -> Path:
    by = sorted(entries, key=lambda one: (one.title.lower(), one.name))
    for page in library(Publisher("Test Bench"), by, Theme("plain", []), Had({}, trouble or {})):
        path = folder / page.path
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(page.content)
    return folder


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return laid(tmp_path_factory.mktemp("library"), DESIGNS, {"band": "2026-11-02"})


@pytest.fixture(scope="module")
def served(folder: Path) -> Iterator[str]:
    class Quiet(http.server.SimpleHTTPRequestHandler):
        def log_message(self, *_said: Any) -> None:
            pass

    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=str(folder)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()


@pytest.fixture(params=["folder", "host"])
def at(request: pytest.FixtureRequest, folder: Path, served: str) -> str:
    return f"{served}/index.html" if request.param == "host" else (folder / "index.html").as_uri()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    shown = browser.new_page(viewport={"width": 390, "height": 844})
    said: list[str] = []
    shown.on("console", lambda one: said.append(one.text))
    shown.on("pageerror", lambda one: said.append(str(one)))
    yield shown
    shown.close()
    assert [one for one in said if "ERR_FILE_NOT_FOUND" not in one and "404" not in one] == []


def titles(page: Page) -> list[str]:
    return [one.inner_text() for one in page.locator(TITLES).all() if one.is_visible()]


def ready(page: Page, address: str) -> None:
    page.goto(address)
    page.get_by_label("Find", exact=True).focus()
    page.locator(".find select").first.wait_for(state="attached")
    for fold in page.locator(".find summary").all():
        if fold.is_visible():
            fold.click()


def chosen(page: Page, label: str, choice: str) -> None:
    page.get_by_role("combobox", name=label, exact=True).select_option(choice)


def test_words_are_found_by_their_beginnings_without_accents_and_in_the_plural(page: Page, at: str) -> None:
    ready(page, at)
    search = page.get_by_label("Find", exact=True)
    for words, wanted in {
        "BRO": ["Brooch of shells", "Crème leaf"],
        "BROO": ["Brooch of shells"],
        "brooches": ["Brooch of shells"],
        "shell": ["Brooch of shells"],
        "creme": ["Crème leaf"],
        "leaves": ["Crème leaf"],
        "berry": ["Brambles"],
        "granulacion": ["Brambles"],
        "rings": ["Band"],
        "כסף": [HEBREW],
        "brooch leaf": [],
        "bronze leaf": ["Crème leaf"],
        "no kiln": ["Brooch of shells"],
        "pins": ["Brooch of shells"],
        "AF2SCY": ["Band"],
        "brq8t2": ["Band"],
        "AF2SC": [],
        "brooch AF2SCY": [],
    }.items():
        search.fill(words)
        assert titles(page) == wanted, words
        assert page.locator(".found").inner_text() == f"{len(wanted)} of {len(DESIGNS)} designs"


def test_words_find_designs_by_their_tools(page: Page, at: str) -> None:
    ready(page, at)
    search = page.get_by_label("Find", exact=True)
    for words, wanted in {
        "kiln": ["Band", LONG, "Brambles", "Crème leaf"],
        "knives": ["Band", LONG, "Brambles"],
        "torch": [HEBREW],
        "brooch plier": ["Brooch of shells"],
        "pliers knife": [],
    }.items():
        search.fill(words)
        assert titles(page) == wanted, words


def test_it_is_narrowed_by_level_technique_time_heat_and_clay(page: Page, at: str) -> None:
    ready(page, at)
    for label, choice, wanted in (
        ("Level", "experienced", {"leaf"}),
        ("Technique", "ring", {"band"}),
        ("Clay", "Bronze clay", {"leaf"}),
        ("Kiln or torch", "torch", {"hebrew"}),
        ("Longest at the bench", "1", {"brooch", "hebrew", "long"}),
        ("Longest at the bench", "2", {"band", "brooch", "hebrew", "long"}),
        ("Longest in all, with waits", "4", {"berries", "brooch", "hebrew", "long"}),
        ("Longest in all, with waits", "48", {"berries", "brooch", "hebrew", "leaf", "long"}),
        ("Longest in all, with waits", "96", {"band", "berries", "brooch", "hebrew", "leaf", "long"}),
    ):
        chosen(page, label, choice)
        assert set(titles(page)) == {one.title for one in DESIGNS if one.name in wanted}, label
        page.get_by_role("button", name="Show all designs").click()
        assert len(titles(page)) == len(DESIGNS)


def test_what_needs_nothing_else_than_what_is_in_the_drawer_comes_first_and_each_says_what_it_lacks(
    page: Page, at: str
) -> None:
    ready(page, at)
    for name in ("Silver clay", "Kiln"):
        page.get_by_label(name, exact=True).check()
    first, *others = page.locator(".cards:not([hidden]) > .card").all()
    assert "Crème leaf" in first.inner_text()  # its second version
    assert "Lacks nothing" in first.inner_text()
    lacking = [re.findall(r"Lacks: (.*)", one.inner_text()) for one in others]
    assert {name for [name] in lacking} == {EVIL, "Knife", "Pliers", "Torch"}
    page.get_by_label("Kiln", exact=True).uncheck()
    said = page.locator(".cards:not([hidden]) > .card").all_inner_texts()
    [much, little] = (next(n for n, one in enumerate(said) if what in one) for what in ("Kiln; Knife", "Lacks: Pliers"))
    assert much < little  # where less is lacking, but no clay goes into it


def test_they_are_ordered_by_name_by_time_and_by_their_day(page: Page, at: str) -> None:
    ready(page, at)
    chosen(page, "Order", "time")
    assert titles(page)[:3] == [HEBREW, "Brooch of shells", LONG]
    assert titles(page)[-1] == EVIL  # whose time nobody knows
    chosen(page, "Order", "whole")
    assert titles(page)[-2:] == ["Band", EVIL]  # the band has nights to wait
    chosen(page, "Order", "newest")
    assert titles(page)[:2] == [HEBREW, "Brambles"]


def test_where_nothing_is_found_it_offers_what_there_is_without_one_word_or_choice(page: Page, at: str) -> None:
    ready(page, at)
    assert page.locator(".fewer button").count() == 0
    page.get_by_label("Find", exact=True).fill("ring silver")
    chosen(page, "Kiln or torch", "torch")
    chosen(page, "Longest at the bench", "1")
    offered = page.locator(".fewer button")
    assert offered.all_inner_texts() == ["Without ‘ring’: 1"]  # the hebrew ring is of silver and a torch, and says so
    chosen(page, "Longest at the bench", "")
    page.get_by_label("Find", exact=True).fill("ring")
    assert offered.all_inner_texts() == ["Without ‘ring’: 1", "Without ‘torch’: 1"]
    page.get_by_role("button", name="Without ‘torch’: 1").click()
    assert titles(page) == ["Band"]
    assert page.get_by_role("combobox", name="Kiln or torch").input_value() == ""
    assert page.url.endswith("#words=ring")
    assert offered.count() == 0


def test_how_many_are_found_and_the_way_out_stand_under_the_word_whatever_is_unfolded(page: Page, at: str) -> None:
    ready(page, at)
    tall = 844
    search = page.get_by_label("Find", exact=True)
    page.get_by_label("Knife", exact=True).check()
    for words, told in {"ring": "1 of 7 designs, by the drawer", "ring leaf": "0 of 7 designs, by the drawer"}.items():
        search.fill(words)
        search.scroll_into_view_if_needed()
        assert page.locator(".found").inner_text() == told
        field, line = search.bounding_box(), page.locator(".found").bounding_box()
        assert field
        assert line
        assert 0 <= line["y"] - field["y"] - field["height"] < field["height"]
    offers = [one.bounding_box() for one in page.locator(".fewer button").all()]
    assert len(offers) == 2
    assert all(one and one["y"] + one["height"] < tall for one in offers)


def test_what_was_found_stands_as_it_was_when_a_reader_comes_back_from_a_card(page: Page, at: str) -> None:
    ready(page, at)
    chosen(page, "Technique", "ring")
    page.get_by_label("Kiln", exact=True).check()
    page.goto("about:blank")
    page.go_back()
    page.locator(".found").get_by_text("1 of 7").wait_for()
    assert titles(page) == ["Band"]
    assert page.get_by_role("combobox", name="Technique").is_visible()  # what is set is not folded away
    assert page.get_by_label("Kiln", exact=True).is_visible()
    page.goto(page.url.replace("have=Kiln&", "").replace("&have=Kiln", "").replace("#", "?"))  # and in a new tab
    page.locator(".found").get_by_text("1 of 7").wait_for()
    assert page.get_by_role("combobox", name="Technique").is_visible()
    assert not page.get_by_label("Kiln", exact=True).is_visible()


def test_a_search_stands_in_the_address_and_can_be_sent(page: Page, at: str) -> None:
    ready(page, at)
    page.get_by_label("Find", exact=True).fill("silver")
    chosen(page, "Kiln or torch", "torch")
    page.get_by_label("Torch", exact=True).check()
    sent, seen = page.url, titles(page)
    assert seen == [HEBREW]
    page.goto("about:blank")
    page.goto(sent)
    page.locator(".found").get_by_text("1 of 7").wait_for()
    assert titles(page) == seen
    assert page.get_by_label("Find", exact=True).input_value() == "silver"
    assert page.get_by_label("Torch", exact=True).is_checked()


@pytest.mark.parametrize("sign", ["#", "?"])
def test_nothing_of_an_address_by_a_stranger_becomes_markup(page: Page, at: str, sign: str) -> None:
    page.goto(f"{at}{sign}words={quote(EVIL)}&level={quote(EVIL)}&have={quote(EVIL)}&order=constructor&time=x")
    page.locator(".found").get_by_text("of 7").wait_for()
    assert page.locator("img[src=x]").count() == 0
    assert page.title() == "Test Bench: designs"
    assert page.get_by_label("Find", exact=True).input_value() == EVIL
    assert titles(page) == [EVIL]


def test_without_script_the_cards_stand_with_their_links_and_nothing_is_offered_that_does_nothing(
    browser: Browser, folder: Path
) -> None:
    context = browser.new_context(java_script_enabled=False, viewport={"width": 390, "height": 844})
    page = context.new_page()
    page.goto((folder / "index.html").as_uri())
    assert len(titles(page)) == len(DESIGNS)
    assert page.locator("input, select, button").count() == 0
    page.get_by_role("link", name="All techniques, materials and tools").click()
    page.get_by_role("link", name="Knife").click()
    assert page.locator("h1").inner_text() == "Knife"
    assert page.locator(".listed a").first.get_attribute("href") == "../band/index.html"
    context.close()


def test_where_what_is_searched_cannot_be_read_the_cards_stay_and_it_is_said(
    browser: Browser, folder: Path, tmp_path: Path
) -> None:
    page = browser.new_page()
    laid(tmp_path, DESIGNS)
    (tmp_path / "library" / "designs.js").unlink()
    page.goto((tmp_path / "index.html").as_uri())
    page.get_by_label("Find", exact=True).fill("ring")
    page.get_by_text("Finding does not work here").wait_for()
    assert len(titles(page)) == len(DESIGNS)
    (tmp_path / "find.js").write_text((folder / "find.js").read_text("utf-8")[:3000], "utf-8")  # it fails in the middle
    page.reload()
    assert len(titles(page)) == len(DESIGNS)
    page.close()


def test_a_card_says_how_long_a_piece_takes_with_its_waits_and_says_no_time_twice(page: Page, folder: Path) -> None:
    ready(page, (folder / "index.html").as_uri())
    said = "first piece · at the bench 90 min · in all 27–71 h, 4 sessions · kiln"
    note = page.locator(".card", has_text="Band").first.locator(".note").first
    assert note.inner_text().translate(PLAIN) == said
    assert "in all" not in page.locator(".card", has_text="Brooch").first.inner_text()  # glued and done: no wait
    chosen(page, "Technique", "ring")
    assert page.locator(".cards:not([hidden]) .note").first.inner_text().translate(PLAIN) == said


def test_no_line_of_a_card_ends_within_a_span_of_time(page: Page, folder: Path) -> None:
    ready(page, (folder / "index.html").as_uri())
    lines = """wide => {
      const card = [...document.querySelectorAll('[data-cards] .card')].find(one => one.textContent.includes('in all'))
      const words = card.querySelector('.note').firstChild
      card.style.width = `${wide}px`
      const span = document.createRange(), said = words.textContent
      span.setStart(words, said.indexOf('27'))
      span.setEnd(words, said.indexOf('71') + 2)
      return new Set([...span.getClientRects()].map(({ top }) => top)).size
    }"""
    assert {wide: page.evaluate(lines, wide) for wide in range(180, 360, 6)} == dict.fromkeys(range(180, 360, 6), 1)


def test_a_design_in_trouble_says_since_when_on_both_kinds_of_card(page: Page, folder: Path) -> None:
    ready(page, (folder / "index.html").as_uri())
    told = "its file has been in trouble since 2026-11-02"
    assert told in page.locator(".card", has_text="Band").first.inner_text()
    chosen(page, "Technique", "ring")
    assert told in page.locator(".cards:not([hidden]) > .card").inner_text()


def test_the_list_of_a_technique_says_what_its_designs_do_and_the_index_stands_in_columns_on_a_desk(
    page: Page, folder: Path
) -> None:
    page.goto((folder / "library" / "technique-ring.html").as_uri())
    assert page.locator("h1").inner_text() == "Ring"
    assert page.locator(".lead").inner_text() == "1 design uses this technique."
    page.goto((folder / "library" / "tool-kiln.html").as_uri())
    assert page.locator(".lead").inner_text() == "4 designs use this tool."
    page.set_viewport_size({"width": 1280, "height": 900})
    page.goto((folder / "library" / "index.html").as_uri())
    left = "all => new Set(all.map(one => one.getBoundingClientRect().left)).size"
    assert page.locator(".terms >> nth=0").locator("li").evaluate_all(left) > 1
    rows = page.locator(".terms >> nth=0").locator("li").evaluate_all("all => all.map(one => one.offsetLeft)")
    assert rows == sorted(rows)  # one column after another, and no run of words


def test_a_page_that_is_not_there_is_dark_where_the_screen_is(page: Page, folder: Path) -> None:
    paper = "getComputedStyle(document.documentElement).backgroundColor"
    page.goto((folder / "404.html").as_uri())
    assert page.evaluate(paper) == "rgb(255, 255, 255)"
    page.emulate_media(color_scheme="dark")
    assert page.evaluate(paper) == "rgb(0, 0, 0)"


def test_on_paper_stand_the_cards_whole_and_nothing_that_is_touched(page: Page, folder: Path) -> None:
    ready(page, (folder / "index.html").as_uri())
    page.locator("[data-cards] > .card").evaluate_all(
        "all => all.forEach((a, n) => { a.prepend(`begins${n}`); a.append(`ends${n}`); a.style.height = '9cm' })"
    )
    with pdfplumber.open(io.BytesIO(page.pdf(format="A4"))) as printed:
        pages = [one.extract_text() for one in printed.pages]
    assert "Band" in pages[0]
    for words in ("Find", "Narrow", "Level", "Clear", "Tick", "PDF", "Show"):
        assert words not in "".join(pages)
    begun, ended = (
        {n: number for number, sheet in enumerate(pages) for n in re.findall(rf"{what}(\d)", sheet)}
        for what in ("begins", "ends")
    )
    assert len(pages) > 1
    assert len(begun) == len(DESIGNS)
    assert begun == ended


@pytest.mark.parametrize("wide", [320, 390, 1280])
def test_no_title_however_long_makes_the_page_wider_than_the_screen(page: Page, folder: Path, wide: int) -> None:
    page.set_viewport_size({"width": wide, "height": 800})
    ready(page, (folder / "index.html").as_uri())
    chosen(page, "Order", "newest")
    assert page.evaluate("document.documentElement.scrollWidth") <= wide


def test_of_more_designs_than_a_page_holds_the_rest_stand_on_further_pages(page: Page, tmp_path: Path) -> None:
    many = [design(f"d{n}", f"Design {n:03}", 60, "2026-01-01") for n in range(2 * MOST + 1)]
    laid(tmp_path, many)
    page.goto((tmp_path / "index.html").as_uri())
    seen: list[str] = []
    for number in (1, 2, 3):
        if number > 1:
            page.get_by_label("Pages of designs").get_by_role("link", name=str(number)).click()
        seen += titles(page)
        assert len((tmp_path / Path(page.url).relative_to(tmp_path.as_uri())).read_bytes()) < 300_000
    assert seen == [one.title for one in many]
    page.get_by_label("Find", exact=True).fill("design")
    page.locator(".found").get_by_text("121 of 121").wait_for()
    assert len(titles(page)) == MOST
    page.get_by_role("button", name="Show more").click()
    assert len(titles(page)) == 2 * MOST
    there = page.locator(".cards:not([hidden]) > .card").nth(MOST + 20)
    there.scroll_into_view_if_needed()
    down = page.evaluate("scrollY")
    page.goto("about:blank")
    page.go_back()  # as many are shown as were, and at the same place
    page.locator(".found").get_by_text("121 of 121").wait_for()
    assert len(titles(page)) == 2 * MOST
    page.wait_for_function(f"scrollY === {down}")
    assert page.locator(".cards:not([hidden]) a[href]").first.get_attribute("href") == "../d0/index.html"


# Against a plain search

FOLDED = str.maketrans({"ß": "ss", "æ": "ae", "œ": "oe", "ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th", "ı": "i"})
ASKED = (
    "",
    "a",
    "ring",
    "rings",
    "tide shells",
    "pearls",
    "wire 12",
    "part 4",
    "buoys",
    "nothing",
    "reeds salt",
    "oar",
    "tool marsh",
    "oars 3",
)


def plain_words(text: str) -> list[str]:
    bare = "".join(
        c for c in unicodedata.normalize("NFKD", text.lower()) if not unicodedata.category(c).startswith("M")
    )
    return re.findall(r"[^\W_]+", bare.translate(FOLDED))


def of_one(word: str) -> set[str]:
    """A word, and what it is the plural of."""
    ends = {
        "ies": ("y", "ie"),
        "ves": ("f", "fe", "ve"),
        "ches": ("ch",),
        "shes": ("sh",),
        "sses": ("ss",),
        "xes": ("x",),
        "zes": ("z",),
    }
    for end, singular in ends.items():
        if len(word) > 3 and word.endswith(end):
            return {word, *(word[: -len(end)] + one for one in singular)}
    return {word, word[:-1]} if len(word) > 3 and word.endswith("s") and word[-2] not in "siu" else {word}


def plainly(rows: list[Any], names: dict[str, list[str]], words: str, have: set[str]) -> list[str]:
    """The designs by name that have each word, those first that use something that is there, or lack nothing.

    Of these first who lacks least, then whose title has the words, and last who has one of them in its tools alone.
    """
    found = []
    for place, row in enumerate(rows):
        name, title, summary, *_, techniques, _clays, materials, parts, needs, _chips, _picture, _trouble, _codes = row
        more = [
            re.sub(r"^no ", "no no", names[k][n])
            for k, many in (("technique", techniques), ("material", materials), ("part", parts))
            for n in many
        ]
        all_words = {one for word in plain_words(" ".join([title, summary, *more])) for one in of_one(word)}
        of_title = {one for word in plain_words(title) for one in of_one(word)}
        own = [names["tool"][n] for _clay, _metal, tools in needs for n in tools]
        of_tools = {one for word in plain_words(" ".join(own)) for one in of_one(word)}

        def has(within: set[str]) -> bool:
            return all(any(w.startswith(o) for o in of_one(word) for w in within) for word in plain_words(words))

        if not has(all_words | of_tools):
            continue
        kinds = ("clay", "metal", "tool")
        wants = [{names[kind][n] for kind, own in zip(kinds, need, strict=True) for n in own} for need in needs]
        lacking = min(len(want - have) for want in wants) if have else 0
        idle = bool(have) and all(want and not want & have for want in wants)
        found.append((idle, lacking, 0 if has(of_title) else 1 if has(all_words) else 2, place, name))
    return [name for *_, name in sorted(found)]


def test_the_script_finds_what_a_plain_search_finds(page: Page, tmp_path: Path) -> None:

    many = [replace(one, picture=None) for one in benchmark_library.entries(300, 7)]
    laid(tmp_path, many)
    text = (tmp_path / "library" / "designs.js").read_text("utf-8")
    names, rows = re.fullmatch(r"var LIBRARY=\{names:(\{.*?\}),designs:(\[\n.*\])\}\n", text, re.DOTALL).groups()  # type: ignore[union-attr]
    names, rows = json.loads(names), json.loads(rows)
    page.goto((tmp_path / "index.html").as_uri())
    for have in (set[str](), {"Clay 1", *names["tool"][:60]}):
        for words in ASKED:
            if not words and not have:
                continue
            wanted = plainly(rows, names, words, have)
            query = "&".join([f"words={quote(words)}", *(f"have={quote(one)}" for one in have)])
            page.goto("about:blank")
            page.goto(f"{(tmp_path / 'index.html').as_uri()}#{query}")
            page.locator(".found").get_by_text(f"{len(wanted)} of 300 designs").wait_for()
            links = page.locator(".cards:not([hidden]) h3 a")
            seen = links.evaluate_all("all => all.map(one => one.getAttribute('href').split('/')[0])")
            assert seen == wanted[:MOST], (words, have)
