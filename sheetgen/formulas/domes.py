"""Domes from flat discs: the blank, the ball it belongs to, and holes. Sizes are of the middle of the sheet."""

from __future__ import annotations

from sheetgen.formulas.formula import formula

_ATKINS = "Atkins, Practical Sheet and Plate Metal Work: disc radius = hypotenuse of half-diameter and depth"
_LAMBERT = "Lambert's equal-area projection"
_GEOMETRY = "solid geometry"


cap_blank = formula(
    "cap_blank(across, rise)", "√(across² + 4 × rise²)",
    about="Disc (mm) of the area of a dome, rim to rim and rim to crown in mm; to half a ball, no thinning.",
    source=_ATKINS, valid="across > 0 and rise ≥ 0 and rise ≤ across ÷ 2",
)  # fmt: skip

cap_radius = formula(
    "cap_radius(across, rise)", "(across² ÷ 4 + rise²) ÷ (2 × rise)",
    about="Radius (mm) of the ball that a dome is part of, rim to rim and rim to crown in mm.",
    source=_GEOMETRY, valid="across > 0 and rise > 0 and rise ≤ across ÷ 2",
)  # fmt: skip


hole_punched = formula(
    "hole_punched(hole, radius)", "4 × radius × sin(asin(hole ÷ (2 × radius)) ÷ 2)",
    about="Hole (mm) to punch in the flat disc for a hole in the crown of a dome of a radius (mm); it keeps its area.",
    source=_LAMBERT, valid="hole > 0 and hole ≤ 2 × radius",
)  # fmt: skip

hole_stretched = formula(
    "hole_stretched(hole, across, rise)", "hole ÷ √(1 + 4 × rise² ÷ across²)",
    about="Hole (mm) to punch for a wanted hole if the rim of the dome (mm) is held and its sheet stretches.",
    source="uniform stretch with the rim held, a bounding model",
    valid="hole > 0 and hole < across and rise ≥ 0 and rise ≤ across ÷ 2",
)  # fmt: skip


middle_of_sheet = formula(
    "middle_of_sheet(outside, radius, thickness)", "outside × (radius − thickness ÷ 2) ÷ radius",
    about="Width or rise on the sheet's middle of a dome with its rim cut square, from one of its outside; all in mm.",
    source=_GEOMETRY, valid="outside > 0 and thickness > 0 and radius > thickness ÷ 2",
)  # fmt: skip
