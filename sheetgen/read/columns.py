"""The first line of a table to its columns: in any order and case; missing, double and misspelt ones are told."""

from __future__ import annotations

from difflib import get_close_matches
from typing import TYPE_CHECKING

from sheetgen.base.spelling import bare

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.record import Table
    from sheetgen.base.trouble import Troubles

MOST_LISTED = 12
ALIKE = 0.8
"""How alike a word must be to a column that is missing, to be taken for a slip and not for a column of one's own."""


def columns(table: Table, known: Sequence[str], needed: Sequence[str], troubles: Troubles) -> dict[str, int] | None:
    """Where each known column stands, from 0; None with troubles when the lines under them cannot be trusted.

    What is no column's name is shown only where all that are needed are there: else the line may be no head at all,
    and hold what is private.
    """
    names = {bare(name): name for name in known}
    keys = [bare(cell) for cell in table.head.cells]
    found: dict[str, int] = {}
    for at, key in enumerate(keys):
        found.setdefault(names.get(key, ""), at)
    found.pop("", None)
    double = [at for at, key in enumerate(keys) if key in names and found[names[key]] != at]
    slips = _slips(keys, {key: name for key, name in names.items() if name not in found})
    missing = [name for name in needed if name not in found and name not in slips.values()]
    record = table.head.record({at for at, key in enumerate(keys) if key in names} | slips.keys())
    wanted = f"wanted are {_listed(needed)}; there may be {_listed([name for name in known if name not in needed])}"
    for at in double:
        troubles.add(f"two columns are called '{names[keys[at]]}'", table.head.place(at, record), f"keep one; {wanted}")
    for at, name in slips.items():
        troubles.add(
            f"there is no column '{table.head.cells[at]}'", table.head.place(at, record), f"did you mean '{name}'?"
        )
    if missing:
        there = f"no column is called {_listed([repr(name) for name in missing], 'or')}"
        troubles.add(there, table.head.place(0, record), f"the first line names the columns: {wanted}")
    if double or slips or missing:
        return None
    own = [at for at, key in enumerate(keys) if key and key not in names]
    if own:
        listed = _listed([f"'{table.head.cells[at][:40]}'" for at in own[:MOST_LISTED]]) + (
            " …" if len(own) > MOST_LISTED else ""
        )
        told = f"the column {listed} is not read" if len(own) == 1 else f"the columns {listed} are not read"
        place = table.head.place(own[0], table.head.record({*own, *found.values()}))
        troubles.add(told, place, f"read are {_listed(known)}", "warning")
    return found


def _slips(keys: Sequence[str], missing: dict[str, str]) -> dict[int, str]:
    """Columns whose name is nearly that of a missing one, by where they stand."""
    near = {at: get_close_matches(key[:40], missing, n=1, cutoff=ALIKE) for at, key in enumerate(keys) if key}
    return {at: missing[like[0]] for at, like in near.items() if like}


def _listed(names: Sequence[str], last: str = "and") -> str:
    return f" {last} ".join(filter(None, (", ".join(names[:-1]), *names[-1:])))
