"""The sheets of one kind of kit: drawn, packed and rendered."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.draw.templates import draw
from sheetgen.kits.contents import contents
from sheetgen.kits.packed import packed
from sheetgen.render.kit_sheets import kit_sheets

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.kits.taken import Kits, Taken
    from sheetgen.render.job import Prints
    from sheetgen.render.kit_sheets import KitSheets, Printing
    from sheetgen.render.theme import Theme


def sheets_of(kits: Kits, run: Sequence[Taken], theme: Theme, pool: Prints, like: KitSheets | None = None) -> Printing:
    """Handout, bench card and templates that lie in each kit of a kind, out of what the `run` takes; begun.

    `like` are those of the design's first kind, as which they are set. Asked once for each kind; a missing part alone
    (`only`) is sent without a sheet, and is not asked for.
    """
    drawn = draw(kits.worked, kits.version, kits.worked.studio.paper)
    return kit_sheets(kits.worked, kits.version, drawn, packed(kits, contents(kits, run)), theme, pool, like)
