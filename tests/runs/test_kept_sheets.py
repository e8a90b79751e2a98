"""A sheet of a kit that an earlier run printed is taken as it was, and printed again where anything of it is new."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.render.pdf_pool import PdfPool

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.render.job import Job, Printout

TWO = "Q-1,Ada,tideline-band,US 5,1,,,,,,\nQ-2,Bo,tideline-band,US 6,2,,,,,,\n"


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The names of the kits' sheets that were printed since it was last emptied."""
    names: list[str] = []

    class Tells(PdfPool):
        def printed(self, jobs: Sequence[Job]) -> Iterator[list[Printout]]:
            names.extend(job.papers[0].name for job in jobs if "/kit/" in job.papers[0].name)
            return super().printed(jobs)

    monkeypatch.setattr("sheetgen.runs.press.PdfPool", Tells)
    return names


def test_a_run_whose_kits_are_as_before_prints_none_of_their_sheets_and_the_same_stack(
    bench: Any, asked: list[str]
) -> None:
    bench.orders(TWO)
    first = (bench.folder() / "stack-a4.pdf").read_bytes()
    assert any("us-5" in name for name in asked)
    asked.clear()
    told = bench.orders(TWO)
    assert not asked
    assert (bench.folder() / "stack-a4.pdf").read_bytes() == first
    assert "as an earlier run printed them" in told.said


def test_other_names_and_counts_print_no_sheet_and_another_size_prints_its_own(bench: Any, asked: list[str]) -> None:
    bench.orders(TWO)
    asked.clear()
    bench.orders("Q-7,Cy,tideline-band,US 5,3,,,,,for you,\nQ-8,Di,tideline-band,US 8,1,,,,,,\n")
    assert asked
    assert all("us-8" in name for name in asked)


def test_a_word_of_the_design_prints_its_sheets_again(bench: Any, asked: list[str]) -> None:
    bench.orders(TWO)
    asked.clear()
    path = bench.library.root / "projects/tideline-band/project.yaml"
    path.write_text(path.read_text("utf-8").replace("A plain band.", "A band."), "utf-8")
    bench.orders(TWO)
    assert {name.rpartition("/")[2] for name in asked} >= {"handout-a4.pdf"}


def test_what_a_hand_or_a_full_disk_has_spoilt_is_printed_again(bench: Any, asked: list[str]) -> None:
    bench.orders(TWO)
    for way in (
        lambda whole: whole[: len(whole) // 2],
        lambda whole: whole.replace(b'"pages": ', b'"pages": 1'),
        bytes,
    ):
        for path in (bench.private / "kept").iterdir():
            path.write_bytes(way(path.read_bytes()))
            break
        asked.clear()
        bench.orders(TWO)
        assert asked == [] if way is bytes else len(asked) == 1, way


def test_what_is_kept_is_readable_by_its_owner_alone_and_names_nobody(bench: Any, asked: list[str]) -> None:
    bench.orders("Q-1,Adelgunde,tideline-band,US 5,1,,,,,for Hildur,\n")
    assert asked
    kept = list((bench.private / "kept").iterdir())
    assert kept
    assert all(path.stat().st_mode & 0o077 == 0 for path in [bench.private / "kept", *kept])
    assert not any(word in path.read_bytes() for path in kept for word in (b"Adelgunde", b"Hildur", b"Q-1"))
