"""Dome: a shallow cap formed from one flat disc laid over a ball, or pressed into a cup."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base import sketches
from sheetgen.base.figure import Made
from sheetgen.base.like import said
from sheetgen.base.material import Clay
from sheetgen.base.spread import Spread, over
from sheetgen.formulas.domes import cap_blank, cap_radius, hole_punched, hole_stretched
from sheetgen.formulas.shrinkage import fired_mass, fired_size, wet_size
from sheetgen.parts import given
from sheetgen.parts.clay_piece import fired_by
from sheetgen.parts.drawer import neighbours
from sheetgen.parts.kind import Finding, figure
from sheetgen.parts.pierced import Pierced

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen


def _ringed(part: Dome) -> bool:
    return part.around is not None


class Dome(Pierced):
    """Equal areas: Archimedes, On the Sphere and Cylinder, I.42; Atkins, Practical Sheet and Plate Metal Work.

    Sizes are of the outside; the disc is worked on the middle of the thickness. Clay slumps and stretches a little as
    it is laid over a ball, so a disc is right to about half a millimetre, not to a tenth.
    """

    kind = "dome"
    reshaped = True

    clay = given.item(Clay, "the clay it is cut from")
    across = given.length("finished width, rim to rim, outside", above=0)
    rise = given.length("finished rise, rim to crown, outside", above=0)
    thickness = given.length("thickness the clay is rolled to", above=0)
    formed = given.one_of("over a ball, or in a cup", "over", "in")
    grain = given.one_of("the way the texture's grain runs, as the template lies", "none", "along", "across")
    rolled_first = given.maybe_length("thickness it is rolled to before the texture", above=0)
    hole = given.maybe_length("finished diameter of a hole in the middle", above=0)
    holes = given.count("holes in a ring round the middle", default="0", at_least=0, at_most=60)
    around = given.maybe_length("finished diameter of the circle their centres stand on", above=0)
    opening = given.maybe_length("finished diameter of each of those holes", above=0)

    @figure("Radius of the outside", "mm", "({across}² ÷ 4 + {rise}²) ÷ (2 × {rise})")
    def radius(self) -> Spread:
        """Radius of the outside, finished."""
        return cap_radius(self.across, self.rise)

    @figure("Fired thickness", "mm", "{thickness} × (1 − {clay.thickness_shrinkage})")
    def fired_thickness(self) -> Spread:
        """Thickness of the finished dome."""
        return fired_size(self.thickness, self.clay.thickness_shrinkage)

    @figure(
        "Disc, finished", "mm",
        "√({across}² + 4 × {rise}²) × (1 − {fired_thickness} ÷ (2 × {radius}))",
    )  # fmt: skip
    def disc(self) -> Spread:
        """Flat disc of the same area as the middle of the dome."""
        return cap_blank(self.across, self.rise) * self.inward

    @property
    def inward(self) -> Spread:
        """From the outside to the middle of the clay: sizes there are smaller by this."""
        return 1 - self.fired_thickness / (self.radius * 2)

    @figure("Disc, cut wet", "mm", "{disc} ÷ (1 − {clay.shrinkage})", rounding="tenth")
    def wet_disc(self) -> Spread:
        """Disc to cut."""
        return wet_size(self.disc, self.clay.shrinkage)

    @property
    def ball_wanted(self) -> float:
        """The ball or cup that would fit exactly, diameter in mm."""
        outside = wet_size(self.radius.usual, self.clay.shrinkage.usual)
        return 2 * (outside - self.thickness.usual if self.formed == "over" else outside)

    @property
    def ball_worked(self) -> str:
        """How the wanted ball or cup is worked."""
        outside = f"{self.radius.usual:.6g} ÷ (1 − {self.clay.shrinkage.usual:.6g})"
        return f"2 × ({outside} − {self.thickness.usual:.6g})" if self.formed == "over" else f"2 × {outside}"

    @property
    def form(self) -> str:
        """The kind of tool it is shaped on."""
        return "dome former" if self.formed == "over" else "cup former"

    @property
    def owned(self) -> str:
        """The balls or cups in the drawer nearest to the wanted one."""
        return neighbours(self.bench.owned(self.form), self.ball_wanted)

    @figure("Ball or cup, across", "mm", "nearest({ball_worked}, {owned})")
    def ball(self) -> float:
        """Diameter of the ball it is laid over, or of the cup it is pressed in."""
        return self.tool(self.form, self.ball_wanted, "rise", reach=0.15)

    @property
    def middle(self) -> float:
        """Radius of the middle of the clay on the ball used, wet, mm."""
        half = self.thickness.usual / 2
        return self.ball.usual / 2 + (half if self.formed == "over" else -half)

    @property
    def outer(self) -> float:
        """Radius of the outside of the clay on the ball used, wet, mm."""
        return self.ball.usual / 2 + (self.thickness.usual if self.formed == "over" else 0)

    @property
    def lean(self) -> Spread:
        """Sine of a quarter of the angle that the dome spans at its ball's middle."""
        return self.wet_disc / (4 * self.middle)

    @figure("Across outside, formed, wet", "mm",
            "4 × ({middle} + {thickness} ÷ 2) × {lean} × √(1 − {lean}²)", rounding="tenth")  # fmt: skip
    def wet_across(self) -> Spread:
        """As a calliper takes it, across the outer edge of the rim."""
        return over(
            lambda x: 4 * (self.middle + self.thickness.usual / 2) * x * math.sqrt(max(0.0, 1 - x**2)), self.lean
        )

    @figure("Height over all, formed, wet", "mm",
            "{middle} + {thickness} ÷ 2 − ({middle} − {thickness} ÷ 2) × (1 − 2 × {lean}²)", rounding="tenth")  # fmt: skip
    def wet_high(self) -> Spread:
        """From the table that its rim stands on to the top of its crown."""
        half = self.thickness.usual / 2
        return over(lambda x: self.middle + half - (self.middle - half) * (1 - 2 * x**2), self.lean)

    @figure("Rise that comes out", "mm", "{wet_disc}² ÷ (8 × {middle}) × {outer} ÷ {middle} × (1 − {clay.shrinkage})")
    def rise_out(self) -> Spread:
        """Rise of the outside on the ball used, fired: on the middle of the clay chord² = 2 × radius × rise."""
        return fired_size(self.wet_disc.usual**2 / (8 * self.middle) * self.outer / self.middle, self.clay.shrinkage)

    @figure(
        "Width that comes out", "mm",
        "2 × {outer} × sin(2 × asin({wet_disc} ÷ (4 × {middle}))) × (1 − {clay.shrinkage})",
    )  # fmt: skip
    def width_out(self) -> Spread:
        """Width of the outside, rim to rim, on the ball used, fired."""
        half = 2 * math.asin(min(1.0, self.wet_disc.usual / (4 * self.middle)))
        return fired_size(2 * self.outer * math.sin(half), self.clay.shrinkage)

    @figure(
        "Hole, if the disc bends and does not stretch, cut wet", "mm",
        "4 × {radius} × sin(asin({hole} ÷ (2 × {radius})) ÷ 2) × (1 − {fired_thickness} ÷ (2 × {radius})) ÷ (1 − {clay.shrinkage})",
        rounding="tenth", when=lambda part: part.hole,
    )  # fmt: skip
    def hole_bent(self) -> Spread:
        """Equal areas (Lambert)."""
        return wet_size(hole_punched(self.hole or 0, self.across, self.rise) * self.inward, self.clay.shrinkage)

    @figure(
        "Hole, if the rim is held and the disc stretches, cut wet", "mm",
        "{hole} ÷ √(1 + 4 × {rise}² ÷ {across}²) × (1 − {fired_thickness} ÷ (2 × {radius})) ÷ (1 − {clay.shrinkage})",
        rounding="tenth", when=lambda part: part.hole,
    )  # fmt: skip
    def hole_held(self) -> Spread:
        """Uniform stretch, a bounding model; real work lies between."""
        return wet_size(hole_stretched(self.hole or 0, self.across, self.rise) * self.inward, self.clay.shrinkage)

    @figure(
        "Hole, cut wet", "mm", "({hole_bent} + {hole_held}) ÷ 2", rounding="tenth", when=lambda part: part.hole,
    )  # fmt: skip
    def wet_hole(self) -> Spread:
        """Hole to cut in the middle, half way between the two below."""
        return (self.hole_bent + self.hole_held) / 2

    def hole_fires(self, wet: float) -> Spread:
        """What a hole cut in the flat disc opens to: from the disc that only bends to the one that stretches."""
        wanted, s = self.hole.usual if self.hole else 0, self.clay.shrinkage
        ends = [wet * (1 - s.usual) * wanted / (cut.usual * (1 - s.usual)) for cut in (self.hole_bent, self.hole_held)]
        opened = [end * (1 - one) / (1 - s.usual) for end in ends for one in (s.low, s.high)]
        return Spread(sum(ends) / 2, min(opened), max(opened))

    @figure("Holes, each cut wet", "mm", "{opening} ÷ (1 − {clay.shrinkage})", rounding="tenth", when=_ringed)
    def wet_opening(self) -> Spread:
        """Each hole of the ring."""
        return wet_size(self.opening or 0, self.clay.shrinkage)

    @figure(
        "Circle of the hole centres, wet", "mm",
        "4 × {radius} × sin(asin({around} ÷ (2 × {radius})) ÷ 2) × (1 − {fired_thickness} ÷ (2 × {radius})) ÷ (1 − {clay.shrinkage})",
        rounding="tenth", when=_ringed,
    )  # fmt: skip
    def wet_around(self) -> Spread:
        """Circle to mark on the flat disc (equal areas)."""
        return wet_size(hole_punched(self.around or 0, self.across, self.rise) * self.inward, self.clay.shrinkage)

    @figure("Clay, each", "g", "π ÷ 4 × {wet_disc}² × {thickness} × {clay.density} ÷ 1000", rounding="mass up")
    def clay_mass(self) -> float:
        """The disc as it is cut, holes not taken out."""
        return math.pi / 4 * self.wet_disc.usual**2 * self.thickness.usual * self.clay.density / 1000

    @figure(
        "Fired weight, each", "g",
        "π ÷ 4 × ({wet_disc}² − {holes_squared}) × {thickness} × {clay.density} ÷ 1000 × {clay.metal_share}",
    )  # fmt: skip
    def fired_mass(self) -> float:
        """Metal left, the holes taken out."""
        area = math.pi / 4 * (self.wet_disc.usual**2 - self.holes_squared)
        return fired_mass(area * self.thickness.usual * self.clay.density / 1000, self.clay.metal_share)

    def made(self) -> Iterator[Made]:
        """Disc, ball, what it is when it is formed, and holes."""
        fires = fired_by(self.clay)
        yield Made("disc, for the dome", "wet_disc", None, None, "cutter or template")
        yield Made("ball to lay it over" if self.formed == "over" else "cup to press it in", "ball", tool=self.form)
        yield Made("width outside, formed", "wet_across", self.across, fires, "calliper")
        yield Made("height over all, formed", "wet_high", tool="calliper")
        yield from super().made()

    def tools(self) -> Iterator[tuple[str, float]]:
        """The ball or cup, and the drills of small holes."""
        yield self.form, self.ball.usual
        yield from super().tools()

    def check(self) -> Iterator[Finding]:
        """Not past half a ball; holes inside the rim and apart."""
        across, rise = self.across.usual, self.rise.usual
        if rise > across / 2:
            yield Finding("rise", "is past half a ball", f"{across / 2:g} mm or less")
        elif rise > 0.4 * across:
            yield Finding("rise", "is so deep that a flat disc creases", f"{across * 0.4:g} mm or less", "warning")
        off = self.rise_out.usual - rise
        if rise <= across / 2 and abs(off) > max(0.5, rise / 10):
            helped = f"it comes out {self.rise_out.usual:.1f} mm high on the {self.form} of {self.ball.usual:g} mm; give that rise"
            yield Finding(
                "rise",
                f"is {abs(off):.1f} mm {'less' if off > 0 else 'more'} than the drawer allows",
                helped,
                "warning",
            )
        yield from super().check()

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The clay on its ball or in its cup, in section, wet, by its outside."""
        ball, disc = size("ball"), size("wet_disc")
        tool = f"{'ball' if self.formed == 'over' else 'cup'} {ball.words}"
        words = (size("wet_across").words, size("wet_high").words, tool)
        over = self.formed == "over"
        sketches.dome(pen, ball, self.thickness.usual, disc, words, k, over=over)
        return said(
            ball,
            f"The disc {'over' if over else 'in'} a {tool} mm across, wet: {words[0]} mm wide outside, {words[1]} mm high over all",
        )
