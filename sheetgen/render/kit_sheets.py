"""The sheets of whoever makes a piece: handout, bench card and templates of its version, at a table or with a kit."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, NamedTuple

from sheetgen.base.spelling import slug
from sheetgen.facts.cautions import OUT_OF_CLASS
from sheetgen.render.handout import Sheets
from sheetgen.render.marks import Marks
from sheetgen.render.ordered import HOW, Press, sound

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence

    from sheetgen.model.drawing import Drawings
    from sheetgen.model.packed import Packed
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.render.job import Doubt, Printout, Prints
    from sheetgen.render.ordered import Ordered
    from sheetgen.render.theme import Theme

IN_A_KIT = ("handout", "bench card", "templates")


class KitSheet(NamedTuple):
    """One sheet of a kit on one paper (A4, Letter): its PDF, how many pages that has, in which way it is set."""

    sheet: str
    paper: str
    pdf: bytes
    pages: int
    way: int = 0


class KitSheets(NamedTuple):
    """The sheets of a kit, paper by paper in the order in which they lie in it; and what jars in their layout."""

    sheets: tuple[KitSheet, ...]
    doubts: tuple[Doubt, ...]


@dataclass(slots=True)
class Printing:
    """The sheets of a kit while they are printed: their jobs, what comes of each, and with which way each began."""

    jobs: list[Ordered]
    outs: Iterable[list[Printout]]
    papers: Sequence[str]
    theme: Theme
    begun: Mapping[str, int]
    printed: KitSheets | None = None

    def done(self) -> KitSheets:
        """All of them, as soon as they are printed.

        Misplaced at the theme's file where a sheet leaves out, hides or alters what must be printed.
        """
        if self.printed is None:
            self.printed = self._done()
        return self.printed

    def _done(self) -> KitSheets:
        found: list[KitSheet] = []
        doubts: list[Doubt] = []
        for one, outs in zip(self.jobs, self.outs, strict=True):
            for paper, out in zip(self.papers, outs, strict=True):
                sound(out.faults, self.theme, one.template)
                found.append(KitSheet(one.sheet, paper, out.pdf, out.pages, self.begun.get(one.sheet, 0) + out.way))
            doubts += outs[0].warnings  # both papers have one content box
        order = list(self.papers)
        return KitSheets(tuple(sorted(found, key=lambda one: order.index(one.paper))), tuple(doubts))


def kit_sheets(  # noqa: PLR0913, PLR0917 - what sheets are made of, and by what
    worked: Worked,
    version: WorkedVersion,
    drawn: Drawings,
    packed: Packed,
    theme: Theme,
    pool: Prints,
    like: KitSheets | None = None,
) -> Printing:
    """Those that go into a posted kit, for who works alone; else as `maker_sheets`."""
    return maker_sheets(worked, out_of_class(version), drawn, packed, theme, pool, like)


def maker_sheets(  # noqa: PLR0913, PLR0917 - what sheets are made of, and by what
    worked: Worked,
    version: WorkedVersion,
    drawn: Drawings,
    packed: Packed,
    theme: Theme,
    pool: Prints,
    like: KitSheets | None = None,
) -> Printing:
    """Those that the design publishes, without the teacher's, as they go with what is `packed`, begun to be printed.

    `like` are those of another kit of the design: each begins with the way in which the other is set.
    """
    begun = {one.sheet: one.way for one in like.sheets} if like else {}
    jobs = list(_ordered(Sheets(worked, version, drawn, packed), theme, begun))
    return Printing(jobs, pool.printed([one.job for one in jobs]), worked.studio.paper, theme, begun)


def _ordered(sheets: Sheets, theme: Theme, begun: Mapping[str, int]) -> Iterator[Ordered]:
    worked = sheets.worked
    pages = sheets.drawings.pages.get(worked.studio.paper[0], ())
    folder = f"{worked.name}/kit/{slug(sheets.called)}" if sheets.called else f"{worked.name}/kit"
    press = Press(theme, worked.studio.paper, worked.revision, folder)
    for name in IN_A_KIT:
        if name not in worked.sheets:
            continue
        marks = Marks()
        sheet: object
        if name == "handout":
            sheet = sheets.handout(marks, pages)
        elif name == "bench card":
            sheet = sheets.card(marks)
        elif not (sheet := sheets.template_sheet(marks, pages)):
            continue
        yield press.ordered(name, sheet, marks, HOW[name].from_way(begun.get(name, 0)))


def out_of_class(version: WorkedVersion) -> WorkedVersion:
    """A version with nothing said of a class: who does a step is told to whoever works alone."""
    steps = (replace(step, who=OUT_OF_CLASS.get(step.who, step.who)) for step in version.steps)
    return replace(version, steps=tuple(steps))
