"""Who sees what: drafts and designs for classes are nowhere public, retired ones stay, teachers have theirs apart."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from pathlib import Path

pytestmark = pytest.mark.usefixtures("quick")
ADDRESS = "currency: EUR\naddress: https://testbench.example/sheets/\n"
HIDDEN = ("draft", "class only")


def ours(library: Any) -> Path:
    return library.root / "build-studio"  # type: ignore[no-any-return]


def say(library: Any, name: str, lines: str) -> None:
    library.change(f"{name}/project.yaml", "revision: 1\n", f"revision: 1\n{lines}\n")


def public_words(library: Any) -> str:
    """All that a host would have, but the record, which stays at home."""
    files = [path for path in library.build.rglob("*") if path.is_file() and path.name != ".published.json"]
    return " ".join(path.read_bytes().decode("utf-8", "replace") + str(path) for path in files)


@pytest.mark.parametrize("status", HIDDEN)
def test_a_draft_is_worked_and_printed_and_stands_nowhere_public(library: Any, status: str) -> None:
    library.change("studio.yaml", "currency: EUR\n", ADDRESS)
    say(library, "drops", f"status: {status}")
    outcome = library.publish()
    assert not list(outcome.troubles)
    assert "drops" in outcome.published
    assert not (library.build / "drops").exists()
    words = public_words(library)
    assert "Little drops" not in words
    assert "drops/" not in words
    assert {"index.html", "handout-a4.pdf", "teacher-a4.pdf", "figures.json", "long"} <= {
        path.name for path in (ours(library) / "drops").iterdir()
    }
    listed = (ours(library) / "index.html").read_text("utf-8")
    assert "Little drops" in listed
    assert status.capitalize() in listed
    page = (ours(library) / "drops" / "index.html").read_text("utf-8")
    assert "handout-a4.pdf" in page
    assert "testbench.example" not in page
    assert (ours(library) / "style.css").is_file()


def test_a_draft_keeps_no_ledger_and_one_that_is_public_does(library: Any) -> None:
    say(library, "drops", "status: draft")
    library.publish()
    assert not library.path("drops/ledger").exists()
    assert library.path("pendant/ledger/revision-1.json").is_file()


@pytest.mark.parametrize("status", HIDDEN)
def test_what_becomes_a_draft_loses_its_public_pages_and_gets_them_back(library: Any, status: str) -> None:
    library.publish()
    say(library, "drops", f"status: {status}")
    library.publish()
    assert not (library.build / "drops").exists()
    library.change("drops/project.yaml", f"status: {status}", "status: public")
    library.publish()
    assert (library.build / "drops" / "index.html").is_file()
    assert not ours(library).exists()


def test_a_draft_that_is_as_it_was_is_left_alone_and_one_whose_sheet_is_gone_is_made_again(library: Any) -> None:
    say(library, "drops", "status: draft")
    library.publish()
    again = library.publish()
    assert again.changed == []
    assert "drops" in again.published
    (ours(library) / "drops" / "handout-a4.pdf").unlink()
    assert library.publish().changed == ["build-studio/drops/handout-a4.pdf"]


def test_a_draft_whose_folder_is_gone_leaves_nothing(library: Any) -> None:
    say(library, "drops", "status: draft")
    library.publish()
    for path in sorted(library.path("drops").rglob("*"), reverse=True):
        path.rmdir() if path.is_dir() else path.unlink()
    library.path("drops").rmdir()
    library.publish()
    assert not ours(library).exists()


def test_a_teachers_sheet_is_the_studios_unless_the_studio_says_otherwise(library: Any) -> None:
    library.change("studio.yaml", "teacher's sheets: public\n", "")
    library.publish()
    assert not list(library.build.rglob("teacher-*"))
    assert "eacher" not in (library.build / "drops" / "index.html").read_text("utf-8")
    assert sorted(str(path.relative_to(ours(library))) for path in ours(library).rglob("drops/**/*.pdf")) == [
        "drops/long/teacher-a4.pdf", "drops/long/teacher-letter.pdf",
        "drops/teacher-a4.pdf", "drops/teacher-letter.pdf",
    ]  # fmt: skip
    assert library.publish().changed == []
    library.change("studio.yaml", "currency: EUR\n", "currency: EUR\nteacher's sheets: public\n")
    library.publish()
    assert (library.build / "drops" / "teacher-a4.pdf").is_file()
    assert not ours(library).exists()


def test_a_retired_design_keeps_page_and_sheets_says_so_and_leads_on(library: Any) -> None:
    library.change("studio.yaml", "currency: EUR\n", ADDRESS)
    say(library, "drops", "status: retired\ninstead: pendant")
    assert not list(library.publish().troubles)
    page = (library.build / "drops" / "index.html").read_text("utf-8")
    assert "No longer offered." in page
    assert '<a href="../pendant/index.html">Round pendant</a>' in page
    long = (library.build / "drops" / "long" / "index.html").read_text("utf-8")
    assert '<a href="../../pendant/index.html">Round pendant</a>' in long
    assert (library.build / "drops" / "handout-a4.pdf").is_file()
    assert "/drops/index.html" in (library.build / "sitemap.xml").read_text("utf-8")


def test_one_that_leads_on_says_how_the_other_is_called_now(library: Any) -> None:
    say(library, "drops", "status: retired\ninstead: pendant")
    library.publish()
    library.change("pendant/project.yaml", "title: Round pendant", "title: Flat pendant")
    library.publish()
    assert "Flat pendant" in (library.build / "drops" / "index.html").read_text("utf-8")


def test_one_that_leads_on_to_what_is_gone_is_told(library: Any) -> None:
    say(library, "drops", "status: retired\ninstead: pendant")
    library.publish()
    library.path("pendant").rename(library.path("disc"))
    [told] = library.publish().troubles.errors
    assert "there is no design 'pendant'" in told.message
    assert told.place.line == 4


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        ("status: hidden", "status cannot be 'hidden'"),
        ("instead: pendant", "only a retired design leads on to another"),
        ("status: draft\ninstead: pendant", "only a retired design leads on to another"),
        ("status: retired\ninstead: drops", "a design cannot lead on to itself"),
        ("status: retired\ninstead: pendent", "there is no design 'pendent'"),
        ("status: retired\ninstead: ../pendant", "there is no design '../pendant'"),
    ],
)
def test_a_status_that_cannot_be_is_told(library: Any, lines: str, told: str) -> None:
    say(library, "drops", lines)
    outcome = library.publish()
    assert [told in one.message for one in outcome.troubles.errors] == [True]
    assert outcome.failed == ["drops"]


@pytest.mark.parametrize("status", ["draft", "class only", "retired"])
def test_nobody_is_led_to_what_nobody_is_to_see(library: Any, status: str) -> None:
    say(library, "pendant", f"status: {status}")
    say(library, "drops", "status: retired\ninstead: pendant")
    [told] = library.check().troubles.errors
    assert "and nobody is led there" in told.message
    assert [told.message] == [one.message for one in library.check("drops").troubles.errors]


def test_a_word_of_the_studio_about_teachers_sheets_that_cannot_be_is_told(library: Any) -> None:
    library.change("studio.yaml", "teacher's sheets: public\n", "teacher's sheets: everybody\n")
    [told] = library.check().troubles.errors
    assert "teacher's sheets cannot be 'everybody'" in told.message


def test_the_pages_of_a_draft_are_in_no_list_of_what_the_library_has(library: Any) -> None:
    say(library, "drops", "status: draft")
    library.publish()
    record = json.loads((library.build / ".published.json").read_text("utf-8"))
    assert record["projects"]["drops"]["files"] == {}
    assert record["projects"]["drops"]["ours"]
