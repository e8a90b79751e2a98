"""What nothing has changed of is left alone and told as before; all else is as if everything were published anew."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.pipeline import work_one
from sheetgen.publish.record import RECORD
from sheetgen.publishing import Wanted, published
from sheetgen.render.library import library as own_pages
from sheetgen.render.top import page as page_of

if TYPE_CHECKING:
    from sheetgen.render.job import Job, Printout

ROOT = Path(__file__).parents[2]
HEAVY = ("pydantic", "lark", "weasyprint", "jinja2", "yaml")


@pytest.fixture
def jobs(monkeypatch: pytest.MonkeyPatch, libraries: Any) -> list[str]:
    """The sheets that were printed since, each by the name of its first file."""
    asked: list[str] = []

    class Counts(libraries.QuickPool):  # type: ignore[misc]  # found by its path
        def printed(self, jobs: list[Job]) -> list[list[Printout]]:
            asked.extend(job.papers[0].name for job in jobs)
            printouts: list[list[Printout]] = super().printed(jobs)
            return printouts

    monkeypatch.setattr("sheetgen.render.pdf_pool.PdfPool", Counts)
    return asked


def again(jobs: list[str], library: Any, *only: str) -> list[str]:
    jobs.clear()
    library.publish(*only)
    return sorted(jobs)


def files_of(root: Path) -> dict[str, bytes]:
    return {str(p.relative_to(root)): p.read_bytes() for p in root.rglob("*") if p.is_file() and p.name != RECORD}


def test_where_nothing_has_changed_nothing_is_printed_and_all_is_counted(jobs: list[str], library: Any) -> None:
    first = library.publish()
    assert jobs
    assert again(jobs, library) == []
    second = library.publish()
    assert sorted(second.published) == sorted(first.published)
    assert second.alone == sum(path.endswith(".pdf") for path in files_of(library.build))


def test_where_nothing_has_changed_nothing_heavy_is_even_loaded(library: Any) -> None:
    library.publish("link")
    told = (
        "import sys; from pathlib import Path; from sheetgen import publishing;"
        f"done = publishing.publish(Path({str(library.root)!r}), Path({str(library.build)!r}), ['link']);"
        f"print(done.published, [name for name in {HEAVY!r} if name in sys.modules])"
    )
    ran = subprocess.run([sys.executable, "-c", told], capture_output=True, check=True, cwd=ROOT, text=True)
    assert ran.stdout.strip() == "['link'] []"


def test_a_file_that_was_only_touched_prints_nothing(jobs: list[str], library: Any) -> None:
    library.publish()
    for path in (library.path("drops/project.yaml"), library.build / "drops" / "index.html"):
        os.utime(path, (1, 1))
    assert again(jobs, library) == []


def test_a_sheet_that_was_taken_away_comes_back_and_no_other_is_printed(jobs: list[str], library: Any) -> None:
    library.publish()
    before = files_of(library.build)
    (library.build / "drops/bench-card-a4.pdf").unlink()
    assert again(jobs, library) == ["drops/bench-card-a4.pdf"]
    assert files_of(library.build) == before


def test_a_sheet_that_a_hand_has_changed_is_made_as_it_was(jobs: list[str], library: Any) -> None:
    library.publish()
    before = files_of(library.build)
    spoilt = library.build / "drops/long/handout-a4.pdf"
    spoilt.write_bytes(b"%PDF, spoilt")
    assert again(jobs, library) == ["drops/long/handout-a4.pdf"]
    assert files_of(library.build) == before


def test_a_page_of_the_library_that_was_taken_away_comes_back(jobs: list[str], library: Any) -> None:
    library.publish()
    (library.build / "index.html").unlink()
    assert again(jobs, library) == []
    assert (library.build / "index.html").is_file()


def test_a_word_of_one_design_prints_sheets_of_no_other(jobs: list[str], library: Any) -> None:
    library.publish()
    library.change("pendant/project.yaml", "revision: 1", "revision: 2")
    printed = again(jobs, library)
    assert printed
    assert all(name.startswith("pendant/") for name in printed)


def test_a_word_that_one_version_has_prints_the_sheets_of_that_version_that_show_it(
    jobs: list[str], library: Any
) -> None:
    library.publish()
    library.change("drops/project.yaml", "height: 30 mm", "height: 28 mm")
    printed = again(jobs, library)
    assert "drops/long/handout-a4.pdf" in printed
    assert not [name for name in printed if name.count("/") == 1 and "teacher" not in name], "the main one is as it was"


def test_what_was_told_of_a_design_is_told_again_word_for_word(jobs: list[str], library: Any) -> None:
    library.change("drops/project.yaml", "kind: tube", "kind: tubbe")
    first = library.publish()
    assert first.troubles.errors
    second = library.publish()
    assert jobs
    assert list(map(str, second.troubles.gathered())) == list(map(str, first.troubles.gathered()))
    assert (second.failed, sorted(second.published)) == (first.failed, sorted(first.published))


def test_a_design_in_trouble_is_looked_at_again_as_soon_as_anything_is_mended(library: Any) -> None:
    library.change("drops/project.yaml", "kind: tube", "kind: tubbe")
    library.publish()
    library.change("drops/project.yaml", "kind: tubbe", "kind: tube")
    assert "drops" in library.publish().published


def test_two_designs_of_one_title_are_both_held_back_though_one_was_not_touched(library: Any) -> None:
    library.publish()
    library.change("pendant/project.yaml", "title: Round pendant", "title: Little  DROPS")
    assert sorted(library.publish().failed) == ["drops", "pendant"]
    library.change("pendant/project.yaml", "title: Little  DROPS", "title: Round pendant")
    assert library.publish().failed == []


@pytest.fixture
def worked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The designs that were worked since, by name."""
    names: list[str] = []

    def counted(filed: Any, *more: Any) -> Any:
        names.append(filed.name)
        return work_one(filed, *more)

    monkeypatch.setattr("sheetgen.publishing_one.work_one", counted)
    return names


