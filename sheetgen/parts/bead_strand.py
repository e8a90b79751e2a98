"""Bead strand: beads on a thread to a finished length, with or without knots between them."""

from __future__ import annotations

from sheetgen.base.material import Bead
from sheetgen.parts import field
from sheetgen.parts.figure import aside, figure, need, take
from sheetgen.parts.strand import GOES_THROUGH, HIDDEN, Strand


# fmt: off
class BeadStrand(Strand):
    """Whole beads that fit the length (supplier's beads-per-inch chart), a knot before, between and after if knotted.

    Beads vary, so the length is printed as a range, and the list has enough of the smallest. How long a knot is, is
    measured on a trial knot and not worked; knots draw tighter with wear.
    """

    kind = "bead strand"

    bead = field.item(Bead, "the bead", role="strung")
    length = field.length("finished length, clasp counted in", above=0)
    knot = field.length("length of one knot; 0 for none", default="0 mm", at_least=0)
    knot_takes = field.maybe_length("how much one knot shortens the thread, measured on a trial", above=0)

    room = figure("Room for beads", "mm", "length − clasp_length", about="Length without the clasp.",
                  needs=(need("room ≥ bead.length + 2 × knot", "has no room for even one bead", at="length", least="bead.length + 2 × knot + clasp_length"),))
    beads = figure("Beads", "", "knotted_in(room, bead.length, knot) if knot else beads_in(room, bead.length)", "whole",
                   about="Beads of the usual size on one strand.")
    knots = figure("Knots", "", "beads + 1", "whole", when="knot", about="One before, between and after all beads.")
    knotted = aside("", "knots if knot else 0")
    comes_out = figure("Length that comes out", "mm", "strand_of(beads, bead.length, knotted, knot) + clasp_length",
                       about="Over the beads as they vary, clasp counted in.")
    rest = figure("Shorter than asked (− longer)", "mm", "length − comes_out",
                  about="What is left to fill with a smaller bead, if it matters; over the beads as they vary.")
    smallest = aside("mm", "bead.length.low + knot")
    beads_have = figure("Beads to have, for all", "", "count × beads_for((room − knot if knot else room), smallest)", "whole",
                        about="Enough if every bead were the smallest of its size.")
    in_knot = aside("mm", "knot_takes if knot and knot_takes else 0")
    thread_cut = figure("To cut for one", "mm", "with_tails(room + knotted × in_knot, tails)", "centimetre most", when="thread",
                        about="Strand, knots and both tails.",
                        needs=(need("knot_takes", "is tied, and nothing says what one knot shortens the thread by", at="knot", when="knot", help="add knot takes: tie ten on a trial thread, and give a tenth of what it gets shorter by"),))

    takes = (
        take("bead", "beads_have"),
        *Strand.takes,
    )
    needs = (
        *Strand.needs,
        GOES_THROUGH,
        *HIDDEN,
        need("knot > bead.hole", "slips into the bead's hole", at="knot", help="more than {bead.hole}", when="knot and bead.hole", doubt=True),
    )
