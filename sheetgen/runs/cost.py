"""What a piece, a run of kits or a class costs: told in lines, and as lists into the private folder."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from sheetgen.base.place import Place, Source
from sheetgen.base.trouble import CannotBe, Misplaced, Troubles
from sheetgen.kits.class_costing import of_class
from sheetgen.kits.cost_lists import sheets, told
from sheetgen.kits.costing import of_piece, of_run
from sheetgen.kits.money import Coin
from sheetgen.pipeline import NotReady, Outcome, projects_of, work_through
from sheetgen.publish.private import refuse_public, write_private
from sheetgen.publish.tables import csv_bytes
from sheetgen.publish.workbook import xlsx_bytes
from sheetgen.read.library import currency_of
from sheetgen.read.till import TILL, read_till
from sheetgen.read.wants import is_table, read_want, read_which
from sheetgen.runs.orders import packed
from sheetgen.runs.shop import kits_of
from sheetgen.work.besides import besides
from sheetgen.work.class_loads import firings

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.trouble import Trouble
    from sheetgen.kits.costing import Costing
    from sheetgen.kits.taken import Kits
    from sheetgen.model.till import Till
    from sheetgen.read.wants import Want

COST = "cost"
"""The folder of these lists, within the private one."""


def cost(root: Path, wanted: Sequence[str], private: Path, build: Path, *, a_class: bool) -> tuple[Outcome, list[str]]:
    """Each design that is named as a piece or as a class, or a run of kits where counts are: lists, and all in lines.

    A table of orders is a run too: an order in trouble is held back, and the others are costed. Else nothing is written
    where something is in trouble. NotReady for a folder that is public, or cannot be written.
    """
    try:
        refuse_public(private, root, build)
    except CannotBe as fault:
        raise NotReady(f"{fault.message}; {fault.help}") from None
    if tables := [word for word in wanted if is_table(word)]:
        return _of_orders(root, Path(tables[0]), private, alone=len(wanted) == 1 and not a_class)
    typed = Troubles()
    wants: list[Want] = []
    counted = [word for word in wanted if "=" in word]
    for word in wanted:
        try:
            wants.append(read_want(word) if counted and not a_class else read_which(word))
        except CannotBe as fault:
            typed.add(fault.message, None, fault.help)
    outcome = work_through(root, list(dict.fromkeys(want.design for want in wants))) if wants else Outcome()
    outcome.troubles.extend(typed)
    till = read_till(private / TILL, currency_of(root / "projects"), projects_of(root), outcome.troubles)
    _tell_misplaced(root, outcome.troubles)
    found = kits_of(outcome, wants)
    if outcome.troubles.errors or not found:
        return outcome, []
    coin = Coin(found[0].worked.studio.currency, point=found[0].rounder.point)
    costings = []
    try:
        each = _classes(found, outcome, till, coin) if a_class else _kits(found, till, coin, run=bool(counted))
        for costing, troubles in each:
            outcome.troubles.extend(troubles)
            costings.append(costing)
    except Misplaced as fault:
        outcome.troubles.extend([fault.trouble])
    if outcome.troubles.errors:
        return outcome, []
    return outcome, [*_lines(costings), *_written(outcome, costings, private)]


def _of_orders(root: Path, table: Path, private: Path, *, alone: bool) -> tuple[Outcome, list[str]]:
    """The run of a table of orders, by the kinds that are packed of it."""
    outcome, till_told = Outcome(), Troubles()
    if not alone:
        told = f"'{table.name}' is a table of orders, a run of kits, and is costed by itself"
        outcome.troubles.add(told, None, "name it alone, without --class")
        return outcome, []
    till = read_till(private / TILL, currency_of(root / "projects"), projects_of(root), till_told)
    _tell_misplaced(root, till_told)
    try:
        run, held = packed(root, table, outcome)
        outcome.troubles.extend(till_told)
        if run is None or till_told.errors:
            return outcome, []
        coin = Coin(run.kinds[0].worked.studio.currency, point=run.kinds[0].rounder.point)
        costing, troubles = of_run(run.kinds, till, coin, table.stem)
    except CannotBe as fault:
        outcome.troubles.add(fault.message, Place(Source(table.name)), fault.help)
        return outcome, []
    outcome.troubles.extend(troubles)
    return outcome, [] if troubles else [*held, *_lines([costing]), *_written(outcome, [costing], private)]


def _classes(
    found: Sequence[Kits], outcome: Outcome, till: Till | None, coin: Coin
) -> Iterator[tuple[Costing, list[Trouble]]]:
    library = outcome.library
    if library is None:
        return
    projects = {filed.name: filed.project for filed in library.projects}
    for kits in found:
        project = projects[kits.worked.name]
        more = besides(project, library.studio)
        yield of_class(kits, firings(kits.version, project, library, more.teacher), more, till, coin)


def _kits(
    found: Sequence[Kits], till: Till | None, coin: Coin, *, run: bool
) -> Iterator[tuple[Costing, list[Trouble]]]:
    if run:
        yield of_run([replace(kits, posted=True) for kits in found], till, coin)
    else:
        for kits in found:
            yield of_piece(replace(kits, bags=1), till, coin)  # however often it is named


def _lines(costings: Sequence[Costing]) -> Iterator[str]:
    for costing in costings:
        yield from told(costing)
        yield ""


def _written(outcome: Outcome, costings: Sequence[Costing], private: Path) -> list[str]:
    """A workbook for each costing, and a CSV for each of its lists."""
    files: dict[str, bytes] = {}
    for costing in costings:
        lists = sheets(costing)
        files |= {f"{costing.name}-{sheet.name.replace(' ', '-')}.csv": csv_bytes(sheet) for sheet in lists}
        files[f"{costing.name}.xlsx"] = xlsx_bytes(lists)
    try:
        outcome.changed = write_private(private, COST, files)
    except OSError as fault:
        raise NotReady(f"{private} cannot be written: {fault.strerror}") from None
    return [f"wrote {', '.join(outcome.changed)} into {private / COST}"]


def _tell_misplaced(root: Path, troubles: Troubles) -> None:
    """A till among what is handed on is read by nobody, and should not go with it."""
    for name in (TILL, f"projects/{TILL}"):
        if (root / name).exists():
            told = "the till is not read here, and goes with the library when that is handed on"
            troubles.add(told, Place(Source(name)), "move it into the private folder", "warning")
