"""What strands of beads share: the clasp's length, the thread, and beads drawn on it."""

from __future__ import annotations

from abc import ABC, abstractmethod
from typing import TYPE_CHECKING

from sheetgen.base import views
from sheetgen.base.trouble import CannotBe
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Part, Take, Worker

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.material import Bead, Fibre
    from sheetgen.base.material import Finding as Bought
    from sheetgen.base.pen import Pen
    from sheetgen.parts.given import Given


ROUND = 120.0  # mm: a strand as long as that is worn closed, round the smallest wrist


class Clasped(Part):
    """What is closed with a clasp, or with none."""

    clasp: Given[Bought | None]
    closing = given.length(
        "what a clasp made as a part adds when closed, such as hook.pitch", default="0 mm", at_least=0
    )

    @property
    def clasp_length(self) -> float:
        """What the clasp adds, mm."""
        if self.clasp and self.clasp.length is None:
            raise CannotBe(f"stock does not say how long {self.clasp.name} is", "add its length: to stock", "clasp")
        return self.closing.usual + ((self.clasp.length or 0.0) if self.clasp else 0.0)

    def takes(self) -> Iterator[Take]:
        """The clasp."""
        if self.clasp:
            yield Take(self.clasp, self.count, "count")


class Strand(Clasped, ABC):
    """Beads on a thread."""

    thread: Given[Fibre | None]
    thread_cut: Worker
    comes_out: Worker

    def takes(self) -> Iterator[Take]:
        """Thread and clasp."""
        if self.thread:
            yield Take(self.thread, self.thread_cut * self.count, "thread_cut")
        yield from super().takes()

    @property
    def strung(self) -> str:
        """What the strand's length is called."""
        return "strand, clasp counted in" if self.clasp_length else "strand"

    @abstractmethod
    def run(self) -> list[tuple[float, float]]:
        """The beads in their order: length along the hole, and size across, mm."""

    def view(self, pen: Pen) -> float:
        """Beads hanging straight; of a strand that goes round a neck or wrist, closed to a round."""
        run, whole = self.run(), self.comes_out.usual
        if whole >= ROUND:
            return views.beads_round(pen, run, whole)
        return views.beads(pen, 0, run)

    def goes_through(self, bead: Bead) -> Iterator[Finding]:
        """The thread goes through the bead."""
        thread, hole = self.thread, bead.hole
        if thread and hole is not None and thread.thickness > hole + 1e-9:
            helped = f"{hole:g} mm or thinner, or a bead with a larger hole"
            yield Finding("thread", f"({thread.thickness:g} mm) does not go through the bead's hole", helped)
