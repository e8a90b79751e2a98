"""Toggle clasp: a ring, and a bar that goes through it end first and then lies across it."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base import sketches, views
from sheetgen.base.figure import Made
from sheetgen.base.material import Wire
from sheetgen.facts.allowances import TOGGLE_BEYOND
from sheetgen.formulas.gauges import wire_mass
from sheetgen.formulas.loops import ring_outside, ring_wire
from sheetgen.formulas.wrapped import turned_loop
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Part, Take, figure
from sheetgen.parts.wire_piece import drawer_worked, from_drawer, take_wire

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread


class Toggle(Part):
    """The bar is as long as the ring is across outside, and reaches `beyond` it at both ends (common practice).

    A beading site asks for 10 mm more than the ring is across, which is 5 mm an end. To go through, the bar folds
    beside what it hangs on: that must be slim for half a bar (common practice). No figure knows how a clasp wears.
    """

    hazards = ("wire ends",)

    kind = "toggle clasp"

    wire = given.item(Wire, "the wire of the ring")
    bar_wire = given.maybe_item(Wire, "the wire of the bar, if it differs")
    inside = given.maybe_length("inside diameter of the ring; or give the rod", above=0)
    rod = given.maybe_length("the rod to wind the ring on, when the tool decides", above=0)
    bar = given.maybe_length("finished length of the bar, if it is not to be worked", above=0)
    beyond = given.length(
        "how far the bar reaches past the ring's outside at each end", default=f"{TOGGLE_BEYOND:g} mm", at_least=0
    )
    eye = given.length(
        "inside of an eye turned in the middle of the bar; 0 for one soldered on", default="0 mm", at_least=0
    )
    trim = given.length("wire added to each piece to be trimmed off", default="2 mm", at_least=0)

    @property
    def staff(self) -> Wire:
        """The bar's wire."""
        return self.bar_wire or self.wire

    @property
    def rod_worked(self) -> str:
        """How the rod is worked."""
        return drawer_worked(self, "rod", self.inside, self.rod)

    @figure("Rod", "mm", "{rod_worked}")
    def rod_used(self) -> float:
        """The ring comes out at this inside."""
        return from_drawer(self, "rod", self.inside, self.rod, "inside")

    @figure("Wire in the ring", "mm", "π × ({rod_used} + {wire.thickness})", rounding="tenth")
    def ring(self) -> Spread:
        """Along the middle of the wire, its ends meeting."""
        return ring_wire(self.rod_used, self.wire.thickness)

    @figure("Ring, outside", "mm", "{rod_used} + 2 × {wire.thickness}")
    def outside(self) -> Spread:
        """Outside diameter: the least that a bar must be long to lie on the ring at both sides."""
        return ring_outside(self.rod_used, self.wire.thickness)

    @property
    def bar_worked(self) -> str:
        """How the bar is worked."""
        return f"{self.bar.usual:.6g}" if self.bar else f"{self.outside.usual:.6g} + 2 × {self.beyond.usual:.6g}"

    @figure("Bar, end to end", "mm", "{bar_worked}", rounding="bench")
    def bar_made(self) -> Spread:
        """Finished length of the bar."""
        return self.bar or self.outside + 2 * self.beyond

    @property
    def eye_worked(self) -> str:
        """What an eye turned in the bar takes."""
        return f" + π × ({self.eye.usual:.6g} + {self.staff.thickness:.6g})" if self.eye.usual else ""

    @figure("Wire in the bar", "mm", "{bar_made}{eye_worked}", rounding="tenth")
    def bar_one(self) -> Spread:
        """Along the middle of the wire, a full turn in its middle where the bar has an eye of its own."""
        return self.bar_made + turned_loop(self.eye, self.staff.thickness) if self.eye.usual else self.bar_made

    @figure("Ring, wire to cut", "mm", "{ring} + {trim}", rounding="bench up")
    def ring_cut(self) -> Spread:
        """With what is trimmed off."""
        return self.ring + self.trim

    @figure("Bar, wire to cut", "mm", "{bar_one} + {trim}", rounding="bench up")
    def bar_cut(self) -> Spread:
        """With what is trimmed off."""
        return self.bar_one + self.trim

    @figure("Room beside the bar in the ring", "mm", "{rod_used} − {staff.thickness}")
    def room(self) -> Spread:
        """What the slim end may measure that goes through the ring beside the bar."""
        return self.rod_used - self.staff.thickness

    @figure("Slim before the bar", "mm", "{bar_made} ÷ 2", rounding="bench up")
    def slim(self) -> Spread:
        """Chain or small beads next to the bar, so that half the bar can go through the ring."""
        return self.bar_made / 2

    @figure("Weight, ring and bar", "g", "{ring_mass} + {bar_mass}")
    def mass(self) -> Spread:
        """Both pieces, trimmed."""
        return wire_mass(self.wire.density, self.wire.thickness, self.ring) + self.bar_grams

    @property
    def bar_grams(self) -> Spread:
        """Weight of the bar, g."""
        return wire_mass(self.staff.density, self.staff.thickness, self.bar_one)

    @property
    def ring_mass(self) -> str:
        """How the ring's weight is worked."""
        return f"π ÷ 4 × {self.wire.thickness:.6g}² × {self.ring.usual:.6g} × {self.wire.density:.6g} ÷ 1000"

    @property
    def bar_mass(self) -> str:
        """How the bar's weight is worked."""
        return f"π ÷ 4 × {self.staff.thickness:.6g}² × {self.bar_one.usual:.6g} × {self.staff.density:.6g} ÷ 1000"

    def takes(self) -> Iterator[Take]:
        """Wire of both pieces, trimmings included."""
        yield take_wire(self.wire, self.ring_cut * self.count, "ring_cut")
        yield take_wire(self.staff, self.bar_cut * self.count, "bar_cut")

    def made(self) -> Iterator[Made]:
        """Ring and bar."""
        yield Made("ring, wire", "ring_cut", tool="ruler")
        yield Made("ring, inside", "rod_used", self.inside, None, "rod")
        yield Made("bar, wire", "bar_cut", tool="ruler")
        yield Made("bar, end to end", "bar_made", self.bar, None, "ruler")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The rod."""
        yield "rod", self.rod_used.usual

    def check(self) -> Iterator[Finding]:
        """The bar holds, and goes through beside what it hangs on."""
        if self.rod:
            yield from self.not_owned("rod", self.rod.usual, "rod")
        if self.bar and self.bar.usual < self.outside.usual - 1e-9:
            least = math.ceil(self.outside.usual * 2 - 1e-9) / 2
            yield Finding("bar", "is shorter than the ring is across, and slips through", f"{least:g} mm or more")
        field = "rod" if self.rod else "inside"
        least = math.ceil((2 * self.staff.thickness) * 2 - 1e-9) / 2
        if self.room.usual < self.staff.thickness - 1e-9:
            yield Finding(field, "leaves no room beside the bar for what it hangs on", f"{least:g} mm or more")
        if self.eye.usual and self.eye.usual < self.staff.thickness:
            most = math.ceil(self.staff.thickness * 2) / 2
            yield Finding(
                "eye", f"is less than the wire is thick ({self.staff.thickness:.2f} mm)", f"{most:g} mm or more"
            )

    def view(self, pen: Pen) -> float:
        """The ring hanging, and the bar across it as it closes."""
        low = views.loop(pen, 0, self.rod_used.usual, self.wire.thickness)
        half, d = (self.bar_made.usual - self.staff.thickness) / 2, self.staff.thickness
        pen.cover([[(-half, (low - d) / 2), (half, (low - d) / 2), (half, (low + d) / 2), (-half, (low + d) / 2)]])
        sketches.wire(pen, [(-half, low / 2), (half, low / 2)], d)
        return low - self.wire.thickness
