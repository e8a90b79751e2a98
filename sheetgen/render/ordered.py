"""A sheet to the job that prints it: its template, the ways in which it is set, and the papers."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.spelling import slug
from sheetgen.base.trouble import Misplaced, Trouble
from sheetgen.facts.paper import FIRST_FULL, TIGHTER
from sheetgen.render.job import Job, Paper, Side
from sheetgen.render.musts import MEND

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.render.job import Printout
    from sheetgen.render.marks import Marks
    from sheetgen.render.theme import Theme

# One content box of 180 × 247 mm on both papers, so that the pages break at the same places.
PAPERS = {"A4": Side(210, 297, 15, 22), "Letter": Side(215.9, 279.4, 17.95, 14)}
CONTENT = (180, 247)


class How(NamedTuple):
    """How a sheet is laid out: its template, and what gives in which order when a page is too full; its bounds.

    `gives`: what the tightest way saves of each page, as a share of it; where that is not known it is always tried.
    """

    template: str
    ways: tuple[str, ...] = ("",)
    most_pages: int = 0
    most_sides: int = 0
    first_full: float = 0
    gives: float = 1

    def like(self, other: Printout) -> How:
        """As another of its kind is set; in another way only if that takes more pages than the other has."""
        first, fits = self.ways[other.way], max(self.most_pages, other.pages)
        return self._replace(ways=tuple(dict.fromkeys((first, *self.ways))), most_pages=fits, first_full=0)

    def from_way(self, way: int) -> How:
        """Begun with the way that another of its kind took, and no roomier one.

        The tightest stays, so that it never takes more pages than if all were tried.
        """
        return self._replace(ways=self.ways[way:])


HOW = {
    # the gap gives first, then the leading; then sessions and sizes go before the steps, or the lists behind the box
    "handout": How(
        "handout.html.j2",
        ("", "close closer", "plan-after close", "plan-after close closer", "lists-after close closer"),
        3,
        6,
        float(FIRST_FULL),
        float(TIGHTER),
    ),
    "bench card": How("card.html.j2", ("open", "", "close", "closer", "close closer"), 1, 1),
    "teacher": How("teacher.html.j2", ("", "close closer"), gives=float(TIGHTER)),
    "templates": How("templates.html.j2"),
    "tables": How("tables.html.j2", ("", "close", "close closer")),
}


@dataclass(frozen=True, slots=True)
class Ordered:
    """A sheet that is to be printed, and the template that it is made by."""

    sheet: str
    template: str
    job: Job


class Press(NamedTuple):
    """What the sheets of a version are printed by: theme, papers, revision, and the folder that they are named by."""

    theme: Theme
    papers: Sequence[str]
    revision: str
    folder: str

    def ordered(self, name: str, sheet: object, marks: Marks, how: How) -> Ordered:
        """A sheet with all that was marked in it, laid out in each of its ways."""
        htmls = tuple(self.theme.page(how.template, sheet=sheet, density=way) for way in how.ways)
        path = f"{self.folder}/{slug(name)}"
        papers = tuple(paper_of(f"{path}-{p.lower()}.pdf", PAPERS[p], self.revision) for p in self.papers)
        job = Job(
            htmls,
            papers,
            tuple(marks.must),
            tuple(marks.may),
            how.most_pages,
            how.most_sides,
            how.first_full,
            how.gives,
            tuple(marks.given.items()),
            tuple(marks.drawn),
        )
        return Ordered(name, how.template, job)


def paper_of(name: str, side: Side, revision: str) -> Paper:
    """A paper with the margins that leave the content box."""
    foot, right = side.tall - side.top - CONTENT[1], side.wide - side.left - CONTENT[0]
    margins = f"{side.top:g}mm {right:g}mm {foot:g}mm {side.left:g}mm"
    return Paper(name, f"@page {{ size: {side.wide:g}mm {side.tall:g}mm; margin: {margins} }}", revision, side)


def sound(faults: Sequence[object], theme: Theme, template: str) -> None:
    """Misplaced at a template whose sheet may not be printed."""
    if faults:
        more = f", and {len(faults) - 1} more of this kind" if len(faults) > 1 else ""
        raise Misplaced(Trouble(f"{faults[0]}{more}", theme.place(template), MEND))
