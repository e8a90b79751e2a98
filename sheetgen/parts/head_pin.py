"""Head-pin drop: beads on a pin with a head below, and a turned or a wrapped loop above."""

from __future__ import annotations

from sheetgen.base.material import Finding
from sheetgen.parts import field, on_wire
from sheetgen.parts.figure import aside, figure, flag, need, size, take
from sheetgen.parts.on_wire import OnWire
from sheetgen.parts.wire_piece import take_wire


# fmt: off
class HeadPin(OnWire):
    """Sum of its parts: head, beads, and one end, which is a loop alone or a loop with close wraps and a neck.

    How much wire a head drawn into a ball takes is measured on a trial pin: it is given, and not worked.
    """

    kind = "head-pin drop"

    beads = field.count("beads on one pin", default="1", at_most=100)
    closed = field.one_of("how the loop is closed", "wrapped", "turned")
    loop = field.length("inside of the loop: where it sits on the pliers' jaw", default="2.5 mm", above=0)
    wraps = field.count("turns wrapped under a wrapped loop", default="3", at_most=20)
    pin = field.maybe_item(Finding, "a bought head pin of that wire, its length in stock, instead of wire and a head of one's own", role="strung on")
    head_wire = field.length("wire that goes into a head of one's own: a ball, a curl", default="0 mm", at_least=0)
    head = field.length("how far the head stands below the beads", default="1 mm", at_least=0)
    trim = field.length("tail that is cut off", default="3 mm", at_least=0)

    own_wire = flag("not pin")
    on_pin = aside("mm", "stack + end")
    turns = aside("", "wraps if closed is wrapped else 0")

    stack = on_wire.stack
    neck = figure("Neck", "mm", "wrapped_neck(wraps, wire.thickness)", "out", when="closed is wrapped",
                  about="Stem under the wraps: leave it bare between bead and loop.")
    end = figure("Loop end", "mm",
                 "wrapped_end(loop, wire.thickness, wraps, wraps × wire.thickness) if closed is wrapped else turned_loop(loop, wire.thickness)",
                 "out", about="The loop, and the wraps and neck of a wrapped one.")
    beyond = figure("Wire above the beads", "mm", "end + trim", "millimetre up", about="What must stand out of the beads.")
    one = figure("Wire in one drop", "mm", "stack + end + head_wire", "out", about="Along the middle of the wire, the tail cut off.")
    drop = figure("Hangs, inside of the loop to the tip", "mm", "loop + wire.thickness + turns × wire.thickness + stack + head",
                  about="How far the drop hangs below what it hangs on.")
    beads_all = on_wire.beads_all
    # Of a bought pin there is no wire to cut.
    cut = figure("Wire to cut for one", "mm", "one + trim", "millimetre most", when="own_wire", about="With what is trimmed off.")
    wire_length = figure("Wire for all", "mm", "count × cut", "length up", when="own_wire",
                         about="All pieces as they are cut, with what is trimmed off.")
    per_spool = figure("Pieces from one spool", "", "down(wire.spool ÷ cut)", "whole", when="own_wire and wire.spool",
                       about="How many one pack of the wire gives.")

    takes = (
        take("pin", when="pin"),
        take_wire("wire", "wire_length", each="cut", when="own_wire"),
        *OnWire.takes,
    )
    sizes = (
        size("wire for one", "cut", tool="ruler", when="own_wire"),
        size("wire above the beads", "beyond", tool="ruler"),
    )
    needs = (
        need("wire.longest ≥ cut", "holds {wire.longest} a pack, and one piece is {cut}", at="wire", when="own_wire and wire.longest"),
        *OnWire.needs,
        need("pin.length ≥ on_pin.high", "is {pin.length} long, too short for it", at="pin", least="on_pin.high", when="pin and pin.length"),
    )
