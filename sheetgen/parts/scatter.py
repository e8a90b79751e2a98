"""Scatter: stones strewn over a flat plate of clay, so many as cover a share of it, or so many as are wanted."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base import views
from sheetgen.base.figure import Made
from sheetgen.base.material import Clay, Stone
from sheetgen.base.spread import GRAIN
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.guard import at_least
from sheetgen.formulas.mass import sheet_mass
from sheetgen.formulas.scatter import most_scattered, share_covered, stones_for_share
from sheetgen.formulas.shapes import area_of, edge_of
from sheetgen.formulas.shrinkage import wet_size
from sheetgen.parts import given, seats
from sheetgen.parts.clay_piece import ClayPiece, fired_by
from sheetgen.parts.kind import Finding, Take, figure
from sheetgen.parts.seats import LEAST_FLOOR, LEAST_WEB, Seated

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread


class Scatter(Seated, ClayPiece):
    """At most so many, by area and edge (Groemer's theorem, 1960): a bound that no layout passes and few reach.

    Stones strewn by eye come to rest far below it. How they lie is not worked: lay them out once, dry, and count. The
    bound is for the area that their middles may take, counted for the largest stone.
    """

    kind = "scatter"

    clay = given.item(Clay, "the clay of the plate")
    stone = given.item(Stone, "the stone, round")
    shape = given.one_of("the plate", "disc", "rectangle", "oval")
    across = given.length("finished width of the plate", above=0)
    down = given.maybe_length("finished height of a rectangle or oval", above=0)
    share = given.ratio("how much of the plate inside its margin the stones cover", default="30 %")
    number = given.maybe_count("how many stones, instead of a share")
    gap = given.length("least gap between two stones, finished", default="0.5 mm", at_least=0)
    margin = given.length("clay kept free along the edge, finished", default="1 mm", at_least=0)
    clearance = given.length("room round a stone in its seat", default="0.1 mm", at_least=0)
    thickness = given.length("thickness the plate is rolled to", above=0)

    @property
    def tall(self) -> Spread:
        """Finished height of the plate, mm."""
        return self.down if self.down and self.shape != "disc" else self.across

    @figure("Area inside the margin", "mm²", "{area_worked}")
    def area(self) -> float:
        """Finished area that stones may cover; of an oval too slim for Steiner's formula, the oval that much smaller each way."""
        return self.inside(0)[0]

    @property
    def area_worked(self) -> str:
        """How that area is worked."""
        return self.inside(0)[1]

    def inside(self, stone: float) -> tuple[float, str, float, str]:
        """Area and perimeter that the middles of stones may take (0: the whole inside); each with its working."""
        less = 2 * self.margin.usual + stone
        wide, tall = self.across.usual - less, self.tall.usual - less
        if min(wide, tall) <= 0:
            field = "across" if self.across.usual <= self.tall.usual else "down"
            raise CannotBe("no stone fits inside the margin", f"more than {less:g} mm, or a smaller margin", field)
        if self.shape == "oval" and less / 2 * self.longest <= self.shortest**2 / 2:
            # An even line inside an oval is no oval: Steiner's formula, good while no bend is tighter than the margin.
            area, area_worked = area_of("oval", self.across.usual, self.tall.usual)
            edge, edge_worked = edge_of("oval", self.longest, self.shortest)
            inside = area - less / 2 * edge + math.pi * (less / 2) ** 2
            worked = f"({area_worked} − {less / 2:.6g} × {edge_worked} + π × {less / 2:.6g}²)"
            return inside, worked, edge - math.pi * less, f"({edge_worked} − π × {less:.6g})"
        return *area_of(self.shape, wide, tall), *edge_of(self.shape, max(wide, tall), min(wide, tall))

    @property
    def longest(self) -> float:
        """The longer way of the plate, mm."""
        return max(self.across.usual, self.tall.usual)

    @property
    def shortest(self) -> float:
        """The shorter way of the plate, mm."""
        return min(self.across.usual, self.tall.usual)

    @property
    def most_worked(self) -> str:
        """How the bound is worked."""
        _, area, _, edge = self.inside(self.stone.size.high)
        spacing = f"({self.stone.size.high:.6g} + {self.gap.usual:.6g})"
        return f"down(2 × {area} ÷ (√(3) × {spacing}²) + {edge} ÷ (2 × {spacing}) + 1)"

    @figure("Stones, never more than", "", "{most_worked}", rounding="whole")
    def most(self) -> float:
        """No layout holds more with that gap and margin."""
        area, _, edge, _ = self.inside(self.stone.size.high)
        return most_scattered(area, edge, self.stone.size.high + self.gap.usual)

    @property
    def stones_worked(self) -> str:
        """How many, given or by share."""
        if self.number:
            return f"{self.number.usual:g}"
        return f"down({self.share.usual:.6g} × {self.area.usual:.6g} ÷ (π ÷ 4 × {self.stone.size.high:.6g}²))"

    @figure("Stones", "", "{stones_worked}", rounding="whole")
    def stones(self) -> float:
        """How many are strewn. CannotBe for more than the bound."""
        size = self.stone.size.high
        n = self.number.usual if self.number else stones_for_share(self.area.usual, self.share.usual, size)
        if n > self.most.usual:
            share = math.floor(share_covered(self.area.usual, self.most.usual, size) * 100)
            helped = f"{self.most.usual:g} or fewer" if self.number else f"{share} % or less"
            message = f"{n:g} stones of {size:g} mm cannot lie there: {self.most.usual:g} is the bound"
            raise CannotBe(message, f"{helped}, or a smaller gap", "number" if self.number else "share")
        if n < 1:
            least = math.ceil(share_covered(self.area.usual, 1, size) * 100)
            raise CannotBe("not one stone is covered by that share", f"{least} % or more", "share")
        return n

    @figure("Share covered", "%", "100 × {stones} × π ÷ 4 × {stone.size.high}² ÷ {area}", rounding="tenth")
    def covered(self) -> float:
        """By the largest stones, of the area inside the margin."""
        return 100 * share_covered(self.area.usual, self.stones.usual, self.stone.size.high)

    seat = seats.seat
    drill = seats.drill

    @figure("Seats apart, middle to middle, wet, at the least", "mm",
            "({stone.size.high} + {gap}) ÷ (1 − {clay.shrinkage})", rounding="bench most")  # fmt: skip
    def wet_spacing(self) -> Spread:
        """Two seats stand no nearer."""
        return wet_size(self.gap + self.stone.size.high, self.clay.shrinkage)

    @figure("Plate, across, cut wet", "mm", "{across} ÷ (1 − {clay.shrinkage})", rounding="tenth")
    def wet_across(self) -> Spread:
        """Width to cut."""
        return wet_size(self.across, self.clay.shrinkage)

    @figure("Plate, down, cut wet", "mm", "{tall} ÷ (1 − {clay.shrinkage})", rounding="tenth",
            when=lambda part: part.shape != "disc")  # fmt: skip
    def wet_down(self) -> Spread:
        """Height to cut."""
        return wet_size(self.tall, self.clay.shrinkage)

    @property
    def plate(self) -> tuple[float, str]:
        """Area of the plate as it is cut, mm²; and how it is worked."""
        return area_of(self.shape, self.wet_across.usual, wet_size(self.tall, self.clay.shrinkage).usual)

    @property
    def plate_worked(self) -> str:
        """How the plate is worked."""
        return self.plate[1]

    @figure("Clay under them, each", "g", "{plate_worked} × {thickness} × {clay.density} ÷ 1000", rounding="mass up")
    def clay_mass(self) -> float:
        """The plate as it is cut, seats not taken out."""
        return sheet_mass(self.clay.density, self.plate[0], self.thickness.usual)

    def takes(self) -> Iterator[Take]:
        """Stones and clay."""
        yield Take(self.stone, self.stones * self.count, "stones")
        yield from super().takes()

    def made(self) -> Iterator[Made]:
        """Plate, seats and how far apart."""
        fires = fired_by(self.clay)
        yield Made("plate, across", "wet_across", self.across, fires, "template")
        if self.shape != "disc":
            yield Made("plate, down", "wet_down", self.tall, fires, "template")
        yield Made("seats, each", "drill", None, fires, "drill")
        yield Made("seat to seat, at the least", "wet_spacing", self.gap + self.stone.size.high, fires, "dividers")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The drill."""
        yield "drill", self.drill.usual

    def check(self) -> Iterator[Finding]:
        """Fields as the plate wants them; round stones; clay left between seats."""
        if self.shape == "disc":
            yield from self.misfits("a disc", {}, ["down"])
        else:
            yield from self.misfits(f"shape: {self.shape}", {"down": "down: 12 mm"})
        if self.stone.width is not None:
            yield Finding("stone", "is oval, and these seats are drilled round", "a round stone")
        if self.stone.height:
            deep = wet_size(self.stone.height.high, self.clay.thickness_shrinkage.high)
            left, keep = self.thickness.usual - deep, wet_size(LEAST_FLOOR, self.clay.thickness_shrinkage.high)
            if left < keep:
                message = f"leaves {max(0.0, left):.2f} mm of clay under stones that lie flush"
                yield Finding("thickness", message, at_least(deep + keep), "warning")
        web = self.wet_spacing.usual - self.drill.usual
        if web < LEAST_WEB - GRAIN:
            sure = (self.drill.usual + LEAST_WEB) * (1 - self.clay.shrinkage.usual) - self.stone.size.high
            yield Finding("gap", f"leaves {web:.2f} mm of clay between two seats", at_least(sure))

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """The plate, and the line inside which the stones lie."""
        across = size("wet_across")
        down = across if self.shape == "disc" else size("wet_down")
        edge = wet_size(self.margin, self.clay.shrinkage).usual
        if self.shape == "rectangle":
            pen.box((0, 0), across, down)
            pen.box((edge, edge), across - 2 * edge, down - 2 * edge, "thin")
        else:
            pen.oval((across / 2, down / 2), across, down)
            pen.oval((across / 2, down / 2), across - 2 * edge, down - 2 * edge, "thin")
        pen.across(-4, 0, across, across.words, to=0)
        if self.shape != "disc":
            pen.upright(-4, 0, down, down.words, to=0)

    def view(self, pen: Pen) -> float:
        """The plate with its stones, strewn evenly: how they come to lie is chance."""
        wide, tall = self.across.usual, self.tall.usual
        if self.shape == "rectangle":
            pen.box((-wide / 2, 0), wide, tall)
        else:
            pen.oval((0, tall / 2), wide, tall)
        stone = self.stone.size.usual
        less = 2 * self.margin.usual + stone
        for x, y in views.strewn(self.shape, int(self.stones.usual)):
            views.stone(pen, (x * max(0.0, wide - less), tall / 2 + y * max(0.0, tall - less)), stone, stone)
        return tall

    def template_note(self, size: Callable[[str], Size]) -> str:
        """Thickness, clay, stones."""
        seated = f"{self.stones.usual:g} seats, drill Ø {size('drill').words} mm inside the thin line"
        return f"{super().template_note(size)}; {seated}"
