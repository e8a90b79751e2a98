"""A run of orders: from a spreadsheet to what is packed from, into the private folder."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.place import Place, Source
from sheetgen.base.spelling import counted, in_turn, slug
from sheetgen.base.trouble import CannotBe, Misplaced, Troubles
from sheetgen.facts.parcels import MOST_IN_A_RUN
from sheetgen.model.sent import FILE, SentList
from sheetgen.pipeline import NotReady, Outcome
from sheetgen.publish.alone import alone
from sheetgen.publish.private import closed, drop_stale, refuse_public, write_private
from sheetgen.read.ledgers import read_ledgers
from sheetgen.read.library import read_library
from sheetgen.read.orders import read_orders
from sheetgen.render.faceless import faceless
from sheetgen.runs.designs import Designs, versions_of
from sheetgen.runs.kept import KeptPool
from sheetgen.runs.kinds import Kinds
from sheetgen.runs.order_files import TO_GO, OrderFiles, Wanted, named
from sheetgen.runs.ordered import run_of
from sheetgen.runs.press import press
from sheetgen.runs.sent import keep_sent, sent_list

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Iterator
    from pathlib import Path

    from sheetgen.kits.ordered import Run
    from sheetgen.model.orders import Orders
    from sheetgen.progress import Progress
    from sheetgen.render.pdf import Printer
    from sheetgen.runs.press import Press

ORDERS, APART = "orders", "apart"
"""The folder of what runs print, within the private one, and in that of a run the one of what is mailed."""


def orders(  # noqa: PLR0913, PLR0917 - where all comes from and goes to
    root: Path, table: Path, private: Path, build: Path, wanted: Wanted, day: dt.date, progress: Progress | None = None
) -> tuple[Outcome, list[str]]:
    """All that a run of orders is packed from, into the private folder, and the list of what was sent; told in lines.

    What is wrong with a line is told, its order is held back, and the others are made. NotReady for a folder that is
    public, cannot be written, or where pages cannot be made.
    """
    outcome = Outcome()
    try:
        refuse_public(private, root, build)
    except CannotBe as fault:
        raise NotReady(f"{fault.message}; {fault.help}") from None
    try:
        closed(private)
        with alone(private), press(root, progress=progress) as by:
            there = SentList() if wanted.lists_alone else sent_list(private, outcome.troubles)
            run, told = packed(root, table, outcome, by.pool.printer)
            if run is not None:
                _refuse_too_many(run)
                kept = KeptPool(by.pool, private)
                told += _made(root, table, private, build, run, wanted, by._replace(sheets=kept), outcome)
                told += [f"{counted(kept.found, 'sheet')} of kits as an earlier run printed them"] if kept.found else []
                kept.keep()
                told += [] if wanted.lists_alone or not outcome.changed else _sent(root, private, there, run, day)
    except Misplaced as fault:
        outcome.troubles.extend([fault.trouble])
        return outcome, []
    except CannotBe as fault:
        outcome.troubles.add(fault.message, Place(Source(table.name)), fault.help)
        return outcome, []
    except OSError as fault:
        raise NotReady(f"{private} cannot be written: {fault.strerror}") from None
    return outcome, told


def packed(root: Path, table: Path, outcome: Outcome, printer: Printer | None = None) -> tuple[Run | None, list[str]]:
    """The orders of a table as they are packed, and what a terminal says of those that are not.

    None where there is none that can be packed. An order whose number cannot be printed is held back, where there is
    a printer to ask.
    """
    found = read_orders(table, table.name, versions_of(root), outcome.troubles)
    if printer is not None:
        found = _with_a_face(found, printer, outcome)
    designs = list(dict.fromkeys(str(line.design) for line in (*found.lines, *found.asked)))
    library = read_library(root, outcome.troubles, designs) if designs else None
    if library is None:
        return None, []
    run, held = run_of(found, Kinds(Designs(root, library, outcome), outcome.troubles))
    outcome.troubles.keep_causes()
    told = (
        [f"held back, since something of it is in trouble: {named([' '.join(one.split()) for one in held])}"]
        if held
        else []
    )
    return (run if run.orders else None), told


def _with_a_face(found: Orders, printer: Printer, outcome: Outcome) -> Orders:
    """The orders, those left out whose number has a letter that no type face has."""
    bare = faceless(printer, (line.order for line in found.lines))
    lacking = {str(line.order): line for line in reversed(found.lines) if bare.intersection(line.order)}
    for number, line in reversed(lacking.items()):
        told = f"order {number}: no type face of this machine has every letter of its number"
        helped = "install a face that has them, such as one of the Noto fonts, or write the number otherwise"
        outcome.troubles.add(told, line.place, helped)
    lines = tuple(line for line in found.lines if line.order not in lacking)
    return replace(found, lines=lines, lacking=found.lacking | set(lacking)) if lacking else found


def _refuse_too_many(run: Run) -> None:
    """CannotBe for a run of which each kit's sheets, card and labels would fill a room, and the memory before it."""
    many = sum(kits.bags for kits in run.kinds)
    if many > MOST_IN_A_RUN:
        most = max(run.orders, key=lambda order: sum(part.count for part in order.parts))
        of_it = sum(part.count for part in most.parts)
        told = f"{many} kits and parts in one table, of which order {most.number} has {of_it}"
        helped = f"a run is of up to {MOST_IN_A_RUN:g}: mend the count, or part the table and run each part"
        raise CannotBe(told, help=helped)


