"""Head-pin drop: beads on a pin with a head below, and a turned or a wrapped loop above."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base import sketches, views
from sheetgen.base.figure import Made
from sheetgen.base.like import said, worded
from sheetgen.base.material import Bead
from sheetgen.base.material import Finding as Bought
from sheetgen.base.spread import spread
from sheetgen.formulas.wrapped import turned_loop, wrapped_end, wrapped_neck, wrapped_wire
from sheetgen.parts import given, on_wire
from sheetgen.parts.kind import Finding, Take, figure
from sheetgen.parts.on_wire import OnWire

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread


class HeadPin(OnWire):
    """Sum of its parts: head, beads, and one end, which is a loop alone or a loop with close wraps and a neck.

    How much wire a head drawn into a ball takes is measured on a trial pin: it is given, and not worked.
    """

    kind = "head-pin drop"

    bead = given.item(Bead, "the bead")
    beads = given.count("beads on one pin", default="1", at_most=100)
    caps = given.length("what caps and spacers add to the beads' length", default="0 mm", at_least=0)
    closed = given.one_of("how the loop is closed", "wrapped", "turned")
    loop = given.length("inside of the loop: where it sits on the pliers' jaw", default="2.5 mm", above=0)
    wraps = given.count("turns wrapped under a wrapped loop", default="3", at_most=20)
    pin = given.maybe_item(
        Bought, "a bought head pin of that wire, its length in stock, instead of wire and a head of one's own"
    )
    head_wire = given.length("wire that goes into a head of one's own: a ball, a curl", default="0 mm", at_least=0)
    head = given.length("how far the head stands below the beads", default="1 mm", at_least=0)
    trim = given.length("tail that is cut off", default="3 mm", at_least=0)

    @property
    def from_stock(self) -> bool:
        """Whether it is cut from wire: a bought pin is not."""
        return self.pin is None

    @property
    def turns(self) -> Spread | float:
        """Wraps under the loop; none under a turned one."""
        return self.wraps if self.closed == "wrapped" else 0

    @figure("Beads and caps", "mm", "{beads} × {bead.length} + {caps}", rounding="tenth")
    def stack(self) -> Spread:
        """What sits between head and neck."""
        return self.beads * self.bead.length + self.caps

    @figure("Neck", "mm", "{turns} × {wire.thickness}", rounding="tenth", when=lambda part: part.closed == "wrapped")
    def neck(self) -> Spread:
        """Stem under the wraps: leave it bare between bead and loop."""
        return wrapped_neck(self.wraps, self.wire.thickness)

    @property
    def end_worked(self) -> str:
        """How the end is worked."""
        wire = f"{self.wire.thickness:.6g}"
        loop = f"π × ({self.loop.usual:.6g} + {wire})"
        n = f"{self.wraps.usual:g}"
        return f"{loop} + {n} × √(4 × π² + 1) × {wire} + {n} × {wire}" if self.closed == "wrapped" else loop

    @figure("Loop end", "mm", "{end_worked}", rounding="tenth")
    def end(self) -> Spread:
        """The loop, and the wraps and neck of a wrapped one."""
        if self.closed == "turned":
            return turned_loop(self.loop, self.wire.thickness)
        return wrapped_end(self.loop, self.wire.thickness, self.wraps, 0)

    @figure("Wire above the beads", "mm", "{end} + {trim}", rounding="bench up")
    def beyond(self) -> Spread:
        """What must stand out of the beads."""
        return self.end + self.trim

    @figure("Wire in one drop", "mm", "{stack} + {end} + {head_wire}", rounding="tenth")
    def one(self) -> Spread:
        """Along the middle of the wire, the tail cut off."""
        return wrapped_wire(self.stack, 1, self.end) + self.head_wire

    @figure(
        "Hangs, inside of the loop to the tip",
        "mm",
        "{loop} + {wire.thickness} + {turns} × {wire.thickness} + {stack} + {head}",
    )
    def drop(self) -> Spread:
        """How far the drop hangs below what it hangs on."""
        return self.loop + self.wire.thickness * (1 + self.turns) + self.stack + self.head

    beads_all = on_wire.beads_all

    def takes(self) -> Iterator[Take]:
        """Bought pins, or wire with its tails; and beads."""
        if self.pin:
            yield Take(self.pin, self.count, "count")
        else:
            yield from super().takes()
        yield Take(self.bead, self.beads_all, "beads_all")

    def made(self) -> Iterator[Made]:
        """Wire, and where it is bent."""
        if not self.pin:
            yield Made("wire for one", "cut", tool="ruler")
        yield Made("wire above the beads", "beyond", tool="ruler")

    def check(self) -> Iterator[Finding]:
        """The wire goes through the bead and round its loop; a bought pin is long enough."""
        yield from super().check()
        if self.pin and self.pin.length is not None:
            need = (self.stack + self.end).high
            if self.pin.length < need - 1e-9:
                yield Finding(
                    "pin", f"is {self.pin.length:g} mm long, too short for it", f"{math.ceil(need):g} mm or more"
                )

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The wire straight, with its beads and the lengths to bend at, from the end that becomes the loop."""
        beyond, beads = size("beyond"), self.stack.usual
        long = size("cut") if self.from_stock else beyond + beads
        last = f"cut {size('cut').words}" if self.from_stock else f"head at {worded(long, beyond)}"
        marks, end = self.marks(beyond), beyond + beads
        more = [(end, f"beads to {worded(end, beyond)}")] if self.from_stock and self.head_wire.usual else []
        sketches.stops(pen, long, [*marks, *more, (long, last)], self.wire.thickness, k, self.bead.size.usual)
        self.threaded(pen, beyond, k)
        return said(
            beyond,
            f"A wire with beads over {size('stack').words} mm; from its end, mm: {', '.join(w for _, w in marks)}, then the beads; {last}",
        )

    def view(self, pen: Pen) -> float:
        """Loop, wraps, beads, head."""
        d = self.wire.thickness
        low = views.wraps(pen, views.loop(pen, 0, self.loop.usual, d), int(spread(self.turns).usual), d)
        low = views.beads(pen, low, self.run())
        if self.head.usual:
            pen.oval((0, low + self.head.usual / 2), 2.5 * d, self.head.usual)
        return low + self.head.usual
