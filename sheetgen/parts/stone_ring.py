"""Stone ring: seats round a circle, opened in wet clay for stones that are set after firing."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base import forming, views
from sheetgen.base.figure import Made
from sheetgen.base.like import said
from sheetgen.base.material import Clay, Stone
from sheetgen.base.pen import arc
from sheetgen.base.spread import GRAIN
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.guard import at_least, at_most
from sheetgen.formulas.shrinkage import wet_size
from sheetgen.formulas.stones import ring_count, ring_gap
from sheetgen.parts import given, seats
from sheetgen.parts.clay_piece import fired_by
from sheetgen.parts.kind import Finding, Take, figure
from sheetgen.parts.seats import LEAST_WEB, Seated

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread


class StoneRing(Seated):
    """Counted by chords, straight from stone to stone: π ÷ asin((stone + gap) ÷ circle). The arc overfills.

    Counted for the largest stone of the size and opened for the largest shrinkage. Seats are marked by eye and drill,
    so no gap comes out truer than the marking.
    """

    kind = "stone ring"
    centred = True

    clay = given.item(Clay, "the clay the seats are made in")
    stone = given.item(Stone, "the stone, round")
    around = given.length("finished diameter of the circle through the middles of the stones", above=0)
    number = given.maybe_count("how many stones, when fewer than fit", at_least=2, at_most=500)
    gap = given.length("least gap between two stones, finished", default="0.5 mm", at_least=0)
    clearance = given.length("room round the stone in its seat", default="0.1 mm", at_least=0)
    across = given.maybe_length("finished diameter of the disc they stand on", above=0)

    @property
    def stones_worked(self) -> str:
        """How many, given or counted."""
        if self.number:
            return f"{self.number.usual:g}"
        size, gap = self.stone.size.high, self.gap.usual
        return f"down(π ÷ asin(({size:.6g} + {gap:.6g}) ÷ {self.around.usual:.6g}))"

    @figure("Stones in the ring", "", "{stones_worked}", rounding="whole")
    def stones(self) -> float:
        """How many stand round the circle. CannotBe if they do not fit."""
        size, gap, around = self.stone.size.high, self.gap.usual, self.around.usual
        if size + gap > around:
            raise CannotBe(f"two stones of {size:g} mm do not fit round a circle of {around:g} mm",
                           at_least(size + gap), "around")  # fmt: skip
        most = ring_count(around, size, gap)
        if self.number and self.number.usual > most:
            wider = at_least((size + gap) / math.sin(math.pi / self.number.usual))
            raise CannotBe(f"{self.number.usual:g} stones of {size:g} mm with that gap do not fit round {around:g} mm",
                           f"{most:g} or fewer, or a circle of {wider}", "number")  # fmt: skip
        return self.number.usual if self.number else most

    @figure("Gap, evened out", "mm", "{around} × sin(π ÷ {stones}) − {stone.size.high}")
    def even_gap(self) -> float:
        """Clear gap between two of the largest stones, finished."""
        return ring_gap(self.around.usual, self.stone.size.high, self.stones.usual)

    @figure("Turn from stone to stone, degrees", "", "360 ÷ {stones}")
    def turn(self) -> float:
        """Angle between two neighbours, for marking with a protractor."""
        return 360 / self.stones.usual

    @figure("Circle through the middles, wet", "mm", "{around} ÷ (1 − {clay.shrinkage})", rounding="tenth")
    def wet_around(self) -> Spread:
        """Circle to mark."""
        return wet_size(self.around, self.clay.shrinkage)

    @figure("Middle to middle, wet", "mm", "{wet_around} × sin(π ÷ {stones})", rounding="tenth")
    def wet_pitch(self) -> Spread:
        """From stone to stone, straight, for dividers."""
        return self.wet_around * math.sin(math.pi / self.stones.usual)

    seat = seats.seat
    drill = seats.drill
    loosest = seats.loosest

    @figure("Clay between two seats, wet", "mm", "{wet_pitch} − {drill}")
    def web(self) -> float:
        """What is left between two holes."""
        return self.wet_pitch.usual - self.drill.usual

    @figure("Disc, cut wet", "mm", "{across} ÷ (1 − {clay.shrinkage})", rounding="tenth", when=lambda part: part.across)
    def wet_across(self) -> Spread:
        """The disc they stand on, drawn round them; its clay belongs to the part that it is."""
        return wet_size(self.across or 0, self.clay.shrinkage)

    def takes(self) -> Iterator[Take]:
        """Stones."""
        yield Take(self.stone, self.stones * self.count, "stones")

    def made(self) -> Iterator[Made]:
        """Circle, pitch and seats."""
        fires = fired_by(self.clay)
        yield Made("circle through the middles", "wet_around", self.around, fires, "template")
        yield Made("middle to middle", "wet_pitch", self.even_gap + self.stone.size.high, fires, "template or dividers")
        yield Made("seats, each", "drill", None, fires, "drill")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The drill."""
        yield "drill", self.drill.usual

    def check(self) -> Iterator[Finding]:
        """Round stones; clay left between the seats and outside them."""
        if self.stone.width is not None:
            yield Finding("stone", "is oval, and these seats are drilled round", "a round stone, or a seat for each")
        if self.web.usual < LEAST_WEB - GRAIN:
            sure = at_least((self.drill.usual + LEAST_WEB) * (1 - self.clay.shrinkage.usual) - self.stone.size.high)
            yield Finding("gap", f"leaves {self.web.usual:.2f} mm of clay between two seats", sure)
        if self.across and self.wet_across.usual < self.wet_around.usual + self.drill.usual + 2 * LEAST_WEB:
            keep = 1 - self.clay.shrinkage.usual
            most = at_most(self.across.usual - (self.drill.usual + 2 * LEAST_WEB) * keep)
            yield Finding("around", "brings the seats to the edge of the disc", most)

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """A guide: the circle with its middles and drills, and the edge of the disc they stand on, cut elsewhere."""
        around, drill = size("wet_around"), size("drill")
        wide = size("wet_across") if self.across else around + drill + 4
        middle = (wide / 2, wide / 2)
        pen.circle(middle, wide, "fold")
        pen.circle(middle, around, "centre")
        pen.cross(middle)
        for i in range(int(self.stones.usual)):
            # Two stand level above, as in the drawing of how it is drilled.
            turn = 2 * math.pi * (i + 0.5) / self.stones.usual - math.pi / 2
            at = (middle[0] + around / 2 * math.cos(turn), middle[1] + around / 2 * math.sin(turn))
            pen.circle(at, drill, "thin")
            pen.cross(at)
        pen.across(-4, (wide - around) / 2, (wide + around) / 2, f"Ø {around.words}", to=0)
        if self.across:
            pen.across(wide + 5, 0, wide, f"Ø {size('wet_across').words}", to=wide)

    def template_note(self, size: Callable[[str], Size]) -> str:
        """Seats and what the template is drawn for."""
        shrinks = f"{self.clay.name}, drawn for {self.clay.shrinkage.usual * 100:g} % shrinkage"
        return f"a guide to prick through, not a cut; {self.stones.usual:g} seats, drill Ø {size('drill').words} mm; {shrinks}"

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The seats as they are marked and drilled, wet."""
        around, drill, pitch, n = size("wet_around"), size("drill"), size("wet_pitch"), int(self.stones.usual)
        forming.stone_ring(pen, (around, drill, pitch), n, size("wet_across") if self.across else 0, k)
        return said(
            around,
            f"{n} seats drilled {drill.words} mm on a circle of {around.words} mm, wet, {pitch.words} mm from middle to middle",
        )

    def view(self, pen: Pen) -> float:
        """The stones on their disc."""
        stone = self.stone.size.usual
        wide = self.across.usual if self.across else self.around.usual + stone
        middle, n = (0.0, wide / 2), int(self.stones.usual)
        if self.across:
            pen.circle(middle, wide)
        for centre in arc(middle, self.around.usual / 2, -90, 270, n)[:n]:
            views.stone(pen, centre, stone, stone)
        return wide