def worked_again(worked: list[str], library: Any) -> list[str]:
    worked.clear()
    library.publish()
    return sorted(worked)


ALL = ["drops", "link", "pendant"]


def test_a_remark_in_the_stock_works_no_design_and_the_run_after_it_reads_no_stock(
    jobs: list[str], worked: list[str], library: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = library.publish()
    library.change("stock/others.yaml", "wires:", "# looked over\n\nwires:")
    assert worked_again(worked, library) == []
    assert again(jobs, library) == []
    monkeypatch.setattr("sheetgen.read.library.read_shared", None)
    last = library.publish()
    assert sorted(last.published) == sorted(first.published)
    assert last.alone == sum(path.endswith(".pdf") for path in files_of(library.build))


@pytest.mark.parametrize(
    ("file", "old", "new", "which"),
    [
        ("others", "density: 8.96 g/cm³", "density: 8.9 g/cm³", ["link"]),
        ("others", "size: 1.95-2 mm", "size: 1.9-2 mm", ["drops"]),
        ("others", "name: Ear wire", "name: Ear hook", ["drops"]),
        ("others", "name: Roller", "name: Clay roller", ["drops", "pendant"]),
        ("clays", "hold: 30 min", "hold: 35 min", ["drops", "pendant"]),
        ("clays", "wet 50 mm, fired 44 mm", "wet 50 mm, fired 43.5 mm", []),
        ("others", "pack: 12 mL", "pack: 12 mL\n    price: 9.50 EUR", ["drops"]),
    ],
)
def test_an_item_that_changes_works_the_designs_that_hang_on_it_and_no_other(  # noqa: PLR0917 - an edit
    jobs: list[str], worked: list[str], library: Any, file: str, old: str, new: str, which: list[str]
) -> None:
    library.publish()
    library.change(f"stock/{file}.yaml", old, new)
    assert worked_again(worked, library) == which
    assert worked_again(worked, library) == []
    assert jobs


SHARP = """\
cautions:
  sharp:
    word: CAUTION
    hazard: Sharp ends of wire.
    signs: [W022]
    consequence: They cut the skin.
    avoid: File each end before you bend it.
    short: "Sharp ends: file them"
    source: common practice
"""


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("sizes: [6 mm, 7 mm,", "sizes: [6 mm, 6.5 mm, 7 mm,"),  # the nearest may be another
        ("  ear-wire:", "  post:\n    name: Post\n  ear-wire:"),  # a name may mean another thing now
        ("findings:", f"{SHARP}findings:"),
    ],
)
def test_what_every_design_may_ask_for_works_all_of_them(
    jobs: list[str], worked: list[str], library: Any, old: str, new: str
) -> None:
    library.publish()
    library.change("stock/others.yaml", old, new)
    assert worked_again(worked, library) == ALL
    assert library.publish().troubles.found == []
    assert jobs


def test_a_fault_of_the_stock_works_all_designs_until_it_is_mended(
    jobs: list[str], worked: list[str], library: Any
) -> None:
    library.publish()
    library.change("stock/others.yaml", "thickness: 16 awg", "thickness: 16 awgg")
    assert worked_again(worked, library) == ALL
    assert worked_again(worked, library) == ALL
    library.change("stock/others.yaml", "thickness: 16 awgg", "thickness: 16 awg")
    assert library.publish().failed == []
    assert worked_again(worked, library) == []
    assert jobs


