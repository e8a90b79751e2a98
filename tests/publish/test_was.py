"""What a design or a version was called: its old address leads on, and an address leads to one page."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from pathlib import Path

pytestmark = pytest.mark.usefixtures("quick")
TITLE = "title: Round pendant\n"


def leads(page: Path) -> Any:
    """Where a page leads, by itself and by its link."""
    text = page.read_text("utf-8")
    [by_itself] = re.findall(r'http-equiv="refresh" content="0; url=([^"]+)"', text)
    assert f'href="{by_itself}"' in text
    assert "noindex" in text
    return (page.parent / by_itself).resolve()


def renamed(library: Any, old: str, new: str) -> None:
    library.path(old).rename(library.path(new))
    path = f"{new}/project.yaml"
    library.write(path, library.path(path).read_text("utf-8").replace("revision: 1\n", f"revision: 1\nwas: {old}\n"))


def test_a_renamed_design_leaves_pages_that_lead_on_from_each_of_its_own(library: Any) -> None:
    library.publish()
    before = {path.relative_to(library.build) for path in (library.build / "drops").rglob("*.html")}
    assert len(before) > 3  # two versions, and a page of each fingerprint
    renamed(library, "drops", "tubes")
    outcome = library.publish()
    assert not list(outcome.troubles)
    after = {path.relative_to(library.build) for path in (library.build / "drops").rglob("*")}
    assert {path for path in after if path.suffix} == before
    for path in before:
        assert leads(library.build / path) == library.build / "tubes" / path.relative_to("drops")
    again = library.publish()
    assert not again.changed
    assert again.alone


def test_what_was_printed_under_its_old_name_is_still_known(library: Any) -> None:
    library.publish("pendant")
    code = f"{library._sheets('pendant', 'main').code.lower()}.html"
    renamed(library, "pendant", "disc")
    library.change("disc/project.yaml", "width: 20 mm", "width: 30 mm")
    library.change("disc/project.yaml", "revision: 1\n", "revision: 2\n")
    assert not list(library.publish().troubles)
    assert "is old" in (library.build / "disc" / code).read_text("utf-8")
    assert leads(library.build / "pendant" / code) == library.build / "disc" / code


def test_when_the_old_name_is_taken_out_its_pages_go_and_the_designs_stay(library: Any) -> None:
    renamed(library, "pendant", "disc")
    library.publish()
    library.change("disc/project.yaml", "was: pendant\n", "")
    library.publish()
    assert not (library.build / "pendant").exists()
    assert (library.build / "disc" / "index.html").is_file()


def test_a_design_that_gets_its_old_name_back_has_its_pages_and_none_is_lost(library: Any) -> None:
    renamed(library, "pendant", "disc")
    library.publish()
    library.path("disc").rename(library.path("pendant"))
    library.change("pendant/project.yaml", "was: pendant\n", "was: disc\n")
    outcome = library.publish()
    assert not list(outcome.troubles)
    assert 'id="steps"' in (library.build / "pendant" / "index.html").read_text("utf-8")
    assert leads(library.build / "disc" / "index.html") == library.build / "pendant" / "index.html"


def test_a_renamed_version_leaves_a_page_that_leads_on(library: Any) -> None:
    library.change("drops/project.yaml", "  - name: Long\n", "  - name: Tall\n    was: Long\n")
    assert not list(library.publish().troubles)
    assert leads(library.build / "drops" / "long" / "index.html") == library.build / "drops" / "tall" / "index.html"


def test_the_list_of_pages_names_none_that_only_leads_on(library: Any) -> None:
    library.change("studio.yaml", "currency: EUR\n", "currency: EUR\naddress: https://testbench.example/sheets/\n")
    renamed(library, "pendant", "disc")
    library.publish()
    listed = (library.build / "sitemap.xml").read_text("utf-8")
    assert "/disc/index.html" in listed
    assert "/pendant/" not in listed
    page = (library.build / "pendant" / "index.html").read_text("utf-8")
    assert '<link rel="canonical" href="https://testbench.example/sheets/disc/index.html">' in page


@pytest.mark.parametrize(
    ("was", "told"),
    [
        ("link", "'link' is another design"),
        ("pendant", "what it is called now"),
        ("Old Name", "small letters and digits"),
        ("../x", "small letters and digits"),
        ("con", "take that for a device"),
        ("fonts", "the pages of the library have that name"),
        ("[a, drops]", "'drops' is another design"),
        ("' '", "nothing in it"),
    ],
)
def test_an_old_name_that_cannot_lead_on_is_told_at_its_word(was: str, told: str, library: Any) -> None:
    library.change("pendant/project.yaml", TITLE, f"{TITLE}was: {was}\n")
    [trouble] = library.publish().troubles.errors
    assert told in f"{trouble.message} {trouble.help}"
    assert str(trouble.place).startswith("projects/pendant/project.yaml:2")
    assert (library.build / "drops").is_dir()


@pytest.mark.parametrize("alone", [False, True])
def test_two_designs_that_were_called_alike_are_told(library: Any, *, alone: bool) -> None:
    library.change("link/project.yaml", "title: Wire link\n", "title: Wire link\nwas: [hoop, disc]\n")
    library.change("pendant/project.yaml", TITLE, f"{TITLE}was:\n  - disc\n")
    [trouble] = library.publish(*(["pendant"] if alone else [])).troubles.errors
    assert "link was called 'disc' too" in trouble.message


def test_a_new_design_at_an_address_that_leads_on_is_told_and_the_address_still_leads(library: Any) -> None:
    renamed(library, "pendant", "disc")
    library.publish()
    library.write("pendant/project.yaml", library.path("disc/project.yaml").read_text("utf-8").replace("Round", "New"))
    library.change("pendant/project.yaml", "was: pendant\n", "")
    [trouble] = library.publish("pendant").troubles.errors
    assert "the name that disc was called" in trouble.message
    assert leads(library.build / "pendant" / "index.html") == library.build / "disc" / "index.html"
    [trouble] = library.publish().troubles.errors
    assert "the name that disc was called" in trouble.message


@pytest.mark.parametrize(
    ("was", "told"),
    [("As designed", ""), ("Short", ""), ("Long", "that of another version"), ("Index", "no version was ever called")],
)
def test_an_old_name_of_a_version_leads_on_from_nobody_elses_page(was: str, told: str, library: Any) -> None:
    library.change("drops/project.yaml", "    height: 30 mm\n", f"    height: 30 mm\n    was: {was}\n")
    found = [trouble.message for trouble in library.publish("drops").troubles.errors]
    assert (told in found[0]) if told else not found
