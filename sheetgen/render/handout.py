"""The handout, the bench card beside it and the templates, put together of one version: published, or for a kit."""

from __future__ import annotations

from itertools import islice
from typing import TYPE_CHECKING

from markupsafe import Markup, escape

from sheetgen.base.material import Clay
from sheetgen.base.spelling import in_a_sentence
from sheetgen.model.numbers import Numbers
from sheetgen.model.packed import nothing_packed
from sheetgen.model.printed import MOST_SIZES, code_of
from sheetgen.model.view import (
    BenchCard,
    Handout,
    Head,
    Html,
    Picture,
    Session,
    Size,
    Studio,
    Templates,
    TemplateSheet,
)  # fmt: skip
from sheetgen.render import words
from sheetgen.render.like_needs import gathered
from sheetgen.render.needs import Needs
from sheetgen.render.pictures import of_file
from sheetgen.render.rows import Rows, steps_told
from sheetgen.render.sheets import bars, lines, slab_sketches, template_pages

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.model import plan
    from sheetgen.model.drawing import Drawings, TemplatePage
    from sheetgen.model.packed import Packed
    from sheetgen.model.worked import Publisher, Worked, WorkedVersion
    from sheetgen.render.marks import Marks

SO_FAR = ", so far as told"
FOOT = 116
"""Letters of the line at the foot, which our theme sets on 165 mm in 8.5 pt: so many stand on it as a rule."""
MINE = ("Date", "Clay, batch, kiln", "Measured, {}", "Weighed, g", "What to change")
MADE = ("Date", "Measured, {}", "Weighed, g", "What to change")


