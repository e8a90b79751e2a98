"""Chain run: links and rings to a finished length: how many, and how long it really comes out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base import forming, views
from sheetgen.base.figure import Made
from sheetgen.base.like import said, worded
from sheetgen.base.material import Finding as Bought
from sheetgen.base.spread import Spread, floor, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.chains import chain_inside, links_for, links_in, rings_between
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, figure
from sheetgen.parts.strand import ROUND, Clasped

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen


def _ringed(part: ChainRun) -> bool:
    return part.ring.usual > 0


class ChainRun(Clasped):
    """Taut, touching inner walls coincide, so inside lengths add up: links, rings between them, rings at the ends, clasp.

    A chain that hangs loose, or whose links are hammered, is another length: how much is not known here.
    """

    kind = "chain run"

    length = given.length("finished length, clasp counted in", above=0)
    measured = given.one_of("laid flat over all, or inside of the end links, as round a wrist", "over all", "inside")
    comes = given.one_of("whole links make it a little off: to which side", "no shorter", "no longer", "nearest")
    link = given.length("inside length of one link, such as links.pitch", above=0)
    ring = given.length(
        "inside length of the ring between two links; 0 where they hook into each other", default="0 mm", at_least=0
    )
    wire = given.length("thickness of the end links' wire, such as links.wire.thickness", above=0)
    ring_wire = given.length("thickness of the rings' wire", default="0 mm", at_least=0)
    link_width = given.maybe_length("inside width of a link, for the drawings, such as links.peg_used", above=0)
    end_rings = given.count("rings at the ends, for clasp or drop", default="0", at_least=0, at_most=20)
    clasp = given.maybe_item(Bought, "the clasp; its length in stock is what it adds when closed")

    @figure("Clasp and end rings", "mm", "{clasp_length} + {end_rings} × {ring}")
    def fittings(self) -> Spread:
        """What stands at the ends beside the links and the rings between them."""
        return self.clasp_length + self.end_rings * self.ring

    @property
    def ends(self) -> float:
        """What the end links' wire adds outside, mm."""
        return 2 * self.wire.usual if self.measured == "over all" else 0.0

    @figure("Room for links", "mm", "{length} − {fittings} − {ends}")
    def room(self) -> Spread:
        """Length left for links and the rings between them."""
        left = self.length - self.fittings - self.ends
        if left.usual <= 0:
            least = (self.fittings + self.ends + self.link).usual
            raise CannotBe("clasp and end rings leave no room for a link", f"{least:.1f} mm or more", "length")
        return left

    @property
    def links_worked(self) -> str:
        """How the links are worked."""
        whole = f"({self.room.usual:.6g} + {self.ring.usual:.6g}) ÷ ({self.link.usual:.6g} + {self.ring.usual:.6g})"
        turn = {"no shorter": f"up({whole})", "no longer": f"down({whole})", "nearest": f"max(1, down({whole} + 0.5))"}
        return turn[self.comes]

    @figure("Links", "", "{links_worked}", rounding="whole")
    def links(self) -> float:
        """How many links."""
        sizes = (self.room.usual, self.link.usual, self.ring.usual)
        if self.comes == "no shorter":
            return links_for(*sizes)
        if self.comes == "no longer":
            return links_in(*sizes)
        return max(1, floor((sizes[0] + sizes[2]) / (sizes[1] + sizes[2]) + 0.5))

    @figure("Rings", "", "{links} − 1 + {end_rings}", rounding="whole", when=_ringed)
    def rings(self) -> Spread:
        """Between the links, and at the ends."""
        return rings_between(self.links, self.end_rings)

    @figure("Inside, end to end", "mm", "{links} × {link} + ({links} − 1) × {ring} + {fittings}", rounding="tenth")
    def inside(self) -> Spread:
        """Taut, inside the end links, the clasp counted in: round a wrist or neck when it is closed."""
        return chain_inside(self.links, self.link, self.ring) + self.fittings

    @figure("Length over all", "mm", "{inside} + 2 × {wire}", rounding="tenth")
    def over_all(self) -> Spread:
        """Taut and laid flat, the clasp counted in."""
        return self.inside + 2 * self.wire

    @property
    def found(self) -> Spread:
        """The length that was asked for, as it comes out, mm."""
        return self.over_all if self.measured == "over all" else self.inside

    @figure("Longer than asked", "mm", "{found} − {length}", rounding="tenth")
    def over(self) -> Spread:
        """How much it is off, shorter with a minus."""
        return spread(self.found.usual - self.length.usual)

    @figure("One link more or less", "mm", "{link} + {ring}", rounding="tenth")
    def unit(self) -> Spread:
        """What a link with its ring adds or takes."""
        return self.link + self.ring

    def made(self) -> Iterator[Made]:
        """The length to measure: as whole links make it, not as it was asked for."""
        name = "over_all" if self.measured == "over all" else "inside"
        yield Made(f"{self.measured}, taut", name, None, None, "ruler")

    def check(self) -> Iterator[Finding]:
        """Two links' wires go into one ring, side by side."""
        least = 2 * self.wire.usual
        if _ringed(self) and self.ring.usual < least - 1e-9:
            yield Finding("ring", "does not take the wires of two links", f"{least:.1f} mm or more inside")
        if self.ring_wire.usual and not _ringed(self):
            yield Finding("ring wire", "is given, and there are no rings", "give ring: their inside length")
        if self.end_rings.usual and not _ringed(self):
            yield Finding("end rings", "are given, and their size is not", "give ring: their inside length")
        if self.ring_wire.usual + self.wire.usual > self.link.usual:
            most = self.link.usual - self.wire.usual
            yield Finding("ring wire", "does not go through a link beside its wire", f"{max(most, 0.1):.1f} mm or less")

    @property
    def across(self) -> float:
        """Inside width a link is drawn with, mm: where it is not given, slim, and so that a ring goes through."""
        if self.link_width:
            return self.link_width.usual
        return max(0.45 * self.link.usual, 2 * (self.wire.usual + self.ring_wire.usual))

    def view(self, pen: Pen) -> float:
        """The chain hanging straight; of one that goes round a wrist or neck, closed to a round."""
        link = (self.link.usual, self.across, self.wire.usual)
        ring = (self.ring.usual, self.ring.usual, self.ring_wire.usual or self.wire.usual)
        rings = _ringed(self)
        first, last = (int(self.end_rings.usual) + 1) // 2, int(self.end_rings.usual) // 2
        between = [link, *[ring] * rings] * int(self.links.usual)
        run = [*[ring] * (first * rings), *between[: len(between) - rings], *[ring] * (last * rings)]
        if self.inside.usual >= ROUND:
            return views.chain_round(pen, run, self.inside.usual)
        return views.chain(pen, run)

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The chain taut: clasp, end rings, first links and last, what repeats."""
        unit, links, ends = size("unit"), int(self.links.usual), int(self.end_rings.usual)
        link, ring = (worded(x.usual, unit, "fine") for x in (self.link, self.ring))
        wires = (self.wire.usual, self.ring_wire.usual or self.wire.usual)
        sides = ((ends + 1) // 2, ends // 2)
        run = forming.Chain(self.link.usual, self.across, self.ring.usual, *wires, links, sides, self.clasp_length)
        name = "over_all" if self.measured == "over all" else "inside"
        told = f"{links} links" + (f", {size('rings').words} rings" if _ringed(self) else "")
        words, whole = (link, f"{unit.words} repeats"), f"{size(name).words} {self.measured}"
        forming.captioned(pen, lambda on: forming.chain(on, run, words, k), [told, whole])
        between = f" and rings of {ring} mm between them" if _ringed(self) else " hooked into each other"
        closed = f", {'a clasp, ' * bool(self.clasp)}end rings: {ends}" if self.clasp or ends else ""
        return said(
            unit, f"A chain of {told}: links of {link} mm inside{between}{closed}, {unit.words} mm to a repeat, {whole}"
        )
