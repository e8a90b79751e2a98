"""What beads on a wire with a loop share: the beads they take, and whether the wire goes through."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.like import worded
from sheetgen.base.spread import GRAIN, spread
from sheetgen.formulas.wrapped import turned_loop
from sheetgen.parts.kind import Finding, Worker, figure
from sheetgen.parts.wire_piece import WirePiece, too_tight

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.material import Bead
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread
    from sheetgen.parts.given import Given


class OnWire(WirePiece):
    """Beads threaded on a wire whose end is turned into a loop, and wrapped or not."""

    bead: Given[Bead]
    beads: Given[Spread]
    caps: Given[Spread]
    loop: Given[Spread]
    wraps: Given[Spread]

    stack: Worker
    end: Worker
    beyond: Worker

    @property
    def turns(self) -> Spread | float:
        """Wraps under a loop."""
        return self.wraps

    def marks(self, beyond: Size) -> list[tuple[float, str]]:
        """Where to bend a wire that stands `beyond` out of its beads, from its end: mm, and what is there."""
        neck, loop = self.turns * self.wire.thickness, turned_loop(self.loop, self.wire.thickness)
        stem = spread(neck).usual
        places = {"tail": beyond - self.end.usual, "wraps": beyond - stem - loop.usual, "loop": beyond - stem}
        named = {what: at for what, at in places.items() if at > GRAIN and (stem or what == "tail")}
        found = [(at, f"{what} to {worded(at, beyond)}") for what, at in named.items()]
        return [*found, (float(beyond), f"{'neck' if stem else 'loop'} to {beyond.words}")]

    def threaded(self, pen: Pen, start: float, k: float) -> None:
        """The beads on a straight wire, lying from `start` on, mm."""
        for long, wide in self.run():
            pen.oval(((start + long / 2) * k, 0), long * k, wide * k)
            start += long

    def run(self) -> list[tuple[float, float]]:
        """Beads and caps in their order: length along the hole, and size across, mm."""
        bead, wide = self.bead.length.usual, self.bead.size.usual
        cap = [(self.caps.usual / 2, wide * 0.7)] if self.caps.usual else []
        return [*cap, *[(bead, wide)] * int(self.beads.usual), *cap]

    def check(self) -> Iterator[Finding]:
        """The wire goes through the bead and round its loop."""
        wire, hole = self.wire.thickness, self.bead.hole
        if hole is not None and hole < wire - 1e-9:
            thinnest = f"a wire of {hole:g} mm or less, or another bead"
            yield Finding("wire", f"({wire:.2f} mm) does not go through the bead's hole", thinnest)
        yield from too_tight(self.wire, {"loop": self.loop})


@figure("Beads for all", "", "{count} × {beads}", rounding="whole")
def beads_all(part: OnWire) -> Spread:
    """On all the pieces."""
    return part.count * part.beads
