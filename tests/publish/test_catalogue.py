"""The catalogue and the programme: made of the record, for who asks for them, and printed again only where it must."""

from __future__ import annotations

import io
import re
from typing import TYPE_CHECKING, Any

import page as validator
import pypdfium2
import pytest
from PIL import Image

from sheetgen.model.page import Entry
from sheetgen.model.worked import Publisher
from sheetgen.pipeline import work_one
from sheetgen.publish import record as records
from sheetgen.render import catalogue
from sheetgen.render.catalogue import library_sheets
from sheetgen.render.theme import Theme

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from sheetgen.render.job import Job, Printout
    from sheetgen.render.pdf import Printer

ASKED = "currency: EUR\nsheets: [handout, catalogue, programme]\n"
FILES = {f"{name}-{paper}.pdf" for name in ("catalogue", "programme") for paper in ("a4", "letter")}
LONG = "Ringriegel" * 20
HEBREW = "\u05d8\u05d1\u05e2\u05ea \u05db\u05e1\u05e3"
BLANK = re.compile(r"\s+")


@pytest.fixture
def jobs(monkeypatch: pytest.MonkeyPatch, libraries: Any) -> list[Job]:
    """The sheets that were printed since."""
    asked: list[Job] = []

    class Counts(libraries.QuickPool):  # type: ignore[misc]  # found by its path
        def printed(self, jobs: list[Job]) -> list[list[Printout]]:
            asked.extend(jobs)
            printouts: list[list[Printout]] = super().printed(jobs)
            return printouts

    monkeypatch.setattr("sheetgen.render.pdf_pool.PdfPool", Counts)
    return asked


@pytest.fixture
def asking(library: Any, jobs: list[Job]) -> Any:  # noqa: ARG001
    """The small library, published with a catalogue and a programme."""
    library.change("studio.yaml", "currency: EUR\n", ASKED)
    library.publish()
    return library


def own(root: Path) -> set[str]:
    return {path.name for path in root.glob("*.pdf")}


def names(jobs: list[Job]) -> list[str]:
    return sorted(job.papers[0].name for job in jobs)


def test_a_library_that_does_not_ask_has_neither(good: Any) -> None:
    assert own(good.build) == set()
    assert "catalogue" not in (good.build / "index.html").read_text("utf-8")


def test_one_that_asks_has_them_for_each_paper_and_its_page_leads_to_each(asking: Any) -> None:
    assert own(asking.build) == FILES
    page = (asking.build / "index.html").read_text("utf-8")
    assert set(re.findall(r'href="([^"/]+\.pdf)"', page)) == FILES
    assert "Catalogue Letter" in page
    handouts = sorted(path.name for path in (asking.build / "pendant").glob("*.pdf"))
    assert handouts == ["handout-a4.pdf", "handout-letter.pdf"]  # which sheets a design has is asked for beside


def test_a_studio_that_names_no_sheet_of_a_design_keeps_all_of_them(library: Any) -> None:
    library.change("studio.yaml", "currency: EUR\n", "currency: EUR\nsheets: [programme]\n")
    assert library.worked("pendant").sheets == ("handout", "bench card", "teacher", "templates")


def test_a_design_cannot_ask_for_the_catalogue(library: Any) -> None:
    library.change("pendant/project.yaml", "level:", "sheets: [catalogue]\nlevel:")
    [trouble] = library.check("pendant").troubles.errors
    assert trouble.message == "the catalogue is of all designs, and not of one"
    assert trouble.place.line == 6
    assert trouble.help == "ask for it in studio.yaml"


def test_an_unchanged_library_prints_nothing_and_touches_no_file(asking: Any, jobs: list[Job]) -> None:
    before = {name: (asking.build / name).stat().st_mtime_ns for name in FILES}
    jobs.clear()
    asking.publish()
    assert jobs == []
    assert before == {name: (asking.build / name).stat().st_mtime_ns for name in FILES}


