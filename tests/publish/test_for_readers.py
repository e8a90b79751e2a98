"""What other programs read of a site: the feed and the list of pages, by their schemas, and what a host shows else."""

from __future__ import annotations

import base64
import hashlib
import re
from pathlib import Path
from typing import Any

import pytest
from lxml import etree

from sheetgen.model.page import Entry
from sheetgen.model.worked import Licence, Publisher
from sheetgen.render.for_readers import FEED, MOST, SITEMAP, for_readers

AT = "https://testbench.example/sheets/"
ATOM = "{http://www.w3.org/2005/Atom}"
MAP = "{http://www.sitemaps.org/schemas/sitemap/0.9}"
SCHEMAS = Path(__file__).parent / "schemas"
STRANGE = 'A <b> & "c" \u05d0\x07 \ufffe 😀'


def sound(name: str, content: bytes) -> Any:
    """The file as it is read, once it is as its schema says."""
    root = etree.fromstring(content)
    schema = etree.RelaxNG(etree.parse(str(SCHEMAS / {FEED: "atom.rng", SITEMAP: "sitemap.rng"}[name])))
    assert schema.validate(root), schema.error_log
    return root


def made(entries: list[Entry], pages: dict[str, list[str]] | None = None, **more: Any) -> tuple[Any, Any]:
    publisher = Publisher(**{"name": "Test Bench", "address": AT} | more)
    files = {
        page.path: page.content for page in for_readers(publisher, entries, pages or {}, ["index.html", "facts.html"])
    }
    return sound(FEED, files[FEED]), sound(SITEMAP, files[SITEMAP])


def design(name: str, *revisions: list[str], title: str = "") -> Entry:
    return Entry(name, title or name, "", "", "", revisions[-1][0], revisions[-1][1], revisions=list(revisions))


def told(feed: Any, what: str) -> list[str]:
    return [entry.findtext(ATOM + what) for entry in feed.iter(f"{ATOM}entry")]


def test_the_feed_tells_the_newest_revision_first_with_what_it_changed() -> None:
    feed, _ = made(
        [design("drops", ["1", "2026-01-10", "First published here."], ["2", "2026-03-01", "Length, was 24 mm."]),
         design("ring", ["1", "2026-02-05", "First published here."])]
    )  # fmt: skip
    assert told(feed, "title") == ["drops, revision 2", "ring, revision 1", "drops, revision 1"]
    assert told(feed, "summary")[0] == "Length, was 24 mm."
    assert told(feed, "updated")[0] == feed.findtext(f"{ATOM}updated") == "2026-03-01T00:00:00Z"
    assert len({*told(feed, "id")}) == 3


def test_any_words_and_any_revision_make_a_sound_feed() -> None:
    feed, _ = made(
        [design("drops", [STRANGE, "2026-01-10", STRANGE], title=STRANGE)], name=STRANGE, licence=Licence(STRANGE)
    )
    assert told(feed, "summary") == ['A <b> & "c" \u05d0\ufffd \ufffd 😀']
    assert re.fullmatch(r"[\w:/.%#~-]+", told(feed, "id")[0])


def test_a_library_without_a_revision_and_one_of_thousands_make_a_sound_feed() -> None:
    feed, _ = made([])
    assert told(feed, "id") == []
    many = [design(f"d{n}", [str(n), f"2026-01-{1 + n % 28:02}", "x"]) for n in range(2000)]
    feed, listed = made(many, {one.name: [f"{one.name}/index.html"] for one in many})
    assert len(told(feed, "id")) == MOST
    assert len(listed) == 2002


@pytest.mark.usefixtures("quick")
def test_the_list_of_pages_has_every_page_that_is_to_be_found_and_no_other(good: Any, library: Any) -> None:
    library.change("studio.yaml", "currency: EUR\n", f"currency: EUR\naddress: {AT}\n")
    library.publish()
    listed = sound(SITEMAP, (library.build / SITEMAP).read_bytes())
    found = {
        str(path.relative_to(library.build))
        for path in library.build.rglob("*.html")
        if "noindex" not in path.read_text("utf-8")
    }
    assert {one.text for one in listed.iter(f"{MAP}loc")} == {AT + path for path in found}
    assert "drops/long/index.html" in found
    for path in found:
        assert f'<link rel="canonical" href="{AT}{path}">' in (library.build / path).read_text("utf-8")
    assert not (good.build / SITEMAP).exists()
    assert not (good.build / FEED).exists()


