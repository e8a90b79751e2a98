"""The handouts of a class that no version has printed, of each choice made otherwise; and how many copies of all."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spelling import slug
from sheetgen.draw.templates import draw
from sheetgen.kits.packed import at_a_place
from sheetgen.model.page import Page
from sheetgen.render.kit_sheets import IN_A_KIT, maker_sheets

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.trouble import Troubles
    from sheetgen.kits.class_run import ClassRun
    from sheetgen.kits.taken import Kits
    from sheetgen.runs.press import Press
    from sheetgen.runs.published import Published

BEGIN = tuple(f"{slug(sheet)}-" for sheet in IN_A_KIT)
"""How the names of their files begin: what an earlier evening chose does not stay."""


def handouts(by: Press, run: ClassRun, troubles: Troubles) -> Iterator[Page]:
    """Handout, bench card and templates of each kind of set that is on no sheet of its design, once a kind.

    What jars in a sheet is a warning at its design. Misplaced at a theme's file that cannot be used.
    """
    for kits in (kits for kits in _with_sheets(run) if kits.choices):
        drawn = draw(kits.worked, kits.version, kits.worked.studio.paper)
        laid = maker_sheets(kits.worked, kits.version, drawn, at_a_place(kits), by.theme, by.pool).done()
        for doubt in laid.doubts:
            troubles.add(f"{kits.named}: {doubt}", kits.worked.place, severity="warning")
        for one in laid.sheets:
            yield Page(f"{slug(one.sheet)}-{_file(kits)}-{one.paper.lower()}.pdf", one.pdf)


def copies(run: ClassRun, there: Published) -> Iterator[str]:
    """What is to be printed and how often, as the pick list counts it: of a version the sheets that are published.

    Where those that stand there are not of the design as it is now, it is told to publish first.
    """
    published: dict[tuple[str, str], list[Kits]] = {}
    lacking: dict[str, dict[str, None]] = {}
    told: list[str] = []
    for kits in _with_sheets(run):
        if kits.choices:
            told.append(f"print {kits.bags} × each of {_sheets(kits)} of {kits.named}: …-{_file(kits)}-….pdf")
        else:
            published.setdefault((kits.worked.name, kits.version.name), []).append(kits)
    for kinds in published.values():
        many, kits = sum(kits.bags for kits in kinds), kinds[0]
        worked, version = kits.worked, kits.version
        if not there.stand(worked, version, kits.sheets):
            lacking.setdefault(there.why(worked.name), {})[worked.name] = None
        where = f"in {there.folder(worked, version)}, {worked.revised(version)}"
        told.append(f"print {many} × each of {_sheets(kits)} of {kits.design}, {kits.called}: {where}")
    for why, designs in lacking.items():
        yield f"first `sheetgen publish {' '.join(designs)}`: {why}"
    yield from told


def _with_sheets(run: ClassRun) -> Iterator[Kits]:
    """The kinds of set of which their design publishes a sheet for its maker."""
    return (kits for kits in run.kinds if kits.sheets)


def _sheets(kits: Kits) -> str:
    *first, last = kits.sheets
    return f"{', '.join(first)} and {last}" if first else last


def _file(kits: Kits) -> str:
    way = kits.colourway.name if kits.colourway else ""
    return slug(f"{kits.worked.name} {kits.called} {way}")