def test_a_word_of_one_design_prints_both_again_and_no_other_design_is_worked(
    asking: Any, jobs: list[Job], monkeypatch: pytest.MonkeyPatch
) -> None:
    worked: list[str] = []

    def counted(filed: Any, *more: Any) -> Any:
        worked.append(filed.name)
        return work_one(filed, *more)

    monkeypatch.setattr("sheetgen.publishing_one.work_one", counted)
    jobs.clear()
    asking.change("pendant/project.yaml", "title: Round pendant", "title: Full moon")
    asking.publish()
    assert worked == ["pendant"]
    made = [name for name in names(jobs) if "/" not in name]
    assert made == ["catalogue-a4.pdf", "programme-a4.pdf"]
    html = next(job.htmls[0] for job in jobs if job.papers[0].name == "catalogue-a4.pdf")
    assert "Full moon" in html
    assert "Round pendant" not in html


def test_what_no_sheet_of_all_designs_shows_prints_neither_again(asking: Any, jobs: list[Job]) -> None:
    jobs.clear()
    asking.change("pendant/project.yaml", "expect: It is round.", "expect: It is quite round.")
    asking.publish()
    assert [name for name in names(jobs) if "/" not in name] == []
    assert own(asking.build) == FILES


def test_who_no_longer_asks_loses_them_and_no_file_of_anybody_else(asking: Any) -> None:
    (asking.build / "mine.pdf").write_bytes(b"of somebody else")
    asking.change("studio.yaml", ", programme]", "]")
    asking.publish()
    assert own(asking.build) == {"catalogue-a4.pdf", "catalogue-letter.pdf", "mine.pdf"}
    asking.change("studio.yaml", ", catalogue]", "]")
    asking.publish()
    assert own(asking.build) == {"mine.pdf"}


def test_a_catalogue_that_is_lost_is_made_again(asking: Any) -> None:
    (asking.build / "catalogue-a4.pdf").unlink()
    (asking.build / "catalogue-letter.pdf").write_bytes(b"altered")
    asking.publish()
    assert own(asking.build) == FILES
    assert (asking.build / "catalogue-letter.pdf").read_bytes() != b"altered"


@pytest.mark.parametrize("told", ["abc", {"a": 1}, {"a": {"files": {"../../x.pdf": {}}, "key": ""}}, {"a": {"key": 1}}])
def test_a_record_that_a_hand_has_changed_takes_nothing_away(asking: Any, told: Any) -> None:
    record = records.read_record(asking.build)
    victim = asking.root / "x.pdf"
    victim.write_bytes(b"not ours")
    record["sheets"] = told
    (asking.build / records.RECORD).write_bytes(records.record_text(record))
    asking.change("studio.yaml", ASKED, "currency: EUR\n")
    asking.publish()
    assert victim.exists()


def test_what_jars_in_the_catalogue_is_told_again_by_a_run_that_has_nothing_to_do(asking: Any) -> None:
    record = records.read_record(asking.build)
    first = next(iter(record["sheets"]["catalogue-a4.pdf"]["files"].values()))
    first["warnings"] = [["catalogue-a4.pdf", 3, "'Moon' is cut off"]]
    (asking.build / records.RECORD).write_bytes(records.record_text(record))
    told = [str(one) for one in asking.publish().troubles]
    assert any("catalogue-a4.pdf, page 3: 'Moon' is cut off" in one for one in told)


# What follows is printed.


def picture() -> bytes:
    file = io.BytesIO()
    Image.new("RGB", (960, 700), "teal").save(file, "JPEG")
    return file.getvalue()


def design(name: str, **more: Any) -> Entry:
    card = {"printed": f"{name}/p-960.jpg", "width": 480, "height": 350, "alternative": f"What {name} shows"}
    told = {"title": name.capitalize(), "summary": "Made for a test.", "level": "first piece", "time": "10 min"}
    return Entry(**{"name": name, "revision": "1", "date": "2026-01-10", "card": card} | told | more)


