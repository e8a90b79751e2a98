"""A round piece of clay with a hole in its middle, holes in a ring round it, or none."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.pen import arc
from sheetgen.base.spread import GRAIN
from sheetgen.parts.clay_piece import ClayPiece, bored, fired_by
from sheetgen.parts.kind import Finding, Worker

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen, Point
    from sheetgen.base.spread import Spread
    from sheetgen.parts.given import Given

LEAST_WEB = 1.0  # mm left between holes and to the rim, wet: common practice


class Pierced(ClayPiece):
    """A kind works how wide the holes are cut wet."""

    across: Given[Spread]
    hole: Given[Spread | None]
    holes: Given[Spread]
    around: Given[Spread | None]
    opening: Given[Spread | None]

    wet_hole: Worker
    wet_opening: Worker
    wet_around: Worker

    @property
    def holes_squared(self) -> float:
        """Wet diameters of all holes, squared and added, mm²."""
        middle = self.wet_hole.usual**2 if self.hole else 0
        return middle + (self.holes.usual * self.wet_opening.usual**2 if self.around and self.opening else 0)

    def hole_fires(self, wet: float) -> Spread:
        """What the hole in the middle comes out at, from its wet size in mm."""
        return fired_by(self.clay)(wet)

    def made(self) -> Iterator[Made]:
        """Holes."""
        fires = fired_by(self.clay)
        if self.hole:
            yield Made("hole in the middle", "wet_hole", self.hole, self.hole_fires, bored(self.wet_hole.usual))
        if self.around and self.opening:
            yield Made(
                f"{self.holes.usual:g} holes round it",
                "wet_opening",
                self.opening,
                fires,
                bored(self.wet_opening.usual),
            )
            yield Made("circle of their centres", "wet_around", self.around, None, "template")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The drills of small holes."""
        if self.hole:
            yield from self.drills(self.wet_hole.usual)
        if self.around and self.opening:
            yield from self.drills(self.wet_opening.usual)

    def check(self) -> Iterator[Finding]:
        """Holes inside the rim and apart."""
        across = self.across.usual
        yield from self.rolls_thinner()
        if self.hole and self.hole.usual > across - 4 * LEAST_WEB:
            yield Finding("hole", "leaves too little rim", f"{max(0.5, across - 4 * LEAST_WEB):g} mm or less")
        if self.holes.usual and not (self.around and self.opening):
            yield Finding("holes", "want the circle they stand on and their size", "give around: and opening:")
        if self.around and self.opening and self.holes.usual >= 1:
            yield from self._check_ring(self.around.usual, self.opening.usual)

    def _check_ring(self, around: float, opening: float) -> Iterator[Finding]:
        n = self.holes.usual
        web = around * math.sin(math.pi / n) - opening if n > 1 else math.inf
        if web < LEAST_WEB - GRAIN:
            room = max(0.5, around * math.sin(math.pi / n) - LEAST_WEB)
            yield Finding("opening", f"{n:g} holes stand {web:.1f} mm apart on that circle", f"{room:.1f} mm or less")
        if around + opening > self.across.usual - 2 * LEAST_WEB:
            room = max(0.5, self.across.usual - 2 * LEAST_WEB - opening)
            yield Finding("around", "brings the holes to the rim", f"{room:.1f} mm or less")
        if self.hole and around - opening < self.hole.usual + 2 * LEAST_WEB:
            room = self.hole.usual + 2 * LEAST_WEB + opening
            yield Finding("around", "brings the holes into the middle one", f"{room:.1f} mm or more")

    def ring(self, middle: Point, around: float) -> list[Point]:
        """The centres of the holes in the ring."""
        n = int(self.holes.usual)
        return arc(middle, around / 2, -90, 270, n)[:n]

    def view(self, pen: Pen) -> float:
        """The piece face on."""
        across = self.across.usual
        middle = (0.0, across / 2)
        pen.circle(middle, across)
        if self.hole:
            pen.circle(middle, self.hole.usual)
        if self.around and self.opening:
            for centre in self.ring(middle, self.around.usual):
                pen.circle(centre, self.opening.usual)
        return across

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """The disc with its centre and holes."""
        disc = size("wet_disc")
        middle = (disc / 2, disc / 2)
        pen.circle(middle, disc)
        pen.across(-4, 0, disc, f"Ø {disc.words}", to=0)
        pen.cross(middle)
        if self.hole:
            pen.circle(middle, size("wet_hole"))
        if self.around and self.opening:
            pen.circle(middle, size("wet_around"), "centre")
            for centre in self.ring(middle, size("wet_around")):
                pen.circle(centre, size("wet_opening"))
                pen.cross(centre)

    def template_note(self, size: Callable[[str], Size]) -> str:
        """Thickness, clay and holes."""
        notes = [super().template_note(size)]
        if self.hole:
            notes.append(f"middle hole Ø {size('wet_hole').words} mm")
        if self.around and self.opening:
            opening, circle = size("wet_opening").words, size("wet_around").words
            notes.append(f"{self.holes.usual:g} holes Ø {opening} mm on a circle of {circle} mm")
        return "; ".join(notes)
