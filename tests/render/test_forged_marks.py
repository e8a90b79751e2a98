"""What a file writes can pass for none of the program's own marks, and a studio's cautions may be called anything."""

from __future__ import annotations

import html
import re
from dataclasses import replace
from html.parser import HTMLParser
from typing import Any

import pytest

from sheetgen.draw.signs import signs
from sheetgen.facts.signs import GENERAL

TITLE = "title: Round pendant\n"
CUT = "      Cut a disc of {{ plate.wet_disc }}.\n"
PRINTED = r"Cut a disc of [\d.]+ mm\."


class Attributes(HTMLParser):
    """Every attribute of a page's elements, read as a browser reads them."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.names: set[str] = set()
        self.links: list[str] = []
        self.feed(page)

    def handle_starttag(self, _tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.names |= {name for name, _ in attrs}
        self.links += [str(value) for name, value in attrs if name == "href"]


def page_of(library: Any, name: str = "pendant") -> str:
    outcome = library.publish(name)
    assert not outcome.troubles.errors, "\n".join(map(str, outcome.troubles))
    return str((library.build / name / "index.html").read_text("utf-8"))


@pytest.mark.parametrize(
    ("old", "new"),
    [
        (TITLE, 'title: "Round \\ue0109999\\ue012"\n'),
        ("  - title: Cut\n", "  - title: Cut \ue0109999\ue012\n"),
        ("    expect: It is round.\n", '    expect: "It \\uf8ffis round."\n'),
        ("level: first piece\n", 'level: first piece\n"tags\\ue000": [a]\n'),
    ],
    ids=["in the title", "as it is", "in a text", "in a field's name"],
)
def test_a_sign_of_no_alphabet_is_refused_at_its_line(old: str, new: str, library: Any) -> None:
    library.change("pendant/project.yaml", old, new)
    told = library.check("pendant").troubles.errors
    assert any("belongs to no alphabet" in t.message for t in told), told
    assert not any("\ue000" <= c <= "\uf8ff" for t in told for c in str(t))


@pytest.mark.parametrize("hash_sign", ["#", "\\#"], ids=["plainly", "past Markdown"])
@pytest.mark.parametrize("number", ["#xe0110:", "#57361;0:", "#x0000E0110:", "#xe0110:0&#xe012;"])
def test_no_mark_written_by_its_number_takes_a_quotation_mark_out(
    number: str,
    hash_sign: str,
    library: Any,
    quick: None,  # noqa: ARG001
) -> None:
    number = number.replace("#", hash_sign)
    attack = f"[a](http://x/&{number}) &{hash_sign}xe012; [c](http:/autofocus/onfocus=document.body.x=1//)"
    library.change("pendant/project.yaml", CUT, f"      {attack}\n")
    page = page_of(library)
    assert not {"autofocus", "onfocus"} & Attributes(page).names
    assert not re.search("[\ue000-\uf8ff]", page)


def test_a_number_in_the_address_of_a_link_stays_in_the_address(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change("pendant/project.yaml", CUT, f"{CUT}      [a](http://x/{{{{ plate.wet_disc }}}})\n")
    [link] = [link for link in Attributes(page_of(library)).links if link.startswith("http://x/")]
    assert re.fullmatch(r"http://x/[\d.]+(\u00a0|%C2%A0)mm", link)


@pytest.mark.parametrize("reference", ["&#xe000;0&#xe001;", "&#xe000;9&#xe001;"])
def test_a_number_is_printed_once_whatever_references_stand_beside_it(
    reference: str,
    library: Any,
    quick: None,  # noqa: ARG001
) -> None:
    library.change("pendant/project.yaml", CUT, f"{CUT}      {reference}\n")
    seen = re.sub("<script.*?</script>", "", page_of(library), flags=re.DOTALL)  # the page says it to machines besides
    page = html.unescape(re.sub("<[^>]*>", "", seen)).replace("\u00a0", " ")
    assert len(re.findall(PRINTED + r"\s*\ufffd[09]\ufffd", page)) == 1


def test_ordinary_references_are_kept(library: Any, quick: None) -> None:  # noqa: ARG001
    library.change("pendant/project.yaml", CUT, f"{CUT}      Ren&#233;e &#x26; Co\n")
    assert "Renée & Co" in html.unescape(page_of(library))


def own(library: Any, name: str, signs: str) -> None:
    words = f"  {name}: {{word: CAUTION, hazard: Saw., consequence: Cuts., avoid: Slowly., signs: {signs}}}\n"
    library.write("stock/own.yaml", f"cautions:\n{words}")
    library.change("pendant/project.yaml", "  - title: Cut\n", f"  - title: Cut\n    caution: [{name}]\n")


@pytest.mark.parametrize("name", ['"jeweller\'s saw"', "a 1 mm b", '"<b>"', '"a: b & c"'])
def test_a_caution_of_ones_own_may_be_called_anything(name: str, library: Any, quick: None) -> None:  # noqa: ARG001
    own(library, name, "[W022]")
    assert "Saw." in page_of(library)


def test_one_that_only_says_what_to_wear_gets_the_general_sign(library: Any) -> None:
    # else a theme has nothing to print beside it: a sign that warns, and a sign of what is worn
    own(library, "saw", "[M004]")
    version = library.main("pendant")
    saw = [c for step in version.steps for c in step.cautions if c.id == "saw"]
    alone = replace(version, steps=[replace(version.steps[0], cautions=tuple(saw))])
    assert set(signs(alone)) == {GENERAL, "M004"}
