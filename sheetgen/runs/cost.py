"""What a piece, a run of kits or a class costs: told in lines, and as lists into the private folder."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

from sheetgen.base.place import Place, Source
from sheetgen.base.spelling import slug
from sheetgen.base.trouble import CannotBe, Misplaced, Troubles
from sheetgen.kits.class_costing import Course, of_class
from sheetgen.kits.cost_lists import sheets, told
from sheetgen.kits.costing import of_piece, of_run
from sheetgen.kits.money import Coin
from sheetgen.pipeline import NotReady, Outcome, projects_of, work_through
from sheetgen.publish.private import refuse_public, write_private
from sheetgen.publish.tables import csv_bytes
from sheetgen.publish.workbook import xlsx_bytes
from sheetgen.read.studio import currency_of
from sheetgen.read.table_kind import CLASS, ORDERS, held_in
from sheetgen.read.till import TILL, read_till
from sheetgen.read.wants import is_table, read_want, read_which
from sheetgen.runs.class_made import made_up, planned
from sheetgen.runs.orders import packed
from sheetgen.runs.shop import kits_of
from sheetgen.runs.whose import another, is_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from sheetgen.base.trouble import Trouble
    from sheetgen.kits.costing import Costing
    from sheetgen.kits.taken import Kits
    from sheetgen.model.till import Till
    from sheetgen.read.wants import Want

NOTHING: Mapping[str, bytes] = MappingProxyType({})
COST = "cost"
"""The folder of these lists, within the private one."""


def cost(root: Path, wanted: Sequence[str], private: Path, build: Path, *, a_class: bool) -> tuple[Outcome, list[str]]:
    """Each design that is named as a piece or as a class, or a run of kits where counts are: lists, and all in lines.

    A table of orders is a run too, the list of pupils a class: an order or a pupil in trouble is held back, and the
    others are costed. Else nothing is written where something is in trouble. NotReady for a folder that is public, or
    cannot be written.
    """
    try:
        refuse_public(private, root, build)
    except CannotBe as fault:
        raise NotReady(f"{fault.message}; {fault.help}") from None
    if tables := [word for word in wanted if is_table(word)]:
        return _of_table(root, Path(tables[0]), private, alone=len(wanted) == 1, a_class=a_class)
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
    coin, costings = _coin(found), []
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


def _of_table(root: Path, table: Path, private: Path, *, alone: bool, a_class: bool) -> tuple[Outcome, list[str]]:
    """A table of orders as the run that is packed of it, or a list of pupils as the class that is made up from it."""
    outcome, till_told = Outcome(), Troubles()
    of = held_in(table)
    if not alone or (a_class and of == ORDERS):
        what = (
            "the list of a class" if of == CLASS or (a_class and of != ORDERS) else "a table of orders, a run of kits"
        )
        helped = "name it alone" + (", without --class" if of == ORDERS else "")
        outcome.troubles.add(f"'{table.name}' is {what}, and is costed by itself", None, helped)
        return outcome, []
    till = read_till(private / TILL, currency_of(root / "projects"), projects_of(root), till_told)
    _tell_misplaced(root, till_told)
    kept = f".{slug(table.stem)}"
    if (other := another(private, f"{COST}/{kept}", table)) is not None:
        taken = f"{private / COST} holds the cost of another list of this name, {other}"
        helped = "call one of the two lists otherwise, or delete that cost if it is done with"
        outcome.troubles.add(taken, Place(Source(table.name)), helped)
        return outcome, []
    try:
        costings, held = (_of_list if of == CLASS else _of_orders)(root, table, till, outcome, till_told)
    except Misplaced as fault:
        outcome.troubles.extend([fault.trouble])
        return outcome, []
    except CannotBe as fault:
        outcome.troubles.add(fault.message, Place(Source(table.name)), fault.help)
        return outcome, []
    return outcome, [
        *held,
        *_lines(costings),
        *_written(outcome, costings, private, {kept: is_of(table)}),
    ] if costings else []


def _of_orders(
    root: Path, table: Path, till: Till | None, outcome: Outcome, told: Troubles
) -> tuple[list[Costing], list[str]]:
    """The run of a table of orders, by the kinds that are packed of it, and what is held back of it."""
    run, held = packed(root, table, outcome)
    outcome.troubles.extend(told)
    if run is None or told.errors:
        return [], []
    costing, troubles = of_run(run.kinds, till, _coin(run.kinds), table.stem)
    outcome.troubles.extend(troubles)
    return [] if troubles else [costing], held


def _of_list(
    root: Path, table: Path, till: Till | None, outcome: Outcome, told: Troubles
) -> tuple[list[Costing], list[str]]:
    """The class of a list, out of the pots that its lists have."""
    made = made_up(root, table, outcome)
    outcome.troubles.extend(told)
    if made is None or told.errors:
        return [], []
    costing, troubles = of_class(Course(made.run, made.said, made.loads, table.stem), till, _coin(made.run.kinds))
    outcome.troubles.extend(troubles)
    return [] if troubles else [costing], []


def _coin(run: Sequence[Kits]) -> Coin:
    return Coin(run[0].worked.studio.currency, point=run[0].rounder.point)


def _classes(
    found: Sequence[Kits], outcome: Outcome, till: Till | None, coin: Coin
) -> Iterator[tuple[Costing, list[Trouble]]]:
    if outcome.library is None:
        return
    for kits in found:
        made = planned(kits, outcome.library)
        yield of_class(Course(made.run, made.said, made.loads), till, coin)


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


def _written(
    outcome: Outcome, costings: Sequence[Costing], private: Path, kept: Mapping[str, bytes] = NOTHING
) -> list[str]:
    """A workbook for each costing, a CSV for each of its lists, and what is `kept` beside them, which is not named."""
    files: dict[str, bytes] = dict(kept)
    for costing in costings:
        lists = sheets(costing)
        files |= {f"{costing.name}-{sheet.name.replace(' ', '-')}.csv": csv_bytes(sheet) for sheet in lists}
        files[f"{costing.name}.xlsx"] = xlsx_bytes(lists)
    try:
        outcome.changed = write_private(private, COST, files)
    except OSError as fault:
        raise NotReady(f"{private} cannot be written: {fault.strerror}") from None
    return [f"wrote {', '.join(name for name in outcome.changed if name not in kept)} into {private / COST}"]


def _tell_misplaced(root: Path, troubles: Troubles) -> None:
    """A till among what is handed on is read by nobody, and should not go with it."""
    for name in (TILL, f"projects/{TILL}"):
        if (root / name).exists():
            told = "the till is not read here, and goes with the library when that is handed on"
            troubles.add(told, Place(Source(name)), "move it into the private folder", "warning")
