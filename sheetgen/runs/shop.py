"""A run of kits without orders: the lists pick, cut, buy and left, for spreadsheets and on paper, kept private."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.trouble import CannotBe, Misplaced, Troubles
from sheetgen.kits.apart import bagged
from sheetgen.kits.money import Coin
from sheetgen.kits.taken import Kits
from sheetgen.kits.without_orders import lists_of
from sheetgen.pipeline import NotReady, Outcome, work_through
from sheetgen.publish.private import refuse_public, write_private
from sheetgen.read.wants import read_want
from sheetgen.runs.press import list_files, press

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from sheetgen.read.wants import Want


SHOP = "shop"
"""The folder of these lists, within the private one."""


def shop(root: Path, wanted: Sequence[str], private: Path, build: Path) -> tuple[Outcome, list[str]]:
    """What a run of kits takes: the lists pick, cut, buy and left into the private folder, and a summary in lines.

    `wanted` are words such as `tideline-band:US 8=3`. Nothing is written where one of them is in trouble. NotReady for
    a folder that is public, or cannot be written.
    """
    wants, typed = [], Troubles()
    try:
        refuse_public(private, root, build)
    except CannotBe as fault:
        raise NotReady(f"{fault.message}; {fault.help}") from None
    for word in wanted:
        try:
            wants.append(read_want(word))
        except CannotBe as fault:
            typed.add(fault.message, None, fault.help)
    outcome = work_through(root, list(dict.fromkeys(want.design for want in wants))) if wants else Outcome()
    outcome.troubles.extend(typed)
    run = [replace(kits, posted=True) for kits in kits_of(outcome, wants)]
    if outcome.troubles.errors or not run:
        return outcome, []
    studio, rounder = outcome.worked[0].studio, outcome.worked[0].rounder
    lists, told, troubles = lists_of(run, Coin(studio.currency, point=rounder.point))
    outcome.troubles.extend(troubles)
    if troubles:
        return outcome, []
    try:
        with press(root, cores=1) as by:  # so few that another process would not be ready before they are done
            files, pages = list_files(lists, by)(outcome.troubles)
    except Misplaced as fault:
        outcome.troubles.extend([fault.trouble])
        return outcome, []
    except CannotBe as fault:
        outcome.troubles.add(fault.message, None, fault.help)
        return outcome, []
    try:
        outcome.changed = write_private(private, SHOP, files)
    except OSError as fault:
        raise NotReady(f"{private} cannot be written: {fault.strerror}") from None
    return outcome, [*told, *pages, f"wrote {', '.join(outcome.changed)} into {private / SHOP}"]


def kits_of(outcome: Outcome, wants: Sequence[Want]) -> list[Kits]:
    """Each version once, on the slabs that are drawn of it."""
    by_name = {worked.name: worked for worked in outcome.worked}
    many: dict[tuple[str, str], int] = {}
    for want in wants:
        if (worked := by_name.get(want.design)) is None:
            continue  # its trouble is told
        try:
            version = worked.version(want.version) if want.version else worked.main
        except CannotBe as fault:
            outcome.troubles.add(fault.message, None, fault.help)
            continue
        many[worked.name, version.name] = many.get((worked.name, version.name), 0) + want.count
    found = []
    for (design, name), count in many.items():
        worked, version = by_name[design], by_name[design].versions[name]
        found.append(Kits(worked, bagged(version), count))
    return found
