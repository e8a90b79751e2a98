"""Pages in other units: worked afresh, never mixed, each leading to the other, for the studio that asks for them."""

from __future__ import annotations

import html
import re
from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from pathlib import Path

pytestmark = pytest.mark.usefixtures("quick")

INCHES = "in-inches.html"
FOOT = re.compile(r"revision 1, 2026-01-10 · (\w{6}) in (\w+) ·")
# What keeps its mm on any page: as it is engraved, what stock calls it, a cutter's file.
AS_NAMED = re.compile(r"[\d.]+ mm \([\d.]+ in\)|(?i:glass stone) ?, 2 mm|true size in mm|, in mm\b|In mm")


@pytest.fixture
def both(library: Any) -> Any:
    """The small library, published in mm and in inches."""
    library.change("studio.yaml", "units: mm\n", "units: mm\npages in: [mm, in]\n")
    outcome = library.publish()
    assert not outcome.troubles.found
    return library


def page(library: Any, path: str) -> str:
    text: str = (library.build / path).read_text("utf-8")
    return text


def words(text: str) -> str:
    """All that a page says, in drawings and to machines too."""
    text = re.sub(r"<style>.*?</style>", "", text, flags=re.DOTALL)
    said = " ".join([*re.findall(r'(?:alt|content)="([^"]*)"', text), re.sub(r"<[^>]*>", " ", text)])
    return " ".join(html.unescape(said).replace("\u00a0", " ").replace("\u202f", " ").replace("\u2060", "").split())


def in_inches(root: Path) -> list[str]:
    return sorted(str(path.relative_to(root)) for path in root.rglob(INCHES))


def test_a_studio_that_does_not_ask_has_pages_in_its_own_units_alone(good: Any) -> None:
    assert in_inches(good.build) == []
    for path in good.build.rglob("*.html"):
        assert "data-units" not in path.read_text("utf-8")


def test_every_version_of_every_design_has_a_page_in_inches(both: Any) -> None:
    folders = ("drops", "drops/long", "link", "pendant")
    assert in_inches(both.build) == [f"{one}/{INCHES}" for one in sorted(folders)]
    assert not list(both.build.rglob("*inches*.pdf"))


@pytest.mark.parametrize(
    ("design", "mm", "inches"),
    [
        (
            "drops",
            "Cut 24 mm",
            "Cut 61/64 in",
        ),  # 22 ÷ 0.91 is 24.18 mm, 60.9 sixty-fourths; 24 mm would be 60.5 of them
        ("drops/long", "Cut 33 mm", "Cut 1 19/64 in"),  # 30 ÷ 0.91 is 32.97 mm, 1 and 19.1 sixty-fourths
        ("pendant", "disc of 22 mm", "disc of 55/64 in"),  # 20 ÷ 0.91 is 21.98 mm, 55.4 sixty-fourths
    ],
)
def test_numbers_in_inches_are_worked_afresh_and_not_turned_over_from_what_is_printed_in_mm(
    both: Any, design: str, mm: str, inches: str
) -> None:
    assert mm in words(page(both, f"{design}/index.html"))
    assert inches in words(page(both, f"{design}/{INCHES}"))


def test_no_page_has_lengths_in_two_units(both: Any) -> None:
    for path in in_inches(both.build):
        said = AS_NAMED.sub("", words(page(both, path)))
        assert re.findall(r".{0,30}\bmm\b.{0,20}", said) == [], path
        assert re.search(r"\d in\b", said), path
        own = AS_NAMED.sub("", words(page(both, path.replace(INCHES, "index.html"))))
        assert re.findall(r".{0,30}\d(?:/\d+)? in[ .,;].{0,10}", own) == [], path
        assert re.search(r"\d mm\b", own), path


def test_each_page_leads_to_the_same_in_the_other_unit_and_to_the_other_versions_in_its_own(both: Any) -> None:
    long = page(both, f"drops/long/{INCHES}")
    assert '<a href="index.html" data-unit="mm">' in long
    assert '<b data-unit="in">' in long
    assert f'<a href="{INCHES}" data-unit="in">' in page(both, "drops/long/index.html")
    assert f'href="../{INCHES}"' in long
    assert f'href="long/{INCHES}"' in page(both, f"drops/{INCHES}")
    for path in both.build.rglob("*.html"):
        for link in re.findall(r'<a [^>]*href="([^"#:]+)"', path.read_text("utf-8")):
            assert (path.parent / link).is_file(), f"{path}: {link}"


def test_a_page_in_inches_has_a_fingerprint_of_its_own_that_names_them_and_a_page_that_leads_to_it(both: Any) -> None:
    for folder in ("drops", "drops/long", "link", "pendant"):
        [mm], [inches] = (FOOT.findall(words(page(both, f"{folder}/{name}"))) for name in ("index.html", INCHES))
        assert (mm[1], inches[1]) == ("mm", "inches")
        assert mm[0] != inches[0]
        leads = page(both, f"{folder}/{inches[0].lower()}.html")
        assert f'content="0; url={INCHES}"' in leads
        assert 'content="0; url=index.html"' in page(both, f"{folder}/{mm[0].lower()}.html")


def test_a_design_without_a_length_has_another_fingerprint_in_inches_too(both: Any) -> None:
    both.write("talk/project.yaml", TALK)
    both.publish("talk")
    mm, inches = (FOOT.findall(words(page(both, f"talk/{name}")))[0] for name in ("index.html", INCHES))
    assert mm[0] != inches[0]


TALK = """\
title: A talk
revision: 1
date: 2026-01-10
summary: Only words.
makes: 1 talk
level: first piece
steps:
  - {title: Listen, minutes: 10 min, text: Sit and listen.}
"""


