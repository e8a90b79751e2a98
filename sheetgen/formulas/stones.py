"""Stones: how many fit in a row or a ring, their seats in wet clay, their bezels, and their sizes by name."""

from __future__ import annotations

import math
import re

from sheetgen.base.interval import Interval, between
from sheetgen.base.trouble import CannotBe
from sheetgen.facts import stones as facts
from sheetgen.formulas import (
    guard,
    loops,  # noqa: F401 - what is called here by name
    wrap,  # noqa: F401
)
from sheetgen.formulas.formula import formula
from sheetgen.formulas.shrinkage import wet_size

_GEOMETRY = "plane geometry"
_SEAT = "worst case of the shrinkage range; clearance is common practice"


row_count = formula(
    "row_count(length, margin, stone, gap)", "down((length − 2 × margin + gap) ÷ (stone + gap))",
    about="How many stones fit in a row, all in mm; gap is the least.", source=_GEOMETRY,
    valid="margin ≥ 0 and stone > 0 and gap ≥ 0 and length ≥ 2 × margin + stone",
)  # fmt: skip

row_gap = formula(
    "row_gap(length, margin, stone, n)", "(length − 2 × margin − n × stone) ÷ (n − 1)",
    about="Equal gap (mm) between two stones or more in a row.", source=_GEOMETRY,
    valid="n > 1 and margin ≥ 0 and stone > 0 and length ≥ 2 × margin + n × stone",
)  # fmt: skip

ring_count = formula(
    "ring_count(circle, stone, gap)", "down(π ÷ asin((stone + gap) ÷ circle))",
    about="How many stones fit on a circle through their middles, all in mm: chords, not arcs.", source=_GEOMETRY,
    valid="stone > 0 and gap ≥ 0 and circle ≥ stone + gap",
)  # fmt: skip

ring_gap = formula(
    "ring_gap(circle, stone, n)", "circle × sin(π ÷ n) − stone",
    about="Equal clear gap (mm) between two stones or more on a circle: chords, not arcs.", source=_GEOMETRY,
    valid="n ≥ 2 and stone > 0 and circle × sin(π ÷ n) ≥ stone",
)  # fmt: skip

seat_wet = formula(
    "seat_wet(stone, clearance, s_high)", f"{wet_size.name}(stone + clearance, s_high)",
    about="Hole (mm) to cut wet for a stone set after firing, at the highest shrinkage.", source=_SEAT,
    valid="stone > 0 and clearance ≥ 0 and s_high ≥ 0 and s_high < 1",
)  # fmt: skip


bezel_strip_round = formula(
    "bezel_round(stone, thickness)", "strip_round(stone, thickness)",
    about="Bezel strip (mm) round a round stone (mm).",
    source="metal supplier's formula page on bezels", valid="stone > 0 and thickness > 0",
)  # fmt: skip

bezel_strip_oval = formula(
    "bezel_oval(length, width, thickness)", "ellipse_perimeter(length, width) + π × thickness",
    about="Bezel strip (mm) round an oval stone (mm), longer side first.",
    source="Steiner's formula for parallel curves",
    valid="width > 0 and length ≥ width and thickness > 0",
)  # fmt: skip


def pp_mm(n: float) -> Interval:
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


def ss_mm(n: float | str) -> Interval:
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
