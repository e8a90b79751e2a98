"""Beads on a thread: how many, how long, and round whom."""

from __future__ import annotations

from sheetgen.formulas.formula import formula

_CHART = "supplier's beads-per-inch chart"
_STEINER = "Steiner's formula for parallel curves"


beads_in = formula(
    "beads_in(length, bead)", "down(length ÷ bead)", about="Beads that fit in a finished length, both mm.",
    source=_CHART, valid="length ≥ 0 and bead > 0",
)  # fmt: skip

beads_to_buy = formula(
    "beads_for(length, bead)", "up(length ÷ bead)", about="Beads that cover a length, both mm.",
    source="supplier's article, How many beads per inch", valid="length ≥ 0 and bead > 0",
)  # fmt: skip

strand_length = formula(
    "strand_of(beads, bead, knots, knot)", "beads × bead + knots × knot",
    about="Length (mm) of so many beads with so many knots between them.", source=_CHART,
    valid="beads ≥ 0 and bead > 0 and knots ≥ 0 and knot ≥ 0",
)  # fmt: skip

knotted_count = formula(
    "knotted_in(length, bead, knot)", "down((length − knot) ÷ (bead + knot))",
    about="Beads in a length (mm) with a knot (mm) at each end and between all.", source=_CHART,
    valid="length ≥ knot and bead > 0 and knot ≥ 0",
)  # fmt: skip

strand_round = formula(
    "strand_round(girth, bead)", "girth + π × bead",
    about="Strand (mm) that goes round a neck or wrist (mm): beads on the skin, the thread through their middles.",
    source=_STEINER, valid="girth > 0 and bead > 0",
)  # fmt: skip

girth_inside = formula(
    "girth_inside(length, bead)", "length − π × bead", about="Neck or wrist (mm) that a closed strand (mm) goes round.",
    source=_STEINER, valid="length > π × bead and bead > 0",
)  # fmt: skip

thread_to_cut = formula(
    "with_tails(finished, tails)", "finished + tails", about="Thread or wire (mm) to cut, both tails together.",
    source="common practice", valid="finished > 0 and tails ≥ 0",
)  # fmt: skip


graduated_length = formula(
    "graduated(largest, smallest, side, step)", "largest + side × (largest + smallest − step)",
    about="Length (mm) of a strand that grows by a step to one bead in the middle, so many beads on each side of it.",
    source="sum of an even series", valid="smallest ≤ largest and side ≥ 0 and step ≥ 0",
)  # fmt: skip

graduated_each_side = formula(
    "graduated_side(length, largest, smallest)", "down((length − smallest) ÷ (largest + smallest))",
    about="Beads on each side of the one in the middle that a length (mm) takes.", source="sum of an even series",
    valid="smallest > 0 and smallest ≤ largest and length ≥ largest",
)  # fmt: skip
