"""Where the fingerprint on a printed sheet leads: to the present sheet, or to what differs now."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.kits.coded import code_of_kit, page_of_kit
from sheetgen.kits.taken import Kits
from sheetgen.model.printed import code_of

if TYPE_CHECKING:
    from pathlib import Path

pytestmark = pytest.mark.usefixtures("quick")


def codes(library: Any, design: str, revision: str) -> dict[str, str]:
    told = json.loads(library.path(f"{design}/ledger/revision-{revision}.json").read_text("utf-8"))
    return {name: version["fingerprint"].lower() for name, version in told["versions"].items()}


def page(library: Any, path: str) -> str:
    text: str = (library.build / path).read_text("utf-8")
    return text


def links(library: Any, path: str) -> list[Path]:
    here = (library.build / path).parent
    return [(here / href).resolve() for href in re.findall(r'href="(?!data:)([^"#]+)"', page(library, path))]


def anew(library: Any, design: str, old: str, new: str) -> None:
    library.publish(design)
    library.change(f"{design}/project.yaml", old, new)
    library.change(f"{design}/project.yaml", "revision: 1", "revision: 2")
    library.publish(design)


def test_an_old_fingerprint_says_that_its_sheet_is_old_and_lists_was_and_is(library: Any, libraries: Any) -> None:
    anew(library, "pendant", "width: 20 mm", "width: 24 mm")
    old = codes(library, "pendant", "1")["main"]
    said = libraries.said(page(library, f"pendant/{old}.html"))
    assert f"Sheet {old.upper()} is old: revision 1, 2026-01-10." in said
    assert "Plate: disc, cut wet 22 mm 26.4 mm" in said
    assert "Go to the present sheet: revision 2, 2026-01-10" in said
    assert "<script" not in page(library, f"pendant/{old}.html")


def test_the_present_fingerprint_leads_to_the_present_sheet(library: Any) -> None:
    library.publish("drops")
    now = codes(library, "drops", "1")
    for path in (f"drops/{now['main']}.html", f"drops/long/{now['Long']}.html"):
        assert 'content="0; url=index.html"' in page(library, path)
        assert ((library.build / path).parent / "index.html").resolve() in links(library, path)


def test_every_link_of_every_page_of_a_fingerprint_leads_to_a_file(library: Any) -> None:
    anew(library, "drops", "- name: Long\n    height: 30 mm", "- name: Short\n    height: 18 mm")
    library.publish()
    old = codes(library, "drops", "1")
    for path in (f"drops/{old['main']}.html", f"drops/long/{old['Long']}.html"):
        assert [link for link in links(library, path) if not link.is_file()] == []


def test_the_sheet_of_a_version_that_is_no_longer_made_leads_to_the_design(library: Any, libraries: Any) -> None:
    anew(library, "drops", "- name: Long\n    height: 30 mm", "- name: Short\n    height: 18 mm")
    path = f"drops/long/{codes(library, 'drops', '1')['Long']}.html"
    assert "This version is no longer made. Go to the design: revision 2" in libraries.said(page(library, path))
    assert (library.build / "drops/index.html").resolve() in links(library, path)


def test_the_sheet_of_a_version_that_is_called_anew_says_what_it_is_called_now(library: Any, libraries: Any) -> None:
    library.publish("drops")
    library.change("stock/others.yaml", "pack: 12 mL", "pack: 14 mL")  # no sheet prints it
    anew(library, "drops", "- name: Long\n    height: 30 mm", "- name: Tall\n    height: 30 mm")
    path = f"drops/long/{codes(library, 'drops', '1')['Long']}.html"
    assert (library.build / "drops/tall/index.html").resolve() in links(library, path)
    assert "This version is now called Tall." in libraries.said(page(library, path))


def test_a_page_leads_to_what_was_printed_before_with_other_numbers(library: Any) -> None:
    anew(library, "pendant", "width: 20 mm", "width: 24 mm")
    old, new = (codes(library, "pendant", revision)["main"] for revision in ("1", "2"))
    there = links(library, "pendant/index.html")
    assert (library.build / f"pendant/{old}.html").resolve() in there
    assert (library.build / f"pendant/{new}.html").resolve() not in there


def test_a_sheet_of_the_revision_as_it_was_before_it_was_changed_keeps_its_page(library: Any, libraries: Any) -> None:
    library.publish("pendant")
    library.change("pendant/project.yaml", "width: 20 mm", "width: 24 mm")
    library.publish("pendant")
    said = libraries.said(page(library, f"pendant/{codes(library, 'pendant', '1')['main']}.html"))
    assert "is old: revision 1, 2026-01-10." in said
    assert "Go to the present sheet: revision 1, changed, 2026-01-10" in said


def test_a_design_is_found_by_the_codes_of_its_sheets_the_old_one_too(library: Any) -> None:
    library.publish("pendant")
    first = codes(library, "pendant", "1")["main"]
    library.change("pendant/project.yaml", "width: 20 mm", "width: 24 mm")
    library.publish("pendant")
    [told] = re.findall(r'"([0-9a-z ]+)"\]\]\}', page(library, "library/designs.js"))
    own = {path.stem for path in (library.build / "pendant").glob("??????.html")}
    assert first in own
    assert set(told.split()) == own
    assert len(own) > 1


COLOURS = """\
colourways:
  of: stone
  grey sea: "1 glass-2 : 1 glass-2-smoke"
