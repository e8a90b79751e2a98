"""Slit strips: narrow strips cut lengthwise from a wider ribbon."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.material import Fibre
from sheetgen.base.spread import Spread, ceil
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.buying import pieces_from_stock, stock_for_pieces
from sheetgen.formulas.guard import at_most
from sheetgen.parts import given
from sheetgen.parts.kind import Part, Take, figure

if TYPE_CHECKING:
    from collections.abc import Iterator


class SlitStrips(Part):
    """As many strips side by side as the ribbon is wide, each length of ribbon giving that many.

    Woven ribbon frays when it is slit, and leather stretches: what that costs in width is given, and not worked.
    """

    hazards = ("blade",)

    kind = "slit strips"

    fibre = given.item(Fibre, "the ribbon, by its width in stock")
    width = given.length("width of each strip", above=0)
    length = given.length("length of each strip, as it is cut", above=0)
    strips = given.count("how many strips in one piece")
    edge = given.length("selvage cut off at each side of the ribbon", default="0 mm", at_least=0)
    kerf = given.length("width lost between two strips", default="0 mm", at_least=0)
    trim = given.length("length lost at the end of each length of ribbon", default="0 mm", at_least=0)

    @property
    def ribbon(self) -> float:
        """Width of the ribbon, mm."""
        if self.fibre.width is None:
            raise CannotBe(
                f"{self.fibre.name} has no width in stock, so it is no ribbon", "add its width: to stock", "fibre"
            )
        return self.fibre.width

    @figure("Ribbon, without its edges", "mm", "{ribbon} − 2 × {edge}")
    def usable(self) -> Spread:
        """Width to slit."""
        left = self.ribbon - 2 * self.edge
        if left.usual <= 0:
            raise CannotBe("the edges take the whole ribbon", f"less than {self.ribbon / 2:g} mm", "edge")
        return left

    @figure("Strips side by side", "", "down(({usable} + {kerf}) ÷ ({width} + {kerf}))", rounding="whole")
    def side_by_side(self) -> float:
        """From one length of ribbon."""
        found = pieces_from_stock(self.usable.usual, self.width.usual, self.kerf.usual)
        if found < 1:
            message = f"a strip of {self.width.usual:g} mm is wider than what is left of the ribbon"
            raise CannotBe(message, at_most(self.usable.usual), "width")
        return found

    @figure("Strips for all", "", "{count} × {strips}", rounding="whole")
    def strips_all(self) -> Spread:
        """In all pieces."""
        return self.count * self.strips

    @figure("Lengths of ribbon", "", "up({strips_all} ÷ {side_by_side})", rounding="whole")
    def lengths(self) -> float:
        """Each slit into strips side by side."""
        return ceil(self.strips_all.usual / self.side_by_side.usual)

    @figure("Ribbon for all", "mm", "{lengths} × ({length} + {trim})", rounding="length up")
    def ribbon_length(self) -> Spread:
        """What to buy, before any allowance."""
        return self.lengths * (self.length + self.trim)

    @figure("Strips to spare", "", "{lengths} × {side_by_side} − {strips_all}", rounding="whole")
    def spare(self) -> Spread:
        """More than are needed."""
        return self.lengths * self.side_by_side - self.strips_all

    @figure("Width left over", "mm", "{usable} − {side_by_side} × ({width} + {kerf}) + {kerf}", rounding="tenth")
    def offcut(self) -> Spread:
        """Beside the strips, edges not counted."""
        return self.usable - stock_for_pieces(self.side_by_side, self.width, self.kerf)

    def takes(self) -> Iterator[Take]:
        """Ribbon by length."""
        yield Take(self.fibre, self.ribbon_length, "ribbon_length")

    def made(self) -> Iterator[Made]:
        """Ribbon to cut off before slitting."""
        together = f", {self.lengths.usual:g} lengths together" if self.lengths.usual > 1 else ""
        yield Made(f"length{together}", "ribbon_length", tool="ruler")
