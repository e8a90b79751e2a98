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
        """The strip, and the line where its ends meet."""
        wide = size("strip") if self.has(type(self).strip) else None
        sketches.strip(pen, size("cut"), size("meets"), wide, self.stuff.thickness)

    def template_note(self, size: Callable[[str], Size]) -> str:  # noqa: ARG002 - the same words at every size
        """Metal."""
        return thick(self.stuff)


def thick(metal: Sheet | Wire) -> str:
    """Name of a metal, with its thickness unless its name says it."""
    said = f"{metal.thickness:.2f}".rstrip("0").rstrip(".")
    return metal.name if f"{said} mm" in metal.name else f"{metal.name}, {said} mm thick"


@figure("Strip, cut", "mm", "{meets} + {trim}", rounding="bench up")
def cut(part: ClosedStrip) -> Spread:
    """With what is filed off the ends."""
    return part.meets + part.trim
