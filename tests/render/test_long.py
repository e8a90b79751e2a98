"""Forty steps and words of forty letters do not break the grid: no sheet lets go of its margins, on either paper."""

from __future__ import annotations

import io
import re
import shutil
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pdfplumber
import pytest

from sheetgen.render.pdf import Printer

if TYPE_CHECKING:
    from sheetgen.render.job import Job, Printout

LONG = Path(__file__).parent / "long"
MM = 25.4 / 72
BOXES = {"a4": (15, 22, 195, 269), "letter": (17.95, 14, 197.95, 261)}  # left, top, right, bottom, mm
FOOT = 12  # mm: the foot of a page is two lines under the box
# What such a design may be told of: it is long.
RIGHT_HERE = re.compile(r"it has \d+ sides, more than \d|it is only \d+ % full")


@pytest.fixture(scope="module")
def long(libraries: Any, tmp_path_factory: pytest.TempPathFactory) -> Any:
    """Each sheet of the long design by its file, printed in its roomiest way; other versions only as it were."""
    root, printer = tmp_path_factory.mktemp("long"), Printer()
    shutil.copytree(LONG / "projects", root / "projects")
    printouts: dict[str, Printout] = {}

    class OnlyMain(libraries.QuickPool):  # type: ignore[misc]
        def printed(self, jobs: list[Job]) -> list[list[Printout]]:
            if printouts:
                return list(super().printed(jobs))
            outs = [printer.printed(replace(job, htmls=job.htmls[:1])) for job in jobs]
            for job, papers in zip(jobs, outs, strict=True):
                printouts.update({paper.name: out for paper, out in zip(job.papers, papers, strict=True)})
            return outs

    with pytest.MonkeyPatch.context() as patched:
        patched.setattr("sheetgen.render.pdf_pool.PdfPool", OnlyMain)
        outcome = libraries.Library(root).publish()
    assert not outcome.troubles.errors, "\n".join(map(str, outcome.troubles))
    return printouts


@pytest.fixture(scope="module")
def pages(long: Any) -> Any:
    """Each sheet's pages: all words with where they stand."""
    found: dict[str, list[list[dict[str, Any]]]] = {}
    for name, out in long.items():
        with pdfplumber.open(io.BytesIO(out.pdf)) as pdf:
            found[name] = [page.extract_words(use_text_flow=True, extra_attrs=["upright"]) for page in pdf.pages]
    return found


def read(pages: Any, name: str) -> str:
    """The letters of a sheet, without gaps and hyphens."""
    words = "".join(word["text"] for page in pages[name] for word in page)
    return re.sub(r"[\s\u00ad\u2010\u2060-]", "", words)


def squashed(text: str) -> str:
    return re.sub(r"[\s-]", "", text)


def test_the_design_is_as_long_as_it_says(libraries: Any) -> None:
    version = libraries.Library(LONG).main("kette")
    assert len(version.steps) == 40
    assert sum(step.waits for step in version.steps) == 3
    assert max(len(word) for step in version.steps for word in step.title.split()) >= 40


def test_nothing_is_lost_and_nothing_leaves_its_column(long: Any) -> None:
    told = [str(doubt) for out in long.values() for doubt in out.warnings]
    assert [one for one in told if not RIGHT_HERE.search(one)] == []
    assert {name.split("/")[-1].rsplit("-", 1)[0] for name in long} == {"handout", "bench-card", "teacher", "templates"}


def test_every_letter_stands_within_the_margins(pages: Any) -> None:
    outside = []
    for name, of in pages.items():
        left, top, right, bottom = BOXES[name.removesuffix(".pdf").rsplit("-", 1)[1]]
        for number, page in enumerate(of, 1):
            for word in page:
                across = left - 0.3 <= word["x0"] * MM and word["x1"] * MM <= right + 0.3
                down = top - 1 <= word["top"] * MM and word["bottom"] * MM <= bottom + FOOT
                if not (across and down):
                    outside.append((name, number, word["text"]))
    assert outside == []


@pytest.mark.parametrize("sheet", ["handout", "bench-card", "teacher", "templates"])
def test_both_papers_break_at_the_same_words(sheet: str, pages: Any) -> None:
    a4, letter = ([page[0]["text"] for page in pages[f"kette/{sheet}-{paper}.pdf"]] for paper in ("a4", "letter"))
    assert a4 == letter


@pytest.mark.parametrize("paper_size", ["a4", "letter"])
def test_each_step_of_the_handout_is_printed_once(paper_size: str, pages: Any, libraries: Any) -> None:
    text = read(pages, f"kette/handout-{paper_size}.pdf")
    titles = [squashed(step.title) for step in libraries.Library(LONG).main("kette").steps]
    assert [(title, text.count(title)) for title in titles if text.count(title) != 1] == []
