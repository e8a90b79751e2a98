"""Bezel cup: a wall of metal strip bent round a stone and soldered to a base plate."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base import views
from sheetgen.base.figure import Made
from sheetgen.base.material import Sheet, Stone
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.mass import sheet_mass
from sheetgen.formulas.shapes import edge_of, oval_grown, oval_grown_area
from sheetgen.formulas.wrap import round_former
from sheetgen.parts import given, seats
from sheetgen.parts.from_sheet import Blank
from sheetgen.parts.kind import Finding, Take, figure
from sheetgen.parts.seats import Weighed

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread


class BezelCup(Weighed):
    """Strip on its middle: the stone's outline + π × (room + strip), whatever its shape (Steiner's formula).

    Bending thins the outside of a strip and rolling stretches it: try the strip round the stone before it is soldered.
    How high the wall must stand hangs on where the stone's side begins to lean, which no measure of stock says; a
    third of the stone at least is a maker's rule. Carats hold for a brilliant cut, and not for a cabochon.
    """

    hazards = ("torch", "pickle", "cut metal")

    kind = "bezel cup"

    strip = given.item(Sheet, "the metal of the wall")
    base = given.maybe_item(Sheet, "the metal of the base plate, if not that of the wall")
    stone = given.item(Stone, "the stone, round or oval")
    room = given.length("how much wider than the largest stone the cup is", default="0.1 mm", at_least=0)
    height = given.maybe_length(
        "height of the wall; a pointed stone wants it; left out, by the stone's height", above=0
    )
    reach = given.ratio("how much of a flat-backed stone's height the wall covers", default="40 %", at_least=0.05)
    under = given.length("what lies under the stone in the cup", default="0 mm", at_least=0)
    trim = given.length("strip left over to file the seam true", default="0.5 mm", at_least=0)
    kerf = given.length("strip lost at each cut; nothing for shears", default="0 mm", at_least=0)
    spacing = given.length("sheet left round the base, to saw it out", default="1 mm", at_least=0)
    rim = given.length("base left outside the wall all round", default="0.5 mm", at_least=0)

    @property
    def plate(self) -> Sheet:
        """The metal of the base."""
        return self.base or self.strip

    @property
    def narrow(self) -> float:
        """The largest stone across its narrow way, mm."""
        return (self.stone.width or self.stone.size).high

    @property
    def outline(self) -> tuple[float, str]:
        """Round the largest stone, mm; and how a pencil works it."""
        return edge_of("disc" if self.stone.width is None else "oval", self.stone.size.high, self.narrow)

    @property
    def outline_worked(self) -> str:
        """How the stone's outline is worked."""
        return self.outline[1]

    @figure("Strip, ends meet", "mm", "{outline_worked} + π × ({room} + {strip.thickness})", rounding="tenth")
    def strip_meets(self) -> float:
        """Along the middle of the strip."""
        return round_former(self.outline[0], self.strip.thickness + self.room.usual)

    @figure("Strip, cut", "mm", "{strip_meets} + {trim}", rounding="bench up")
    def strip_cut(self) -> Spread:
        """With what is filed away at the seam."""
        return self.strip_meets + self.trim

    @property
    def wall_worked(self) -> str:
        """How the wall's height is worked."""
        if self.height:
            return f"{self.height.usual:.6g}"
        high = self.stone.height.high if self.stone.height else 0
        return f"{self.under.usual:.6g} + {self.reach.usual:.6g} × {high:.6g}"

    @figure("Wall, height above the base", "mm", "{wall_worked}", rounding="tenth")
    def wall(self) -> float:
        """Width of the strip. CannotBe if neither the wall's height nor the stone's is known."""
        if self.height:
            return self.height.usual
        if self.stone.height is None:
            message = f"stock does not say how high {self.stone.name} is"
            raise CannotBe(message, "give its height in stock, or height: 2.5 mm here", "stone")
        return self.under.usual + self.reach.usual * self.stone.height.high

    @property
    def grown(self) -> float:
        """How far the base's edge lies outside the stone, mm."""
        return self.room.usual / 2 + self.strip.thickness + self.rim.usual

    @figure("Base, across", "mm", "{stone.size.high} + {room} + 2 × ({strip.thickness} + {rim})", rounding="tenth")
    def base_across(self) -> float:
        """The plate's length, the rim included."""
        return self.stone.size.high + 2 * self.grown

    @figure("Base, the narrow way", "mm", "{narrow} + {room} + 2 × ({strip.thickness} + {rim})",
            rounding="tenth", when=lambda part: part.stone.width is not None)  # fmt: skip
    def base_down(self) -> float:
        """The plate's width, the rim included."""
        return self.narrow + 2 * self.grown

    @property
    def wall_blank(self) -> Blank:
        """The strip as it is cut."""
        return Blank(self.strip, self.strip_cut.high, self.wall.high, "stone", self.kerf.usual)

    @property
    def base_rect(self) -> Blank:
        """The rectangle that the base is sawn from, sheet left all round it."""
        left = self.spacing.usual
        return Blank(self.plate, self.base_across.high, self.blank_down, "stone", left, left)

    @figure("Share of a sheet for the wall", "mm²", "{wall_blank.worked}")
    def wall_area(self) -> float:
        """Of a sheet cut up in rows; where stock does not say how the sheet is sold, the strip itself."""
        return self.wall_blank.share

    @figure("Metal of the base, cut to its edge", "mm²",
            "π ÷ 4 × {stone.size.high} × {narrow} + ({outline_worked}) × {grown} + π × {grown}²")  # fmt: skip
    def base_area(self) -> float:
        """The stone's outline grown evenly."""
        return oval_grown_area(self.stone.size.high, self.narrow, self.outline[0], self.grown)

    @figure("Share of a sheet for the base", "mm²", "{base_rect.worked}")
    def base_blank(self) -> float:
        """Of a sheet cut up in rows; where stock does not say how the sheet is sold, the rectangle round it."""
        return self.base_rect.share

    @property
    def blank_down(self) -> float:
        """The rectangle's other side, mm."""
        return self.narrow + 2 * self.grown

    @figure(
        "Weight, each", "g",
        "({strip_meets} × {wall} × {strip.thickness} × {strip.density}"
        " + {base_area} × {plate.thickness} × {plate.density}) ÷ 1000",
    )  # fmt: skip
    def mass(self) -> Spread:
        """Wall and base as they are soldered, without solder and stone."""
        wall = sheet_mass(self.strip.density, self.strip_meets * self.wall, self.strip.thickness)
        return wall + sheet_mass(self.plate.density, self.base_area, self.plate.thickness)

    carats = seats.carats

    def takes(self) -> Iterator[Take]:
        """Sheet for wall and base, and the stone."""
        yield Take(self.strip, self.wall_area * self.count, "wall_area", self.wall_blank.needed)
        yield Take(self.plate, self.base_blank * self.count, "base_blank", self.base_rect.needed)
        yield Take(self.stone, self.count)

    def made(self) -> Iterator[Made]:
        """Strip and plate."""
        yield Made("strip length", "strip_cut", tool="calliper")
        yield Made("strip width", "wall", tool="calliper")
        yield Made("base, across", "base_across", tool="template")
        if self.stone.width is not None:
            yield Made("base, the narrow way", "base_down", tool="template")

    def check(self) -> Iterator[Finding]:
        """A wall that stands beside the stone and does not bury it; an oval longer than wide."""
        if self.narrow > self.stone.size.high:
            yield Finding("stone", "is wider than it is long in stock", "size is the longer way")
        if self.stone.height and self.wall.usual - self.under.usual > self.stone.height.high:
            most = f"{self.under.usual + self.stone.height.high:g} mm or less"
            yield Finding("height", "buries the stone: the wall is higher than it stands", most)
        if self.wall.usual <= self.under.usual:
            yield Finding("height", "ends under the stone", f"more than {self.under.usual:g} mm")

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """The strip with the line where its ends meet; the base with the stone on it."""
        long, high, meets, across = (size(n) for n in ("strip_cut", "wall", "strip_meets", "base_across"))
        pen.box((0, 0), long, high)
        pen.line([(meets, 0), (meets, high)], "meet")
        pen.across(-9, 0, long, f"{long.words} cut", to=0)
        pen.across(-4, 0, meets, f"{meets.words} meets here", to=0)
        pen.upright(-4, 0, high, high.words, to=0)
        down = size("base_down") if self.stone.width is not None else across
        middle = (across / 2, high + 9 + down / 2)
        by = (across - self.stone.size.high) / 2
        edge = [(middle[0] + x, middle[1] + y) for x, y in oval_grown(self.stone.size.high, self.narrow, by)]
        pen.line(edge, closed=True)
        pen.oval(middle, self.stone.size.high, self.narrow, "thin")
        pen.cross(middle)
        pen.across(high + 9 + down + 5, 0, across, across.words, to=high + 9 + down)
        if self.stone.width is not None:
            pen.upright(-4, high + 9, high + 9 + down, down.words, to=0)

    def template_note(self, size: Callable[[str], Size]) -> str:  # noqa: ARG002 - the same words at every size
        """Metals."""
        return f"wall {self.strip.name}; base {self.plate.name}; thin line, the largest stone"

    def view(self, pen: Pen) -> float:
        """Base, wall and stone from above, the long way upright."""
        long, narrow = self.stone.size.high, self.narrow
        middle = self.base_across.usual / 2
        for out in (self.grown, self.grown - self.rim.usual):
            pen.line([(y, middle + x) for x, y in oval_grown(long, narrow, out)], "thin", closed=True)
        views.stone(pen, (0, middle), narrow, long)
        return self.base_across.usual
