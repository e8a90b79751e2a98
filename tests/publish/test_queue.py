"""One queue over all designs: what prints always has something to do, and a design in trouble costs no other."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.render.job import Job, Printout


@pytest.fixture
def told(monkeypatch: pytest.MonkeyPatch, libraries: Any) -> list[str]:
    """What is asked of the printers and fetched from them, in order. Sheets of `link` are never printed."""
    said: list[str] = []

    class Slow(libraries.QuickPool):  # type: ignore[misc]  # found by its path
        def printed(self, jobs: list[Job]) -> Iterator[list[Printout]]:
            said.extend(f"asked {job.papers[0].name}" for job in jobs)
            return self._each(jobs)

        def _each(self, jobs: list[Job]) -> Iterator[list[Printout]]:
            for job in jobs:
                name = job.papers[0].name
                said.append(f"fetched {name}")
                if name.startswith("link/"):
                    raise CannotBe(f"{name} was tried twice and not printed", "leave out its picture")
                yield [self.printout(job, paper) for paper in job.papers]

    monkeypatch.setattr("sheetgen.render.pdf_pool.PdfPool", Slow)
    return said


def test_the_next_designs_are_with_the_printers_before_the_first_is_waited_for(told: list[str], library: Any) -> None:
    library.publish()
    first = told.index("fetched drops/handout-a4.pdf")
    for name in ("drops", "link", "pendant"):
        assert told.index(f"asked {name}/handout-a4.pdf") < first


def test_other_versions_are_set_like_the_main_one_and_asked_for_when_it_has_come(told: list[str], library: Any) -> None:
    library.publish("drops")
    assert told.index("fetched drops/teacher-a4.pdf") < told.index("asked drops/long/handout-a4.pdf")


def test_a_sheet_that_cannot_be_printed_costs_its_design_and_no_other(told: list[str], library: Any) -> None:
    outcome = library.publish()
    assert (outcome.published, outcome.failed) == (["drops", "pendant"], ["link"])
    [trouble] = outcome.troubles.errors
    assert str(trouble.place) == "projects/link/project.yaml:1:8"
    assert trouble.message == "link/handout-a4.pdf was tried twice and not printed"
    assert not (library.build / "link").exists()
    assert "asked pendant/handout-a4.pdf" in told


def test_designs_are_written_in_their_order_and_few_are_under_way(
    told: list[str], library: Any, libraries: Any
) -> None:
    for n in range(20):
        library.write(f"more-{n:02}/project.yaml", libraries.PENDANT.replace("Round pendant", f"Pendant {n}"))
    outcome = library.publish()
    assert outcome.published == ["drops", *(f"more-{n:02}" for n in range(20)), "pendant"]
    asked = {one.split("/")[0].removeprefix("asked "): i for i, one in enumerate(told) if one.startswith("asked ")}
    fetched = {one.split("/")[0].removeprefix("fetched "): i for i, one in enumerate(told) if "fetched" in one}
    for name, when in asked.items():
        assert sum(asked[other] < when < fetched[other] for other in asked) <= 8, name
