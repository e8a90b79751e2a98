"""Graduated strand: beads that grow in even steps to one large bead in the middle."""

from __future__ import annotations

from sheetgen.facts.wires import BEAD_STEP
from sheetgen.parts import field
from sheetgen.parts.figure import figure, need
from sheetgen.parts.strand import Strand


# fmt: off
class GraduatedStrand(Strand):
    """An even series: the smallest bead at each end, each next one a step larger, the largest once in the middle.

    Beads are sold in whole or half sizes: lay them out by size and take the nearest, and the length comes out a little
    off, by how much is not known here.
    """

    kind = "graduated strand"

    largest = field.length("the bead in the middle, along its hole", above=0)
    smallest = field.length("the bead at each end, along its hole", above=0)
    length = field.length("finished length, clasp counted in", above=0)

    room = figure("Room for beads", "mm", "length − clasp_length", about="Length without the clasp.")
    each_side = figure("Beads on each side", "", "graduated_side(room, largest, smallest)", "whole", about="Beside the one in the middle.",
                       needs=(need("smallest ≤ largest", "is larger than the largest ({largest})", at="smallest", most="largest"), need("room ≥ largest + 2 × smallest", "has no room for a bead on each side of the largest", at="length", least="largest + 2 × smallest + clasp_length", when="smallest ≤ largest")))
    beads = figure("Beads", "", "2 × each_side + 1", "whole", about="On one strand.")
    step = figure("Step, bead to bead", "mm", "(largest − smallest) ÷ each_side", about="How much larger each next bead is.")
    comes_out = figure("Length that comes out", "mm", "graduated(largest, smallest, each_side, step) + clasp_length", "out",
                       about="Clasp counted in.")
    rest = figure("Shorter than asked (− longer)", "mm", "length − comes_out", "out",
                  about="What is left to fill with a few more of the smallest.")
    thread_cut = figure("To cut for one", "mm", "with_tails(room, tails)", "centimetre most", when="thread", about="Strand and both tails.")

    needs = (
        *Strand.needs,
        need(f"smallest = largest or step ≥ {BEAD_STEP:g} mm", "is so near the largest that no two neighbours can be told apart", at="smallest",
             most=f"largest − {BEAD_STEP:g} mm × each_side", doubt=True),
    )
