"""Seat: one hole in wet clay for one stone that is set after firing, and how thick the clay must be under it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base import views
from sheetgen.base.figure import Made
from sheetgen.base.material import Clay, Stone
from sheetgen.base.spread import Spread, ceil
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.guard import at_least
from sheetgen.formulas.shrinkage import fired_size, wet_size
from sheetgen.formulas.stones import seat_wet
from sheetgen.parts import given, seats
from sheetgen.parts.clay_piece import fired_by
from sheetgen.parts.kind import Finding, Take, figure
from sheetgen.parts.seats import LEAST_WEB, Seated, Weighed

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Extent, Pen


def _round(part: Seat) -> bool:
    return part.stone.width is None


def _oval(part: Seat) -> bool:
    return part.stone.width is not None


class Seat(Seated, Weighed):
    """Opened for the largest stone at the largest shrinkage (worst case of the range); depth likewise.

    The stone hangs on its pointed back or lies on its flat one; how it sits in the hole is tried with the stone
    itself. Carats hold for a stone cut as a brilliant (gemmology course pages), with a thin girdle, and not for a
    cabochon.
    """

    kind = "seat"

    clay = given.item(Clay, "the clay the seat is made in")
    stone = given.item(Stone, "the stone")
    clearance = given.length("room round the stone in its seat", default="0.1 mm", at_least=0)
    proud = given.length("how far the stone's face stands above the clay, finished", default="0 mm", at_least=0)
    floor = given.length("clay left under the stone, finished", default="0.5 mm", at_least=0)
    thickness = given.length("thickness one layer of clay is rolled to", above=0)
    width = given.maybe_length("finished width of the piece across the seat", above=0)
    drilled_in = given.neighbour("the flat part in whose middle it is drilled, whose template is to show it")

    seat = seats.seat

    @property
    def narrow(self) -> Spread:
        """The stone's narrow way, mm."""
        return self.stone.width or self.stone.size

    @figure("Seat, width opened wet", "mm", "({narrow.high} + {clearance}) ÷ (1 − {clay.shrinkage.high})", when=_oval)
    def seat_width(self) -> float:
        """Width of an oval seat."""
        return seat_wet(self.narrow.high, self.clearance.usual, self.clay.shrinkage.high)

    @figure("Drill", "mm", "atleast({seat}, {enough})", when=_round)
    def drill(self) -> float:
        """Smallest owned drill that is not under the seat."""
        return self.drill_for_seat()

    @property
    def opened(self) -> float:
        """The seat as it is made, mm: its length where it is oval."""
        return self.drill.usual if _round(self) else self.seat.usual

    @figure("Loosest fit", "mm", "{opened} × (1 − {clay.shrinkage.low}) − {stone.size.low}")
    def loosest(self) -> float:
        """Room round the smallest stone at the least shrinkage."""
        return self.opened * (1 - self.clay.shrinkage.low) - self.stone.size.low

    @property
    def height(self) -> Spread:
        """The stone's height, mm. CannotBe if stock does not say."""
        if self.stone.height is None:
            raise CannotBe(f"stock does not say how high {self.stone.name} is", "give its height in stock", "stone")
        return self.stone.height

    @figure("Depth, wet", "mm", "({height.high} − {proud}) ÷ (1 − {clay.thickness_shrinkage.high})",
            rounding="bench up")  # fmt: skip
    def depth(self) -> float:
        """Deep enough for the highest stone if the clay shrinks most."""
        deep = self.height.high - self.proud.usual
        if deep <= 0:
            raise CannotBe("the stone stands on the clay and not in it", f"less than {self.height.high:g} mm", "proud")
        return wet_size(deep, self.clay.thickness_shrinkage.high)

    @figure(
        "Stone's face over the clay (− under it), fired", "mm", "{height} − {depth} × (1 − {clay.thickness_shrinkage})"
    )
    def stands(self) -> Spread:
        """What that comes out at; below zero the face lies deeper than the clay."""
        return self.height - fired_size(self.depth, self.clay.thickness_shrinkage)

    @figure("Clay needed, wet", "mm", "{depth} + {floor} ÷ (1 − {clay.thickness_shrinkage.high})",
            rounding="bench up")  # fmt: skip
    def needed(self) -> float:
        """Seat and floor together."""
        return self.depth.usual + wet_size(self.floor.usual, self.clay.thickness_shrinkage.high)

    @figure("Layers of clay", "", "up({needed} ÷ {thickness})", rounding="whole up")
    def layers(self) -> float:
        """How many layers of the rolled thickness that asks for."""
        return ceil(self.needed.usual / self.thickness.usual)

    @figure("Floor under the stone, fired", "mm",
            "({layers} × {thickness} − {depth}) × (1 − {clay.thickness_shrinkage})")  # fmt: skip
    def fired_floor(self) -> Spread:
        """What is left under the stone in that many layers."""
        left = self.layers.usual * self.thickness.usual - self.depth.usual
        return fired_size(max(0.0, left), self.clay.thickness_shrinkage)

    carats = seats.carats

    def takes(self) -> Iterator[Take]:
        """The stone."""
        yield Take(self.stone, self.count)

    def made(self) -> Iterator[Made]:
        """Hole and depth."""
        fires, deep = fired_by(self.clay), self.clay.thickness_shrinkage
        if _round(self):
            yield Made("seat", "drill", None, fires, "drill")
        else:
            yield Made("seat, length", "seat", None, fires, "template or cutter")
            yield Made("seat, width", "seat_width", None, fires, "template or cutter")
        yield Made(
            "depth of the seat", "depth", self.height - self.proud, lambda wet: fired_size(wet, deep), "calliper"
        )

    def tools(self) -> Iterator[tuple[str, float]]:
        """The drill."""
        if _round(self):
            yield "drill", self.drill.usual

    def check(self) -> Iterator[Finding]:
        """The seat inside its piece, and an oval one longer than wide."""
        if self.narrow.usual > self.stone.size.usual:
            yield Finding("stone", "is wider than it is long in stock", "size is the longer way")
        room = self.opened + 2 * LEAST_WEB
        if self.width and wet_size(self.width, self.clay.shrinkage).usual < room:
            least = at_least(room * (1 - self.clay.shrinkage.usual))
            yield Finding("width", f"leaves less than {LEAST_WEB:g} mm of clay beside the seat", least)

    def deep(self) -> Spread:
        """All the layers that the seat asks for."""
        return self.thickness * self.layers.usual

    def mark(self, pen: Pen, size: Callable[[str], Size], around: Extent) -> str:
        """The seat in the middle of its part."""
        middle = (around.left + around.right) / 2, (around.top + around.bottom) / 2
        if _round(self):
            pen.circle(middle, size("drill"), "thin")
        else:
            pen.oval(middle, size("seat"), size("seat_width"), "thin")
        pen.cross(middle)
        wide = size("drill") if _round(self) else size("seat")
        return f"{'Ø ' * _round(self)}{wide.words}"

    def view(self, pen: Pen) -> float:
        """The stone."""
        long = self.stone.size.usual
        views.stone(pen, (0, long / 2), self.narrow.usual, long)
        return long
