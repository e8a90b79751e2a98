"""Graduated strand: beads that grow in even steps to one large bead in the middle."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.material import Fibre
from sheetgen.base.material import Finding as Bought
from sheetgen.base.trouble import CannotBe
from sheetgen.facts.allowances import STRINGING_TAIL
from sheetgen.formulas.beads import graduated_each_side, graduated_length, thread_to_cut
from sheetgen.formulas.guard import at_least
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, figure
from sheetgen.parts.strand import Strand

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.spread import Spread


class GraduatedStrand(Strand):
    """An even series: the smallest bead at each end, each next one a step larger, the largest once in the middle.

    Beads are sold in whole or half sizes: lay them out by size and take the nearest, and the length comes out a little
    off, by how much is not known here.
    """

    kind = "graduated strand"

    largest = given.length("the bead in the middle, along its hole", above=0)
    smallest = given.length("the bead at each end, along its hole", above=0)
    length = given.length("finished length, clasp counted in", above=0)
    clasp = given.maybe_item(Bought, "the clasp; its length in stock is what it adds when closed")
    thread = given.maybe_item(Fibre, "the thread")
    tails = given.length("thread beyond the strand, both ends together", default=f"{STRINGING_TAIL:g} mm", at_least=0)

    @figure("Room for beads", "mm", "{length} − {clasp_length}")
    def room(self) -> Spread:
        """Length without the clasp."""
        return self.length - self.clasp_length

    @figure("Beads on each side", "", "down(({room} − {smallest}) ÷ ({largest} + {smallest}))", rounding="whole")
    def each_side(self) -> float:
        """Beside the one in the middle."""
        least = self.largest.usual + 2 * self.smallest.usual
        if self.smallest.usual <= self.largest.usual and self.room.usual < least - 1e-9:
            message = "there is no room for a bead on each side of the largest"
            raise CannotBe(message, at_least(least + self.clasp_length), "length")
        return graduated_each_side(self.room.usual, self.largest.usual, self.smallest.usual)

    @figure("Beads", "", "2 × {each_side} + 1", rounding="whole")
    def beads(self) -> Spread:
        """On one strand."""
        return 2 * self.each_side + 1

    @figure("Step, bead to bead", "mm", "({largest} − {smallest}) ÷ {each_side}")
    def step(self) -> Spread:
        """How much larger each next bead is."""
        return (self.largest - self.smallest) / self.each_side

    @figure(
        "Length that comes out",
        "mm",
        "{largest} + {each_side} × ({largest} + {smallest} − {step}) + {clasp_length}",
        rounding="bench",
    )
    def comes_out(self) -> Spread:
        """Clasp counted in."""
        return graduated_length(self.largest, self.smallest, self.each_side) + self.clasp_length

    @figure("Shorter than asked, longer with a minus", "mm", "{length} − {comes_out}", rounding="tenth")
    def rest(self) -> float:
        """What is left to fill with a few more of the smallest."""
        return self.length.usual - self.comes_out.usual

    @figure("To cut for one", "mm", "{room} + {tails}", rounding="bench most", when=lambda part: part.thread)
    def thread_cut(self) -> Spread:
        """Strand and both tails."""
        return thread_to_cut(self.room, self.tails)

    def made(self) -> Iterator[Made]:
        """The length to measure."""
        yield Made(self.strung, "comes_out", None, lambda _: self.comes_out, "ruler")

    def check(self) -> Iterator[Finding]:
        """A step that an eye can see."""
        if self.smallest.usual < self.largest.usual and self.step.usual < 0.05:  # noqa: PLR2004 - mm; nobody sorts finer
            message = "is so near the largest that no two neighbours can be told apart"
            yield Finding(
                "smallest", message, f"{self.largest.usual - 0.05 * self.each_side.usual:.1f} mm or less", "warning"
            )

    def run(self) -> list[tuple[float, float]]:
        """The beads, round ones, growing to the middle."""
        side = int(self.each_side.usual)
        sizes = [self.largest.usual - self.step.usual * abs(i) for i in range(-side, side + 1)]
        return [(size, size) for size in sizes]
