"""A studio that works in inches gets inches in every word of its sheets, in drawings and in their alternatives too."""

from __future__ import annotations

import html
import re
from typing import TYPE_CHECKING, Any

import pytest

from sheetgen.base.turns import through
from sheetgen.draw.templates import draw
from sheetgen.render.job import Printout
from sheetgen.render.pages import render
from sheetgen.render.theme import Theme

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sheetgen.model.page import Page
    from sheetgen.render.job import Job

# What is in millimetres for everybody: the bars of a printed page, what is reckoned, a cutter's file.
FOR_ALL = (
    r"[Bb]ars? of 100 mm( and of 4 in both ways)?",
    r"may read 99\.5 to 100\.5 mm",
    r"both read 97 mm",
    r"Both bars read, mm",
    r"\b100 mm\b",
    r"true size in mm",
)
ENGRAVED = r"\d[\d.]* mm \([\d.]+ in\)"


class Plain:
    """A pool that prints nothing: the page as it is."""

    @staticmethod
    def made(_name: str, _of: str, make: Callable[[], Sequence[Page]]) -> list[Page]:
        return list(make())

    @staticmethod
    def printed(jobs: list[Job]) -> list[list[Printout]]:
        return [[Printout(job.htmls[0].encode(), 1) for _ in job.papers] for job in jobs]


def words(page: str) -> str:
    """All words of a page up to its workings, with those of its drawings and their alternatives."""
    page = re.sub(r"<h2>Workings</h2>.*?<h2>", "", page, flags=re.DOTALL)
    page = re.sub(r"<style>.*?</style>", "", page, flags=re.DOTALL)
    page = " ".join([*re.findall(r'(?:alt|content)="([^"]*)"', page), re.sub(r"<[^>]*>", "\n", page)])
    return html.unescape(page).replace("\u00a0", " ").replace("\u202f", " ")


@pytest.fixture(scope="module")
def sheets(drawn_in_inches: Any) -> dict[str, str]:
    """Page and handouts of a project with a part of every kind that is drawn."""
    worked = drawn_in_inches
    drawings = {"main": draw(worked, worked.main, worked.studio.paper)}
    pages = through(render(worked, drawings, Theme("plain", []), Plain())).pages  # type: ignore[arg-type]
    return {p.path: words(p.content.decode()) for p in pages if p.path.endswith((".html", ".pdf"))}


def test_no_word_of_a_sheet_in_inches_is_in_millimetres(sheets: dict[str, str], drawn_in_inches: Any) -> None:
    assert len(sheets) == 9  # the page, and four sheets on two papers
    version = drawn_in_inches.main
    named = {item.name for part in version.parts.values() for item in part.fields.values() if hasattr(item, "name")}
    for path, text in sheets.items():
        for name in named:  # as stock calls them
            called = r"\s+".join(map(re.escape, name.split())).replace(",", r"\s*,")
            text = re.sub(f"(?i){called}", "", text)  # noqa: PLW2901
        for pattern in (*FOR_ALL, ENGRAVED):
            text = re.sub(pattern, "", text)  # noqa: PLW2901
        left = [m[0] for m in re.finditer(r".{0,40}\bmm\b.{0,20}", text)]
        assert left == [], path
        if "index" in path or "handout" in path:
            assert len(re.findall(r"\d in\b", text)) > 100


def test_a_tool_is_named_as_it_is_engraved_and_in_the_studio_s_unit(sheets: dict[str, str]) -> None:
    assert "Drills: 2.4 mm (0.094 in)" in sheets["drawn/index.html"]


def test_holes_round_a_dome_are_told_in_inches(library: Any) -> None:
    library.change("studio.yaml", "units: mm", "units: in")
    library.change(
        "pendant/project.yaml",
        "    kind: cut shape\n    clay: clay\n    shape: disc\n    across: width\n",
        "    kind: dome\n    clay: clay\n    across: width\n    rise: 3 mm\n"
        "    holes: 6\n    around: 12 mm\n    opening: 2 mm\n",
    )
    library.change("pendant/project.yaml", "{{ plate.wet_disc }}", "{{ plate.disc }}")
    worked = library.worked("pendant")
    said = draw(worked, worked.main, ["A4"]).templates["plate"].says
    # 2 mm and 12 mm ÷ 0.91 and a little less, on the middle of the clay: 2.2 and 13 mm are 5.5 and 33 of 1/64 in
    assert re.search(r"6 holes Ø (5/64|3/32)\sin on a circle of 33/64\sin", said), said