def test_an_edit_is_seen_in_both_units_and_no_other_design_is_touched(both: Any) -> None:
    before = {path: (both.build / path).stat().st_mtime_ns for path in in_inches(both.build)}
    both.change("pendant/project.yaml", "  width: 20 mm", "  width: 30 mm")
    both.publish()
    assert "disc of 33 mm" in words(page(both, "pendant/index.html"))
    assert "disc of 1 19/64 in" in words(page(both, f"pendant/{INCHES}"))  # 30 ÷ 0.91, as above
    assert "revision 1, changed" in words(page(both, f"pendant/{INCHES}"))
    touched = [path for path, moment in before.items() if (both.build / path).stat().st_mtime_ns != moment]
    assert touched == [f"pendant/{INCHES}"]
    outcome = both.publish()
    assert outcome.changed == []


def test_who_no_longer_asks_loses_the_pages_in_inches_and_all_that_belongs_to_them(both: Any, good: Any) -> None:
    both.change("studio.yaml", "pages in: [mm, in]\n", "")
    both.publish()
    files = ({str(p.relative_to(one.build)) for p in one.build.rglob("*") if p.is_file()} for one in (both, good))
    assert next(files) == next(files)


def test_a_studio_that_works_in_inches_has_its_other_pages_in_mm(both: Any) -> None:
    both.change("studio.yaml", "units: mm\n", "units: in\n")
    both.publish()
    assert in_inches(both.build) == []
    assert "disc of 55/64 in" in words(page(both, "pendant/index.html"))
    assert "disc of 22 mm" in words(page(both, "pendant/in-mm.html"))


def test_ledgers_are_the_same_with_pages_in_inches_and_nothing_is_told_to_have_moved(both: Any, good: Any) -> None:
    for design in ("drops", "link", "pendant"):
        path = f"projects/{design}/ledger/revision-1.json"
        assert (both.root / path).read_bytes() == (good.root / path).read_bytes()
    assert not both.publish().troubles.found


def test_a_fingerprint_in_inches_keeps_its_page_when_the_numbers_move_and_tells_them_in_inches(both: Any) -> None:
    [[code, _]] = FOOT.findall(words(page(both, f"pendant/{INCHES}")))
    both.change("pendant/project.yaml", "  width: 20 mm", "  width: 30 mm")
    both.change("pendant/project.yaml", "revision: 1\ndate: 2026-01-10", "revision: 2\ndate: 2026-02-20")
    both.publish()
    told = words(page(both, f"pendant/{code.lower()}.html"))
    assert f"Sheet {code} is old : revision 1, 2026-01-10." in told
    assert "55/64 in 1 19/64 in" in told
    assert not re.search(r"\d mm\b", told)
    assert f'href="{INCHES}"' in page(both, f"pendant/{code.lower()}.html")
    assert f'href="{code.lower()}.html"' in page(both, f"pendant/{INCHES}")
    assert f'href="{code.lower()}.html"' not in page(both, "pendant/index.html")


def test_words_that_say_a_length_themselves_hold_the_page_in_inches_back(both: Any) -> None:
    both.change("pendant/project.yaml", "expect: It is round.", "expect: It is round to 0.5 mm.")
    [told] = both.publish().troubles
    assert told.severity == "warning"
    assert told.message == "there is no page in inches: '0.5 mm' stays as it is written"
    assert told.help == "write {{ 0.5 mm }}, which each page tells in its own units"
    assert not (both.build / "pendant" / INCHES).exists()
    assert "data-units" not in page(both, "pendant/index.html")
    assert (both.build / "link" / INCHES).exists()
    both.change("pendant/project.yaml", "round to 0.5 mm", "round to {{ 0.5 mm }}")
    both.publish()
    assert "round to 0.02 in" in words(page(both, f"pendant/{INCHES}"))


def test_a_rule_that_only_inches_break_holds_their_page_back_and_no_other(both: Any) -> None:
    # printed as 22 mm, and as 55/64 in, which is 21.83 mm
    need = "checks:\n  - {need: plate.wet_disc >= 21.9 mm, say: The cutter is larger.}\nsteps:"
    both.change("pendant/project.yaml", "steps:", need)
    outcome = both.publish()
    [told] = outcome.troubles
    assert (told.severity, told.message) == ("warning", "there is no page in inches: The cutter is larger.")
    assert "pendant" in outcome.published
    assert "disc of 22 mm" in words(page(both, "pendant/index.html"))
    assert not (both.build / "pendant" / INCHES).exists()


@pytest.mark.parametrize(
    ("written", "told"),
    [
        ("[mm, ells]", "pages in cannot be 'ells'"),
        ("[in]", "the pages are in the studio's own units, mm, and may be in others besides, each named once"),
        ("[mm, mm]", "the pages are in the studio's own units, mm, and may be in others besides, each named once"),
    ],
)
def test_units_that_pages_cannot_be_in_are_told(library: Any, written: str, told: str) -> None:
    library.change("studio.yaml", "units: mm\n", f"units: mm\npages in: {written}\n")
    [trouble] = library.check().troubles.errors
    assert trouble.message == told
    assert trouble.place.line == 5


def test_for_who_searches_the_page_in_the_studio_s_own_units_stands_for_both(both: Any) -> None:
    both.change("studio.yaml", "currency: EUR\n", "currency: EUR\naddress: https://testbench.example/\n")
    both.publish()
    own = '<link rel="canonical" href="https://testbench.example/pendant/index.html">'
    assert own in page(both, "pendant/index.html")
    assert own in page(both, f"pendant/{INCHES}")
    assert "inches" not in (both.build / "sitemap.xml").read_text("utf-8")
