"""Stones scattered over an area: how many cover a share of it, and how many can be there at most."""

from __future__ import annotations

from sheetgen.formulas import loops  # noqa: F401 - an ellipse's perimeter is called here by name
from sheetgen.formulas.formula import formula

_GROEMER = "Groemer's theorem of 1960, as MathWorld prints it, put for the area that the centres may take"
_STEINER = "Steiner's formula for parallel curves"

stones_for_share = formula(
    "stones_for_share(area, share, stone)", "down(share × area ÷ (π ÷ 4 × stone²))",
    about="Whole round stones (mm) that cover no more than a share of an area (mm²).", source="areas",
    valid="area ≥ 0 and share ≥ 0 and share ≤ 1 and stone > 0",
)  # fmt: skip

share_covered = formula(
    "share_covered(area, stones, stone)", "stones × π ÷ 4 × stone² ÷ area",
    about="The share of an area (mm²) that so many round stones (mm) cover.", source="areas",
    valid="area > 0 and stones ≥ 0 and stone > 0",
)  # fmt: skip

most_scattered = formula(
    "most_scattered(area, perimeter, spacing)",
    "down(2 × area ÷ (√(3) × spacing²) + perimeter ÷ (2 × spacing) + 1)",
    about="No more centres than this stand `spacing` (mm) apart on an area without hollows (mm², mm round).",
    source=_GROEMER, valid="area ≥ 0 and perimeter ≥ 0 and spacing > 0",
)  # fmt: skip

oval_inside = formula(
    "oval_inside(long, narrow, by)", "π ÷ 4 × long × narrow − by × ellipse_perimeter(long, narrow) + π × by²",
    about="Area (mm²) of an oval inside an even edge (mm), while no bend of it is tighter than that edge.",
    source=_STEINER, valid="by ≥ 0 and narrow > 0 and long ≥ narrow and by × long ≤ narrow² ÷ 2",
)  # fmt: skip

oval_inside_edge = formula(
    "oval_inside_edge(long, narrow, by)", "ellipse_perimeter(long, narrow) − 2 × π × by",
    about="Perimeter (mm) of an oval inside an even edge (mm), while no bend of it is tighter than that edge.",
    source=_STEINER, valid="by ≥ 0 and narrow > 0 and long ≥ narrow and by × long ≤ narrow² ÷ 2",
)  # fmt: skip
