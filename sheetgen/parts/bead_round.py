"""Beads round a neck or wrist: how many close round it, lying on the skin."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.material import Bead, Fibre
from sheetgen.base.material import Finding as Bought
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.allowances import STRINGING_TAIL
from sheetgen.formulas.beads import (
    beads_to_buy,
    girth_inside,
    girth_inside_round,
    strand_length,
    strand_round,
    thread_to_cut,
)
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Take, figure
from sheetgen.parts.strand import Strand

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.spread import Spread


class BeadRound(Strand):
    """The thread runs through the beads' middles, half a bead off the skin: girth + π × bead (Steiner's formula).

    For small beads a neck is as good as round. How snug it is to be is the wearer's; skin gives way, and that is not
    known here.
    """

    kind = "beads round a neck or wrist"

    bead = given.item(Bead, "the bead")
    girth = given.length("girth of the bare neck or wrist", above=0)
    ease = given.length("room to be left over the girth", default="0 mm", at_least=0)
    clasp = given.maybe_item(Bought, "the clasp; its length in stock is what it adds when closed")
    thread = given.maybe_item(Fibre, "the thread or elastic")
    tails = given.length("thread beyond the strand, both ends together", default=f"{STRINGING_TAIL:g} mm", at_least=0)

    @figure("Length needed", "mm", "{girth} + {ease} + π × {bead.size}", rounding="tenth")
    def needed(self) -> Spread:
        """Round the thread, clasp counted in."""
        return strand_round(self.girth + self.ease, self.bead.size)

    @figure("Room for beads", "mm", "{needed} − {clasp_length}", rounding="tenth")
    def room(self) -> Spread:
        """Length without the clasp."""
        left = self.needed - self.clasp_length
        if left.low <= 0:
            raise CannotBe("the clasp alone is longer than the girth", f"more than {self.clasp_length:g} mm", "girth")
        return left

    @figure("Beads", "", "up({room} ÷ {bead.length})", rounding="whole")
    def beads(self) -> float:
        """As many as close round it and no fewer, of the usual size."""
        return beads_to_buy(self.room.usual, self.bead.length.usual)

    @figure("Length that comes out", "mm", "{beads} × {bead.length} + {clasp_length}")
    def comes_out(self) -> Spread:
        """Over the beads as they vary, clasp counted in."""
        return strand_length(self.beads, self.bead.length, 0, 0) + self.clasp_length

    @property
    def round_worked(self) -> str:
        """How the girth is worked."""
        if self.bead.length == self.bead.size:
            add = f" + {self.clasp_length:.6g}" if self.clasp_length else ""
            return f"({self.beads.usual:g} − π) × {self.bead.size.usual:.6g}{add}"
        return f"{self.comes_out.usual:.6g} − π × {self.bead.size.usual:.6g}"

    @figure("Girth it goes round", "mm", "{round_worked}")
    def goes_round(self) -> Spread:
        """Inside of the closed strand; a round bead is as long as it is wide, so that the two do not vary apart."""
        if self.bead.length == self.bead.size:
            return girth_inside_round(self.beads, self.bead.size, self.clasp_length)
        return girth_inside(self.comes_out, self.bead.size)

    @property
    def most(self) -> float:
        """Length for the widest bead of the size, without the clasp, mm."""
        return self.room.high

    @figure("Beads to have, for all", "", "{count} × up({most} ÷ {bead.length.low})", rounding="whole")
    def beads_have(self) -> Spread:
        """Enough if every bead were the shortest of its size."""
        return self.count * beads_to_buy(self.most, self.bead.length.low)

    @figure("To cut for one", "mm", "{room} + {tails}", rounding="bench most", when=lambda part: part.thread)
    def thread_cut(self) -> Spread:
        """Strand and both tails."""
        return thread_to_cut(self.room, self.tails)

    def takes(self) -> Iterator[Take]:
        """Beads, thread and clasp."""
        yield Take(self.bead, self.beads_have, "beads_have")
        yield from super().takes()

    def made(self) -> Iterator[Made]:
        """The length to measure."""
        yield Made(self.strung, "comes_out", None, lambda _: self.comes_out, "ruler")

    def check(self) -> Iterator[Finding]:
        """The thread goes through the bead; the girth is a girth."""
        yield from self.goes_through(self.bead)
        least = 3 * self.bead.size.usual
        if self.girth.usual < least:
            yield Finding("girth", "is too small to close so large a bead round", f"{least:g} mm or more")

    def run(self) -> list[tuple[float, float]]:
        """The beads, all alike."""
        return [(self.bead.length.usual, self.bead.size.usual)] * int(self.beads.usual)
