"""The sheets of a class for its teacher alone: the tables, and of each version the teacher's sheet with its numbers."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.spelling import slug
from sheetgen.model.page import Page
from sheetgen.model.view import Head, Html
from sheetgen.render.class_words import TableWords, quantities
from sheetgen.render.handout import studio
from sheetgen.render.job import Job
from sheetgen.render.marks import Marks
from sheetgen.render.pages import HOW, PAPERS, Rendered, paper, sound
from sheetgen.render.teacher import Teacher

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.kits.at_tables import Laid
    from sheetgen.kits.class_run import ClassRun
    from sheetgen.kits.taken import Kits, Taken
    from sheetgen.model.drawing import Drawings, SlabLayout
    from sheetgen.model.view import TeacherSheet
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.render.job import Doubt
    from sheetgen.render.pages import How
    from sheetgen.render.pdf_pool import PdfPool
    from sheetgen.render.theme import Theme


class Taught(NamedTuple):
    """A version of the class: as it is worked and drawn, the slabs of all versions, and its kinds of set."""

    worked: Worked
    version: WorkedVersion
    drawings: Drawings
    slabs: Mapping[str, Sequence[SlabLayout]]
    kinds: tuple[Kits, ...]

    @property
    def named(self) -> str:
        """Design, version and what is chosen otherwise, as the name of its file has them."""
        return slug(f"{self.worked.name} {self.version.title} {self.kinds[0].chosen}")


class Course(NamedTuple):
    """A class with its tables, what it takes, and what its list is called."""

    called: str
    run: ClassRun
    laid: Laid
    taken: Sequence[Taken]


def class_sheets(course: Course, taught: Sequence[Taught], theme: Theme, pool: PdfPool) -> Rendered:
    """The tables and the teacher's sheets, each for each paper; and what jars in their layout.

    Misplaced at the theme's file where a sheet leaves out, hides or alters what must be printed.
    """
    first = taught[0].worked
    marks = Marks()
    tables = TableWords(course.run, first.rounder, marks).sheet(course.laid, _head(course, taught))
    how = HOW["tables"]._replace(most_pages=len(tables.tables) + 1)
    jobs = [(how.template, _job("tables", tables, marks, how, theme, first))]
    for one in taught:
        marks = Marks()
        sheet = _teachers(one, course, marks)
        jobs.append((HOW["teacher"].template, _job(f"teacher-{one.named}", sheet, marks, HOW["teacher"], theme, first)))
    pages: list[Page] = []
    doubts: list[Doubt] = []
    for (template, job), outs in zip(jobs, pool.printed([job for _, job in jobs]), strict=True):
        for each, out in zip(job.papers, outs, strict=True):
            sound(out.faults, theme, template)
            pages.append(Page(each.name, out.pdf))
        doubts += outs[0].warnings
    return Rendered(pages, doubts)


def _job(name: str, sheet: object, marks: Marks, how: How, theme: Theme, worked: Worked) -> Job:  # noqa: PLR0913, PLR0917 - what a sheet is printed by
    htmls = tuple(theme.page(how.template, sheet=sheet, density=way) for way in how.ways)
    papers = tuple(paper(f"{name}-{p.lower()}.pdf", PAPERS[p], worked.revision) for p in worked.studio.paper)
    given = tuple(marks.given.items())
    return Job(htmls, papers, tuple(marks.must), tuple(marks.may), how.most_pages, given=given)


def _teachers(one: Taught, course: Course, marks: Marks) -> TeacherSheet:
    """The teacher's sheet of a version, with the quantities of this class in place of those for anybody."""
    sheet = Teacher(one.worked, one.version, one.drawings, marks, one.slabs).sheet()
    chosen = one.kinds[0].chosen
    version = ", ".join(filter(None, (sheet.head.version or (one.version.title if chosen else ""), chosen)))
    head = replace(sheet.head, version=version, foot=f"{sheet.head.foot} · {course.called}")
    return replace(
        sheet,
        head=head,
        plan_says=(*_part(one, course), *sheet.plan_says),
        quantities=tuple(quantities(course.run, one.kinds, course.taken, one.worked.rounder)),
        quantities_for=course.run.counted(one.kinds),
    )


def _part(one: Taught, course: Course) -> Iterator[str]:
    """How many of the class make this version, where others make another."""
    every, here = len(course.run.pupils), sum(any(p.kits is k for k in one.kinds) for p in course.run.pupils)
    if here < every:
        yield f"{here} of {every} pupils make this version."


def _head(course: Course, taught: Sequence[Taught]) -> Head:
    """The head of the tables, which belong to no one design: the day is that of the latest."""
    first = taught[0].worked
    foot = f"{course.called} · {course.run.counted()} · {first.studio.name} · Tables"
    return Head(
        sheet="Tables",
        title=course.called,
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
