"""A run of orders: from a spreadsheet to what is packed from, into the private folder."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.trouble import Troubles
from sheetgen.read.library import read_library
from sheetgen.read.orders import read_orders
from sheetgen.runs.designs import Designs
from sheetgen.runs.kinds import Kinds, run_of
from sheetgen.work.project import main_title

if TYPE_CHECKING:
    from pathlib import Path

    from sheetgen.kits.ordered import Run
    from sheetgen.model.orders import Orders
    from sheetgen.model.project import Project
    from sheetgen.pipeline import Outcome


def packed(root: Path, table: Path, outcome: Outcome) -> tuple[Run | None, list[str]]:
    """The orders of a table as they are packed, and what a terminal says of those that are not.

    None where there is none that can be packed.
    """
    orders = _read(root, table, outcome)
    designs = list(dict.fromkeys(str(line.design) for line in orders.lines))
    library = read_library(root, outcome.troubles, designs) if designs else None
    if library is None:
        return None, []
    run, held = run_of(orders, Kinds(Designs(root, library, outcome), outcome.troubles))
    told = [f"held back, since a line of it is in trouble: {number}" for number in held]
    return (run if run.orders else None), told


def _read(root: Path, table: Path, outcome: Outcome) -> Orders:
    return read_orders(table, table.name, versions_of(root), outcome.troubles)


def versions_of(root: Path) -> dict[str, list[str]]:
    """The printed names of each design's versions; what is wrong with the library is told where its designs are used.

    Of a design in trouble there is none.
    """
    library = read_library(root, Troubles())
    versions = {filed.name: printed_names(filed.project) for filed in library.projects} if library else {}
    return versions | {name: [] for name in (library.failed if library else ())}


def printed_names(project: Project) -> list[str]:
    """The names of a design's versions as its sheets print them, the main one first."""
    others = (next((str(v) for k, v in version.items() if k == "name"), "") for version in project.versions)
    return [main_title(project), *filter(None, others)]
