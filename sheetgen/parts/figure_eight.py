"""Figure-eight link: wire led crosswise round two pegs, two loops on one line."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.material import Wire
from sheetgen.base.spread import Spread
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.gauges import wire_mass
from sheetgen.formulas.pegs import crossed_belt, inside_pitch
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Part, Take, figure

if TYPE_CHECKING:
    from collections.abc import Iterator


class FigureEight(Part):
    """A crossed belt, exact: handbooks' series is 1 to 2 % short where pegs stand as close as here.

    The two strands cross one on top of the other; hammering lengthens a link, and no figure here knows by how much.
    """

    kind = "figure-eight link"

    wire = given.item(Wire, "the wire")
    loop = given.length("inside diameter of the first loop: the first peg", above=0)
    second_loop = given.maybe_length("inside diameter of the second loop, if it differs", above=0)
    gap = given.maybe_length("clear gap between the pegs; or give the length", above=0)
    length = given.maybe_length("finished length over all; or give the gap", above=0)
    trim = given.length("wire added to be trimmed off", default="2 mm", at_least=0)

    @property
    def second(self) -> Spread:
        """Second peg, mm."""
        return self.second_loop or self.loop

    @property
    def gap_worked(self) -> str:
        """How the gap is worked."""
        if self.gap is not None:
            return f"{self.gap.usual:.6g}"
        long = self.length.usual if self.length else 0
        return f"{long:.6g} − 2 × {self.wire.thickness:.6g} − {self.loop.usual:.6g} − {self.second.usual:.6g}"

    @figure("Gap between the pegs", "mm", "{gap_worked}")
    def clear(self) -> Spread:
        """Clear gap between the pegs."""
        if (self.gap is None) == (self.length is None):
            raise CannotBe("a link wants its gap or its length, one of the two", "give one", "gap")
        found = self.gap
        if self.length is not None:
            found = self.length - 2 * self.wire.thickness - self.loop - self.second
        if found is None or found.usual < self.wire.thickness - 1e-9:
            wire = self.wire.thickness
            message = f"there is no room for the wire ({wire:.2f} mm) to cross between the pegs"
            if self.gap is not None:
                raise CannotBe(message, f"{math.ceil(wire * 10) / 10:g} mm or more", "gap")
            least = 3 * wire + self.loop.usual + self.second.usual
            raise CannotBe(message, f"{math.ceil(least * 10) / 10:g} mm or more", "length")
        return found

    @property
    def radii(self) -> Spread:
        """Radii of the wire's middle line round both pegs, added, mm."""
        return (self.loop + self.second) / 2 + self.wire.thickness

    @figure("Peg centres apart", "mm", "{clear} + ({loop} + {second}) ÷ 2")
    def centres(self) -> Spread:
        """Centre to centre on the jig."""
        return self.clear + (self.loop + self.second) / 2

    @figure(
        "Wire in one link", "mm",
        "2 × √({centres}² − {radii}²) + {radii} × (π + 2 × asin({radii} ÷ {centres}))",
        rounding="tenth",
    )  # fmt: skip
    def one(self) -> Spread:
        """Along the middle of the wire."""
        return crossed_belt(self.loop, self.second, self.clear, self.wire.thickness)

    @figure("Wire to cut for one", "mm", "{one} + {trim}", rounding="bench up")
    def cut(self) -> Spread:
        """With what is trimmed off."""
        return self.one + self.trim

    @figure("Inside, loop to loop", "mm", "{clear} + {loop} + {second}")
    def pitch(self) -> Spread:
        """What one link adds to a chain pulled taut."""
        return inside_pitch(self.loop, self.second, self.clear)

    @figure("Length over all", "mm", "{pitch} + 2 × {wire.thickness}", rounding="tenth")
    def outside(self) -> Spread:
        """Outside length of one link."""
        return self.pitch + 2 * self.wire.thickness

    @figure("Wire for all", "mm", "{count} × {cut}", rounding="length up")
    def wire_length(self) -> Spread:
        """All links, with what is trimmed off."""
        return self.count * self.cut

    @figure("Weight, each", "g", "π ÷ 4 × {wire.thickness}² × {one} × {wire.density} ÷ 1000")
    def mass(self) -> Spread:
        """One link, trimmed."""
        return wire_mass(self.wire.density, self.wire.thickness, self.one)

    def takes(self) -> Iterator[Take]:
        """Wire, trimmings included."""
        yield Take(self.wire, self.wire_length, "wire_length")

    def made(self) -> Iterator[Made]:
        """Pegs, gap and wire."""
        yield Made("wire for one", "cut", tool="ruler")
        yield Made("pegs, centre to centre", "centres", tool="jig")
        yield Made("length over all", "outside", self.length, None, "as bent, not hammered")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The pegs."""
        yield "peg", self.loop.usual
        if self.second_loop:
            yield "peg", self.second_loop.usual

    def check(self) -> Iterator[Finding]:
        """A loop wants to be wider than its wire."""
        for field, loop in (("loop", self.loop), ("second loop", self.second_loop)):
            if loop and loop.usual < self.wire.thickness:
                least = math.ceil(self.wire.thickness * 2) / 2
                yield Finding(field, f"is less than the wire is thick ({self.wire.thickness:.2f} mm)", f"{least:g} mm")
