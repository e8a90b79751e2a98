"""Strung wire: stringing wire or thread cut for strands that are closed with crimps."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.material import Bead, Fibre
from sheetgen.base.material import Finding as Bought
from sheetgen.facts.allowances import STRINGING_TAIL
from sheetgen.formulas.beads import thread_to_cut
from sheetgen.formulas.buying import pieces_from_stock
from sheetgen.formulas.packing import bundle_diameter
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Part, Take, figure

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.spread import Spread

PASSES = 2  # the wire goes through a crimp, round the clasp and back through it


class StrungWire(Part):
    """Finished length and a tail at each end, which goes round the clasp, back through the crimp and into the beads.

    75 mm an end is common practice. Beads do not lie end to end on a curve: leave a bead's play before crimping.
    """

    kind = "strung wire"

    thread = given.item(Fibre, "the stringing wire or thread")
    length = given.length("finished length of the strand, over the beads", above=0)
    strands = given.count("strands side by side in one piece", default="1", at_most=100)
    tail = given.length("wire beyond the beads at each end", default=f"{STRINGING_TAIL / 2:g} mm", at_least=0)
    crimp = given.maybe_item(Bought, "the crimp, by its inside")
    crimps = given.count("crimps on each strand", default="2", at_least=0, at_most=20)
    bead = given.maybe_item(Bead, "the bead with the smallest hole, to see that it takes wire and tail")

    @figure("Wire to cut for one strand", "mm", "{length} + 2 × {tail}", rounding="bench up")
    def cut(self) -> Spread:
        """With both tails."""
        return thread_to_cut(self.length, 2 * self.tail)

    @figure("Wire for all", "mm", "{count} × {strands} × {cut}", rounding="length up")
    def wire_length(self) -> Spread:
        """All strands of all pieces."""
        return self.count * self.strands * self.cut

    @property
    def as_cut(self) -> float:
        """The wire of one strand as it is cut, mm."""
        return self.bench.as_cut(self.cut.high)

    @figure(
        "Strands from one spool", "", "down({thread.pack} ÷ {as_cut})",
        rounding="whole", when=lambda part: part.thread.pack and part.thread.unit == "mm",
    )  # fmt: skip
    def per_spool(self) -> float:
        """How many one pack gives."""
        return pieces_from_stock.pure(self.thread.pack or 0, self.bench.as_cut(self.cut.high), 0)

    @figure("Crimps for all", "", "{count} × {strands} × {crimps}", rounding="whole", when=lambda part: part.crimp)
    def crimps_all(self) -> Spread:
        """On all strands of all pieces."""
        return self.count * self.strands * self.crimps

    @figure("Two wires in the crimp", "mm", "2 × {thread.thickness}", when=lambda part: part.crimp)
    def doubled(self) -> float:
        """The wire and its tail, side by side."""
        return bundle_diameter(PASSES, self.thread.thickness, 1)

    def takes(self) -> Iterator[Take]:
        """Wire with its tails, and crimps."""
        yield Take(self.thread, self.wire_length, "wire_length")
        if self.crimp:
            yield Take(self.crimp, self.crimps_all, "crimps_all")

    def made(self) -> Iterator[Made]:
        """Wire to cut."""
        yield Made("wire for one strand", "cut", tool="ruler")

    def check(self) -> Iterator[Finding]:
        """Wire and tail go through the crimp, and through the bead beside it."""
        doubled = 2 * self.thread.thickness
        if self.crimp and self.crimp.inside is not None and self.crimp.inside < doubled - 1e-9:
            message = f"is {self.crimp.inside:g} mm inside, too narrow for wire and tail"
            yield Finding("crimp", message, f"{doubled:g} mm or more, or a thinner wire")
        hole = self.bead.hole if self.bead else None
        if hole is not None and hole < self.thread.thickness - 1e-9:
            yield Finding("bead", "does not take the wire", f"a hole of {self.thread.thickness:g} mm or more")
        elif hole is not None and hole < doubled - 1e-9:
            helped = f"a hole of {doubled:g} mm or more, or cut the tail at the crimp"
            yield Finding("bead", "does not take the tail beside the wire", helped, "warning")
        if self.crimp and self.tail.usual < 10:  # noqa: PLR2004 - mm; shorter than that cannot be held or hidden
            yield Finding(
                "tail", "is too short to go back through a crimp and be held", "50 mm to 75 mm is usual", "warning"
            )