def printed(entries: list[Entry], printer: Printer, *sheets: str) -> dict[str, bytes]:
    publisher = Publisher("Test Bench", "Invented.", address="https://testbench.example/")

    class Pool:
        def printed(self, jobs: list[Job]) -> list[list[Printout]]:
            return [printer.printed(job) for job in jobs]

    made = library_sheets(publisher, sheets, entries, Theme("plain", []), Pool(), lambda _path: picture())  # type: ignore[arg-type]
    assert made.doubts == []
    return {page.path: page.content for page in made.pages}


def texts(pdf: bytes) -> Iterator[str]:
    document = pypdfium2.PdfDocument(pdf)
    for number in range(len(document)):
        yield BLANK.sub(" ", document[number].get_textpage().get_text_range())


def test_the_index_says_on_which_page_of_which_volume_a_design_stands(
    printer: Printer, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(catalogue, "VOLUME", 4)
    called = ("amber", "birch", "cedar", "dusk", "ember", "fern", "gull")
    times = (20, 20, 70, 200, 400, 0, 60)
    entries = [
        design(name, tags=["wire", "no kiln"], minutes=minutes) for name, minutes in zip(called, times, strict=True)
    ]
    volumes = printed(entries[::-1], printer, "catalogue")
    assert sorted(volumes) == sorted(f"catalogue{n}-{p}.pdf" for n in ("", "-2") for p in ("a4", "letter"))
    pages = {1: list(texts(volumes["catalogue-letter.pdf"])), 2: list(texts(volumes["catalogue-2-letter.pdf"]))}
    index = "".join(text for text in pages[1] if "By technique" in text)
    found = re.findall(r"(\w+) (\d)\.(\d)", index)
    assert sorted(title for title, _, _ in found) == sorted([name.capitalize() for name in called] * 3)
    for title, volume, page in found:
        assert f"{title} Made for a test." in pages[int(volume)][int(page) - 1]
    hours = "Up to 1 hour 1 to 2 hours 3 to 5 hours More than 5 hours Not told"
    assert hours in index  # what floats is painted first, so that it stands first in the text
    assert "Amber 1.2; Birch 1.2; Gull 2.2 Cedar 1.3 Dusk 1.3 Ember 2.1 Fern 2.1" in index


def test_the_catalogue_can_be_read_aloud_and_nothing_jars_whatever_its_designs_are_called(printer: Printer) -> None:
    versions = [f"Wrist {n} mm, {'sterling' * (n % 3)}" for n in range(140, 220, 5)]
    entries = [
        design("a", title=LONG, summary=LONG * 4, tags=[LONG, "  "], versions=versions, heat=["kiln", "torch"]),
        design("b", title=HEBREW, summary='<b> & "c" \'', level="", time="", card={}),
        design("c", title="Much " * 40, summary="Much is told of it. " * 60, evenings=3),
    ]
    for name, pdf in printed(entries, printer, "catalogue", "programme").items():
        report = validator.validate_pdf_bytes(pdf, profile="ua1")
        assert [one.message for one in report.failures] == [], name


def test_the_programme_has_four_classes_a_side_with_dates_and_fee_to_be_filled_in(printer: Printer) -> None:
    entries = [design(f"d{n}", evenings=n % 3) for n in range(9)]
    files = printed(entries, printer, "programme")
    assert sorted(files) == ["programme-a4.pdf", "programme-letter.pdf"]
    for pdf in files.values():
        sides = list(texts(pdf))
        assert [side.count("Dates") for side in sides] == [side.count("Fee") for side in sides] == [4, 4, 1]
        assert [title for side in sides for title in re.findall(r"\bD\d\b", side)] == [f"D{n}" for n in range(9)]
        assert "2 evenings" in sides[0]
        assert "0 evenings" not in " ".join(sides)
