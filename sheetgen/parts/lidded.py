"""The lid of a box of clay: flat, or with a lip that sits inside the walls."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spread import Spread, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.shrinkage import wet_size
from sheetgen.parts.clay_piece import ClayPiece

if TYPE_CHECKING:
    from sheetgen.parts.given import Given
    from sheetgen.parts.kind import Worker


def lipped(part: Lidded) -> bool:
    """Whether its lid has a second plate under it."""
    return part.lid == "with a lip"


class Lidded(ClayPiece):
    """A kind says how large its base is; the lid is as large, and its lip goes between the walls."""

    lid: Given[str]
    clearance: Given[Spread]

    wet_across: Worker
    wet_down: Worker
    lip_across: Worker
    lip_down: Worker

    def lip(self, outside: Spread, side: str) -> Spread:
        """A side of the lip, wet, mm. CannotBe if the room on both sides takes all of it."""
        lip = outside.usual - 2 * self.thickness.usual - 2 * wet_size(self.clearance, self.clay.shrinkage).usual
        if lip <= 0:
            inside = (outside.usual - 2 * self.thickness.usual) * (1 - self.clay.shrinkage.usual)
            raise CannotBe(f"the lid's lip has no room {side}", f"less than {inside / 2:.2g} mm", "clearance")
        return spread(lip)

    @property
    def lid_area(self) -> tuple[float, str]:
        """Lid and lip as they are cut, mm²; and how that is worked."""
        if self.lid == "none":
            return 0.0, ""
        across, down = self.wet_across.usual, self.wet_down.usual
        if not lipped(self):
            return across * down, f" + {across:.6g} × {down:.6g}"
        lip = self.lip_across.usual * self.lip_down.usual
        worked = f" + {across:.6g} × {down:.6g} + {self.lip_across.usual:.6g} × {self.lip_down.usual:.6g}"
        return across * down + lip, worked

    @property
    def lid_worked(self) -> str:
        """How the clay of the lid is worked."""
        return self.lid_area[1]
