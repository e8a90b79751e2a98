"""What is mended in WeasyPrint makes it quicker, and not one byte of a PDF is another."""

from __future__ import annotations

import hashlib
import pickle
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
import weasyprint

from sheetgen import pipeline
from sheetgen.base.trouble import CannotBe
from sheetgen.base.turns import through
from sheetgen.render import quick
from sheetgen.render.job import Job, Paper, one_page
from sheetgen.render.ordered import PAPERS, paper_of
from sheetgen.render.pdf import Printer
from sheetgen.render.theme import Theme

if TYPE_CHECKING:
    from collections.abc import Sequence

ROOT = Path(__file__).parents[2]
PLAIN = """
import hashlib, pickle, sys
from sheetgen.render import quick
quick.WEASYPRINT = "another"
from sheetgen.render.pdf import Printer
printer = Printer()
for job in pickle.load(sys.stdin.buffer):
    for one in printer.printed(job):
        print(hashlib.sha256(one.pdf).hexdigest())
"""
AWKWARD = sorted((Path(__file__).parent / "awkward").glob("*.html"))


@pytest.fixture(scope="module")
def papers() -> list[Paper]:
    return [paper_of(f"x-{name}.pdf", side, "1") for name, side in PAPERS.items()]


def _plainly(jobs: Sequence[Job]) -> list[str]:
    """What the library prints by itself, in a process that nothing was mended in."""
    run = [sys.executable, "-c", PLAIN]
    done = subprocess.run(run, input=pickle.dumps(jobs), capture_output=True, check=True, cwd=ROOT)
    return done.stdout.decode().split()


def _quickly(jobs: Sequence[Job]) -> list[str]:
    printer = Printer()
    return [hashlib.sha256(one.pdf).hexdigest() for job in jobs for one in printer.printed(job)]


def test_pages_with_all_that_is_mended_are_the_same_bytes_as_without_it(papers: list[Paper]) -> None:
    pages = [path.read_text("utf-8") for path in AWKWARD]
    jobs = [one_page(page, "alone") for page in pages] + [Job((page,), tuple(papers)) for page in pages]
    plain = _plainly(jobs)
    assert _quickly(jobs) == plain
    assert _quickly(jobs) == plain, "what was remembered of the first printing is another in the second"


def test_every_sheet_of_a_version_is_the_same_bytes_as_without_it(libraries: Any) -> None:
    jobs: list[Job] = []

    class Keeps(libraries.QuickPool):  # type: ignore[misc]  # found by its path
        def printed(self, asked: list[Job]) -> Any:
            jobs.extend(asked)
            return super().printed(asked)

    worked = pipeline.work_through(ROOT, ["tideline-band"]).worked[0]
    pool: Any = Keeps()
    through(pipeline.pages_of(worked, Theme(pipeline.THEME, [ROOT / "themes"]), pool))
    first = {job.papers[0].name.rsplit("/", 1)[-1]: job for job in reversed(jobs) if "us-5" in job.papers[0].name}
    assert {"handout-a4.pdf", "bench-card-a4.pdf", "teacher-a4.pdf", "templates-a4.pdf"} <= set(first)
    assert _quickly(list(first.values())) == _plainly(list(first.values()))


def test_a_rule_that_nobody_understands_is_complained_of_on_every_page_that_has_it() -> None:
    printer = Printer()
    page = "<style>@page { size: 90mm 40mm } p { colour: red; color: rde }</style><p>A line."
    for name in ("first", "second"):
        with pytest.raises(CannotBe, match=name):
            printer.print(page, name)


def test_another_version_of_the_library_is_left_as_it_is(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(weasyprint, "__version__", "71.0")
    assert quick.quick_html() is weasyprint.HTML
