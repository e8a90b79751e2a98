"""A class: from a list of its pupils to its lists, its tables and the teacher's sheets, into the private folder."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.place import Place, Source
from sheetgen.base.spelling import counted, slug
from sheetgen.base.trouble import CannotBe
from sheetgen.kits.at_tables import Room
from sheetgen.kits.class_run import fired_more
from sheetgen.kits.money import Coin
from sheetgen.kits.tables_list import tables_list
from sheetgen.kits.without_orders import lists_of
from sheetgen.pipeline import NotReady, Outcome
from sheetgen.publish.private import drop_stale, refuse_public, write_private
from sheetgen.render.faceless import faceless
from sheetgen.runs.class_handouts import BEGIN as HANDED_OUT
from sheetgen.runs.class_handouts import copies
from sheetgen.runs.class_made import made_up
from sheetgen.runs.class_printed import printed
from sheetgen.runs.class_together import told_together
from sheetgen.runs.press import list_files, press
from sheetgen.runs.published import published
from sheetgen.runs.whose import another, is_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from pathlib import Path

    from sheetgen.base.trouble import Troubles
    from sheetgen.kits.taken import Taken
    from sheetgen.model.class_list import PupilLine

CLASS = "class"
"""The folder of what classes take, within the private one; in it each list has one of its own."""
TEACHERS = "teacher-"
ON_PAPER = ("pick-", "cut-", "buy-", "left-", "tables-")
WHOSE = ".list"
"""In the folder of a class, which file its list is."""


def class_list(root: Path, table: Path, private: Path, build: Path, paper: str = "") -> tuple[Outcome, list[str]]:
    """What a class takes, where it stands, and its teacher's sheets, into the private folder; a summary in lines.

    What is wrong with a pupil's line is told, and the class is made up without him. On one `paper`, or on those of the
    studio. NotReady for a folder that is public, or cannot be written.
    """
    try:
        refuse_public(private, root, build)
    except CannotBe as fault:
        raise NotReady(f"{fault.message}; {fault.help}") from None
    outcome, within = Outcome(), f"{CLASS}/{slug(table.stem)}"
    if (other := another(private, f"{within}/{WHOSE}", table)) is not None:
        taken = f"{private / within} holds the class of another list of this name, {other}"
        helped = "call one of the two lists otherwise, or delete that folder if it is done with"
        outcome.troubles.add(taken, Place(Source(table.name)), helped)
        return outcome, []
    made = made_up(root, table, outcome, paper)
    if made is None:
        return outcome, []
    run = made.run
    studio = outcome.worked[0].studio
    lists, told, troubles = lists_of(run.kinds, Coin(studio.currency, point=outcome.worked[0].rounder.point))
    outcome.troubles.extend(troubles)
    if troubles:
        return outcome, []
    needs = [one.taken for one in lists.got]
    laid = Room(run, needs).laid()
    with press(root) as by:
        bare = faceless(by.pool.printer, [table.stem, *(word for one in made.pupils for word in (one.name, one.table))])
        _tell_bare(made.pupils, bare, outcome.troubles)
        files, _ = list_files(lists, by, [tables_list(laid)])(outcome.troubles)
        files |= {page.path: page.content for page in printed(by, table.stem, run, laid, needs, outcome, bare)}
    try:
        outcome.changed = write_private(private, within, files | {WHOSE: is_of(table)})
        for begins in (TEACHERS, *HANDED_OUT, *ON_PAPER):
            drop_stale(private, within, begins, files)
    except OSError as fault:
        raise NotReady(f"{private} cannot be written: {fault.strerror}") from None
    extra = (
        "; a teacher’s piece and spare sets are common practice; class: in studio.yaml may say otherwise"
        if run.usual
        else ""
    )
    return outcome, [
        run.counted() + extra,
        *fired_more(run, made.loads),
        *told_together(run),
        *copies(run, published(root, build, run.designs, made.kiln.library.stock)),
        *told,
        *weighed(needs),
        f"wrote {counted(len(files), 'file')} into {private / within}",
    ]


def weighed(needs: Sequence[Taken]) -> Iterator[str]:
    """Told where something is weighed out of a pot: a handout's amount is rounded up for one, and twelve are too much.

    Fourteen bands take 9.576 g of clay each: one alone has 10 g, and the pot is 135 g, not 140.
    """
    if any(one.way == "pot" and one.item.unit in {"g", "mL"} for one in needs):
        yield "weigh out of the pots what `tables` says: a handout’s amount is rounded up for one who works alone"


def _tell_bare(pupils: Sequence[PupilLine], bare: frozenset[str], troubles: Troubles) -> None:
    """Warn of each name or table that cannot be printed whole."""
    for pupil in pupils:
        if bare.intersection(pupil.name + pupil.table):
            told = "the name or the table has a letter that no type face on this machine has: a box stands for it"
            helped = "write it by hand, or install a face that has it (on Debian, fonts-noto)"
            troubles.add(told, pupil.place, helped, "warning")
