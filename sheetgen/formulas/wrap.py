"""A strip laid round a former: its length on the middle of its thickness, and its seam."""

from __future__ import annotations

from sheetgen.formulas.formula import formula

_BLANK = "supplier article, Measuring a ring blank: (inside diameter + thickness) × π"
_GEOMETRY = "plane geometry"


strip_round = formula(
    "strip_round(inside, thickness)", "π × (inside + thickness)",
    about="Strip (mm) that closes edge to edge round an inside (mm), bent no tighter than twice its thickness (mm).",
    source=_BLANK, valid="inside > 0 and thickness > 0",
)  # fmt: skip


inside_over = formula(
    "inside_over(former, turns, sheet)", "former + 2 × turns × sheet",
    about="Inside (mm) of what is wound over a former (mm) with turns of release sheet (mm).", source=_GEOMETRY,
    valid="former > 0 and sheet ≥ 0 and turns ≥ 0",
)  # fmt: skip

former_for = formula(
    "former_for(inside, turns, sheet)", "inside − 2 × turns × sheet",
    about="Former (mm) that leaves an inside (mm) under turns of release sheet (mm).", source=_GEOMETRY,
    valid="inside > 2 × turns × sheet",
)  # fmt: skip


hung_over = formula(
    "hung_over(radius, drop)", "2 × √(drop² − radius²) + radius × (π + 2 × asin(radius ÷ drop))",
    about="Strip (mm) over a rod, on the strip's own middle, its ends meeting so far (mm) under the rod's middle.",
    source="Wikipedia, Belt problem: an open belt whose second wheel is a point", valid="radius > 0 and drop > radius",
)  # fmt: skip