class Sheets:
    """The sheets of one version: each has marks of its own, for what is told on one is not told on another.

    `packed` is what comes with them in a kit; left out, nothing does. `units` are said beside the fingerprint, where
    there are pages in several.
    """

    def __init__(
        self,
        worked: Worked,
        version: WorkedVersion,
        drawings: Drawings,
        packed: Packed | None = None,
        units: str = "",
    ) -> None:
        self.worked, self.version, self.drawings = worked, version, drawings
        self.packed = packed or nothing_packed(version)
        self.numbers, self.units = Numbers(worked.rounder), units
        self.code = self.packed.code or code_of(worked, version)

    def head(self, sheet: str) -> Head:
        """What a sheet begins with."""
        worked, version, numbers = self.worked, self.version, self.numbers
        called = self.called
        named = f" · {called}" if called else ""
        revised = f"{worked.revised(version)}, {worked.date}"
        code = f"{self.code} in {self.units}" if self.units else self.code
        foot = f"{worked.title}{named} · {revised} · {code} · {worked.studio.name} · {sheet}"
        licence = f" · {worked.studio.licence.text}" if worked.studio.licence.text else ""
        return Head(
            sheet=sheet,
            title=worked.title,
            version=called,
            summary=Html(words.prose(version.summary, inline=True)),
            summary_plain=words.plain(version.summary),
            foot=foot + licence if len(foot + licence) <= FOOT else foot,
            code=self.code,
            date=worked.date,
            language=worked.studio.language,
            makes=words.plain(version.makes),
            level=worked.level,
            bench_time=numbers.added(version.bench_times),
            whole_time=numbers.added(version.whole_times),
            untimed=SO_FAR if version.untimed else "",
            studio=studio(worked.studio),
        )

    @property
    def called(self) -> str:
        """The version where there are several or something was chosen, and the colours, as a bag's label says it."""
        version = self.version.title if len(self.worked.versions) > 1 else ""
        return ", ".join(filter(None, (self.packed.called or version, self.packed.colourway)))

    def handout(self, marks: Marks, pages: Sequence[TemplatePage]) -> Handout:
        """The pupil's sheet; `pages` are its templates."""
        rows = Rows(self.worked, self.version, self.drawings, marks)
        needs = Needs(self.version, self.drawings, self.numbers, marks, self.packed)
        return Handout(
            head=self.head("Handout"),
            picture=self.picture(),
            sessions=tuple(self._sessions(rows)),
            sizes=tuple(self._sizes(marks)),
            needs=gathered(needs.materials()),
            tools=tuple(needs.tools()),
            bags=tuple(needs.bags()),
            safety=rows.hazards.of_sheet(),
            rows=rows.all(),
            templates=self.templates(pages, marks),
            slabs=tuple(slab_sketches(self.worked, self.drawings.slabs)),
            results=self.results(MINE if self.clayed else MADE),
        )

    def card(self, marks: Marks) -> BenchCard:
        """One side to prop up."""
        rows = Rows(self.worked, self.version, self.drawings, marks)
        return BenchCard(self.head("Bench card"), rows.of_card())

    def template_sheet(self, marks: Marks, pages: Sequence[TemplatePage]) -> TemplateSheet | None:
        """Templates to cut up; none where the version has none."""
        templates = self.templates(pages, marks)
        return TemplateSheet(self.head("Templates"), templates) if templates else None

    def templates(self, pages: Sequence[TemplatePage], marks: Marks) -> Templates | None:
        """What is said of templates, and their pages; none where there are none."""
        if not pages:
            return None
        return Templates(tuple(template_pages(pages, marks)), bars(pages), lines(pages, wet=self.clayed))

    def results(self, headings: Sequence[str]) -> tuple[str, ...]:
        """Headings under which own results are written, with the studio's unit."""
        return tuple(one.format(self.worked.rounder.unit("mm")) for one in headings)

    @property
    def clayed(self) -> bool:
        """Whether it is of clay."""
        return any(isinstance(line.item, Clay) for line in self.version.materials)

    def picture(self) -> Picture | None:
        """The project's picture, which shows its main version; of another its view is drawn, where it can be."""
        worked, drawn = self.worked, self.drawings.finished
        other = self.version.name != worked.main.name or bool(self.packed.called)
        if worked.pictures and not (other and drawn):
            note = f"The picture shows {worked.main.title}." if other else ""
            return of_file(worked.folder, worked.pictures[0], f"{worked.title}, finished", note)
        if drawn is None:
            return None
        svg = Html(Markup(drawn.svg))  # noqa: S704 - drawn by our own pen
        return Picture("", svg, drawn.says, "true size" if drawn.true else "")

    def _sessions(self, rows: Rows) -> Iterator[Session]:
        """What is done in one go, and how each ends."""
        for number, session in enumerate(self.version.plan.sessions, 1):
            told = steps_told(self.version.numbers, session)
            yield Session(number, told, rows.active(session), self._then(session))

    def _then(self, session: plan.Session) -> str:
        """What a session ends with: the wait that holds the next one back longest."""
        if session.wait is None or not session.waits:
            return "done"
        longest = max((self.version.steps[i] for i in session.waits), key=lambda s: s.wait.high if s.wait else 0)
        does = "kiln" if longest.firing else next((word for word in ("dry", "cure") if word in longest.does), "wait")
        return f"{does} {self.numbers.time(session.wait)}"

    def _sizes(self, marks: Marks) -> Iterator[Size]:
        """The finished sizes that the project names; failing that, those of its parts, the first few."""
        for shown in self.version.finished:
            yield Size(shown.label, Html(marks.number(shown.printed.told, f"the finished size '{shown.label}'")))
        if self.version.finished:
            return
        given = ((p, s, s.finished) for p in self.version.parts.values() for s in p.sizes if s.finished is not None)
        for part, size, own in islice(given, MOST_SIZES):
            told = f"{self.numbers.finished(own)} {self.worked.rounder.unit('mm')}"
            label = part.title if len(part.sizes) == 1 else f"{part.title}, {in_a_sentence(size.label)}"
            yield Size(label, Html(escape(words.kept(told))))


def studio(one: Publisher) -> Studio:
    """Who publishes, for a theme."""
    said = one.licence
    return Studio(one.name, one.about, one.contact, one.note, one.emergency, said.text, said.pictures, said.link)
