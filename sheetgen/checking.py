"""Checks a library: of a design that stands as it was published, what was found then is told again."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.other_units import in_other_units
from sheetgen.pipeline import Outcome, check_one, said_of
from sheetgen.publish.standing import standing

if TYPE_CHECKING:
    from collections.abc import Sequence
    from pathlib import Path

    from sheetgen.publish.standing import Standing


def checked(root: Path, build: Path, only: Sequence[str] = ()) -> Outcome:
    """Everything, or the designs named; nothing is written. `said` has every design that is well.

    A design stands by the same keys as when it is published into `build`: there it was worked and checked from the
    same files by the same program.
    """
    outcome, found = Outcome(), standing(root, build)
    if not found.own or {*found.well} != {*found.own} or not {*only} <= {*found.own}:
        _the_rest(root, only, found, outcome)
    for name in found.well:
        if not only or name in only:
            told, outcome.said[name] = found.checked[name]
            outcome.troubles.extend(told)
    return outcome


def _the_rest(root: Path, only: Sequence[str], found: Standing, outcome: Outcome) -> None:
    """Read, work and check what does not stand, once it is known what does."""
    from sheetgen.read.library import read_designs, read_shared  # noqa: PLC0415 - heavy: not where all stands
    from sheetgen.unchanged import part_alike, settle  # noqa: PLC0415

    shared = read_shared(root, outcome.troubles)
    if shared is not None:
        list(shared.library.kinds.values())  # whoever writes a kind is told of its slips, used or not
        settle(found, shared.library.stock, outcome.troubles)
    if shared is None or outcome.troubles.found:
        found.well.clear()
    part_alike(found, found.record, root)
    asked = [name for name in (only or found.own) if name not in found.well]
    if shared is None or (found.own and not asked):
        return
    library = read_designs(shared, outcome.troubles, asked, found.old_names())
    outcome.failed += library.failed
    for filed in library.projects:
        worked, own = check_one(filed, library, outcome.faults)
        if worked is not None:
            in_other_units(filed, library, own, check_one)
        outcome.troubles.extend(own)
        if worked is None:
            outcome.failed.append(filed.name)
        else:
            outcome.said[filed.name] = said_of(worked)
