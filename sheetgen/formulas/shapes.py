"""Outlines that compass and ruler draw: disc, oval, teardrop, leaf, regular polygon; an oval grown evenly."""

from __future__ import annotations

import math

from sheetgen.base.outline import Outline, Point
from sheetgen.base.pen import arc
from sheetgen.formulas.formula import formula

_GEOMETRY = "plane geometry"
_CORNERS = _GEOMETRY + ": the longest way from corner to corner"
_SIDES = "3 ≤ sides and sides ≤ 60 and sides = down(sides)"  # up to what a hand cannot tell from a disc

disc_area = formula(
    "disc_area(across)", "π ÷ 4 × across²", about="Area (mm²) of a disc (mm).", source=_GEOMETRY, valid="across > 0"
)

oval_area = formula(
    "oval_area(across, down)", "π ÷ 4 × across × down", about="Area (mm²) of an oval by its two widths (mm).",
    source=_GEOMETRY, valid="across > 0 and down > 0",
)  # fmt: skip

teardrop_area = formula(
    "teardrop_area(r, c)", "r × √(c² − r²) + r² × (π ÷ 2 + asin(r ÷ c))",
    about="Area (mm²) of a circle drawn out to a point: its radius, and from the tip to its middle (mm).",
    source=_GEOMETRY + ": a circle and its two tangents from the tip", valid="r > 0 and c > r",
)  # fmt: skip

teardrop_room = formula(
    "teardrop_room(r, c)", "(c + r) × r ÷ c",
    about="The largest circle (mm) half way down a teardrop, by its radius and from tip to middle (mm).",
    source=_GEOMETRY + ": how far a point on the axis is from a tangent", valid="r > 0 and c > r",
)  # fmt: skip

leaf_area = formula(
    "leaf_area(width, height)",
    "(width² + height²)² ÷ (8 × width²) × asin(2 × width × height ÷ (width² + height²))"
    " − height × (height² − width²) ÷ (4 × width)",
    about="Area (mm²) of a leaf of two equal arcs that meet in two points, by its sizes (mm).",
    source=_GEOMETRY + ": two equal arcs on one chord", valid="width > 0 and height > width",
)  # fmt: skip

leaf_radius = formula(
    "leaf_radius(width, height)", "(height² + width²) ÷ (4 × width)", about="Radius (mm) of a leaf's two arcs (mm).",
    source=_GEOMETRY + ": the arc over a chord", valid="width > 0 and height > width",
)  # fmt: skip

corner_circle = formula(
    "corner_circle(across, sides)", "across if sides = 2 × down(sides ÷ 2) else across ÷ cos(π ÷ (2 × sides))",
    about="Circle (mm) through the corners of a regular polygon that is so wide (mm) the widest way.", source=_CORNERS,
    valid=f"across > 0 and {_SIDES}",
)  # fmt: skip

polygon_area = formula(
    "polygon_area(circle, sides)", "sides ÷ 8 × circle² × sin(2 × π ÷ sides)",
    about="Area (mm²) of a regular polygon from the circle (mm) through its corners.", source=_GEOMETRY,
    valid=f"circle > 0 and {_SIDES}",
)  # fmt: skip

polygon_tall = formula(
    "polygon_tall(sides)",
    "1 if sides = 4 × down(sides ÷ 4) else cos(π ÷ sides) if sides = 2 × down(sides ÷ 2)"
    " else (1 + cos(π ÷ sides)) ÷ (2 × cos(π ÷ (2 × sides)))",
    about="Height of a regular polygon over its width, an odd one with a corner above, an even one with one aside.",
    source=_CORNERS, valid=_SIDES,
)  # fmt: skip

polygon_room = formula(
    "polygon_room(circle, sides)",
    "circle × cos(π ÷ sides) if sides = 2 × down(sides ÷ 2) else circle × cos(π ÷ sides) × (1 + cos(π ÷ sides)) ÷ 2",
    about="The largest circle (mm) half way down a regular polygon, by the circle (mm) through its corners.",
    source=_GEOMETRY + ": how far a point on the axis is from the nearest side", valid=f"circle > 0 and {_SIDES}",
)  # fmt: skip


def teardrop(width: float, height: float) -> Outline:
    """A teardrop of that size (mm), its tip above; taller than wide, or a circle."""
    r, c = width / 2, height - width / 2
    lean = math.degrees(math.asin(min(1.0, r / c)))
    return Outline(((r, 0.0), *arc((r, c), r, -lean, 180 + lean)))


def leaf(width: float, height: float) -> Outline:
    """A leaf of that size (mm), its tips above and below. CannotBe unless taller than wide."""
    radius = leaf_radius.pure(width, height)
    half = math.degrees(math.asin(min(1.0, height / (2 * radius))))
    right = arc((width - radius, height / 2), radius, -half, half)
    left = arc((radius, height / 2), radius, 180 - half, 180 + half)
    return Outline((*right, *left[1:-1]))


def polygon(across: float, sides: float) -> Outline:
    """A regular polygon `across` wide, the widest way; an odd one has a corner above. CannotBe for 2 sides."""
    circle = corner_circle.pure(across, sides)
    n = round(sides)
    start = 0.0 if n % 2 == 0 else -90.0
    return Outline(tuple(arc((0, 0), circle / 2, start, start + 360, n)[:-1])).placed()


def oval_grown(length: float, width: float, by: float, steps: int = 180) -> list[Point]:
    """Points on the line that runs `by` (mm) outside an oval round the origin."""
    points = []
    for i in range(steps):
        turn = 2 * math.pi * i / steps
        across, down = width * math.cos(turn), length * math.sin(turn)  # the normal, not yet of length 1
        reach = math.hypot(across, down)
        points.append(
            (length / 2 * math.cos(turn) + by * across / reach, width / 2 * math.sin(turn) + by * down / reach)
        )
    return points


def outline_of(shape: str, wide: float, tall: float, sides: float = 0) -> Outline | None:
    """The outline of a teardrop, leaf or polygon of a size (mm); None of any other shape."""
    if shape == "polygon":
        return polygon(wide, sides)
    drawn = {"teardrop": teardrop, "leaf": leaf}
    return drawn[shape](wide, tall) if shape in drawn else None
