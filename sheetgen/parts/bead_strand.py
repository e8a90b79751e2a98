"""Bead strand: beads on a thread to a finished length, with or without knots between them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.material import Bead, Fibre
from sheetgen.base.material import Finding as Bought
from sheetgen.base.spread import Spread, ceil
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.allowances import STRINGING_TAIL
from sheetgen.formulas.beads import beads_in, beads_to_buy, knotted_count, strand_length, thread_to_cut
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Take, figure
from sheetgen.parts.strand import Strand

if TYPE_CHECKING:
    from collections.abc import Iterator


def _knotted(part: BeadStrand) -> bool:
    return part.knot.usual > 0


class BeadStrand(Strand):
    """Whole beads that fit the length (supplier's beads-per-inch chart), a knot before, between and after if knotted.

    Beads vary, so the length is printed as a range, and the list has enough of the smallest. How long a knot is, is
    measured on a trial knot and not worked; knots draw tighter with wear.
    """

    kind = "bead strand"

    bead = given.item(Bead, "the bead")
    length = given.length("finished length, clasp counted in", above=0)
    clasp = given.maybe_item(Bought, "the clasp; its length in stock is what it adds when closed")
    knot = given.length("length of one knot; 0 for none", default="0 mm", at_least=0)
    knot_takes = given.maybe_length("how much one knot shortens the thread, measured on a trial", above=0)
    thread = given.maybe_item(Fibre, "the thread")
    tails = given.length("thread beyond the strand, both ends together", default=f"{STRINGING_TAIL:g} mm", at_least=0)

    @figure("Room for beads", "mm", "{length} − {clasp_length}")
    def room(self) -> Spread:
        """Length without the clasp."""
        left = self.length - self.clasp_length
        least = self.bead.length.usual + 2 * self.knot.usual
        if left.usual < least - 1e-9:
            helped = f"{ceil((least + self.clasp_length) * 10) / 10:g} mm or more"
            raise CannotBe("not even one bead fits this length", helped, "length")
        return left

    @property
    def beads_worked(self) -> str:
        """How the beads are worked."""
        room, bead, knot = (f"{n:.6g}" for n in (self.room.usual, self.bead.length.usual, self.knot.usual))
        return f"down(({room} − {knot}) ÷ ({bead} + {knot}))" if _knotted(self) else f"down({room} ÷ {bead})"

    @figure("Beads", "", "{beads_worked}", rounding="whole")
    def beads(self) -> float:
        """Beads of the usual size on one strand."""
        if _knotted(self):
            return knotted_count(self.room.usual, self.bead.length.usual, self.knot.usual)
        return beads_in(self.room.usual, self.bead.length.usual)

    @figure("Knots", "", "{beads} + 1", rounding="whole", when=_knotted)
    def knots(self) -> Spread:
        """One before, between and after all beads."""
        return self.beads + 1

    @property
    def knotted(self) -> Spread | float:
        """Number of knots, none when it is not knotted."""
        return self.knots if _knotted(self) else 0

    @figure("Length that comes out", "mm", "{beads} × {bead.length} + {knotted} × {knot} + {clasp_length}")
    def comes_out(self) -> Spread:
        """Over the beads as they vary, clasp counted in."""
        return strand_length(self.beads, self.bead.length, self.knotted, self.knot) + self.clasp_length

    @figure("Shorter than asked, longer with a minus", "mm", "{length} − {comes_out}")
    def rest(self) -> Spread:
        """What is left to fill with a smaller bead, if it matters; over the beads as they vary."""
        return self.length - self.comes_out

    @property
    def smallest(self) -> float:
        """Smallest bead of the size, with its knot, mm."""
        return self.bead.length.low + self.knot.usual

    @figure("Beads to have, for all", "", "{count} × {have_worked}", rounding="whole")
    def beads_have(self) -> Spread:
        """Enough if every bead were the smallest of its size."""
        knot = self.knot.usual  # the one more knot than beads leaves that much less room
        return self.count * beads_to_buy(self.room.usual - knot, self.smallest)

    @property
    def have_worked(self) -> str:
        """How the beads of one strand to have are worked."""
        room, knot, small = (f"{n:.6g}" for n in (self.room.usual, self.knot.usual, self.smallest))
        return f"up(({room} − {knot}) ÷ {small})" if _knotted(self) else f"up({room} ÷ {small})"

    @property
    def in_knot(self) -> Spread | float:
        """What one knot shortens the thread by, mm."""
        if not _knotted(self):
            return 0
        if self.knot_takes is None:
            message = "a knotted thread wants what one knot shortens it by"
            raise CannotBe(
                message,
                "add knot takes: tie ten on a trial thread, and give a tenth of what it gets shorter by",
                "knot",
            )
        return self.knot_takes

    @figure(
        "To cut for one", "mm", "{room} + {knotted} × {in_knot} + {tails}",
        rounding="bench most", when=lambda part: part.thread,
    )  # fmt: skip
    def thread_cut(self) -> Spread:
        """Strand, knots and both tails."""
        return thread_to_cut(self.room, self.tails) + self.knotted * self.in_knot

    def takes(self) -> Iterator[Take]:
        """Beads, thread and clasp."""
        yield Take(self.bead, self.beads_have, "beads_have")
        yield from super().takes()

    def made(self) -> Iterator[Made]:
        """The length to measure."""
        yield Made(self.strung, "comes_out", None, lambda _: self.comes_out, "ruler")

    def check(self) -> Iterator[Finding]:
        """The thread goes through the bead, and the tail back beside it."""
        yield from self.goes_through(self.bead)
        hole = self.bead.hole
        if _knotted(self) and hole is not None and self.knot.usual <= hole:
            yield Finding("knot", "slips into the bead's hole", f"more than {hole:g} mm", "warning")

    def run(self) -> list[tuple[float, float]]:
        """The beads, all alike."""
        return [(self.bead.length.usual, self.bead.size.usual)] * int(self.beads.usual)
