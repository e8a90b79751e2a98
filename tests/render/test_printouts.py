"""What the printer tells of a sheet reaches who publishes: a warning at the design's title, a fault at the theme."""

from __future__ import annotations

from typing import Any

import pytest

from sheetgen.render.job import Doubt, Job, Must, Paper, Printout, one_page
from sheetgen.render.pdf_pool import PdfPool


@pytest.fixture
def publish(library: Any, libraries: Any, monkeypatch: pytest.MonkeyPatch) -> Any:
    """Publishes a small design with what the printer is to tell of each of its sheets."""

    def with_told(faults: tuple[str, ...] = (), warnings: tuple[Doubt, ...] = ()) -> Any:
        class Pool(libraries.QuickPool):  # type: ignore[misc]  # found by its path
            @staticmethod
            def printout(_job: Job, _paper: Paper) -> Printout:
                return Printout(b"%PDF", 2, faults, warnings)

        monkeypatch.setattr("sheetgen.render.pdf_pool.PdfPool", Pool)
        return library.publish("pendant")

    return with_told


def test_what_jars_in_a_sheet_is_a_warning_at_the_title_of_its_design(publish: Any) -> None:
    outcome = publish(warnings=(Doubt("pendant/handout-a4.pdf", 3, "it is only 12 % full"),))
    assert outcome.published == ["pendant"]
    [told] = outcome.troubles
    assert (told.severity, told.message) == ("warning", "pendant/handout-a4.pdf, page 3: it is only 12 % full")
    assert str(told.place) == "projects/pendant/project.yaml:1:8"


def test_a_sheet_that_hides_a_caution_is_not_published_and_the_theme_is_to_be_mended(publish: Any) -> None:
    lost = "pendant/handout-a4.pdf, page 3: the caution Hot kiln of step 3 is printed, but nobody sees it"
    outcome = publish(faults=(lost, "and another"))
    assert outcome.published == []
    [told] = outcome.troubles.errors
    assert told.message == f"{lost}, and 1 more of this kind"
    assert str(told.place).endswith("themes/plain/handout.html.j2:1:1")
    assert "mend the template of the theme" in told.help


HEAD = "<!doctype html><html lang='en'><head><meta charset='utf-8'><title>x</title></head><body>"


def test_processes_print_what_one_prints_and_tell_the_same() -> None:
    must = (Must("rod", "8.5 mm", "the number Rod"),)
    papers = (Paper("a", "@page { size: 100mm 100mm }"), Paper("b", "@page { size: 120mm 90mm }"))
    bodies = [
        "<p data-n='rod'>8.5 mm</p>",
        "<p data-n='rod'>9 mm</p>",
        "<p>One</p><p style='break-before: page'>Two</p>",
    ]
    jobs = [Job((f"{HEAD}{body}</body></html>",), papers, must) for body in bodies]
    jobs.append(one_page(f"{HEAD}<p>Rod</p></body></html>", "alone"))
    with PdfPool(1) as one, PdfPool(2) as two:
        here, there = list(one.printed(jobs)), list(two.printed(jobs))
        assert len(two.crew.hands) == 2
    assert here == there
    assert [len(sheets) for sheets in here] == [2, 2, 2, 1]
    assert here[1][1].faults == ("b, page 1: the number Rod reads '9 mm' in place of '8.5 mm'",)
    assert [doubt.page for doubt in here[2][0].warnings] == [1, 2]
