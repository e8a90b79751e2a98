"""The ledger of printed numbers beside a design: written once a revision, and what differs from it is told."""

from __future__ import annotations

import json
import re
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.model.ledger import file_name
from sheetgen.publish.record import RECORD

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

pytestmark = pytest.mark.usefixtures("quick")
PENDANT = "pendant/project.yaml"


def ledger(library: Any, revision: str = "1", design: str = "pendant") -> Path:
    path: Path = library.path(f"{design}/ledger/{file_name(revision)}")
    return path


def told(outcome: Any) -> list[str]:
    return [str(trouble) for trouble in outcome.troubles]


def wider(library: Any, old: str = "20 mm", new: str = "24 mm") -> None:
    library.change(PENDANT, f"width: {old}", f"width: {new}")


def test_the_first_publication_of_a_revision_writes_its_printed_numbers_beside_the_design(library: Any) -> None:
    outcome = library.publish()
    kept = json.loads(ledger(library).read_text("utf-8"))
    figures = json.loads((library.build / "pendant/figures.json").read_text("utf-8"))["versions"]["main"]
    printed = {key: f"{one['printed']['words']} {one['printed']['unit']}".strip() for key, one in figures.items()}
    plain = {key: words.replace("\u00a0", " ").replace("\u202f", "") for key, words in printed.items()}
    main = kept["versions"]["main"]
    assert {key: words for key, (_, words) in main["numbers"]["figures"].items()} == plain
    # 22 mm across, 1 mm thick, 7 g/cm³: 2.66 g, and 15 % more 3.06 g, up to the next half
    assert main["numbers"]["lists"]["silver"] == ["Test silver", "3.5 g"]
    assert (kept["design"], kept["revision"], kept["date"]) == ("pendant", "1", "2026-01-10")
    assert sorted(outcome.kept) == [f"projects/{one}/ledger/revision-1.json" for one in ("drops", "link", "pendant")]


def test_a_ledger_is_written_once_and_never_again(library: Any) -> None:
    library.publish("pendant")
    before = ledger(library).read_bytes()
    wider(library)
    outcome = library.publish("pendant")
    assert outcome.published == ["pendant"]
    assert outcome.kept == []
    assert ledger(library).read_bytes() == before


def test_the_same_revision_with_other_numbers_is_told_and_its_sheets_say_changed(library: Any) -> None:
    library.publish("pendant")
    wider(library)
    [said] = told(library.publish("pendant"))
    assert "warning: revision 1 was published with other numbers: " in said
    assert "Plate: disc, cut wet, was 22 mm, is 26.4 mm" in said
    assert re.search(r"; and \d+ more\n", said)
    assert said.count(", was ") == 5
    page = (library.build / "pendant/index.html").read_text("utf-8").replace("\u2060", "")
    assert "revision 1, changed, 2026-01-10 · " in page


def test_the_next_revision_has_a_ledger_of_its_own_and_nothing_is_changed_in_it(library: Any) -> None:
    library.publish("pendant")
    wider(library)
    library.change(PENDANT, "revision: 1", "revision: 2")
    assert told(library.publish("pendant")) == []
    assert ledger(library, "2").is_file()
    page = (library.build / "pendant/index.html").read_text("utf-8").replace("\u2060", "")
    assert "revision 2, 2026-01-10 · " in page
    assert "changed" not in page


def test_of_several_versions_only_the_one_that_moved_is_changed(library: Any) -> None:
    library.publish("drops")
    library.change("drops/project.yaml", "    height: 30 mm", "    height: 30 mm\n    bore: 8.4 mm")
    [said] = told(library.publish("drops"))
    assert "with other numbers: in Long: " in said
    main, long = ((library.build / f"drops/{at}index.html").read_text("utf-8") for at in ("", "long/"))
    assert "changed" not in main
    assert "revision 1, changed, " in long


def test_a_version_that_is_added_dropped_or_called_anew_is_told_as_that(library: Any) -> None:
    library.publish("drops")
    library.change("drops/project.yaml", "- name: Long", "- name: Tall")
    assert told(library.publish("drops")) == []  # the same numbers under another name
    library.change("drops/project.yaml", "- name: Tall\n    height: 30 mm", "- name: Short\n    height: 18 mm")
    [said] = told(library.publish("drops"))
    assert "version Short is new; version Long is gone" in said


def test_where_nothing_can_be_written_beside_the_designs_that_is_said_once_and_all_is_published(library: Any) -> None:
    for design in ("pendant", "link", "drops"):
        library.write(f"{design}/ledger", "in the way of the folder")
    outcome = library.publish()
    assert sorted(outcome.published) == ["drops", "link", "pendant"]
    [said] = told(outcome)
    assert said.startswith(
        "warning: what is printed today cannot be kept in projects/ (File exists): drops, link, pendant"
    )


@pytest.mark.parametrize(
    "revision", ["2", "2026-a", "../../out", "/etc/x", "CON", "2026/03", "Ä", "Größe 2", "2A", "a" * 300, "..", "第二"]
)
def test_whatever_a_revision_is_called_its_ledger_is_a_plain_file_in_its_folder(library: Any, revision: str) -> None:
    library.change(PENDANT, "revision: 1", f"revision: {json.dumps(revision, ensure_ascii=False)}")
    library.publish("pendant")
    [path] = library.path("pendant/ledger").iterdir()
    assert re.fullmatch(r"revision-[a-z0-9-]{1,60}\.json", path.name)
    wider(library)
    assert "with other numbers" in told(library.publish("pendant"))[0]  # it is found again


