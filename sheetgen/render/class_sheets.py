"""The sheets of a class for its teacher alone: the tables, and of each version the teacher's sheet with its numbers."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.spelling import slug
from sheetgen.model.page import Page
from sheetgen.model.view import Head, Html, LaidTable, Lying, Need, Seat, TablesSheet
from sheetgen.render.handout import studio
from sheetgen.render.job import Job
from sheetgen.render.marks import Marks
from sheetgen.render.ordered import HOW, PAPERS, paper_of, sound
from sheetgen.render.pages import Rendered
from sheetgen.render.teacher import Teacher
from sheetgen.render.words import kept

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.model.class_tables import Lot, Share, TablesTold, TableTold
    from sheetgen.model.drawing import Drawings, SlabLayout
    from sheetgen.model.view import TeacherSheet
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.render.job import Doubt
    from sheetgen.render.ordered import How
    from sheetgen.render.pdf_pool import PdfPool
    from sheetgen.render.theme import Theme


QUOTED = re.compile("'.*'", re.DOTALL)  # from the first to the last: a name may have an apostrophe


class Taught(NamedTuple):
    """A version of the class: as it is worked and drawn, the slabs of all versions, and its share of the class."""

    worked: Worked
    version: WorkedVersion
    drawings: Drawings
    slabs: Mapping[str, Sequence[SlabLayout]]
    share: Share

    @property
    def named(self) -> str:
        """Design and version, what is chosen otherwise first, as the name of its file has them."""
        return slug(f"{self.worked.name} {self.version.title}")


def class_sheets(called: str, tables: TablesTold, taught: Sequence[Taught], theme: Theme, pool: PdfPool) -> Rendered:
    """The tables and the teacher's sheets, each for each paper, and what jars in their layout.

    `called` is what stands in their feet. Misplaced at the theme's file where a sheet leaves out, hides or alters what
    must be printed.
    """
    first, marks = taught[0].worked, Marks()
    sheet = _tables(tables, _head(called, tables, taught), marks)
    how = HOW["tables"]._replace(most_pages=len(tables.tables) + 1)
    jobs = [(how.template, _job("tables", sheet, marks, how, theme, first))]
    how = HOW["teacher"]
    for one in taught:
        marks = Marks()
        jobs.append(
            (how.template, _job(f"teacher-{one.named}", _teachers(one, called, marks), marks, how, theme, first))
        )
    pages: list[Page] = []
    doubts: list[Doubt] = []
    for (template, job), outs in zip(jobs, pool.printed([job for _, job in jobs]), strict=True):
        shown = _unnamed if template == HOW["tables"].template else str
        for each, out in zip(job.papers, outs, strict=True):
            sound([shown(str(fault)) for fault in out.faults], theme, template)
            pages.append(Page(each.name, out.pdf))
        doubts += [replace(doubt, words=shown(doubt.words)) for doubt in outs[0].warnings]
    return Rendered(pages, doubts)


def _unnamed(told: str) -> str:
    """What jars in a layout, without the words that it is told by: they may be a name."""
    return QUOTED.sub("'…'", told)


def _job(name: str, sheet: object, marks: Marks, how: How, theme: Theme, worked: Worked) -> Job:  # noqa: PLR0913, PLR0917 - what a sheet is printed by
    htmls = tuple(theme.private_page(how.template, sheet=sheet, density=way) for way in how.ways)
    papers = tuple(paper_of(f"{name}-{p.lower()}.pdf", PAPERS[p], worked.revision) for p in worked.studio.paper)
    given = tuple(marks.given.items())
    return Job(htmls, papers, tuple(marks.must), tuple(marks.may), how.most_pages, given=given)


def _tables(told: TablesTold, head: Head, marks: Marks) -> TablesSheet:
    """The tables with every amount marked."""

    def needs(lots: Sequence[Lot]) -> tuple[Need, ...]:
        return tuple(
            Need(
                one.name,
                one.detail,
                Html(marks.number(one.amount, f"what to lay out of {one.name}") if one.amount else ""),
            )
            for one in lots
        )

    def table(one: TableTold) -> LaidTable:
        seats = tuple(Seat(sits.name, sits.makes, sits.clay, sits.colours) for sits in one.sits)
        places = tuple(Lying(lies.where, needs(lies.lots), lies.tools) for lies in one.places)
        return LaidTable(one.name, seats, places, needs(one.shared), one.tools)

    return TablesSheet(
        head,
        told.counted,
        tuple(map(table, told.tables)),
        table(told.teacher),
        told.alone,
        needs(told.kiln),
        told.kiln_tools,
    )


def _teachers(one: Taught, called: str, marks: Marks) -> TeacherSheet:
    """The teacher's sheet of a version, with the quantities of this class in place of those for anybody."""
    sheet = Teacher(one.worked, one.version, one.drawings, marks, one.slabs).sheet()
    version = one.share.called or sheet.head.version
    return replace(
        sheet,
        head=replace(sheet.head, version=version, foot=f"{sheet.head.foot} · {called}"),
        plan_says=(*filter(None, [one.share.part]), *sheet.plan_says),
        quantities=tuple(Need(lot.name, lot.detail, Html(kept(lot.amount))) for lot in one.share.lots),
        quantities_for=one.share.counted,
    )


def _head(called: str, tables: TablesTold, taught: Sequence[Taught]) -> Head:
    """The head of the tables, which belong to no one design: the day is that of the latest."""
    first = taught[0].worked
    foot = f"{called} · {tables.counted} · {first.studio.name} · Tables"
    return Head(
        sheet="Tables",
        title=called,
        version="",
        summary=Html(""),
        summary_plain="",
        foot=foot,
        code="",
        date=max(one.worked.date for one in taught),
        language=first.studio.language,
        makes="",
        level="",
        bench_time="",
        whole_time="",
        untimed="",
        studio=studio(first.studio),
    )
