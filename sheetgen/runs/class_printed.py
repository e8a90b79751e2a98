"""The sheets of a class: drawn, and printed for its teacher alone."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.draw.templates import draw, slab_layouts
from sheetgen.kits.class_words import TableWords, share
from sheetgen.pipeline import THEME, NotReady
from sheetgen.render.class_sheets import Taught, class_sheets
from sheetgen.render.pdf import NoPango
from sheetgen.render.pdf_pool import PdfPool
from sheetgen.render.theme import Theme

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from pathlib import Path

    from sheetgen.kits.at_tables import Laid
    from sheetgen.kits.class_run import ClassRun
    from sheetgen.kits.taken import Kits, Taken
    from sheetgen.model.page import Page
    from sheetgen.pipeline import Outcome


def printed(  # noqa: PLR0913, PLR0917 - what pages are made of
    root: Path, called: str, run: ClassRun, laid: Laid, needs: Sequence[Taken], outcome: Outcome
) -> list[Page]:
    """The tables and the teacher's sheets; `called` is what stands in their feet.

    What jars in their layout is a warning. NotReady where pages cannot be made.
    """
    try:
        pool = PdfPool()
    except NoPango as missing:
        raise NotReady(str(missing)) from None
    taught = list(_taught(run, needs))
    tables = TableWords(run, taught[0].worked.rounder).told(laid)
    with pool:
        rendered = class_sheets(called, tables, taught, Theme(THEME, [root / "themes"]), pool)
    for doubt in rendered.doubts:
        outcome.troubles.add(str(doubt), taught[0].worked.place, severity="warning")
    return rendered.pages


def _taught(run: ClassRun, needs: Sequence[Taken]) -> Iterator[Taught]:
    """Each version of the class once, whatever its colours: drawn, beside the slabs of all its design's versions."""
    groups: dict[tuple[str, str, object], list[Kits]] = {}
    for kits in run.kinds:
        groups.setdefault((kits.worked.name, kits.version.name, kits.choices), []).append(kits)
    for kinds in groups.values():
        worked = kinds[0].worked
        version = worked.versions[kinds[0].version.name]
        slabs = {name: slab_layouts(worked, one) for name, one in worked.versions.items()}
        yield Taught(
            worked, version, draw(worked, version, worked.studio.paper), slabs, share(run, kinds, needs, worked.rounder)
        )
