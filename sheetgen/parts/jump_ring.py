"""Jump ring: wire wound on a rod, round or oval, and cut into rings."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.material import Wire
from sheetgen.base.spread import Spread, spread
from sheetgen.formulas.gauges import wire_mass
from sheetgen.formulas.loops import closed_inside, oval_wire_ellipse, oval_wire_stadium, ring_wire
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Part, Take, figure

if TYPE_CHECKING:
    from collections.abc import Iterator


class JumpRing(Part):
    """Wire round any convex rod is the rod's perimeter + π × wire, along its middle (Steiner's formula).

    The inside is that of the rod; sprung wire opens by `springback`, which is measured and not worked.
    """

    kind = "jump ring"

    wire = given.item(Wire, "the wire")
    shape = given.one_of("round, oval with straight sides, or oval as an ellipse", "round", "oval", "ellipse")
    inside = given.length("inside diameter; of an oval, its inside length", above=0)
    inside_width = given.maybe_length("inside width of an oval", above=0)
    springback = given.ratio("how much the inside opens when the coil leaves the rod", default="0 %", at_most=0.3)
    kerf = given.length("width of the cut; nothing for flush cutters", default="0 mm", at_least=0)
    tails = given.length("wire left over at the ends of the coil, together", default="20 mm", at_least=0)

    @property
    def narrow(self) -> Spread:
        """Inside width, mm: of a round ring its inside."""
        return self.inside_width or self.inside

    @property
    def one_worked(self) -> str:
        """How the wire of one ring is worked."""
        a, b = self.inside.usual, self.narrow.usual
        wire = f"{self.wire.thickness:.6g}"
        if self.shape == "round":
            return f"π × ({a:.6g} + {wire})"
        if self.shape == "oval":
            return f"2 × ({a:.6g} − {b:.6g}) + π × ({b:.6g} + {wire})"
        h = f"({a:.6g} − {b:.6g})² ÷ ({a:.6g} + {b:.6g})²"
        # Ramanujan's second form, which a pencil can follow; the figure itself is worked exactly.
        return f"π × ({a:.6g} + {b:.6g}) ÷ 2 × (1 + 3 × {h} ÷ (10 + √(4 − 3 × {h}))) + π × {wire}"

    @figure("Wire for one ring", "mm", "{one_worked}", rounding="tenth")
    def one(self) -> Spread:
        """Along the middle of the wire."""
        if self.shape == "round":
            return ring_wire(self.inside, self.wire.thickness)
        shape = oval_wire_stadium if self.shape == "oval" else oval_wire_ellipse
        return shape(self.inside, self.narrow, self.wire.thickness)

    @figure("Rod", "mm", "{narrow} ÷ (1 + {springback})", when=lambda part: part.shape == "round")
    def rod(self) -> Spread:
        """Rod to wind a round coil on."""
        return self.inside / (1 + self.springback)

    @figure("Outside", "mm", "{inside} + 2 × {wire.thickness}")
    def outside(self) -> Spread:
        """Outside diameter, or outside length of an oval."""
        return self.inside + 2 * self.wire.thickness

    @figure(
        "Inside when closed", "mm", "{inside} − {kerf} ÷ π",
        when=lambda part: part.shape == "round" and part.kerf.usual > 0,
    )  # fmt: skip
    def closed(self) -> Spread:
        """A sawn ring closed tight loses the cut."""
        return closed_inside(self.inside, self.kerf)

    @figure("Inside to wire", "", "{narrow} ÷ {wire.thickness}")
    def aspect(self) -> Spread:
        """Inside width over wire thickness: what weavers of rings go by."""
        return self.narrow / self.wire.thickness

    @figure("Wire for all", "mm", "{count} × {one} + {tails}", rounding="length up")
    def wire_length(self) -> Spread:
        """All rings and the ends of the coil."""
        return self.count * self.one + self.tails

    @figure("Weight, each", "g", "π ÷ 4 × {wire.thickness}² × ({one} − {kerf}) × {wire.density} ÷ 1000")
    def mass(self) -> Spread:
        """One ring as cut."""
        return wire_mass(self.wire.density, self.wire.thickness, self.one - self.kerf)

    def takes(self) -> Iterator[Take]:
        """Wire, the coil's ends included."""
        yield Take(self.wire, self.wire_length, "wire_length")

    def made(self) -> Iterator[Made]:
        """Rings by their inside."""
        if self.shape == "round":
            yield Made("inside", "rod", self.inside, lambda rod: spread(rod) * (1 + self.springback), "rod")
        else:
            yield Made("wire for one ring", "one", tool="oval rod")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The rod."""
        if self.shape == "round":
            yield "rod", self.rod.usual

    def check(self) -> Iterator[Finding]:
        """An oval has two sides, and the wire goes round the rod."""
        if self.shape == "round" and self.inside_width:
            yield Finding("inside width", "a round ring has none", "write shape: oval, or take it out")
        if self.shape != "round" and not self.inside_width:
            yield Finding("shape", "an oval wants its inside width too", "inside width: 4 mm")
        if self.inside_width and self.inside_width.usual > self.inside.usual:
            yield Finding("inside width", "is more than the inside length", f"{self.inside.usual:g} mm or less")
        if self.narrow.usual < self.wire.thickness:
            least = math.ceil(self.wire.thickness * 2) / 2
            field = "inside width" if self.inside_width else "inside"
            yield Finding(field, f"is less than the wire is thick ({self.wire.thickness:.2f} mm)", f"{least:g} mm or more")
        if self.kerf.usual >= self.one.usual / 4:
            yield Finding("kerf", "takes a quarter of the ring or more", "0.3 mm to 0.5 mm is a saw blade")
