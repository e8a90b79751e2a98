"""Wrapped-loop link: beads on a wire, a loop at both ends wrapped round its own stem."""

from __future__ import annotations

from sheetgen.parts import field, on_wire
from sheetgen.parts.figure import figure, size
from sheetgen.parts.on_wire import OnWire
from sheetgen.parts.wire_piece import WirePiece


# fmt: off
class WrappedLink(OnWire):
    """Sum of its parts: beads, and for each end a loop, close wraps as a helix, and the stem under the wraps.

    The tails are cut off, but must be there to hold. A hand wraps looser than a helix, which takes a little more.
    """

    kind = "wrapped-loop link"

    trim = field.length("both tails together, cut off", default="6 mm", at_least=0)

    stack = on_wire.stack
    end = figure("One end", "mm", "wrapped_end(loop, wire.thickness, wraps, neck)", "out", about="Loop, wraps and neck.")
    neck = on_wire.neck
    loop_wire = figure("Loop", "mm", "turned_loop(loop, wire.thickness)", "out", about="Wire in one loop.")
    beyond = figure("Wire beyond the beads, each side", "mm", "end + trim ÷ 2", "millimetre up",
                    about="What stands out of the beads when they sit in the middle.")
    one = figure("Wire in one link", "mm", "stack + 2 × end", "out", about="Along the middle of the wire, tails cut off.")
    pitch = figure("Inside, loop to loop", "mm", "wrapped_link_inside(stack, loop, wire.thickness, neck)", "out",
                   about="What one link adds to a chain pulled taut.", role="adds")
    outside = figure("Length over all", "mm", "pitch + 2 × wire.thickness", "out", about="Outside length of one link.")
    beads_all = on_wire.beads_all

    takes = (*WirePiece.takes, *OnWire.takes)
    sizes = (
        size("wire for one", "cut", tool="ruler"),
        size("wire beyond the beads, each side", "beyond", tool="ruler"),
        size("length over all", "outside", tool="ruler"),
    )
    needs = (*WirePiece.needs, *OnWire.needs)
