"""A check tells of a library the same whether it was published or not, and works only what does not stand."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen import checking
from sheetgen.pipeline import check_one, said_of

if TYPE_CHECKING:
    from sheetgen.pipeline import Outcome


@pytest.fixture
def worked(monkeypatch: pytest.MonkeyPatch, libraries: Any) -> list[str]:
    """The designs that a check has worked since."""
    names: list[str] = []

    def counted(filed: Any, *more: Any) -> Any:
        names.append(filed.name)
        return check_one(filed, *more)

    monkeypatch.setattr("sheetgen.checking.check_one", counted)
    monkeypatch.setattr("sheetgen.render.pdf_pool.PdfPool", libraries.QuickPool)
    return names


def told(outcome: Outcome) -> tuple[list[str], list[str], dict[str, Any]]:
    said = {name: [list(each) for each in outcome.said[name]] for name in sorted(outcome.said)}
    return [str(one) for one in outcome.troubles.gathered()], sorted(outcome.failed), said


def checked(library: Any, *only: str) -> Outcome:
    return checking.checked(library.root, library.build, only)


def anew(library: Any, *only: str) -> Outcome:
    """Checked where nothing was ever published, and as it is worked without looking at a record."""
    found = checking.checked(library.root, library.root / "nowhere", only)
    plain = library.check(*only)
    assert told(found)[:2] == told(plain)[:2]
    assert {name: said_of(one) for name, one in ((one.name, one) for one in plain.worked)} == found.said
    return found


LINES = {
    "a word": ("drops/project.yaml", "revision: 1", "revision: 2"),
    "an error": ("drops/project.yaml", "kind: tube", "kind: tubbe"),
    "a number that is wrong": ("drops/project.yaml", "height: 30 mm", "height: 300 m"),
    "a title that another has": ("pendant/project.yaml", "title: Round pendant", "title: Little  DROPS"),
    "a remark in the stock": ("stock/others.yaml", "wires:", "# looked over\nwires:"),
    "a wire of the stock": ("stock/others.yaml", "density: 8.96 g/cm³", "density: 8.9 g/cm³"),
    "a fault of the stock": ("stock/others.yaml", "thickness: 16 awg", "thickness: 16 awgg"),
    "an item that is gone": ("stock/others.yaml", "glass-2:", "glass-3:"),
    "a fault of the studio": ("studio.yaml", "name: ", "nome: "),
}


@pytest.mark.parametrize("line", LINES)
@pytest.mark.parametrize("only", [(), ("drops",), ("link", "pendant")])
def test_a_check_after_publishing_tells_what_a_check_of_a_library_that_was_never_published_tells(
    worked: list[str], library: Any, line: str, only: tuple[str, ...]
) -> None:
    library.publish()
    assert told(checked(library, *only)) == told(anew(library, *only))
    library.change(*LINES[line])
    found = told(checked(library, *only))
    assert found == told(anew(library, *only))
    assert worked


def test_where_all_stands_nothing_is_worked_and_where_one_does_not_that_one_alone(
    worked: list[str], library: Any
) -> None:
    library.publish()
    worked.clear()
    assert sorted(checked(library).said) == ["drops", "link", "pendant"]
    assert worked == []
    library.change("drops/project.yaml", "revision: 1", "revision: 2")
    assert sorted(checked(library).said) == ["drops", "link", "pendant"]
    assert worked == ["drops"]


def test_what_jars_in_print_is_no_business_of_a_check_and_what_is_waived_is(
    worked: list[str], library: Any, edits: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sheetgen.render.pdf_pool.PdfPool", edits.Digests)
    library.change("link/project.yaml", "steps:", "waive:\n  least-rim: it holds, tried on ten\nsteps:")
    assert "it jars" in " ".join(map(str, library.publish().troubles.found)), "some of the stand-ins"
    found = told(checked(library))
    assert found == told(anew(library))
    assert "it jars" not in " ".join(found[0])
    assert "link waives least-rim: it holds, tried on ten" in found[2]["link"][0]
    assert worked


def test_a_check_reads_no_record_that_a_hand_has_spoilt(worked: list[str], library: Any) -> None:
    library.publish()
    record = library.build / ".published.json"
    record.write_text(record.read_text("utf-8").replace('"said"', '"sad"'), "utf-8")
    worked.clear()
    assert told(checked(library)) == told(anew(library))
    assert set(worked) == {"drops", "link", "pendant"}


def test_an_unknown_design_is_told_although_all_others_stand(worked: list[str], library: Any) -> None:
    library.publish()
    assert told(checked(library, "dropps")) == told(anew(library, "dropps"))
    shutil.rmtree(Path(library.build))
    assert told(checked(library, "dropps")) == told(anew(library, "dropps"))
    assert worked == []


@pytest.mark.parametrize(
    ("old", "new", "why"),
    [
        ("Cut a disc of", "Cut with 3 mm to spare a disc of", "'3 mm' stays as it is written"),
        ("Cut a disc of", "Cut a disc of", ""),
    ],
)
def test_why_a_design_has_no_page_in_inches_is_told_before_it_is_published_as_when_it_is(
    worked: list[str], library: Any, old: str, new: str, why: str
) -> None:
    library.change("studio.yaml", "units: mm\n", "units: mm\npages in: [mm, in]\n")
    library.change("pendant/project.yaml", old, new)
    before = told(checked(library))
    assert [f"no page in inches: {why}" in line for line in before[0]] == ([True] if why else [])
    assert [str(one) for one in library.publish().troubles.gathered()] == before[0]
    assert (library.build / "pendant" / "in-inches.html").exists() is not bool(why)
    worked.clear()
    assert told(checked(library)) == before
    assert worked == []
