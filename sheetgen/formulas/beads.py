"""Beads on a thread: how many, how long, and round whom."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.spread import ceil, floor
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

if TYPE_CHECKING:
    from collections.abc import Sequence

_CHART = "supplier's beads-per-inch chart"
_STEINER = "Steiner's formula for parallel curves"


@formula("beads = length ÷ bead, whole ones", source=_CHART)
def beads_in(length: float, bead: float) -> float:
    """Beads that fit in a finished length, both mm. CannotBe for a bead of 0 or less."""
    guard.not_below_zero(length, "a length", "length")
    guard.above_zero(bead, "a bead", "bead")
    return floor(length / bead)


@formula("beads = length ÷ bead, rounded up", source="supplier's article, How many beads per inch")
def beads_to_buy(length: float, bead: float) -> float:
    """Beads that cover a length, both mm. CannotBe for a bead of 0 or less."""
    guard.not_below_zero(length, "a length", "length")
    guard.above_zero(bead, "a bead", "bead")
    return ceil(length / bead)


@formula("length = beads × bead + knots × knot", source=_CHART)
def strand_length(count: float, bead: float, knots: float, knot: float) -> float:
    """Length (mm) of `count` beads with `knots` knots of `knot` mm between them. CannotBe for negative numbers."""
    guard.not_below_zero(count, "a number of beads", "count", "")
    guard.above_zero(bead, "a bead", "bead")
    guard.not_below_zero(knots, "a number of knots", "knots", "")
    guard.not_below_zero(knot, "a knot", "knot")
    return count * bead + knots * knot


@formula("beads = (length − knot) ÷ (bead + knot), whole ones", source=_CHART, valid="a knot before, between and after")
def knotted_count(length: float, bead: float, knot: float) -> float:
    """Beads in a length (mm) with a knot (mm) at each end and between all. CannotBe for negative sizes."""
    guard.not_below_zero(length, "a length", "length")
    guard.above_zero(bead, "a bead", "bead")
    guard.not_below_zero(knot, "a knot", "knot")
    return max(0, floor((length - knot) / (bead + knot)))


@formula(
    "length = girth + π × bead", source=_STEINER, valid="beads lying on the skin, the thread through their middles"
)
def strand_round(girth: float, bead: float) -> float:
    """Strand (mm) that goes round a neck or wrist (mm). CannotBe for 0 or less."""
    guard.above_zero(girth, "a girth", "girth")
    guard.above_zero(bead, "a bead", "bead")
    return girth + math.pi * bead


@formula("girth = length − π × bead", source=_STEINER)
def girth_inside(length: float, bead: float) -> float:
    """Neck or wrist (mm) that a closed strand (mm) goes round. CannotBe if it closes on nothing."""
    guard.above_zero(bead, "a bead", "bead")
    girth = length - math.pi * bead
    if not 0 < girth < math.inf:
        raise CannotBe(
            f"a strand of {guard.shown(length)} of {guard.shown(bead)} beads closes on nothing",
            help=f"longer than {guard.shown(math.pi * bead)}",
            field="length",
        )
    return girth


@formula("girth = (beads − π) × bead + clasp", source=_STEINER, valid="beads as long along the hole as they are wide")
def girth_inside_round(count: float, bead: float, clasp: float) -> float:
    """Neck or wrist (mm) that a closed strand of `count` round beads (mm) and a clasp (mm) goes round.

    CannotBe if it closes on nothing.
    """
    guard.not_below_zero(count, "a number of beads", "count", "")
    guard.above_zero(bead, "a bead", "bead")
    guard.not_below_zero(clasp, "a clasp", "clasp")
    return girth_inside.pure(count * bead + clasp, bead)


@formula("thread = finished length + tails", source="common practice")
def thread_to_cut(finished: float, tails: float) -> float:
    """Thread or wire (mm) to cut, both tails together. CannotBe for negative lengths."""
    guard.above_zero(finished, "a finished length", "length")
    guard.not_below_zero(tails, "a tail", "tail")
    return finished + tails


def repeat_count(length: float, pattern: Sequence[float], close: float = 0.0) -> int:
    """Whole repeats of a pattern of bead lengths in a length, `close` mm kept for a last group. All mm.

    CannotBe for an empty pattern.
    """
    guard.above_zero(sum(pattern), "the beads of one repeat together", "pattern")
    return max(0, floor((length - close) / sum(pattern)))


def graduated_sizes(largest: float, smallest: float, each_side: int) -> list[float]:
    """Bead sizes (mm) of a strand that grows in equal steps to one centre bead: `each_side` beads on either side.

    CannotBe if the smallest is larger than the largest.
    """
    guard.above_zero(smallest, "the smallest bead", "smallest")
    if smallest > largest:
        raise CannotBe(
            f"the smallest bead ({guard.shown(smallest)}) is larger than the largest ({guard.shown(largest)})",
            help=f"smallest {guard.at_most(largest)}",
            field="smallest",
        )
    if each_side < 1:
        return [largest]
    step = (largest - smallest) / each_side
    side = [smallest + step * i for i in range(each_side)]
    return [*side, largest, *reversed(side)]


@formula("length = largest + each side × (largest + smallest) − each side × step", source="sum of an even series")
def graduated_length(largest: float, smallest: float, each_side: float) -> float:
    """Length (mm) of a graduated strand with equal steps. CannotBe if the smallest is larger than the largest."""
    guard.not_below_zero(each_side, "a number of beads", "count", "")
    graduated_sizes(largest, smallest, 0)
    step = (largest - smallest) / each_side if each_side else 0.0
    return largest + each_side * (largest + smallest - step)


@formula("beads on each side = (length − smallest) ÷ (largest + smallest), whole ones", source="sum of an even series")
def graduated_each_side(length: float, largest: float, smallest: float) -> float:
    """Beads on each side of the centre bead that a length (mm) takes. CannotBe if not even the centre fits."""
    graduated_sizes(largest, smallest, 0)
    if length < largest:
        raise CannotBe("the centre bead alone is longer than the strand", help=guard.at_least(largest), field="length")
    return max(0, floor((length - smallest) / (largest + smallest)))
