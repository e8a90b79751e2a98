"""Ribbons, cords and tassels: what to cut."""

from __future__ import annotations

import math

from sheetgen.base.spread import ceil
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

_SERIES = "sum of an even series"


@formula("cut = 2 × drop + π × (bar + thickness) ÷ 2", source="plane geometry: a half turn over the bar")
def folded_strip(drop: float, bar: float, thickness: float) -> float:
    """Strip (mm) folded over a bar so that both ends hang `drop` mm below its middle. CannotBe for negative sizes."""
    guard.above_zero(drop, "a drop", "drop")
    guard.not_below_zero(bar, "a bar", "bar")
    guard.above_zero(thickness, "a thickness", "thickness")
    return 2 * drop + math.pi * (bar + thickness) / 2


@formula("ends = 2 × wraps × strands held together", source="craft blog on tassels, 2009")
def wound_ends(wraps: float, strands: float) -> float:
    """Ends of a tassel wound on a card and cut. CannotBe for 0 or less."""
    guard.above_zero(wraps, "a number of wraps", "wraps", "")
    guard.above_zero(strands, "a number of strands", "strands", "")
    return 2 * wraps * strands


@formula("yarn = wraps × strands × 2 × (card + thickness)", source="one turn round a flat card")
def wound_yarn(wraps: float, strands: float, card: float, thickness: float) -> float:
    """Yarn (mm) wound on a card of a height and thickness (mm). CannotBe for sizes of 0 or less."""
    guard.above_zero(card, "a card", "card")
    guard.not_below_zero(thickness, "a card's thickness", "thickness")
    return wound_ends.pure(wraps, strands) * (card + thickness)


@formula("thread = turns × π × (bundle + thread thickness)", source="Steiner's formula for parallel curves")
def binding_thread(bundle: float, thread: float, turns: float) -> float:
    """Thread (mm) bound round a bundle (mm), without tails. CannotBe for sizes of 0 or less."""
    guard.above_zero(bundle, "a bundle", "bundle")
    guard.above_zero(thread, "a thread", "thread")
    guard.not_below_zero(turns, "a number of turns", "turns", "")
    return turns * math.pi * (bundle + thread)


@formula("steps = strips − 1; in a point half of the strips, rounded up, − 1", source=_SERIES)
def fringe_steps(strips: float, point: float) -> float:
    """Steps from the first drop to the longest; `point` 1 if the longest hangs in the middle. CannotBe for none."""
    guard.above_zero(strips, "a number of strips", "strands", "")
    return max(0, ceil(strips / 2) - 1 if point else strips - 1)


@formula("mean = (first + last) ÷ 2; a point of an odd number has one of the longest only", source=_SERIES)
def fringe_mean(strips: float, first: float, last: float, point: float) -> float:
    """Mean drop (mm) of a fringe whose drops grow in even steps from first to last. CannotBe for 0 or less."""
    guard.above_zero(strips, "a number of strips", "strands", "")
    guard.above_zero(first, "a drop", "first")
    guard.above_zero(last, "a drop", "last")
    if point and strips % 2:
        return ((strips + 1) / 2 * first + (strips - 1) / 2 * last) / strips
    return (first + last) / 2
