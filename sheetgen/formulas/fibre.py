"""Ribbons, cords and tassels: what to cut."""

from __future__ import annotations

from sheetgen.formulas.formula import formula

_SERIES = "sum of an even series"


folded_strip = formula(
    "folded_strip(drop, bar, thickness)", "2 × drop + π × (bar + thickness) ÷ 2",
    about="Strip (mm) folded over a bar (mm) so that both ends hang a drop (mm) below its middle.",
    source="plane geometry: a half turn over the bar", valid="drop > 0 and bar ≥ 0 and thickness > 0",
)  # fmt: skip


binding_thread = formula(
    "binding_thread(bundle, thread, turns)", "turns × π × (bundle + thread)",
    about="Thread (mm) bound round a bundle (mm), without tails.", source="Steiner's formula for parallel curves",
    valid="bundle > 0 and thread > 0 and turns ≥ 0",
)  # fmt: skip

fringe_steps = formula(
    "fringe_steps(strips, point)", "up(strips ÷ 2) − 1 if point > 0 else strips − 1",
    about="Steps from the first drop to the longest: in a point, 1, in the middle, in a slope, 0, at the end.",
    source=_SERIES, valid="strips ≥ 1",
)  # fmt: skip

# A point of an odd number has one of the longest only.
_ODD = "point > 0 and strips < 2 × up(strips ÷ 2)"

fringe_mean = formula(
    "fringe_mean(strips, first, last, point)",
    f"((strips + 1) ÷ 2 × first + (strips − 1) ÷ 2 × last) ÷ strips if {_ODD} else (first + last) ÷ 2",
    about="Mean drop (mm) of a fringe whose drops grow in even steps from first to last; a point is 1, a slope 0.",
    source=_SERIES, valid="strips ≥ 1 and first > 0 and last > 0",
)  # fmt: skip

fringe_sum = formula(
    "fringe_sum(strips, first, last, point)",
    f"(strips + 1) ÷ 2 × first + (strips − 1) ÷ 2 × last if {_ODD} else strips × (first + last) ÷ 2",
    about="Strips (mm) of a fringe all together, which grow in even steps from first to last; a point is 1, a slope 0.",
    source=_SERIES, valid="strips ≥ 1 and first > 0 and last > 0",
)  # fmt: skip
