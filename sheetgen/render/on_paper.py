"""Whether a sheet is printed on the paper that was asked for, and nothing that must be read lies beside it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.facts.paper import LINES_OVERLAP, PT_PER_INCH
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.render.seen import OUTSIDE

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sheetgen.render.job import Side
    from sheetgen.render.laid import LaidOut

MM = MM_PER_INCH / PT_PER_INCH
SAME = 0.05  # mm: as near as a template is held to


def of_another_size(boxes: Iterable[Sequence[float]], side: Side) -> Iterator[str]:
    """Pages of another size; `boxes` are their media boxes, left, top, right and bottom in pt."""
    for number, (left, top, right, bottom) in enumerate(boxes, 1):
        wide, tall = (right - left) * MM, (bottom - top) * MM
        if abs(wide - side.wide) > SAME or abs(tall - side.tall) > SAME:
            asked = f"{side.wide:g} × {side.tall:g} mm of its paper"
            yield f"page {number}: it is {wide:.0f} × {tall:.0f} mm, in place of the {asked}"


def beside_it(laid: LaidOut, first: Side, side: Side) -> Iterator[str]:
    """Cautions and numbers that are seen on the first paper and lie outside of another, on which all is moved."""
    across, down = side.left - first.left, side.top - first.top
    for one in laid.marked:
        for word in one.words if one.kind in {"told", "number"} else ():
            x, y = word.x + across, word.y + down
            beyond = max(-x, -y, x + word.w - side.wide, y + word.h - side.tall)
            if not word.unseen and word.text.strip() and beyond > LINES_OVERLAP:
                yield f"page {word.page}: of '{word.text.strip()}' nobody sees all: {OUTSIDE}"