def _made(  # noqa: PLR0913, PLR0917 - where all comes from and goes to
    root: Path, table: Path, private: Path, build: Path, run: Run, wanted: Wanted, by: Press, outcome: Outcome
) -> list[str]:
    """Print and write it; nothing is written where a list cannot be made."""
    within = f"{ORDERS}/{slug(table.stem)}"
    made = OrderFiles(run, wanted, by, Place(Source(table.name)), outcome.troubles)
    files = made.files()
    if not files:
        return []
    outcome.changed = write_private(private, within, files)
    for begins in made.begin:
        drop_stale(private, within, begins, files)
    if not wanted.lists_alone:
        _tell_unpublished(root, outcome)
        made.told += _without_pages(build, outcome)
        if made.mailed:
            outcome.changed += [f"{APART}/{name}" for name in write_private(private, f"{within}/{APART}", made.mailed)]
        drop_stale(private, f"{within}/{APART}", "", made.mailed)
    elif any(path.name.startswith(TO_GO) for path in (private / within).iterdir()):
        made.told.append(
            "stack, cards and labels that lie there are of an earlier run: of this one are the lists alone"
        )
    return [*made.told, f"wrote {counted(len(outcome.changed), 'file')} into {private / within}"]


def _tell_unpublished(root: Path, outcome: Outcome) -> None:
    """Warn of a revision that nobody can look up yet: the code on a label leads to its page."""
    for worked in outcome.worked:
        ledgers = read_ledgers(root / "projects" / worked.name, Troubles())
        if worked.studio.address and not any(one.revision == worked.revision for one in ledgers):
            told = f"revision {worked.revision} of {worked.title} is not published yet"
            helped = "publish it before the parcels go: the codes on their labels lead to its pages"
            outcome.troubles.add(told, worked.place, helped, "warning")


def _without_pages(build: Path, outcome: Outcome) -> Iterator[str]:
    """Told where a code leads to a page that does not lie in the build folder; it may be published elsewhere."""
    coded = [one for one in outcome.worked if one.studio.address and one.studio.labels]
    if lacking := [one.title for one in coded if one.public and not (build / one.name / "index.html").is_file()]:
        yield f"no page in {build} of {named(lacking)}: the codes on their labels lead there, so publish first"


def _sent(root: Path, private: Path, there: SentList, run: Run, day: dt.date) -> Iterator[str]:
    """Add the run to what was sent, and name the orders that stand there already."""
    kept = keep_sent(root, private, there, run, day)
    if kept.again:
        yield f"sent before, look whether they are to go once more: {named(sorted(kept.again, key=in_turn))}"
    yield f"{counted(kept.added, 'line')} added to {private / FILE}, the list of what was sent"
