"""Beads round a neck or wrist: how many close round it, lying on the skin."""

from __future__ import annotations

from sheetgen.base.material import Bead
from sheetgen.facts.wires import BEADS_ROUND
from sheetgen.parts import field
from sheetgen.parts.figure import aside, figure, need, take
from sheetgen.parts.strand import GOES_THROUGH, HIDDEN, Strand


# fmt: off
class BeadRound(Strand):
    """The thread runs through the beads' middles, half a bead off the skin: girth + π × bead (Steiner's formula).

    For small beads a neck is as good as round. How snug it is to be is the wearer's; skin gives way, and that is not
    known here.
    """

    kind = "beads round a neck or wrist"

    bead = field.item(Bead, "the bead", role="strung")
    girth = field.length("girth of the bare neck or wrist", above=0)
    ease = field.length("room to be left over the girth", default="0 mm", at_least=0)

    needed = figure("Length needed", "mm", "strand_round(girth + ease, bead.size)", "out", about="Round the thread, clasp counted in.")
    room = figure("Room for beads", "mm", "needed − clasp_length", "out", about="Length without the clasp.",
                  needs=(need("needed.low > clasp_length", "takes no more than the clasp alone", at="girth", help="more than {clasp_length}"),))
    beads = figure("Beads", "", "beads_for(room, bead.length)", "whole", about="As many as close round it and no fewer, of the usual size.")
    comes_out = figure("Length that comes out", "mm", "beads × bead.length + clasp_length", about="Over the beads as they vary, clasp counted in.")
    goes_round = figure("Girth it goes round", "mm", "girth_inside(comes_out, bead.size)",
                        about="Inside of the closed strand; a round bead is as long as it is wide, so that the two do not vary apart.")
    most = aside("mm", "room.high")
    beads_have = figure("Beads to have, for all", "", "count × beads_for(most, bead.length.low)", "whole",
                        about="Enough if every bead were the shortest of its size.")
    thread_cut = figure("To cut for one", "mm", "with_tails(room, tails)", "centimetre most", when="thread", about="Strand and both tails.")

    takes = (
        take("bead", "beads_have"),
        *Strand.takes,
    )
    needs = (
        *Strand.needs,
        GOES_THROUGH,
        *HIDDEN,
        need(f"girth ≥ {BEADS_ROUND:g} × bead.size", "is too small to close so large a bead round", at="girth", least=f"{BEADS_ROUND:g} × bead.size"),
    )
