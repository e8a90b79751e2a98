"""Wrapped-loop link: beads on a wire, a loop at both ends wrapped round its own stem."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base import sketches, views
from sheetgen.base.figure import Made
from sheetgen.base.like import said, worded
from sheetgen.base.material import Bead
from sheetgen.formulas.wrapped import turned_loop, wrapped_end, wrapped_link_inside, wrapped_neck, wrapped_wire
from sheetgen.parts import given, on_wire
from sheetgen.parts.kind import Take, figure
from sheetgen.parts.on_wire import OnWire

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread


class WrappedLink(OnWire):
    """Sum of its parts: beads, and for each end a loop, close wraps as a helix, and the stem under the wraps.

    The tails are cut off, but must be there to hold. A hand wraps looser than a helix, which takes a little more.
    """

    kind = "wrapped-loop link"

    bead = given.item(Bead, "the bead")
    beads = given.count("beads on one link", default="1", at_most=100)
    caps = given.length("what caps and spacers add to the beads' length", default="0 mm", at_least=0)
    loop = given.length("inside of each loop: where it sits on the pliers' jaw", default="2.5 mm", above=0)
    wraps = given.count("turns wrapped at each end", default="3", at_most=20)
    trim = given.length("both tails together, cut off", default="6 mm", at_least=0)

    @figure("Beads and caps", "mm", "{beads} × {bead.length} + {caps}", rounding="tenth")
    def stack(self) -> Spread:
        """What sits between the two necks."""
        return self.beads * self.bead.length + self.caps

    @figure("One end", "mm", "π × ({loop} + {wire.thickness}) + {wraps} × √(4 × π² + 1) × {wire.thickness} + {neck}",
            rounding="tenth")  # fmt: skip
    def end(self) -> Spread:
        """Loop, wraps and neck."""
        return wrapped_end(self.loop, self.wire.thickness, self.wraps, 0)

    @figure("Neck", "mm", "{wraps} × {wire.thickness}", rounding="tenth")
    def neck(self) -> Spread:
        """Stem under the wraps: leave it bare between bead and loop."""
        return wrapped_neck(self.wraps, self.wire.thickness)

    @figure("Loop", "mm", "π × ({loop} + {wire.thickness})", rounding="tenth")
    def loop_wire(self) -> Spread:
        """Wire in one loop."""
        return turned_loop(self.loop, self.wire.thickness)

    @figure("Wire beyond the beads, each side", "mm", "{end} + {trim} ÷ 2", rounding="bench up")
    def beyond(self) -> Spread:
        """What stands out of the beads when they sit in the middle."""
        return self.end + self.trim / 2

    @figure("Wire in one link", "mm", "{stack} + 2 × {end}", rounding="tenth")
    def one(self) -> Spread:
        """Along the middle of the wire, tails cut off."""
        return wrapped_wire(self.stack, 2, self.end)

    @figure("Inside, loop to loop", "mm", "{stack} + 2 × ({neck} + {wire.thickness} + {loop})", rounding="tenth")
    def pitch(self) -> Spread:
        """What one link adds to a chain pulled taut."""
        return wrapped_link_inside(self.stack, self.loop, self.wire.thickness, self.wraps)

    @figure("Length over all", "mm", "{pitch} + 2 × {wire.thickness}", rounding="tenth")
    def outside(self) -> Spread:
        """Outside length of one link."""
        return self.pitch + 2 * self.wire.thickness

    beads_all = on_wire.beads_all

    def takes(self) -> Iterator[Take]:
        """Wire with its tails, and beads."""
        yield from super().takes()
        yield Take(self.bead, self.beads_all, "beads_all")

    def made(self) -> Iterator[Made]:
        """Wire, and where it is bent."""
        yield Made("wire for one", "cut", tool="ruler")
        yield Made("wire beyond the beads, each side", "beyond", tool="ruler")
        yield Made("length over all", "outside", tool="ruler")

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The wire straight, with its beads and the lengths to bend at; both ends are alike."""
        beyond, long, beads = size("beyond"), size("cut"), size("stack")
        marks = self.marks(beyond)
        end = beyond + self.stack.usual
        more = [(end, f"beads to {worded(end, beyond)}"), (float(long), f"both ends alike, cut {long.words}")]
        sketches.stops(pen, long, [*marks, *more], self.wire.thickness, k, self.bead.size.usual)
        self.threaded(pen, beyond, k)
        return said(
            beyond,
            f"A wire of {long.words} mm with beads over {beads.words} mm; from each end, mm: {', '.join(w for _, w in marks)}, then the beads",
        )

    def view(self, pen: Pen) -> float:
        """Loop, wraps, beads, wraps, loop."""
        d, turns = self.wire.thickness, int(self.wraps.usual)
        low = views.wraps(pen, views.loop(pen, 0, self.loop.usual, d), turns, d)
        low = views.wraps(pen, views.beads(pen, low, self.run()), turns, d)
        return views.loop(pen, low, self.loop.usual, d) - d
