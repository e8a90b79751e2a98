"""Cut shape: a disc, a rectangle, an oval or an outline of one's own, cut flat from rolled clay."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.material import Clay
from sheetgen.base.spread import Spread, spread
from sheetgen.formulas.shrinkage import fired_mass, fired_size, wet_size
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Part, Take, figure, template_clay

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen


def _is(*shapes: str) -> Callable[[CutShape], bool]:
    return lambda part: part.shape in shapes


class CutShape(Part):
    """Sides grow by 1 ÷ (1 − s); a flat piece shrinks alike both ways in its plane."""

    kind = "cut shape"

    clay = given.item(Clay, "the clay it is cut from")
    shape = given.one_of("what is cut", "disc", "rectangle", "oval", "outline")
    across = given.maybe_length("finished width; of an outline, only to scale it to this", above=0)
    down = given.maybe_length("finished height of a rectangle or oval", above=0)
    path = given.outline("an outline of one's own: a closed SVG path, finished size in mm")
    thickness = given.length("thickness the clay is rolled to", above=0)
    hole = given.maybe_length("finished diameter of a hole in the middle", above=0)

    @property
    def drawn(self) -> Spread:
        """Finished width of an outline, mm."""
        return self.across or spread(self.path.width if self.path else 0)

    @property
    def flat_area(self) -> float:
        """Area of the outline as it is drawn, over its drawn width squared."""
        return self.path.area / self.path.width**2 if self.path else 0

    @property
    def tall(self) -> float:
        """Height of the outline over its width."""
        return self.path.height / self.path.width if self.path else 0

    @property
    def finished_down(self) -> Spread:
        """Finished height, mm."""
        return self.down or spread(0)

    @figure("Disc, cut wet", "mm", "{across} ÷ (1 − {clay.shrinkage})", rounding="bench", when=_is("disc"))
    def wet_disc(self) -> Spread:
        """Diameter to cut."""
        return wet_size(self.across or 0, self.clay.shrinkage)

    @figure(
        "Width, cut wet", "mm", "{drawn} ÷ (1 − {clay.shrinkage})",
        rounding="bench", when=_is("rectangle", "oval", "outline"),
    )  # fmt: skip
    def wet_across(self) -> Spread:
        """Width to cut."""
        return wet_size(self.drawn, self.clay.shrinkage)

    @figure(
        "Height, cut wet", "mm", "{finished_down} ÷ (1 − {clay.shrinkage})",
        rounding="bench", when=_is("rectangle", "oval"),
    )  # fmt: skip
    def wet_down(self) -> Spread:
        """Height to cut."""
        return wet_size(self.finished_down, self.clay.shrinkage)

    @figure("Height, cut wet", "mm", "{wet_across} × {tall}", rounding="tenth", when=_is("outline"))
    def wet_tall(self) -> Spread:
        """Height of the outline as it is cut."""
        return self.wet_across * self.tall

    @figure(
        "Hole, cut wet", "mm", "{hole} ÷ (1 − {clay.shrinkage})",
        rounding="tenth", when=lambda part: part.hole is not None,
    )  # fmt: skip
    def wet_hole(self) -> Spread:
        """Diameter of the hole to cut."""
        return wet_size(self.hole or 0, self.clay.shrinkage)

    @figure("Clay, each", "g", "{area_worked} × {thickness} × {clay.density} ÷ 1000", rounding="mass up")
    def clay_mass(self) -> Spread:
        """The piece as it is cut, the hole not taken out."""
        return spread(self.wet_area * self.thickness.usual * self.clay.density / 1000)

    @figure(
        "Fired weight, each", "g", "({area_worked}{hole_worked}) × {thickness} × {clay.density} ÷ 1000 × {clay.metal_share}"
    )
    def fired_mass(self) -> Spread:
        """Metal left, the hole taken out."""
        hole = math.pi / 4 * self.wet_hole.usual**2 if self.hole else 0
        wet = (self.wet_area - hole) * self.thickness.usual * self.clay.density / 1000
        return spread(fired_mass(wet, self.clay.metal_share))

    @property
    def wet_area(self) -> float:
        """Area cut, mm², the hole not taken out."""
        if self.shape == "disc":
            return math.pi / 4 * self.wet_disc.usual**2
        if self.shape == "outline":
            return self.flat_area * self.wet_across.usual**2
        return self.wet_across.usual * self.wet_down.usual * (math.pi / 4 if self.shape == "oval" else 1)

    @property
    def area_worked(self) -> str:
        """How the area is worked."""
        if self.shape == "disc":
            return f"π ÷ 4 × {self.wet_disc.usual:.6g}²"
        if self.shape == "outline":
            return f"{self.flat_area:.6g} × {self.wet_across.usual:.6g}²"
        sides = f"{self.wet_across.usual:.6g} × {self.wet_down.usual:.6g}"
        return f"π ÷ 4 × {sides}" if self.shape == "oval" else sides

    @property
    def hole_worked(self) -> str:
        """How the hole's area is worked."""
        return f" − π ÷ 4 × {self.wet_hole.usual:.6g}²" if self.hole else ""

    def takes(self) -> Iterator[Take]:
        """Clay as cut."""
        yield Take(self.clay, self.clay_mass * self.count, "clay_mass")

    def made(self) -> Iterator[Made]:
        """Sides and hole."""
        s = self.clay.shrinkage

        def fires(wet: float) -> Spread:
            return fired_size(wet, s)

        if self.shape == "disc":
            yield Made("disc", "wet_disc", self.across, fires, "cutter or template")
        else:
            yield Made("width", "wet_across", self.drawn, fires, "template")
            if self.shape == "outline":
                yield Made("height", "wet_tall", self.drawn * self.tall, fires, "template")
            else:
                yield Made("height", "wet_down", self.down, fires, "template")
        if self.hole:
            yield Made("hole", "wet_hole", self.hole, fires, "cutter or straw")

    def check(self) -> Iterator[Finding]:
        """Sides given as the shape wants them; the hole inside the piece."""
        if self.shape == "outline" and not self.path:
            yield Finding("path", "an outline wants its path", "a closed SVG path such as M0 0 L20 0 L10 15 Z")
        elif self.shape != "outline" and self.path:
            yield Finding("path", f"a {self.shape} takes no path", "write shape: outline")
        if self.shape != "outline" and not self.across:
            yield Finding("across", f"a {self.shape} wants its finished width", "across: 20 mm")
        if self.shape in {"rectangle", "oval"} and not self.down:
            yield Finding("down", f"a {self.shape} wants its finished height", "down: 12 mm")
        narrowest = min((s.usual for s in (self.across, self.down) if s), default=0)
        if self.hole and narrowest and self.hole.usual >= narrowest - 1:
            yield Finding("hole", "leaves less than half a millimetre of rim", f"{max(narrowest - 2, 0.5):g} mm or less")

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """The outline with its sizes; the hole with its centre."""
        if self.shape == "disc":
            disc = size("wet_disc")
            wide = tall = float(disc)
            pen.circle((disc / 2, disc / 2), disc)
            pen.across(-4, 0, disc, f"Ø {disc.words}", to=0)
        else:
            across = size("wet_across")
            down = size("wet_tall" if self.shape == "outline" else "wet_down")
            wide, tall = float(across), float(down)
            if self.shape == "rectangle":
                pen.box((0, 0), wide, tall)
            elif self.shape == "oval":
                pen.oval((wide / 2, tall / 2), wide, tall)
            elif self.path:
                drawn = self.path.scaled(wide / self.path.width).placed()
                tall = drawn.height
                pen.line(drawn.points, closed=True)
            pen.across(-4, 0, wide, across.words, to=0)
            pen.upright(-4, 0, tall, down.words, to=0)
        if self.hole:
            pen.circle((wide / 2, tall / 2), size("wet_hole"))
            pen.cross((wide / 2, tall / 2))

    def template_note(self, size: Callable[[str], Size]) -> str:
        """Thickness, clay and hole."""
        hole = f"; hole Ø {size('wet_hole').words} mm" if self.hole else ""
        return template_clay(self.thickness.usual, self.clay) + hole
