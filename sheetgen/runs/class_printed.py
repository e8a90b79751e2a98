"""The sheets of a class: drawn, and printed into its private folder."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sheetgen.base.frozen import Frozen
from sheetgen.draw.templates import draw
from sheetgen.kits.class_share import share
from sheetgen.kits.class_words import TableWords
from sheetgen.render.class_sheets import Taught, class_sheets
from sheetgen.render.faceless import boxed
from sheetgen.runs.class_handouts import handouts

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.kits.at_tables import Laid
    from sheetgen.kits.class_run import ClassRun
    from sheetgen.kits.taken import Kits, Taken
    from sheetgen.model.class_tables import TableTold
    from sheetgen.model.page import Page
    from sheetgen.pipeline import Outcome
    from sheetgen.runs.press import Press


def printed(  # noqa: PLR0913, PLR0917 - what pages are made of
    by: Press, called: str, run: ClassRun, laid: Laid, needs: Sequence[Taken], outcome: Outcome, bare: frozenset[str]
) -> list[Page]:
    """The tables, the teacher's sheets and the handouts of what is chosen; `called` is what stands in their feet.

    For each letter of `bare`, which no type face has, a box is printed. What jars in their layout is a warning.
    """
    taught = list(_taught(run, needs))
    tables = TableWords(run, taught[0].worked.rounder).told(laid)
    tables = replace(tables, tables=tuple(_boxed(one, bare) for one in tables.tables))
    rendered = class_sheets(boxed(called, bare), tables, taught, by.theme, by.pool)
    for doubt in rendered.doubts:
        outcome.troubles.add(str(doubt), taught[0].worked.place, severity="warning")
    return [*rendered.pages, *handouts(by, run, outcome.troubles)]


def _boxed(table: TableTold, bare: frozenset[str]) -> TableTold:
    """A table with its name and those of its pupils as a page has them."""
    sits = tuple(replace(one, name=boxed(one.name, bare)) for one in table.sits)
    return replace(table, name=boxed(table.name, bare), sits=sits)


def _taught(run: ClassRun, needs: Sequence[Taken]) -> Iterator[Taught]:
    """Each version of the class once, whatever its colours: drawn, beside the slabs of all its design's versions.

    Where something is chosen otherwise it is called so on every line of its sheet.
    """
    groups: dict[tuple[str, str, object], list[Kits]] = {}
    for kits in run.kinds:
        groups.setdefault((kits.worked.name, kits.version.name, kits.choices), []).append(kits)
    for kinds in groups.values():
        name, worked = kinds[0].version.name, kinds[0].worked
        version = replace(worked.versions[name], title=kinds[0].called)
        worked = replace(worked, versions=Frozen({**worked.versions, name: version}))
        slabs = {name: one.slabs for name, one in worked.versions.items()}
        yield Taught(
            worked, version, draw(worked, version, worked.studio.paper), slabs, share(run, kinds, needs, worked.rounder)
        )
