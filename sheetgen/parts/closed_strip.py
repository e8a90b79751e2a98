"""What a strip of metal shares that is bent round and closed edge to edge: how it is cut, and its template."""

from __future__ import annotations

from abc import ABC, abstractmethod
from typing import TYPE_CHECKING

from sheetgen.base import sketches
from sheetgen.parts.kind import Part, Worker, figure

if TYPE_CHECKING:
    from collections.abc import Callable

    from sheetgen.base.figure import Size
    from sheetgen.base.material import Sheet, Wire
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread
    from sheetgen.parts.given import Given

LARGEST = 150.0  # mm: the longest strip that a template page has room for


class ClosedStrip(Part, ABC):
    """Worked on the middle of its thickness; a kind says in `meets` how long that is."""

    hazards = ("cut metal",)

    trim: Given[Spread]

    meets: Worker
    cut: Worker
    strip: Worker

    @property
    @abstractmethod
    def stuff(self) -> Sheet | Wire:
        """What the strip is made of."""

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """The strip, the line where its ends meet; of one longer than a page, the half."""
        wide = size("strip") if self.has(type(self).strip) else None
        if size("cut") <= LARGEST:
            sketches.strip(pen, size("cut"), size("meets"), wide, self.stuff.thickness)
            return
        half, tall = size("cut") / 2, wide or self.stuff.thickness
        pen.line([(half, 0), (0, 0), (0, tall), (half, tall)])
        pen.line([(half, 0), (half, tall)], "fold")

    def template_note(self, size: Callable[[str], Size]) -> str:
        """Metal, and whether it is drawn in full."""
        half = f"half of it, to the fold; {size('cut').words} in full; " if size("cut") > LARGEST else ""
        return f"{half}{self.stuff.name}, {self.stuff.thickness:g} mm thick"


@figure("Strip, cut", "mm", "{meets} + {trim}", rounding="bench up")
def cut(part: ClosedStrip) -> Spread:
    """With what is filed off the ends."""
    return part.meets + part.trim
