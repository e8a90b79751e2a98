"""Cut shape: a disc, rectangle, oval, teardrop, leaf, polygon or an outline of one's own, cut flat from rolled clay."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.material import Clay
from sheetgen.base.spread import Spread, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import shapes
from sheetgen.formulas.guard import at_most
from sheetgen.formulas.mass import sheet_mass
from sheetgen.formulas.shrinkage import fired_mass, fired_size, wet_size
from sheetgen.parts import given
from sheetgen.parts.clay_piece import bored, fired_by
from sheetgen.parts.drawer import neighbours
from sheetgen.parts.kind import Finding, figure
from sheetgen.parts.outlined import SCALED, TWO_SIDED, Outlined

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen

LEAST_RIM = 0.5  # mm beside a hole, finished: common practice
HAIR = 0.005  # mm that an arc of straight runs may lie inside the true one


def _is(*kinds: str) -> Callable[[CutShape], bool]:
    return lambda part: part.shape in kinds


class CutShape(Outlined):
    """Sides grow by 1 ÷ (1 − s); a flat piece shrinks alike both ways in its plane.

    A teardrop is a circle and its two tangents from the tip; a leaf is two equal arcs; a hole stands in the middle of
    width and height. Soft clay drags a little under a blade: a cutter leaves a truer edge than a hand does.
    """

    kind = "cut shape"

    clay = given.item(Clay, "the clay it is cut from")
    shape = given.one_of("what is cut", "disc", *TWO_SIDED, *SCALED)
    across = given.maybe_length(
        "finished width; of a polygon from corner to corner, the widest way; of an outline, to scale it", above=0
    )
    down = given.maybe_length("finished height of a rectangle, oval, teardrop or leaf", above=0)
    sides = given.maybe_count("how many sides a polygon has", at_least=3, at_most=60)
    path = given.outline("an outline of one's own: a closed SVG path, finished size in mm")
    thickness = given.length("thickness the clay is rolled to", above=0)
    grain = given.one_of("the way the texture's grain runs, as the template lies", "none", "along", "across")
    rolled_first = given.maybe_length("thickness it is rolled to before the texture", above=0)
    hole = given.maybe_length("finished diameter of a hole in the middle", above=0)
    cutter = given.maybe_length("the round cutter to use for a disc, when the tool decides", above=0)
    cut_with = given.one_of("a disc by its template, or with the nearest round cutter owned", "template", "cutter")

    @property
    def by_cutter(self) -> bool:
        """Whether a round cutter decides the size."""
        return self.shape == "disc" and (self.cutter is not None or self.cut_with == "cutter")

    @figure("Disc, cut wet", "mm", "{drawn} ÷ (1 − {clay.shrinkage})", rounding="tenth",
            when=lambda part: part.shape == "disc" and not part.by_cutter)  # fmt: skip
    def wet_disc(self) -> Spread:
        """Diameter to cut."""
        return wet_size(self.drawn, self.clay.shrinkage)

    @property
    def wanted(self) -> float:
        """The cutter that would fit exactly, mm."""
        return self.cutter.usual if self.cutter else wet_size(self.drawn, self.clay.shrinkage).usual

    @property
    def owned(self) -> str:
        """The round cutters in the drawer nearest to the wanted one."""
        return neighbours([] if self.cutter else self.bench.owned("round cutter"), self.wanted)

    @figure("Round cutter", "mm", "nearest({wanted}, {owned})", when=lambda part: part.by_cutter)
    def cutter_used(self) -> float:
        """The cutter that the disc is cut with."""
        return self.wanted if self.cutter else self.tool("round cutter", self.wanted, "across")

    @figure("Disc, fired", "mm", "{cutter_used} × (1 − {clay.shrinkage})", when=lambda part: part.by_cutter)
    def fired_disc(self) -> Spread:
        """What the cutter's disc comes out at."""
        return fired_size(self.cutter_used, self.clay.shrinkage)

    @figure("Width, cut wet", "mm", "{drawn} ÷ (1 − {clay.shrinkage})", when=_is(*TWO_SIDED, *SCALED),
            rounding="tenth")  # fmt: skip
    def wet_across(self) -> Spread:
        """Width to cut."""
        return wet_size(self.drawn, self.clay.shrinkage)

    @figure("Height, cut wet", "mm", "{finished_down} ÷ (1 − {clay.shrinkage})", rounding="tenth", when=_is(*TWO_SIDED))
    def wet_down(self) -> Spread:
        """Height to cut."""
        if self.shape in {"teardrop", "leaf"} and self.finished_down.usual <= self.drawn.usual:
            message = f"a {self.shape} is higher than wide, and this is {self.drawn.usual:g} mm wide"
            raise CannotBe(message, f"more than {self.drawn.usual:g} mm, or less across", "down")
        return wet_size(self.finished_down, self.clay.shrinkage)

    @figure("Height, cut wet", "mm", "{wet_across} × {tall}", rounding="tenth", when=_is(*SCALED))
    def wet_tall(self) -> Spread:
        """Height of the outline as it is cut."""
        return self.wet_across * self.tall

    @figure("Hole, cut wet", "mm", "{hole} ÷ (1 − {clay.shrinkage})", rounding="tenth", when=lambda part: part.hole)
    def wet_hole(self) -> Spread:
        """Diameter of the hole to cut."""
        return wet_size(self.hole or 0, self.clay.shrinkage)

    @figure("Clay, each", "g", "({area_worked}) × {thickness} × {clay.density} ÷ 1000", rounding="mass up")
    def clay_mass(self) -> Spread:
        """The piece as it is cut, the hole not taken out."""
        return sheet_mass(self.clay.density, spread(self.wet_area[0]), self.thickness.usual)

    @figure("Fired weight, each", "g",
            "({area_worked}{hole_worked}) × {thickness} × {clay.density} ÷ 1000 × {clay.metal_share}")  # fmt: skip
    def fired_mass(self) -> Spread:
        """Metal left, the hole taken out."""
        hole = math.pi / 4 * self.wet_hole.usual**2 if self.hole else 0
        wet = sheet_mass(self.clay.density, spread(self.wet_area[0] - hole), self.thickness.usual)
        return fired_mass(wet, self.clay.metal_share)

    @property
    def wet_area(self) -> tuple[float, str]:
        """Area cut, mm², the hole not taken out; and how it is worked."""
        if self.shape == "disc":
            return shapes.area_of("disc", (self.cutter_used if self.by_cutter else self.wet_disc).usual, 0)
        across = self.wet_across.usual
        if self.shape == "outline":
            share = self.path.area / self.path.width**2 if self.path else 0
            return share * across**2, f"{share:.6g} × {across:.6g}²"
        tall = self.wet_down.usual if self.shape in TWO_SIDED else 0
        return shapes.area_of(self.shape, across, tall, self.sided)

    @property
    def area_worked(self) -> str:
        """How the area is worked."""
        return self.wet_area[1]

    @property
    def hole_worked(self) -> str:
        """How the hole's area is worked."""
        return f" − π ÷ 4 × {self.wet_hole.usual:.6g}²" if self.hole else ""

    def made(self) -> Iterator[Made]:
        """Sides and hole."""
        fires = fired_by(self.clay)
        if self.by_cutter:
            yield Made("disc", "cutter_used", self.across, fires, "round cutter")
        elif self.shape == "disc":
            yield Made("disc", "wet_disc", self.across, fires, "cutter or template")
        else:
            scaled = self.shape in SCALED
            yield Made("width", "wet_across", self.drawn, fires, "template")
            height = ("wet_tall", self.drawn * self.tall) if scaled else ("wet_down", self.finished_down)
            yield Made("height", *height, fires, "template")
        if self.hole:
            yield Made("hole", "wet_hole", self.hole, fires, bored(self.wet_hole.usual))

    def tools(self) -> Iterator[tuple[str, float]]:
        """The round cutter, and the drill of a small hole."""
        if self.by_cutter:
            yield "round cutter", self.cutter_used.usual
        if self.hole:
            yield from self.drills(self.wet_hole.usual)

    def check(self) -> Iterator[Finding]:
        """No field that the shape has no use for; the hole inside the piece."""
        used = {"down": self.shape in TWO_SIDED, "sides": self.shape == "polygon", "path": self.shape == "outline"}
        used |= {"cutter": self.shape == "disc", "across": not (self.shape == "disc" and self.cutter)}
        told = f"shape: {self.shape}" + (" with its cutter" if self.cutter else "")
        yield from self.misfits(told, {}, {field for field, wanted in used.items() if not wanted})
        if self.cutter:
            yield from self.not_owned("round cutter", self.cutter.usual, "cutter")
        if self.hole:
            tall = self.finished_down.usual if self.shape in TWO_SIDED else 0
            wide = self.fired_disc.usual if self.by_cutter else self.drawn.usual
            outline = self.outlined(wide, tall)
            middle = (outline.width / 2, outline.height / 2) if outline else (0, 0)
            room = shapes.room_round(outline, middle) if outline else min(wide, tall or wide)
            most = room - 2 * LEAST_RIM + HAIR
            if self.hole.usual > most:
                yield Finding(
                    "hole", "leaves less than half a millimetre of rim", at_most(most) if most > HAIR else "no hole"
                )

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """The outline with its sizes; the hole with its centre."""
        disc = self.shape == "disc"
        across = size("cutter_used" if self.by_cutter else "wet_disc" if disc else "wet_across")
        down = across if disc else size("wet_tall" if self.shape in SCALED else "wet_down")
        middle = self.flat_piece(pen, (0, 0), across, down, size("wet_hole") if self.hole else 0)
        pen.across(-4, 0, across, f"Ø {across.words}" if disc else across.words, to=0)
        if not disc:
            pen.upright(-4, 0, 2 * middle[1], down.words, to=0)
        if self.hole:
            pen.cross(middle)

    def view(self, pen: Pen) -> float:
        """The finished piece face on."""
        wide = self.fired_disc.usual if self.by_cutter else self.drawn.usual
        tall = self.finished_down.usual if self.shape in TWO_SIDED else wide
        middle = self.flat_piece(pen, (-wide / 2, 0), wide, tall, self.hole.usual if self.hole else 0)
        return 2 * middle[1]

    def template_note(self, size: Callable[[str], Size]) -> str:
        """Thickness, clay and hole."""
        hole = f"; hole Ø {size('wet_hole').words} mm" if self.hole else ""
        return super().template_note(size) + hole
