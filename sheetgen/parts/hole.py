"""Hole: a starter hole in unfired clay that fires to an opening or lets a ring's wire through."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.material import Clay, Wire
from sheetgen.base.spread import GRAIN
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.guard import at_least
from sheetgen.formulas.shrinkage import fired_size, wet_size
from sheetgen.formulas.stones import seat_wet
from sheetgen.parts import given
from sheetgen.parts.clay_piece import LEAST_EDGE
from sheetgen.parts.drawer import neighbours
from sheetgen.parts.kind import Finding, Part, figure

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Extent, Pen
    from sheetgen.base.spread import Spread


class Hole(Part):
    """A hole shrinks with the clay round it. For a wire it is sized at the largest shrinkage, so the wire passes.

    Give the opening, or the drill, or only the wire. Sized for wet clay: a hole drilled in dry clay comes out larger
    by what drying had taken already, which stock does not say. It may be opened with a bur after firing, never closed.
    """

    kind = "hole"

    clay = given.item(Clay, "the clay it is made in")
    opening = given.maybe_length("finished diameter", above=0)
    drill = given.maybe_length("the drill to use, when the tool decides", above=0)
    for_wire = given.maybe_item(Wire, "the wire of the ring that must pass")
    clearance = given.length("room round that wire", default="0.2 mm", at_least=0)
    edge = given.length("finished metal between the hole and the nearest edge", default="1.5 mm", above=0)
    width = given.maybe_length("finished width of the piece across the hole", above=0)
    drilled_in = given.neighbour("the flat part it is drilled in, whose template is to show it")
    beside = given.one_of(
        "the edge of that part, as its template lies, from whose middle it is measured",
        "top", "bottom", "left", "right", "left and right", "top and bottom",
    )  # fmt: skip
    thickness = given.maybe_length("thickness the clay is rolled to, for how far round the ring must reach", above=0)

    @property
    def by_wire(self) -> bool:
        """Whether the wire alone decides the hole."""
        return self.for_wire is not None and self.opening is None and self.drill is None

    @property
    def wire(self) -> float:
        """Thickness of the wire, mm."""
        return self.for_wire.thickness if self.for_wire else 0.0

    @property
    def wanted(self) -> float:
        """The drill that would fit exactly, mm."""
        if self.drill:
            return self.drill.usual
        if self.by_wire:
            return seat_wet(self.wire, self.clearance.usual, self.clay.shrinkage.high)
        if self.opening is None:
            raise CannotBe(
                "a hole wants its opening, its drill, or the wire that must pass", "opening: 1.5 mm", "opening"
            )
        return wet_size(self.opening, self.clay.shrinkage).usual

    @property
    def drill_worked(self) -> str:
        """How the drill is chosen: for a wire the smallest that is enough, for an opening the nearest."""
        if self.by_wire:
            wet = f"({self.wire:.6g} + {self.clearance.usual:.6g}) ÷ (1 − {self.clay.shrinkage.high:.6g})"
            return f"atleast({wet}, {neighbours(self.tools_over('drill', self.wanted), self.wanted, 2)})"
        owned = neighbours([] if self.drill else self.bench.owned("drill"), self.wanted)
        return f"nearest({self.wanted:.6g}, {owned})"

    @figure("Drill", "mm", "{drill_worked}")
    def drill_used(self) -> float:
        """The drill to make the hole with, before firing."""
        if self.drill:
            return self.drill.usual
        if self.by_wire:
            return self.tool_over("drill", self.wanted, "for wire")
        return self.tool("drill", self.wanted, "opening")

    @figure("Hole, fired", "mm", "{drill_used} × (1 − {clay.shrinkage})")
    def fired(self) -> Spread:
        """What the hole comes out at."""
        return fired_size(self.drill_used, self.clay.shrinkage)

    @figure("Middle of the hole from the edge, wet", "mm", "{edge} ÷ (1 − {clay.shrinkage}) + {drill_used} ÷ 2",
            rounding="tenth")  # fmt: skip
    def wet_middle(self) -> Spread:
        """Where to mark it."""
        return wet_size(self.edge, self.clay.shrinkage) + self.drill_used / 2

    @figure("Room round the wire at the least, fired", "mm", "{drill_used} × (1 − {clay.shrinkage.high}) − {wire}",
            when=lambda part: part.for_wire)  # fmt: skip
    def room(self) -> float:
        """How much wider than its wire the hole is if the clay shrinks most."""
        return self.drill_used.usual * (1 - self.clay.shrinkage.high) - self.wire

    @property
    def rim_fired(self) -> float:
        """Fired thickness at its most, mm."""
        return fired_size(self.thickness or 0, self.clay.thickness_shrinkage).high

    @figure("Inside of the ring at the least", "mm", "√({edge}² + {rim_fired}²)", rounding="bench up",
            when=lambda part: part.for_wire and part.thickness)  # fmt: skip
    def least_ring(self) -> float:
        """A smaller ring does not reach round the edge: the corner of the rim stands in its way."""
        return math.hypot(self.edge.usual, self.rim_fired)

    def made(self) -> Iterator[Made]:
        """Drill and place."""
        s = self.clay.shrinkage
        yield Made("hole", "drill_used", self.opening, lambda wet: fired_size(wet, s), "drill")
        yield Made("middle of the hole from the edge", "wet_middle", None, lambda wet: fired_size(wet, s), "calliper")

    def mark(self, pen: Pen, size: Callable[[str], Size], around: Extent) -> str:
        """The hole, its middle so far from the edge."""
        drill, deep = size("drill_used"), size("wet_middle")
        x, y = (around.left + around.right) / 2, (around.top + around.bottom) / 2
        spots = {
            "top": (x, around.top + deep), "bottom": (x, around.bottom - deep),
            "left": (around.left + deep, y), "right": (around.right - deep, y),
        }  # fmt: skip
        for edge in self.beside.split(" and "):
            pen.circle(spots[edge], drill)
            pen.cross(spots[edge])
        first = self.beside.split(" and ", maxsplit=1)[0]
        ends = {"top": (around.top, around.top + deep), "bottom": (around.bottom - deep, around.bottom)}
        if first in ends:
            pen.beside(around.right + 4, *ends[first], deep.words, to=x)
        else:
            side = (around.left, around.left + deep) if first == "left" else (around.right - deep, around.right)
            pen.across(around.bottom + 5, *side, deep.words, to=y)
        return f"Ø {drill.words}"

    def tools(self) -> Iterator[tuple[str, float]]:
        """The drill."""
        yield "drill", self.drill_used.usual

    def check(self) -> Iterator[Finding]:
        """One thing decides; the wire passes; metal is left beside the hole."""
        if self.opening is not None and self.drill is not None:
            yield Finding("drill", "is given beside the opening, and only one can decide", "take one of them out")
        if self.drill:
            yield from self.not_owned("drill", self.drill.usual, "drill")
        if self.for_wire and self.room.usual < -GRAIN:
            enough = self.tools_over("drill", self.wire / (1 - self.clay.shrinkage.high))
            keep = 1 if self.drill else 1 - self.clay.shrinkage.usual
            helped = at_least(enough[0] * keep) if enough else "a thinner wire: the drawer holds no larger drill"
            message = f"may fire to {self.fired.low:.2f} mm, and the wire is {self.wire:.2f} mm"
            yield Finding("drill" if self.drill else "opening", message, helped)
        if self.edge.usual < LEAST_EDGE - GRAIN:
            yield Finding(
                "edge", "leaves so little metal that a ring pulls out", f"{LEAST_EDGE:g} mm or more", "warning"
            )
        if self.width and self.fired.usual + 2 * self.edge.usual > self.width.usual + GRAIN:
            wider = at_least(self.fired.usual + 2 * self.edge.usual)
            yield Finding("width", "does not hold the hole with that edge on both sides", f"{wider}, or a smaller edge")
