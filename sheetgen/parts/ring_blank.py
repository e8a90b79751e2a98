"""Ring blank: a strip of sheet or a length of wire, bent round and closed edge to edge."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base import views
from sheetgen.base.figure import Made
from sheetgen.base.material import Sheet, Wire
from sheetgen.base.spread import Spread, ceil, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.rings import UK_BASE, UK_STEP, WIDE_BAND, WIDE_BAND_EXTRA
from sheetgen.formulas.buying import pieces_from_stock
from sheetgen.formulas.gauges import wire_mass
from sheetgen.formulas.mass import sheet_mass
from sheetgen.formulas.rings import iso_size, jp_size, ring_blank, us_size
from sheetgen.parts import given
from sheetgen.parts.closed_strip import ClosedStrip
from sheetgen.parts.from_sheet import Blank
from sheetgen.parts.kind import Finding, Take, figure
from sheetgen.parts.wire_piece import spool, take_wire

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.pen import Pen


FINGERS = (13.0, 26.0)  # mm: insides that every scale of finger sizes has a name for


def _finger(part: RingBlank) -> bool:
    return part.worn == "on a finger" and FINGERS[0] <= part.size.low and part.size.high <= FINGERS[1]


class RingBlank(ClosedStrip):
    """π × (inside + thickness), and 0.5 mm more for a band wider than 4 mm (supplier article, Measuring a ring blank).

    US sizes by 0.458 + 0.032 × size, in inches. Filing, planishing and stretching change a ring, by how much is not
    known here; the middle layer keeps its length only where the metal is thin beside the finger.
    """

    kind = "ring blank"

    sheet = given.maybe_item(Sheet, "the sheet; or give the wire")
    wire = given.maybe_item(Wire, "the wire; or give the sheet")
    size = given.length("the finger's ring size, as US 7, UK N½, ISO 54 or JP 14, or an inside diameter", above=0)
    width = given.maybe_length("finished width of a band of sheet", above=0)
    worn = given.one_of("where it is worn: of a ring for a finger its sizes are told", "on a finger", "elsewhere")
    wide_band = given.one_of("whether a band wider than 4 mm is given its 0.5 mm more", "lengthened", "as given")
    trim = given.length("length added for sawing and filing the ends square", default="0.5 mm", at_least=0)
    kerf = given.length("sheet lost at each cut; nothing for shears", default="0 mm", at_least=0)

    @property
    def metal(self) -> Sheet | Wire:
        """What it is made of."""
        found = self.sheet or self.wire
        if found is None:
            raise CannotBe("a ring blank wants its sheet or its wire", "give one", "sheet")
        return found

    @property
    def wide(self) -> Spread:
        """Width of the band, mm; of a wire its thickness."""
        if self.sheet is None:
            return spread(self.metal.thickness)
        if self.width is None:
            raise CannotBe("a band of sheet wants its finished width", "width: 4 mm", "sheet")
        return self.width

    @figure("Added for a wide band", "mm", "{extra_worked}")
    def extra(self) -> float:
        """A wide band wants more room than a narrow one of the same size."""
        wide = self.wide_band == "lengthened" and self.wide.usual > WIDE_BAND
        return float(WIDE_BAND_EXTRA) if wide else 0.0

    @property
    def extra_worked(self) -> str:
        """How the addition is worked."""
        return f"{self.extra.usual:g}"

    @figure("Blank, ends meet", "mm", "π × ({size} + {metal.thickness}) + {extra}", rounding="tenth")
    def meets(self) -> Spread:
        """Along the middle of the thickness, edge to edge."""
        width = self.wide.usual if self.wide_band == "lengthened" else min(self.wide.usual, float(WIDE_BAND))
        return ring_blank(self.size, self.metal.thickness, width)

    @figure("Blank, cut", "mm", "{meets} + {trim}", rounding="bench up")
    def cut(self) -> Spread:
        """With what is filed off the ends."""
        return self.meets + self.trim

    @property
    def as_cut(self) -> float:
        """The blank as it is cut, mm."""
        return self.bench.as_cut(self.cut.high)

    @figure("Outside, finished", "mm", "{size} + 2 × {metal.thickness} + {extra} ÷ π")
    def outside(self) -> Spread:
        """Outside diameter of the closed ring, not stretched."""
        return self.size + 2 * self.metal.thickness + self.extra / math.pi

    @figure("US size", "US", "({size} ÷ 25.4 − 0.458) ÷ 0.032", when=_finger)
    def us(self) -> Spread:
        """Of the finger."""
        return us_size(self.size)

    @figure("UK size", "UK", "(π × {size} − 40) ÷ 1.25", when=_finger)
    def uk(self) -> Spread:
        """Of the finger: letters counted from C."""
        return (iso_size(self.size) - float(UK_BASE)) / float(UK_STEP)

    @figure("ISO size", "ISO", "π × {size}", when=_finger)
    def iso(self) -> Spread:
        """Of the finger: its round in mm."""
        return iso_size(self.size)

    @figure("JP size", "JP", "3 × {size} − 38", when=_finger)
    def jp(self) -> Spread:
        """Of the finger."""
        return jp_size(self.size)

    @property
    def blank(self) -> Blank:
        """The strip as it is cut. CannotBe where it is of wire."""
        if self.sheet is None:
            raise CannotBe("a blank of wire takes no sheet", "give the sheet", "sheet")
        return Blank(self.sheet, self.cut.high, self.wide.high, "size", self.kerf.usual)

    @figure("Share of a sheet for one", "mm²", "{blank.worked}", when=lambda part: part.sheet)
    def area(self) -> float:
        """Of a sheet cut up in rows; where stock does not say how the sheet is sold, the strip itself."""
        return self.blank.share

    @figure("Strip width", "mm", "{width}", rounding="tenth", when=lambda part: part.sheet)
    def strip(self) -> Spread:
        """Across the strip."""
        return self.wide

    @figure(
        "Rings from one spool",
        "",
        "down({wire.pack} ÷ {as_cut})",
        rounding="whole",
        when=lambda p: p.wire is not None and spool(p.wire) > 0,
    )
    def per_spool(self) -> float:
        """How many one pack of the wire gives."""
        return pieces_from_stock.pure(spool(self.wire) if self.wire else 0, self.as_cut, 0)

    @property
    def mass_worked(self) -> str:
        """How the weight is worked."""
        if self.sheet:
            return f"{self.meets.usual:.6g} × {self.wide.usual:.6g} × {self.sheet.thickness:.6g}"
        return f"π ÷ 4 × {self.metal.thickness:.6g}² × {self.meets.usual:.6g}"

    @figure("Weight, each", "g", "{mass_worked} × {metal.density} ÷ 1000")
    def mass(self) -> Spread:
        """The closed ring."""
        metal = self.metal
        if self.sheet:
            return sheet_mass(metal.density, self.meets * self.wide, metal.thickness)
        return wire_mass(metal.density, metal.thickness, self.meets)

    def takes(self) -> Iterator[Take]:
        """Sheet by area, or wire by length."""
        if self.sheet:
            yield Take(self.sheet, self.area * self.count, "area", self.blank.needed)
        elif self.wire:
            yield take_wire(self.wire, self.cut * self.count, "cut")

    def made(self) -> Iterator[Made]:
        """Length and width."""
        yield Made("blank, with its trim", "cut", tool="ruler")
        if self.sheet:
            yield Made("blank, width", "strip", self.width, None, "dividers")

    def check(self) -> Iterator[Finding]:
        """One metal; a ring that the metal can be bent to."""
        if self.sheet and self.wire:
            yield Finding("wire", "a blank is of sheet or of wire", "take one out")
        if self.wire and self.width:
            yield Finding("width", "a ring of round wire is as wide as its wire", "take it out, or give the sheet")
        least = 2 * 2 * self.metal.thickness
        if self.size.usual < least:
            message = f"bends metal of {self.metal.thickness:g} mm tighter than twice its thickness"
            yield Finding("size", message, f"{ceil(least * 10) / 10:g} mm or more inside, or thinner metal")

    @property
    def stuff(self) -> Sheet | Wire:
        """What the strip is made of."""
        return self.metal

    def view(self, pen: Pen) -> float:
        """The closed ring along the finger."""
        outside = self.outside.usual
        views.washer(pen, outside, outside - 2 * self.metal.thickness)
        return outside