def test_revisions_that_differ_by_a_capital_or_a_sign_have_files_of_their_own() -> None:
    names = [file_name(revision) for revision in ("2a", "2A", "2.a", "2/a", "2-a", "ä", "a")]
    assert len({name.lower() for name in names}) == len(names)


WHOLE = '"fingerprint": "'
SPOILT: dict[str, tuple[Callable[[str], str], str]] = {
    "no JSON": (lambda text: text.replace('"design":', "design:"), "2:2: warning: the ledger is not JSON"),
    "cut short": (lambda text: text[: len(text) // 2], "warning: the ledger is not JSON"),
    "empty": (lambda _text: "", "1:1: warning: the ledger is not JSON"),
    "a list": (lambda _text: "[1, 2]", "warning: this ledger cannot be used"),
    "brackets without end": (lambda _text: "[" * 100_000, "warning: the ledger is not one of ours"),
    "a number of 10,000 figures": (lambda _text: "9" * 10_000, "warning: the ledger is not one of ours"),
    "no versions": (lambda text: text.replace('"versions"', '"verses"'), "its versions must be names"),
    "a number as a number": (lambda text: text.replace('"22 mm"]', "22]"), "a number's word must be text"),
    "three words": (lambda text: text.replace('"22 mm"]', '"22 mm", ""]'), "a number is two words"),
    "half a letter": (lambda text: text.replace('"22 mm"]', '"\\ud800"]'), "a number's word must be text"),
    "a line break": (lambda text: text.replace('"22 mm"]', '"22\\nmm"]'), "a number's word must be text"),
    "edited by hand": (lambda text: text.replace('"22 mm"]', '"23 mm"]'), "are not those of its fingerprint"),
    "a path as a fingerprint": (
        lambda text: re.sub(WHOLE + ".{6}", WHOLE + "../../", text), "are not those of its fingerprint"
    ),
    "another design": (lambda text: text.replace('"pendant"', '"brooch"'), "2:2: warning: this ledger cannot be used:"),
    "another revision": (lambda text: text.replace('"revision": "1"', '"revision": "7"'), "would lie in revision-7."),
    "a name without end": (lambda text: text.replace('"main": {', f'"{"x" * 300}": {{'), "is too long for a folder"),
    "no date": (lambda text: text.replace("2026-01-10", "soon"), "4:2: warning: this ledger cannot be used: its date"),
    "prices as a list": (lambda text: text.replace('"prices": {}', '"prices": []'), "'prices' must be names"),
    "a price as a number": (
        lambda text: text.replace('"prices": {}', '"prices": {"silver, 25 g": ["Silver", 38]}'),
        "a number's word must be text",
    ),
    "kits as a list": (lambda text: text.replace('"kits": {', '"kits": [], "other": {'), "the kits of a version must"),
    "a colourway's kits as names": (lambda text: text.replace('"": [{}]', '"": {}'), "of a colourway are a list"),
    "no plain kit": (lambda text: text.replace('"kit":', '"kitt":'), "'kit' must be names"),
    "the teacher's as a word": (
        lambda text: re.sub(r'("the teacher\'s alone": \{\n\s+"\w+": )\[.*\]', r'\1"all"', text),
        "of the teacher's sheet are a list",
    ),
    "another group": (lambda text: text.replace('"figures"', '"figs"'), "'figs' is no group of numbers"),
}  # fmt: skip


@pytest.mark.parametrize("spoilt", SPOILT)
def test_a_spoilt_ledger_is_told_with_its_file_and_line_and_stops_no_sheet(library: Any, spoilt: str) -> None:
    library.publish("pendant")
    spoil, expected = SPOILT[spoilt]
    before = ledger(library).read_text("utf-8")
    after = spoil(before)
    assert after != before
    ledger(library).write_text(after, "utf-8")
    outcome = library.publish("pendant")
    assert outcome.published == ["pendant"]
    [said] = told(outcome)
    assert said.startswith("projects/pendant/ledger/revision-1.json:")
    assert expected in said
    assert "help: " in said
    assert ledger(library).read_text("utf-8") == after


def test_a_ledger_too_large_or_not_to_be_read_is_told(library: Any) -> None:
    library.publish("pendant")
    ledger(library).write_bytes(b" " * 10_000_001)
    assert "is 10.0 MB long" in told(library.publish("pendant"))[0]
    ledger(library).write_bytes(b"\xff\xfe\x00")
    assert "the file is not" in told(library.publish("pendant"))[0]


def test_a_folder_of_ledgers_that_cannot_be_read_stops_no_sheet(library: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    library.publish("pendant")

    def refused(*_what: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("sheetgen.read.ledgers.sorted", refused, raising=False)
    (library.build / RECORD).unlink()
    outcome = library.publish("pendant")
    assert outcome.published == ["pendant"]
    assert "projects/pendant/ledger:1:1: warning: the folder of the ledgers cannot be read" in told(outcome)[0]


def test_a_ledger_is_neither_read_nor_written_through_a_link_to_elsewhere(library: Any, tmp_path: Path) -> None:
    library.publish("pendant")
    outside = tmp_path / "outside"
    ledger(library).parent.rename(outside)
    library.path("pendant/ledger").symlink_to(outside)
    library.change(PENDANT, "revision: 1", "revision: 2")
    assert "is a link to one elsewhere" in told(library.publish("pendant"))[-1]
    assert [path.name for path in outside.iterdir()] == ["revision-1.json"]
