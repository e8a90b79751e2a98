"""The handouts of a class that no version has printed: of each choice made otherwise, and how many copies of them."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.base.spelling import slug
from sheetgen.draw.templates import draw
from sheetgen.kits.packed import at_a_place
from sheetgen.model.page import Page
from sheetgen.render.kit_sheets import IN_A_KIT, maker_sheets
from sheetgen.runs.kinds import written_so

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.trouble import Troubles
    from sheetgen.kits.class_run import ClassRun
    from sheetgen.kits.taken import Kits
    from sheetgen.model.worked import WorkedVersion
    from sheetgen.runs.press import Press

BEGIN = tuple(f"{slug(sheet)}-" for sheet in IN_A_KIT)
"""How the names of their files begin: what an earlier evening chose does not stay."""


def handouts(by: Press, run: ClassRun, troubles: Troubles) -> Iterator[Page]:
    """Handout, bench card and templates of each kind of set that is on no sheet of its design, once a kind.

    What jars in a sheet is a warning at its design. Misplaced at a theme's file that cannot be used.
    """
    for kits in run.kinds:
        if not (kits.choices and kits.sheets) or published_as(kits) is not None:
            continue
        drawn = draw(kits.worked, kits.version, kits.worked.studio.paper)
        laid = maker_sheets(kits.worked, kits.version, drawn, at_a_place(kits), by.theme, by.pool).done()
        for doubt in laid.doubts:
            troubles.add(f"{kits.named}: {doubt}", kits.worked.place, severity="warning")
        for one in laid.sheets:
            yield Page(f"{slug(one.sheet)}-{_file(kits)}-{one.paper.lower()}.pdf", one.pdf)


def copies(run: ClassRun) -> Iterator[str]:
    """What is to be printed and how often, as the pick list counts it: of each version, of each choice that none has.

    Whatever its colours a version has one handout; where it is chosen by another version, that is told.
    """
    versions: dict[tuple[str, str], list[tuple[Kits, WorkedVersion]]] = {}
    for kits in (one for one in run.kinds if one.sheets):
        version = published_as(kits) if kits.choices else kits.version
        if version is None:
            yield f"print {kits.bags} × each of {_sheets(kits)} of {kits.named}: …-{_file(kits)}-….pdf"
        else:
            versions.setdefault((kits.worked.name, version.name), []).append((kits, version))
    for alike in versions.values():
        first, version = alike[0]
        many = sum(kits.bags for kits, _ in alike)
        chosen = dict.fromkeys(f"; {kits.named} is this version" for kits, _ in alike if kits.choices)
        yield f"print {many} × each of {_sheets(first)} of {first.design}, {version.title}{''.join(chosen)}"


def _sheets(kits: Kits) -> str:
    *first, last = kits.sheets
    return f"{', '.join(first)} and {last}" if first else last


def published_as(kits: Kits) -> WorkedVersion | None:
    """The version whose sheets are those of a set with choices, by all its choices and its printed numbers.

    Without the hours of a class, which no handout has: that of one version may be planned beside other designs.
    """
    timeless = {
        name: replace(one, plan=replace(one.plan, class_plan=None)) for name, one in kits.worked.versions.items()
    }
    own = timeless.pop(kits.version.name)
    return written_so(replace(kits.worked, versions=Frozen(timeless)), kits.worked, own)


def _file(kits: Kits) -> str:
    way = kits.colourway.name if kits.colourway else ""
    return slug(f"{kits.worked.name} {kits.version.title} {kits.chosen} {way}")
