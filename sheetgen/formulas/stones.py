"""Stones: how many fit in a row or a ring, their seats in wet clay, their bezels, and their sizes by name."""

from __future__ import annotations

import math
import re

from sheetgen.base.spread import GRAIN, Spread, between, floor
from sheetgen.base.trouble import CannotBe
from sheetgen.facts import stones as facts
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula
from sheetgen.formulas.loops import oval_wire_ellipse
from sheetgen.formulas.shrinkage import fired_size, wet_size
from sheetgen.formulas.wrap import strip_round

_GEOMETRY = "plane geometry"
_SEAT = "worst case of the shrinkage range; clearance is common practice"


def _row(length: float, margin: float, stone: float) -> float:
    """Room between the margins (mm)."""
    guard.above_zero(length, "a row's length", "length")
    guard.not_below_zero(margin, "a margin", "margin")
    guard.above_zero(stone, "a stone", "stone")
    if 2 * margin + stone > length + GRAIN:
        raise CannotBe(
            f"no stone of {guard.shown(stone)} fits in {guard.shown(length)} with {guard.shown(margin)} at each end",
            help=f"a margin of {guard.at_most((length - stone) / 2)}" if stone <= length else "a smaller stone",
            field="margin" if stone <= length else "stone",
        )
    return length - 2 * margin


@formula("stones = (length − 2 × margin + gap) ÷ (stone + gap), whole ones", source=_GEOMETRY)
def row_count(length: float, margin: float, stone: float, gap: float) -> float:
    """How many stones fit in a row, all in mm; gap is the least. CannotBe if not even one fits."""
    guard.not_below_zero(gap, "a gap between stones", "gap")
    return floor((_row(length, margin, stone) + gap) / (stone + gap))


@formula("gap = (length − 2 × margin − n × stone) ÷ (n − 1)", source=_GEOMETRY, valid="two stones or more")
def row_gap(length: float, margin: float, stone: float, n: float) -> float:
    """Equal gap (mm) between n stones in a row; 0 for a single stone. CannotBe if they do not fit."""
    room = _row(length, margin, stone)
    guard.above_zero(n, "a number of stones", "count", "")
    left = room - n * stone
    if left < -GRAIN:
        raise CannotBe(
            f"{n:g} stones of {guard.shown(stone)} do not fit in {guard.shown(room)}",
            help=f"{floor(room / stone)} stones or fewer",
            field="count",
        )
    return max(0.0, left) / (n - 1) if n > 1 else 0.0


@formula("stones = π ÷ asin((stone + gap) ÷ circle), whole ones", source=_GEOMETRY, valid="chords, not arcs")
def ring_count(circle_diameter: float, stone: float, gap: float) -> float:
    """How many stones fit on a circle through their centres, all in mm. CannotBe if not even two fit."""
    guard.above_zero(circle_diameter, "the circle of a ring of stones", "circle")
    guard.above_zero(stone, "a stone", "stone")
    guard.not_below_zero(gap, "a gap between stones", "gap")
    if stone + gap > circle_diameter * (1 + 1e-12):
        raise CannotBe(
            f"two stones of {guard.shown(stone)} do not fit on a circle of {guard.shown(circle_diameter)}",
            help=f"a circle of {guard.at_least(stone + gap)}",
            field="circle",
        )
    return floor(math.pi / math.asin(min(1.0, (stone + gap) / circle_diameter)))


@formula("gap = circle × sin(π ÷ n) − stone", source=_GEOMETRY, valid="chords; two stones or more")
def ring_gap(circle_diameter: float, stone: float, n: float) -> float:
    """Equal clear gap (mm) between n stones on a circle. CannotBe if they do not fit."""
    guard.above_zero(circle_diameter, "the circle of a ring of stones", "circle")
    guard.above_zero(stone, "a stone", "stone")
    if n < 2:  # noqa: PLR2004 - a gap lies between two
        raise CannotBe("a gap wants two stones or more", help="2 or more", field="count")
    gap = circle_diameter * math.sin(math.pi / n) - stone
    if gap < -GRAIN:
        raise CannotBe(
            f"{n:g} stones of {guard.shown(stone)} do not fit on a circle of {guard.shown(circle_diameter)}",
            help=f"a circle of {guard.at_least(stone / math.sin(math.pi / n))}",
            field="circle",
        )
    return max(0.0, gap)


@formula("wet hole = (stone + clearance) ÷ (1 − highest shrinkage)", source=_SEAT)
def seat_wet(stone: float, clearance: float, s_high: float) -> float:
    """Hole (mm) to cut wet for a stone set after firing, at the highest shrinkage. CannotBe for negative sizes."""
    guard.above_zero(stone, "a stone", "stone")
    guard.not_below_zero(clearance, "a clearance", "clearance")
    return wet_size.pure(stone + clearance, s_high)


@formula("looseness = wet hole × (1 − lowest shrinkage) − stone", source=_SEAT)
def seat_loosest(stone: float, clearance: float, s_low: float, s_high: float) -> float:
    """Clearance (mm) of the fired seat if the clay shrinks least. CannotBe if the shrinkages are upside down."""
    if s_low > s_high:
        raise CannotBe("the lower shrinkage is above the higher one", help="low first, high second", field="shrinkage")
    return fired_size.pure(seat_wet.pure(stone, clearance, s_high), s_low) - stone


@formula("drill = 3/4 × stone", source="a goldsmithing teacher's page on bead setting")
def bead_set_drill(stone: float) -> float:
    """Drill (mm) for a bead-set stone in metal. CannotBe for 0 or less."""
    guard.above_zero(stone, "a stone", "stone")
    return facts.BEAD_DRILL * stone


@formula("strip = π × (stone + thickness)", source="metal supplier's formula page on bezels")
def bezel_strip_round(stone: float, thickness: float) -> float:
    """Bezel strip (mm) round a round stone (mm). CannotBe for 0 or less."""
    return strip_round.pure(stone, thickness)


@formula("strip = ellipse's perimeter + π × thickness", source="Steiner's formula for parallel curves")
def bezel_strip_oval(length: float, width: float, thickness: float) -> float:
    """Bezel strip (mm) round an oval stone (mm), longer side first. CannotBe for impossible sizes."""
    return oval_wire_ellipse.pure(length, width, thickness)


def pp_mm(n: float) -> Spread:
    """Smallest to largest mm of a PP size. CannotBe for what the table lacks; PP 21 and up were never read."""
    if n in facts.PP:
        return between(*facts.PP[int(n)])
    near = min(facts.PP, key=lambda known: abs(known - n) if math.isfinite(n) else -known)
    low, high = facts.PP[near]
    raise CannotBe(
        f"the table has no {guard.shown(n, '')} among PP sizes",
        help=f"the nearest is PP {near}, {low:.2f} to {high:.2f} mm; or give the stone's size in mm",
        field="stone",
    )


def ss_mm(n: float | str) -> Spread:
    """Smallest to largest mm of an SS size, such as 16 or '00'. CannotBe for what the table lacks."""
    name = n.strip() if isinstance(n, str) else f"{n:g}"
    if name in facts.SS:
        return between(*facts.SS[name])
    wanted = float(name) if re.fullmatch(r"\d{1,6}(\.\d{1,6})?", name, re.ASCII) else 0.0
    near = min(facts.SS, key=lambda known: abs(int(known) - wanted))
    low, high = facts.SS[near]
    raise CannotBe(
        f"the table has no '{name}' among SS sizes",
        help=f"the nearest is SS {near}, {low:.2f} to {high:.2f} mm; or give the stone's size in mm",
        field="stone",
    )
