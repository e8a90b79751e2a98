"""Jump ring: wire wound close on a rod, round or oval, and cut into rings."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base import forming, sketches
from sheetgen.base.figure import Made
from sheetgen.base.like import said, worded
from sheetgen.base.material import Wire
from sheetgen.base.spread import Spread, floor, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.buying import pieces_from_stock
from sheetgen.formulas.gauges import wire_mass
from sheetgen.formulas.loops import (
    aspect_ratio,
    closed_inside,
    coil_for_rings,
    former_before_springback,
    oval_wire_ellipse,
    oval_wire_stadium,
    ring_outside,
    ring_wire,
    rings_from_coil,
)
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Take, figure
from sheetgen.parts.wire_piece import OnRod, from_drawer, spool, take_wire, too_tight

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen


def _round(part: JumpRing) -> bool:
    return part.shape == "round"


class JumpRing(OnRod):
    """Wire round any convex rod is the rod's perimeter + π × wire, along its middle (Steiner's formula).

    The inside is that of the rod; sprung wire opens by `springback`, which is measured and not worked. The slope of a
    close coil adds a few hundredths of a millimetre to a ring, which is left out.
    """

    kind = "jump ring"

    wire = given.item(Wire, "the wire")
    shape = given.one_of("round, oval with straight sides, or oval as an ellipse", "round", "oval", "ellipse")
    inside = given.maybe_length(
        "inside diameter, or an oval's inside length; of a round ring, or give the rod", above=0
    )
    inside_width = given.maybe_length("inside width of an oval", above=0)
    rod = given.maybe_length("the rod to wind a round coil on, when the tool decides", above=0)
    springback = given.ratio("how much the inside opens when the coil leaves the rod", default="0 %", at_most=0.3)
    kerf = given.length("width of the cut; nothing for flush cutters", default="0 mm", at_least=0)
    coil = given.maybe_length("length of one close coil that the rod takes, if they are wound in several", above=0)
    tails = given.length("wire left over at the ends of a coil, together", default="20 mm", at_least=0)

    @figure(
        "Rod wanted", "mm", "{inside} ÷ (1 + {springback})", when=lambda part: _round(part) and part.inside is not None
    )
    def rod_wanted(self) -> Spread:
        """The rod that would fit exactly."""
        return former_before_springback(self.inside or 0, self.springback)

    @figure("Rod", "mm", "{rod_worked}", when=_round)
    def rod_used(self) -> float:
        """Rod to wind a round coil on."""
        return from_drawer(self, "rod", self.wanted, self.rod, "inside")

    @property
    def inner_worked(self) -> str:
        """How the inside is worked."""
        return f"{self.rod_used.usual:.6g} × (1 + {self.springback.usual:.6g})" if _round(self) else f"{self.long:.6g}"

    @property
    def long(self) -> float:
        """Inside length of an oval, mm."""
        if self.inside is None:
            raise CannotBe("an oval wants its inside length and its inside width", "inside: 8 mm", "inside")
        return self.inside.usual

    @figure("Inside that comes out", "mm", "{inner_worked}")
    def inner(self) -> Spread:
        """Inside diameter off the rod; of an oval its inside length."""
        return self.rod_used * (1 + self.springback) if _round(self) else self.inside or spread(self.long)

    @property
    def narrow(self) -> Spread:
        """Inside width, mm: of a round ring its inside."""
        if _round(self):
            return self.inner
        if self.inside_width is None:
            raise CannotBe("an oval wants its inside width too", "inside width: 4 mm", "shape")
        return self.inside_width

    @figure("Inside width", "mm", "{narrow}", when=lambda part: not _round(part))
    def inner_width(self) -> Spread:
        """Across an oval, from wall to wall."""
        return self.narrow

    @property
    def one_worked(self) -> str:
        """How the wire of one ring is worked."""
        a, b = self.inner.usual, self.narrow.usual
        wire = f"{self.wire.thickness:.6g}"
        if _round(self):
            return f"π × ({a:.6g} + {wire})"
        if self.shape == "oval":
            return f"2 × ({a:.6g} − {b:.6g}) + π × ({b:.6g} + {wire})"
        h = f"({a:.6g} − {b:.6g})² ÷ ({a:.6g} + {b:.6g})²"
        # Ramanujan's second form, which a pencil can follow; the figure itself is worked exactly.
        return f"π × ({a:.6g} + {b:.6g}) ÷ 2 × (1 + 3 × {h} ÷ (10 + √(4 − 3 × {h}))) + π × {wire}"

    @figure("Wire for one ring", "mm", "{one_worked}", rounding="tenth")
    def one(self) -> Spread:
        """Along the middle of the wire."""
        if _round(self):
            return ring_wire(self.inner, self.wire.thickness)
        shape = oval_wire_stadium if self.shape == "oval" else oval_wire_ellipse
        return shape(self.inner, self.narrow, self.wire.thickness)

    @figure("Outside", "mm", "{inner} + 2 × {wire.thickness}")
    def outside(self) -> Spread:
        """Outside diameter, or outside length of an oval."""
        return ring_outside(self.inner, self.wire.thickness)

    @figure("Inside when closed", "mm", "{inner} − {kerf} ÷ π", when=lambda part: _round(part) and part.kerf.usual > 0)
    def closed(self) -> Spread:
        """A sawn ring closed tight loses the cut."""
        return closed_inside(self.inner, self.kerf)

    @figure("Inside to wire", "", "{narrow} ÷ {wire.thickness}")
    def aspect(self) -> Spread:
        """Inside width over wire thickness: what weavers of rings go by."""
        return aspect_ratio(self.narrow, self.wire.thickness)

    @figure("Rings from one coil", "", "down({coil} ÷ {wire.thickness})", rounding="whole", when=lambda p: p.coil)
    def per_coil(self) -> float:
        """Whole turns of a close coil as long as the rod takes."""
        rings = rings_from_coil(self.coil.usual if self.coil else 0, self.wire.thickness)
        if rings < 1:
            message = f"a coil of {self.coil.usual if self.coil else 0:g} mm is less than one turn of this wire"
            raise CannotBe(message, f"{math.ceil(self.wire.thickness * 10) / 10:g} mm or more", "coil")
        return rings

    @figure("Coils", "", "up({count} ÷ {per_coil})", rounding="whole", when=lambda p: p.coil)
    def coils(self) -> float:
        """How many coils to wind."""
        return math.ceil(self.count.usual / self.per_coil.usual - 1e-9)

    @figure("Coil length", "mm", "{count} × {wire.thickness}", rounding="bench up", when=lambda part: not part.coil)
    def coil_length(self) -> Spread:
        """All the rings in one close coil."""
        return coil_for_rings(self.count, self.wire.thickness)

    @property
    def wound(self) -> Spread:
        """How many coils, each with its two ends."""
        return self.coils if self.coil else spread(1)

    @figure("Wire for all", "mm", "{count} × {one} + {wound} × {tails}", rounding="length up")
    def wire_length(self) -> Spread:
        """All rings and the ends of the coils."""
        return self.count * self.one + self.wound * self.tails

    @figure(
        "Rings from one spool", "", "{spool_worked}",
        rounding="whole", when=lambda part: spool(part.wire) > part.tails.usual,
    )  # fmt: skip
    def per_spool(self) -> Spread:
        """How many one pack of the wire gives: in one coil, or in coils as long as the rod takes, each with its ends."""
        long, whole = spool(self.wire), 0.0
        most = self.per_coil.usual if self.coil else math.inf
        if self.coil:
            coils = floor(long / self.coil_wire)
            whole, long = coils * most, long - coils * self.coil_wire
        rest = pieces_from_stock(max(0.0, long - self.tails.usual), self.one.usual, 0)
        return spread(whole + min(most, rest))

    @property
    def coil_wire(self) -> float:
        """Wire in one full coil with its ends, mm."""
        return self.per_coil.usual * self.one.usual + self.tails.usual

    @property
    def spool_worked(self) -> str:
        """How the rings from one spool are worked."""
        long, one, tails = spool(self.wire), f"{self.one.usual:.6g}", f"{self.tails.usual:.6g}"
        if not self.coil:
            return f"down(({long:.6g} − {tails}) ÷ {one})"
        coils = floor(long / self.coil_wire)
        left = f"({long:.6g} − {coils} × ({self.per_coil.usual:g} × {one} + {tails}) − {tails}) ÷ {one}"
        return f"{coils} × {self.per_coil.usual:g} + min({self.per_coil.usual:g}, max(0, down({left})))"

    @figure("Weight, each", "g", "π ÷ 4 × {wire.thickness}² × ({one} − {kerf}) × {wire.density} ÷ 1000")
    def mass(self) -> Spread:
        """One ring as cut."""
        return wire_mass(self.wire.density, self.wire.thickness, self.one - self.kerf)

    def takes(self) -> Iterator[Take]:
        """Wire, the coils' ends included."""
        yield take_wire(self.wire, self.wire_length, "wire_length")

    def made(self) -> Iterator[Made]:
        """Rings by their inside."""
        off: Callable[[float], Spread] = lambda rod: rod * (1 + self.springback) - self.kerf / math.pi  # noqa: E731
        if _round(self):
            yield Made("inside", "rod_used", self.inside, off, "rod")
        else:
            yield Made("wire for one ring", "one", tool="ruler")
            yield Made("inside, long", "inner", tool="oval rod, or calliper")
            yield Made("inside, wide", "inner_width", tool="oval rod, or calliper")

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The ring with its inside; an oval with its seam on a long side."""
        d, inside = self.wire.thickness, size("inner")
        wide, wire = (worded(mm, inside, "fine") for mm in (self.narrow.usual, d))
        if _round(self):
            rod, ring = size("rod_used").words, (self.inner.usual, d, f"Ø {inside.words}", k)
            forming.captioned(pen, lambda on: sketches.round_ring(on, *ring), [f"wire {wire}", f"rod {rod}"])
            return said(inside, f"A round ring, inside {inside.words} mm, wire {wire} mm, wound on a rod of {rod} mm")
        sizes = (self.inner.usual, self.narrow.usual, d)
        words, straight = (inside.words, wide), self.shape == "oval"
        forming.captioned(pen, lambda on: sketches.oval(on, *sizes, words, k, straight=straight), [f"wire {wire}"])
        oval = f"inside {inside.words} × {wide} mm, wire {wire} mm"
        return said(inside, f"An oval ring, {oval}, its seam in the middle of a long side")

    def view(self, pen: Pen) -> float:
        """The ring hanging; the next part hangs on its wire at the bottom."""
        d, long, wide = self.wire.thickness, self.inner.usual, self.narrow.usual
        path, middle = sketches.oval_path(long, wide, d, straight=self.shape == "oval"), (long + 2 * d) / 2
        sketches.wire(pen, [(-y, middle + x) for x, y in path], d, closed=True)
        return long + d

    def tools(self) -> Iterator[tuple[str, float]]:
        """The rod."""
        if _round(self):
            yield "rod", self.rod_used.usual

    def check(self) -> Iterator[Finding]:
        """An oval has two sides, and the wire goes round the rod."""
        if _round(self) and self.inside_width:
            yield Finding("inside width", "a round ring has none", "write shape: oval, or take it out")
        if not _round(self) and self.rod:
            yield Finding("rod", "makes no oval", "write shape: round, or take it out and give both inside sizes")
        if self.rod and _round(self):
            yield from self.not_owned("rod", self.rod.usual, "rod")
        if self.inside and self.inside_width and self.inside_width.usual > self.inside.usual:
            yield Finding("inside width", "is more than the inside length", f"{self.inside.usual:g} mm or less")
        field = "rod" if self.rod else "inside width" if self.inside_width else "inside"
        yield from too_tight(self.wire, {field: self.narrow})
        if self.kerf.usual >= self.one.usual / 4:
            yield Finding("kerf", "takes a quarter of the ring or more", "0.3 mm to 0.5 mm is a saw blade")
