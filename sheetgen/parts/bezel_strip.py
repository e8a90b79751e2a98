"""Bezel strip: a strip of thin sheet bent round a stone and closed edge to edge."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base import views
from sheetgen.base.figure import Made
from sheetgen.base.material import Sheet, Stone
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.mass import sheet_mass
from sheetgen.formulas.stones import bezel_strip_oval, bezel_strip_round
from sheetgen.parts import closed_strip, given
from sheetgen.parts.closed_strip import ClosedStrip
from sheetgen.parts.from_sheet import Blank
from sheetgen.parts.kind import Finding, Take, figure

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread


class BezelStrip(ClosedStrip):
    """The stone's outline + π × thickness (Steiner's formula): exact for round stones and for ellipses.

    Worked for the largest stone of the size, with room round it. Stones that are no true ellipse, and how the strip is
    pressed over the stone, are not known here: try it round the stone before it is soldered.
    """

    kind = "bezel strip"

    sheet = given.item(Sheet, "the sheet, or bezel strip, by its thickness")
    stone = given.item(Stone, "the stone: round, or oval when stock gives its width")
    high = given.length("finished height of the strip", above=0)
    room = given.length("room round the stone, added to its size", default="0.1 mm", at_least=0)
    trim = given.length("length added for filing the ends to fit", default="1 mm", at_least=0)
    kerf = given.length("sheet lost at each cut; nothing for shears", default="0 mm", at_least=0)

    @figure("Stone, long way, with its room", "mm", "{stone.size.high} + {room}")
    def long(self) -> Spread:
        """Largest of the size."""
        return self.room + self.stone.size.high

    @property
    def width(self) -> float:
        """Narrow way of the largest stone, mm; of a round one its size."""
        return self.stone.width.high if self.stone.width else self.stone.size.high

    @figure("Stone, narrow way, with its room", "mm", "{width} + {room}", when=lambda part: part.stone.width)
    def narrow(self) -> Spread:
        """Largest of the size."""
        if self.width > self.stone.size.high:
            message = f"{self.stone.name} is wider than it is long in stock"
            raise CannotBe(message, f"its size is the long way, {self.width:g} mm", "stone")
        return self.room + self.width

    @property
    def meets_worked(self) -> str:
        """How the strip is worked."""
        a, t = f"{self.long.usual:.6g}", f"{self.sheet.thickness:.6g}"
        if not self.stone.width:
            return f"π × ({a} + {t})"
        b = f"{self.narrow.usual:.6g}"
        h = f"({a} − {b})² ÷ ({a} + {b})²"
        # Ramanujan's second form, which a pencil can follow; the figure itself is worked exactly.
        return f"π × ({a} + {b}) ÷ 2 × (1 + 3 × {h} ÷ (10 + √(4 − 3 × {h}))) + π × {t}"

    @figure("Strip, ends meet", "mm", "{meets_worked}", rounding="tenth")
    def meets(self) -> Spread:
        """Along the middle of the thickness, edge to edge."""
        if not self.stone.width:
            return bezel_strip_round(self.long, self.sheet.thickness)
        return bezel_strip_oval(self.long, self.narrow, self.sheet.thickness)

    cut = closed_strip.cut

    @figure("Strip height", "mm", "{high}", rounding="tenth")
    def strip(self) -> Spread:
        """Across the strip."""
        return self.high

    @property
    def blank(self) -> Blank:
        """The strip as it is cut."""
        return Blank(self.sheet, self.cut.high, self.high.high, "high", self.kerf.usual)

    @figure("Share of a sheet for one", "mm²", "{blank.worked}")
    def area(self) -> float:
        """Of a sheet cut up in rows; where stock does not say how the sheet is sold, the strip itself."""
        return self.blank.share

    @figure("Weight, each", "g", "{meets} × {high} × {sheet.thickness} × {sheet.density} ÷ 1000")
    def mass(self) -> Spread:
        """The closed strip."""
        return sheet_mass(self.sheet.density, self.meets * self.high, self.sheet.thickness)

    def takes(self) -> Iterator[Take]:
        """Sheet by area, and the stone."""
        yield Take(self.sheet, self.area * self.count, "area", self.blank.needed)
        yield Take(self.stone, self.count)

    def made(self) -> Iterator[Made]:
        """Length and height."""
        yield Made("strip, with its trim", "cut", tool="ruler")
        yield Made("strip height", "strip", self.high, None, "dividers")

    def check(self) -> Iterator[Finding]:
        """A strip that holds the stone and does not hide it."""
        height = self.stone.height
        if height and self.high.usual >= height.low:
            most = f"less than {height.low:g} mm, unless the stone stands on a step"
            yield Finding("high", f"is as high as the stone ({height.low:g} mm)", most, "warning")
        if self.high.usual <= self.sheet.thickness:
            yield Finding("high", "is no more than the sheet is thick", f"more than {self.sheet.thickness:g} mm")

    @property
    def stuff(self) -> Sheet:
        """What the strip is made of."""
        return self.sheet

    def template_note(self, size: Callable[[str], Size]) -> str:
        """Sheet and stone."""
        return f"{super().template_note(size)}; {self.stone.name}"

    def view(self, pen: Pen) -> float:
        """The closed strip round its stone, from above."""
        wide, long, t = self.width, self.stone.size.high, 2 * self.sheet.thickness
        pen.oval((0, (long + t) / 2), wide + t, long + t)
        views.stone(pen, (0, (long + t) / 2), wide, long)
        return long + t
