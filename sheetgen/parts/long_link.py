"""Long link: wire led straight round two pegs and closed, two round ends and two sides."""

from __future__ import annotations

from sheetgen.parts import field, pegs
from sheetgen.parts.figure import aside, figure, need
from sheetgen.parts.pegs import PegPair


# fmt: off
class LongLink(PegPair):
    """An open belt over two pegs, exact, along the middle of the wire.

    The two ends meet edge to edge. Sprung wire opens when it leaves the pegs, and hammering or drawing lengthens a
    link: no figure here knows by how much.
    """

    kind = "long link"

    inside = field.maybe_length("inside width of one end; or give the peg", above=0)
    second_inside = field.maybe_length("inside width of the other end, if it differs", above=0)
    peg = field.maybe_length("the peg of one end, when the tool decides", above=0)
    second_peg = field.maybe_length("the peg of the other end, when the tool decides and it differs", above=0)
    gap = field.maybe_length("clear gap between the pegs; or give the length", at_least=0)
    length = field.maybe_length("finished length over all; or give the gap", above=0)
    trim = field.length("wire added to be trimmed off", default="1 mm", at_least=0)

    either = (("inside", "peg"), ("gap", "length"))

    peg_used, second_used = pegs.chosen("inside", "second_inside")
    least = aside("mm", "peg_used + second_used + 2 × wire.thickness")
    clear = figure("Gap between the pegs", "mm", "gap or length − 2 × wire.thickness − peg_used − second_used", "tenth",
                   about="Clear gap between the pegs.",
                   needs=(need("length ≥ least", "does not hold two pegs of {peg_used} and {second_used}", at="length", least="least", help="or smaller pegs", when="length and not gap"),))
    centres = pegs.centres
    one = figure("Wire in one link", "mm",
                 "even_belt(peg_used, apart, wire.thickness) if peg_used = second_used else open_belt(peg_used, second_used, apart, wire.thickness)",
                 "out", about="Along the middle of the wire.")
    pitch = figure("Inside length", "mm", "link_inside(peg_used, second_used, clear)", role="adds",
                   about="What one link adds to a chain pulled taut.")
    outside = pegs.outside
    across = figure("Width over all", "mm", "max(peg_used, second_used) + 2 × wire.thickness", "out", about="Outside width at the wider end.")

    needs = pegs.needed("inside", "second_inside")
