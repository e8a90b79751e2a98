"""Strung wire: stringing wire or thread cut for strands that are closed with crimps."""

from __future__ import annotations

from sheetgen.base.material import Bead, Fibre, Finding
from sheetgen.facts.allowances import STRINGING_TAIL
from sheetgen.facts.wires import TAIL_HELD
from sheetgen.parts import field
from sheetgen.parts.figure import figure, need, size, take
from sheetgen.parts.kind import Part
from sheetgen.parts.strand import spool


# fmt: off
class StrungWire(Part):
    """Finished length and a tail at each end, which goes round the clasp, back through the crimp and into the beads.

    75 mm an end is common practice. Beads do not lie end to end on a curve: leave a bead's play before crimping.
    """

    kind = "strung wire"

    thread = field.item(Fibre, "the stringing wire or thread", role="strung on")
    length = field.length("finished length of the strand, over the beads", above=0)
    strands = field.count("strands side by side in one piece", default="1", at_most=100)
    tail = field.length("wire beyond the beads at each end", default=f"{STRINGING_TAIL / 2:g} mm", at_least=0)
    crimp = field.maybe_item(Finding, "the crimp, by its inside", role="goes into")
    crimps = field.count("crimps on each strand", default="2", at_least=0, at_most=20)
    bead = field.maybe_item(Bead, "the bead with the smallest hole, to see that it takes wire and tail", role="lets through")

    cut = figure("Wire to cut for one strand", "mm", "with_tails(length, 2 × tail)", "millimetre up", about="With both tails.")
    wire_length = figure("Wire for all", "mm", "count × strands × cut", "length up", about="All strands of all pieces, as they are cut.")
    per_spool = figure("Strands from one spool", "", "down(thread.spool ÷ cut)", "whole", when="thread.spool", about="How many one pack gives.")
    crimps_all = figure("Crimps for all", "", "count × strands × crimps", "whole", when="crimp", about="On all strands of all pieces.")
    doubled = figure("Two wires in the crimp", "mm", "2 × thread.thickness", when="crimp", about="The wire and its tail, side by side.")

    takes = (
        take("thread", "wire_length", each="strands × cut"),
        take("crimp", "crimps_all", each="strands × crimps", when="crimp"),
    )
    sizes = (size("wire for one strand", "cut", tool="ruler"),)
    needs = (
        spool("thread", "cut", "strand"),
        need("crimp.inside ≥ 2 × thread.thickness", "is {crimp.inside} inside, too narrow for wire and tail", at="crimp",
             least="2 × thread.thickness", help="or a thinner wire", when="crimp and crimp.inside"),
        need("bead.hole ≥ thread.thickness", "does not take the wire", at="bead", help="a hole of {thread.thickness} or more",
             when="bead and bead.hole"),
        need("bead.hole ≥ 2 × thread.thickness", "does not take the tail beside the wire", at="bead", doubt=True,
             help="a hole of {2 × thread.thickness} or more, or cut the tail at the crimp",
             when="bead and bead.hole and bead.hole ≥ thread.thickness"),
        need(f"tail ≥ {TAIL_HELD:g} mm", "is too short to go back through a crimp and be held", at="tail", when="crimp", help="{50 mm} to {75 mm} is usual",
             doubt=True),
    )