versions:
"""
SMOKE = """\
  glass-2-smoke:
    name: Glass stone, 2 mm, smoke
    size: 1.95-2 mm
    height: 1.5 mm
    kiln: no
    sources:
      size: invented
findings:
"""


def coloured(library: Any) -> Any:
    """The drops in a colourway, as they are worked now."""
    library.change("stock/others.yaml", "findings:\n", SMOKE)
    library.change("drops/project.yaml", "versions:\n", COLOURS)
    return library.worked("drops")


def test_a_kit_in_a_colourway_has_a_fingerprint_and_a_page_of_its_own_that_says_when_its_counts_have_moved(
    library: Any, libraries: Any
) -> None:
    worked = coloured(library)
    [main, long] = worked.versions.values()
    kits = Kits(worked, long, 1, (), long.colourways[0], posted=True)
    old = code_of_kit(kits)
    others = {code_of(worked, main), code_of(worked, long), code_of_kit(replace(kits, version=main)), old}
    assert len(others) == 4
    library.publish("drops")
    present = page(library, f"drops/long/{old.lower()}.html")
    assert "refresh" not in present  # no sheet of the site names its colours: the page tells them, and stays
    assert re.search(r"Glass stone, 2 mm, smoke: \d+", libraries.said(present))
    assert 'href="index.html">Go to the sheet of the version' in present
    assert present.index("Go to the sheet") < present.index("<li>")  # all that the list is of comes after it
    anew(library, "drops", '"1 glass-2 : 1 glass-2-smoke"', '"5 glass-2 : 1 glass-2-smoke"')
    assert code_of(library.worked("drops"), library.worked("drops").versions["Long"]) == code_of(worked, long)
    said = libraries.said(page(library, f"drops/long/{old.lower()}.html"))
    assert f"Sheet {old} is old: revision 1, 2026-01-10." in said
    assert "Little drops, Long, grey sea" in said
    assert re.search(r"Glass stone, 2 mm, smoke \d+\+1 \d+\+1", said)
    assert f"{old}, Long, grey sea: revision 1, 2026-01-10" in libraries.said(page(library, "drops/long/index.html"))


def test_the_address_of_a_code_is_that_of_a_page_that_is_published(library: Any) -> None:
    library.change("studio.yaml", "currency: EUR\n", "currency: EUR\naddress: https://testbench.example/sheets\n")
    worked = coloured(library)
    library.publish("drops")
    for version in worked.versions.values():
        for way in (None, version.colourways[0]):
            kits = Kits(worked, version, 1, (), way, posted=True)
            address = page_of_kit(worked, kits, code_of_kit(kits))
            path = address.removeprefix("https://testbench.example/sheets/")
            assert path != address
            assert (library.build / path).is_file()
        chosen = Kits(worked, version, 1, (("bore", "9 mm"),), posted=True)
        assert page_of_kit(worked, chosen, code_of_kit(chosen)) == ""  # no page tells what was ordered
        stones, clay = (
            Kits(worked, version, 1, leave_out=frozenset({one}), posted=True) for one in ("glass-2", "silver")
        )
        assert page_of_kit(worked, stones, code_of_kit(stones)) != ""  # as many, now from the bench: the same numbers
        assert page_of_kit(worked, clay, code_of_kit(clay)) == ""  # of one's own clay what is used is printed too


def test_without_an_address_of_the_studio_a_code_leads_nowhere_and_with_one_no_byte_of_a_sheet_is_another(
    library: Any,
) -> None:
    worked = library.worked("drops")
    kits = Kits(worked, worked.main, 1, posted=True)
    assert page_of_kit(worked, kits, code_of_kit(kits)) == ""
    library.publish("drops")
    before = _sheets(library)
    library.change("studio.yaml", "currency: EUR\n", "currency: EUR\naddress: https://testbench.example/sheets/\n")
    library.publish("drops")
    assert before == _sheets(library)


def _sheets(library: Any) -> dict[Path, bytes]:
    return {path: path.read_bytes() for path in library.build.rglob("*.pdf")}
