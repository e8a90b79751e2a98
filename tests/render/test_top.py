"""The head of a page: what it may load, where it stands, which way it is read, and what is shown of its link."""

from __future__ import annotations

import json
import re
from typing import Any

import pytest

from sheetgen.facts.languages import direction
from sheetgen.render.script import MOST, find_script, script
from sheetgen.render.top import POLICY, Preview, Top, page

TOP = Top("Drops", "en", "drops/index.html")
AT = "https://quillmarsh.example/sheets/"


def head(top: Top) -> str:
    return page(top, "<main></main>").decode().partition("</head>")[0]


@pytest.mark.parametrize(
    ("language", "way"),
    [("en", "ltr"), ("de-AT", "ltr"), ("he", "rtl"), ("ar-EG", "rtl"), ("fa", "rtl"), ("ur", "rtl"), ("az", "ltr"),
     ("az-Arab", "rtl"), ("ks-Deva", "ltr"), ("yi", "rtl"), ("dv", "rtl"), ("ckb-IQ", "rtl"), ("zh-Hant", "ltr")],
)  # fmt: skip
def test_a_page_says_its_language_and_which_way_it_is_read(language: str, way: str) -> None:
    # Hebrew, Arabic, Persian, Urdu, Yiddish, Dhivehi and Sorani are written from right to left
    assert direction(language) == way
    assert f'<html lang="{language}" dir="{way}">' in head(Top("x", language, "index.html"))


def test_all_that_a_page_may_load_is_ours_and_nothing_is_allowed_that_it_does_not_name() -> None:
    rules = dict(rule.split(" ", 1) for rule in POLICY.split("; "))
    assert rules["default-src"] == "'none'"
    assert {words for name, words in rules.items() if name not in {"default-src", "base-uri", "img-src"}} == {"'self'"}
    assert rules["img-src"] == "'self' data:"
    assert "unsafe" not in POLICY
    policy = head(TOP).index("Content-Security-Policy")
    assert policy < head(TOP).index("<title>") < head(TOP).index("<link") < head(TOP).index("<script")


def test_without_an_address_a_page_says_none() -> None:
    told = head(TOP)
    assert not re.search(r"canonical|og:|https?:|feed\.xml", told)


def test_with_an_address_a_page_says_its_own_and_what_is_shown_of_a_link_to_it() -> None:
    preview = Preview("drops/preview.png", 1200, 630, 'Two "drops"')
    told = head(Top('A <b> & "c"', "en", "drops/index.html", AT, "Bench", "Two.", of_design=True, preview=preview))
    assert f'<link rel="canonical" href="{AT}drops/index.html">' in told
    said = dict(re.findall(r'<meta property="([^"]+)" content="([^"]*)">', told))
    assert said == {
        "og:type": "article",
        "og:title": "A &lt;b&gt; &amp; &#34;c&#34;",
        "og:description": "Two.",
        "og:site_name": "Bench",
        "og:url": f"{AT}drops/index.html",
        "og:image": f"{AT}drops/preview.png",
        "og:image:type": "image/png",
        "og:image:width": "1200",
        "og:image:height": "630",
        "og:image:alt": "Two &#34;drops&#34;",
    }


def test_what_is_not_to_be_found_says_so_and_nothing_of_it_is_shown_of_a_link() -> None:
    told = head(Top("x", "en", "drops/k7m3qx.html", AT, found=False, leads_to="index.html"))
    assert '<meta name="robots" content="noindex">' in told
    assert '<meta http-equiv="refresh" content="0; url=index.html">' in told
    assert not re.search("canonical|og:", told)


@pytest.mark.parametrize(
    "words", ["</script><script>alert(1)</script>", "<!--<script>", "\u2028\u2029", "a & b", "é ½"]
)
def test_no_word_of_a_design_ends_the_data_that_it_stands_in(words: str) -> None:
    told = head(Top("x", "en", "index.html", data={"name": words}))
    [data] = re.findall(r'<script type="application/ld\+json">(.*?)</script>', told, re.DOTALL)
    assert not set("<>&\u2028\u2029") & set(data)
    assert json.loads(data) == {"name": words}


def test_a_theme_that_writes_the_head_itself_is_told_at_its_file(library: Any, quick: None) -> None:  # noqa: ARG001
    path = library.root / "themes" / "plain" / "index.html.j2"
    path.parent.mkdir(parents=True)
    path.write_text("<!doctype html><html><head></head><body><script>1</script></body></html>", "utf-8")
    [trouble] = library.publish().troubles.errors
    assert "the program writes" in trouble.message
    assert str(trouble.place).startswith("themes/plain/index.html.j2:1")


def test_a_page_for_the_screen_has_no_style_and_no_script_within_it(good: Any) -> None:
    pages = sorted(good.build.rglob("*.html"))
    assert pages
    for path in pages:
        text = path.read_text("utf-8")
        if path.name == "404.html":  # it stands anywhere, and loads nothing
            continue
        assert not re.search(r"<style|\sstyle=|\son[a-z]+=|javascript:", text), path
        scripts = re.findall(r"<script(?! type=\"application/ld\+json\")[^>]*>", text)
        up = "../" * (len(path.relative_to(good.build).parts) - 1)
        own = [f'<script src="{up}{"find" if "data-find" in text else "script"}.js" defer>']
        assert scripts == ([] if "noindex" in text else own), path
        for link in re.findall(r'(?:href|src)="([^"#]+)"', text):
            assert link.startswith("data:") or (path.parent / link).is_file(), f"{path}: {link}"


def test_the_script_of_the_pages_is_small_and_its_remarks_stay_at_home() -> None:
    """A page loads one of the two: the pages of cards that which finds, all others the other."""
    assert len(script().encode()) < MOST
    assert len(find_script().encode()) < MOST
    assert "//" not in script()
    assert "/*" not in script()