def test_a_design_told_of_by_a_line_of_the_stock_is_worked_again_when_lines_may_have_moved(
    jobs: list[str], worked: list[str], library: Any
) -> None:
    library.publish()
    path = library.build / RECORD
    record = json.loads(path.read_text("utf-8"))
    place = {"file": "projects/stock/others.yaml", "at": [2, 3, 12], "used": []}
    told = {"message": "look at it", "help": "", "severity": "warning", "rule": "", "place": place}
    record["projects"]["link"]["told"] = [told]
    path.write_text(json.dumps(record), "utf-8")
    assert worked_again(worked, library) == []
    library.change("stock/others.yaml", "wires:", "# looked over\nwires:")
    assert worked_again(worked, library) == ["link"]
    assert jobs


def test_another_program_prints_all_anew(jobs: list[str], library: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    library.publish()
    many = len(jobs)
    monkeypatch.setattr("sheetgen.publish.standing.printer_key", lambda: "another program")
    assert len(again(jobs, library)) == many


def test_one_version_and_one_sheet_can_be_asked_for(jobs: list[str], library: Any) -> None:
    library.publish()
    library.change("drops/project.yaml", "revision: 1", "revision: 2")
    jobs.clear()
    published(library.root, library.build, Wanted(("drops",), "Long", "bench card"))
    assert jobs == ["drops/long/bench-card-a4.pdf"]
    rest = again(jobs, library)
    assert rest, "what was not asked for is printed when all is"
    assert "drops/long/bench-card-a4.pdf" not in rest


def test_all_can_be_forced(jobs: list[str], library: Any) -> None:
    library.publish()
    many = len(jobs)
    jobs.clear()
    published(library.root, library.build, Wanted(every=True))
    assert len(jobs) == many


def test_a_version_that_there_is_not_is_told_with_those_that_there_are(jobs: list[str], library: Any) -> None:
    outcome = published(library.root, library.build, Wanted(("drops",), "Longg"))
    [told] = outcome.troubles.errors
    assert "Longg" in told.message
    assert jobs == []


def test_a_full_disk_is_not_remembered_against_a_design(library: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    with monkeypatch.context() as broken:
        broken.setattr("sheetgen.publish.folder.Folder.put", _full)
        with pytest.raises(OSError, match="No space left"):
            library.publish("link")
    assert library.publish("link").published == ["link"]


def _full(*_asked: object) -> None:
    raise OSError(28, "No space left on device")


@pytest.mark.usefixtures("quick")
def test_a_word_in_a_step_leaves_the_librarys_own_pages_alone_and_one_of_a_card_makes_them_anew(
    library: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    """They are made of what the record has of each design; of a library of a thousand they are two thousand files."""
    made: list[int] = []

    def counted(*what: Any) -> Any:
        made.append(1)
        return own_pages(*what)

    monkeypatch.setattr("sheetgen.render.library.library", counted)
    library.publish()
    index = (library.build / "index.html").read_bytes()
    for words, anew in ((("Cut ", "Cut off "), 0), (("summary: ", "summary: Now "), 1)):
        made.clear()
        text = library.path("pendant/project.yaml").read_text("utf-8")
        assert words[0] in text
        library.write("pendant/project.yaml", text.replace(*words, 1))
        library.publish()
        assert len(made) == anew
    assert (library.build / "index.html").read_bytes() != index


@pytest.mark.usefixtures("quick")
def test_where_a_card_is_another_the_lists_without_that_design_stay_as_they_are(
    library: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Pendant and drops are rolled of clay; drops alone are drilled, and a link is bent of copper wire."""
    library.publish()
    made: list[str] = []

    def counted(top: Any, words: str) -> Any:
        made.append(top.path)
        return page_of(top, words)

    monkeypatch.setattr("sheetgen.render.library.page", counted)
    text = library.path("pendant/project.yaml").read_text("utf-8")
    library.write("pendant/project.yaml", text.replace("level: first piece", "level: experienced", 1))
    library.publish()
    assert "library/tool-roller.html" in made
    assert "index.html" in made
    assert not [path for path in made if "copper-wire" in path or "drills" in path]
    listed = {path.relative_to(library.build).as_posix() for path in library.build.glob("library/*.html")}
    assert len({*made} & listed) < len(listed)
    stood = {path: path.read_bytes() for path in library.build.rglob("*.html")}
    shutil.rmtree(library.build)
    library.publish()
    assert {path: path.read_bytes() for path in library.build.rglob("*.html")} == stood
