"""Metal disc: a disc or washer of sheet, flat or to be domed."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base import views
from sheetgen.base.figure import Made
from sheetgen.base.material import Sheet
from sheetgen.base.spread import Spread, spread
from sheetgen.formulas.domes import cap_blank, cap_radius, middle_of_sheet
from sheetgen.formulas.mass import disc_mass
from sheetgen.parts import given
from sheetgen.parts.closed_strip import thick
from sheetgen.parts.drawer import neighbours
from sheetgen.parts.from_sheet import Blank
from sheetgen.parts.kind import Finding, Part, Take, figure, working_number

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen


def _domed(part: MetalDisc) -> bool:
    return part.rise is not None


class MetalDisc(Part):
    """A domed disc keeps its area (Archimedes; Atkins, Practical Sheet and Plate Metal Work), on its middle layer.

    Hammered work stretches and thins, so that deep domes come out of smaller discs (Holtzapffel): a trial decides. A
    hole in a domed disc grows with the stretching, by how much is not known here.
    """

    hazards = ("cut metal",)

    kind = "metal disc"

    sheet = given.item(Sheet, "the sheet")
    across = given.length("finished width, rim to rim, outside", above=0)
    rise = given.maybe_length("finished rise of a domed disc, rim to crown, outside", above=0)
    hole = given.maybe_length("diameter of a hole in the middle, as it is drilled in the flat disc", above=0)
    cutting = given.one_of("sawn to any size, or punched with an owned disc cutter", "sawn", "punched")
    spacing = given.length("sheet left round each disc", default="1 mm", at_least=0)

    @figure("Radius of the outside", "mm", "({across}² ÷ 4 + {rise}²) ÷ (2 × {rise})", when=_domed)
    def radius(self) -> Spread:
        """Radius of the outside, finished."""
        return cap_radius(self.across, self.rise or 0)

    @property
    def wanted(self) -> Spread:
        """The disc that fits exactly, mm."""
        if self.rise is None:
            return self.across
        return middle_of_sheet(cap_blank(self.across, self.rise), self.across, self.rise, self.sheet.thickness)

    @property
    def wanted_worked(self) -> str:
        """How that disc is worked."""
        wide, t = working_number(self.across), working_number(self.sheet.thickness)
        if self.rise is None:
            return wide
        rise, ball = working_number(self.rise), working_number(self.radius)
        return f"√({wide}² + 4 × {rise}²) × ({ball} − {t} ÷ 2) ÷ {ball}"

    @property
    def disc_worked(self) -> str:
        """How the disc to cut is worked."""
        if self.cutting == "sawn":
            return self.wanted_worked
        owned = neighbours(self.bench.owned("disc cutter"), self.wanted.usual)
        return f"nearest({self.wanted_worked}, {owned})"

    @figure("Disc to cut", "mm", "{disc_worked}", rounding="tenth")
    def disc(self) -> Spread | float:
        """Diameter of the flat disc."""
        return self.wanted if self.cutting == "sawn" else self.tool("disc cutter", self.wanted.usual, "across")

    @property
    def scale_worked(self) -> str:
        """How the finished width follows from the disc."""
        plain = f"{working_number(self.across)} × {working_number(self.disc)} ÷ ({self.wanted_worked})"
        return plain if _domed(self) else working_number(self.disc)

    @figure("Width that comes out", "mm", "{scale_worked}", when=lambda p: p.cutting == "punched")
    def width_out(self) -> Spread:
        """Of the disc as punched, domed as deep in proportion."""
        return self.across * self.disc / self.wanted

    @property
    def blank(self) -> Blank:
        """The square that the disc is cut from, sheet left all round it."""
        disc, left = self.disc.high, self.spacing.usual
        return Blank(self.sheet, disc, disc, "across", left, left)

    @figure("Share of a sheet for one", "mm²", "{blank.worked}")
    def area(self) -> float:
        """Of a sheet cut up in rows; where stock does not say how the sheet is sold, the square round it."""
        return self.blank.share

    @property
    def hole_worked(self) -> str:
        """What the hole takes out."""
        return f" − {working_number(self.hole)}²" if self.hole else ""

    @figure("Weight, each", "g", "π ÷ 4 × ({disc}²{hole_worked}) × {sheet.thickness} × {sheet.density} ÷ 1000")
    def mass(self) -> Spread:
        """The disc, its hole taken out."""
        whole = spread(disc_mass(self.sheet.density, self.disc, self.sheet.thickness))
        return whole - disc_mass(self.sheet.density, self.hole, self.sheet.thickness) if self.hole else whole

    def takes(self) -> Iterator[Take]:
        """Sheet by area."""
        yield Take(self.sheet, self.area * self.count, "area", self.blank.needed)

    def made(self) -> Iterator[Made]:
        """Disc and hole."""
        if _domed(self):
            yield Made(f"disc, for a dome {self.across.usual:g} mm across", "disc", tool="template")
        else:
            yield Made("disc", "disc", self.across, None, "disc cutter" if self.cutting == "punched" else "template")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The disc cutter."""
        if self.cutting == "punched":
            yield "disc cutter", self.disc.usual

    def check(self) -> Iterator[Finding]:
        """Not past half a ball; a hole inside the rim."""
        across, t = self.across.usual, self.sheet.thickness
        if self.rise and self.rise.usual <= t:
            yield Finding("rise", "is no more than the sheet is thick", f"more than {t:g} mm, or take it out")
        if self.hole:
            most = math.floor((self.disc.usual - 2 * t) * 10 + 1e-9) / 10
            if self.hole.usual > most:
                yield Finding("hole", "leaves less rim than the sheet is thick", f"{max(most, 0.1):g} mm or less")
            elif self.rise and self.rise.usual > across / 4:
                yield Finding("hole", "grows as so deep a dome stretches", "drill it after doming", "warning")

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """The disc with its centre and hole."""
        disc = size("disc")
        pen.circle((disc / 2, disc / 2), disc)
        pen.cross((disc / 2, disc / 2))
        pen.across(-4, 0, disc, f"Ø {disc.words}", to=0)
        if self.hole:
            pen.circle((disc / 2, disc / 2), self.hole.usual)

    def template_note(self, size: Callable[[str], Size]) -> str:  # noqa: ARG002 - the same words at every size
        """Sheet and hole."""
        hole = f"; hole Ø {self.hole.usual:g} mm" if self.hole else ""
        return f"{thick(self.sheet)}{hole}"

    def view(self, pen: Pen) -> float:
        """The disc face on."""
        across = (self.width_out if self.cutting == "punched" else self.across).usual
        views.washer(pen, across, self.hole.usual if self.hole else 0)
        return across