def test_a_new_revision_says_in_the_feed_which_printed_numbers_it_moved(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change("studio.yaml", "currency: EUR\n", f"currency: EUR\naddress: {AT}\n")
    library.publish()
    library.change("pendant/project.yaml", "  width: 20 mm", "  width: 30 mm")
    library.change("pendant/project.yaml", "revision: 1\ndate: 2026-01-10", "revision: 2\ndate: 2026-02-20")
    library.publish()
    feed = sound(FEED, (library.build / FEED).read_bytes())
    assert told(feed, "title")[0] == "Round pendant, revision 2"
    # 20 and 30 mm ÷ 0.91 are cut at 22 and 33
    assert "was 22 mm, is 33 mm" in told(feed, "summary")[0]
    assert sorted(told(feed, "summary")[1:]) == ["First published here."] * 3


def test_other_words_alone_are_said_to_have_moved_no_number(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change("studio.yaml", "currency: EUR\n", f"currency: EUR\naddress: {AT}\n")
    library.publish("pendant")
    library.change("pendant/project.yaml", "expect: It is round.", "expect: It is quite round.")
    library.change("pendant/project.yaml", "revision: 1\ndate: 2026-01-10", "revision: 2\ndate: 2026-02-20")
    library.publish("pendant")
    feed = sound(FEED, (library.build / FEED).read_bytes())
    assert told(feed, "summary") == ["No printed number has moved.", "First published here."]


def test_no_price_and_nothing_of_the_teachers_sheet_stands_in_the_feed(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change("studio.yaml", "currency: EUR\n", f"currency: EUR\naddress: {AT}\n")
    library.change("stock/others.yaml", "    pack: 12 mL\n", "    pack: 12 mL\n    price: 9.75 EUR\n")
    library.publish("drops")
    library.change("stock/others.yaml", "price: 9.75 EUR", "price: 11.25 EUR")
    library.change("drops/project.yaml", "class clay: 12 *", "class clay: 14 *")
    library.change("drops/project.yaml", "revision: 1\ndate: 2026-01-10", "revision: 2\ndate: 2026-02-20")
    library.publish("drops")
    feed = sound(FEED, (library.build / FEED).read_bytes())
    assert told(feed, "summary")[0] == "No printed number has moved."


@pytest.mark.parametrize("revisions", [[["1"]], [["1", "2", "3", "4"]], ["abc"], [[1, 2, 3]], "abc", [None]])
def test_a_record_that_a_hand_has_changed_leaves_out_what_it_cannot_say(revisions: Any) -> None:
    feed, _ = made([Entry("a", "A", "", "", "", "1", "2026-01-10", revisions=revisions)])
    assert told(feed, "id") == []


def test_what_is_not_found_is_told_by_a_page_that_loads_nothing_and_leads_home_where_it_can(
    good: Any,
    library: Any,
    quick: None,  # noqa: ARG001
) -> None:
    page = (good.build / "404.html").read_text("utf-8")
    assert not re.search(r'(?:href|src)="(?!data:)', page)
    [style] = re.findall("<style>(.*?)</style>", page, re.DOTALL)
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
    assert f"style-src 'sha256-{digest}'" in page
    assert "noindex" in page
    library.change("studio.yaml", "currency: EUR\n", f"currency: EUR\naddress: {AT}\n")
    library.publish()
    page = (library.build / "404.html").read_text("utf-8")
    assert re.findall(r'(?:href|src)="(?!data:)([^"]+)', page) == [f"{AT}index.html"]


def test_no_style_of_a_theme_ends_its_element(library: Any, quick: None) -> None:  # noqa: ARG001
    path = library.root / "themes" / "plain" / "alone.css"
    path.parent.mkdir(parents=True)
    path.write_text("p::after { content: '</style><script>alert(1)</script>' }", "utf-8")
    library.publish()
    page = (library.build / "404.html").read_text("utf-8")
    assert page.count("</style>") == 1
    assert page.index("alert") < page.index("</style>")
