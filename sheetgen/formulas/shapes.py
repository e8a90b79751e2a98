"""Outlines that compass and ruler draw: teardrop, leaf, regular polygon; an oval grown evenly; room round a hole."""

from __future__ import annotations

import math
from itertools import pairwise

from sheetgen.base.outline import Outline, Point
from sheetgen.base.pen import arc
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula
from sheetgen.formulas.loops import ellipse_perimeter

_GEOMETRY = "plane geometry"
_STEINER = "Steiner's formula for parallel curves"


def _taller(width: float, height: float, what: str) -> None:
    guard.above_zero(width, f"a {what}'s width", "across")
    guard.above_zero(height, f"a {what}'s height", "down")
    if not height > width:
        raise CannotBe(
            f"a {what} {guard.shown(width)} wide is taller than {guard.shown(height)}",
            help=f"a height of more than {guard.shown(width)}",
            field="down",
        )


def _sides(sides: float) -> None:
    if not 3 <= sides <= 60 or sides != round(sides):  # noqa: PLR2004 - from a triangle to what a hand cannot tell from a disc
        raise CannotBe(f"no polygon has {guard.shown(sides, 'sides')}", help="whole sides, 3 to 60", field="sides")


@formula(
    "area = r × √(c² − r²) + r² × (π ÷ 2 + asin(r ÷ c)), r = width ÷ 2, c = height − r",
    source=_GEOMETRY + ": a circle and its two tangents from the tip",
    valid="height > width",
)
def teardrop_area(width: float, height: float) -> float:
    """Area (mm²) of a circle drawn out to a point by straight lines; mm. CannotBe unless taller than wide."""
    _taller(width, height, "teardrop")
    r, c = width / 2, height - width / 2
    return r * math.sqrt(c * c - r * r) + r * r * (math.pi / 2 + math.asin(r / c))


@formula(
    "area = 2 × R² × asin(height ÷ (2 × R)) − height × (R − width ÷ 2), R = (height² + width²) ÷ (4 × width)",
    source=_GEOMETRY + ": two equal arcs on one chord",
    valid="height > width",
)
def leaf_area(width: float, height: float) -> float:
    """Area (mm²) of a leaf of two equal arcs that meet in two points; mm. CannotBe unless taller than wide."""
    _taller(width, height, "leaf")
    radius = leaf_radius.pure(width, height)
    return 2 * radius**2 * math.asin(min(1.0, height / (2 * radius))) - height * (radius - width / 2)


@formula(
    "radius = (height² + width²) ÷ (4 × width)", source=_GEOMETRY + ": the arc over a chord", valid="height > width"
)
def leaf_radius(width: float, height: float) -> float:
    """Radius (mm) of the two arcs of a leaf; mm. CannotBe unless taller than wide."""
    _taller(width, height, "leaf")
    return (height**2 + width**2) / (4 * width)


@formula(
    "circle = widest; of an odd number of sides, widest ÷ cos(π ÷ (2 × sides))",
    source=_GEOMETRY + ": the longest way from corner to corner",
    valid="3 sides or more",
)
def corner_circle(across: float, sides: float) -> float:
    """Circle (mm) through the corners of a regular polygon that is `across` wide, the widest way. CannotBe for 2."""
    guard.above_zero(across, "a polygon's width", "across")
    _sides(sides)
    return across if sides % 2 == 0 else across / math.cos(math.pi / (2 * sides))


@formula("area = sides ÷ 8 × circle² × sin(2 × π ÷ sides)", source=_GEOMETRY, valid="3 sides or more")
def polygon_area(circle: float, sides: float) -> float:
    """Area (mm²) of a regular polygon from the circle (mm) through its corners. CannotBe for less than 3 sides."""
    guard.above_zero(circle, "a polygon's circle", "across")
    _sides(sides)
    return sides / 8 * circle**2 * math.sin(2 * math.pi / sides)


@formula("area = π ÷ 4 × length × width + perimeter × by + π × by²", source=_STEINER, valid="grown evenly all round")
def oval_grown_area(length: float, width: float, perimeter: float, by: float) -> float:
    """Area (mm²) of an oval with an even edge round it; mm. CannotBe for sizes of 0 or less."""
    guard.above_zero(length, "an oval's length", "across")
    guard.above_zero(width, "an oval's width", "down")
    guard.above_zero(perimeter, "a perimeter", "perimeter")
    guard.not_below_zero(by, "an edge", "rim")
    return math.pi / 4 * length * width + perimeter * by + math.pi * by**2


def teardrop(width: float, height: float) -> Outline:
    """A teardrop of that size (mm), its tip above. CannotBe unless taller than wide."""
    _taller(width, height, "teardrop")
    r, c = width / 2, height - width / 2
    lean = math.degrees(math.asin(r / c))
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


def room_round(outline: Outline, centre: Point) -> float:
    """The largest circle (diameter, mm) round a point that stays inside an outline; 0 if the point is outside."""
    inside, nearest = False, math.inf
    x, y = centre
    for (x1, y1), (x2, y2) in pairwise((*outline.points, outline.points[0])):
        if (y1 > y) != (y2 > y) and x < x1 + (y - y1) / (y2 - y1) * (x2 - x1):
            inside = not inside
        long = (x2 - x1) ** 2 + (y2 - y1) ** 2
        along = max(0.0, min(1.0, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / long)) if long else 0.0
        nearest = min(nearest, math.hypot(x1 + along * (x2 - x1) - x, y1 + along * (y2 - y1) - y))
    return 2 * nearest if inside else 0.0


def outline_of(shape: str, wide: float, tall: float, sides: float = 0) -> Outline | None:
    """The outline of a teardrop, leaf or polygon of a size (mm); None of any other shape."""
    if shape == "polygon":
        return polygon(wide, sides)
    drawn = {"teardrop": teardrop, "leaf": leaf}
    return drawn[shape](wide, tall) if shape in drawn else None


def area_of(shape: str, wide: float, tall: float, sides: float = 0) -> tuple[float, str]:
    """Area (mm²) of a disc, rectangle, oval, teardrop, leaf or polygon, and how a pencil works it."""
    a, b, n = f"{wide:.6g}", f"{tall:.6g}", f"{sides:g}"
    if shape == "disc":
        return math.pi / 4 * wide**2, f"π ÷ 4 × {a}²"
    if shape == "polygon":
        circle = a if sides % 2 == 0 else f"({a} ÷ cos(π ÷ (2 × {n})))"
        area = polygon_area.pure(corner_circle.pure(wide, sides), sides)
        return area, f"{n} ÷ 8 × {circle}² × sin(2 × π ÷ {n})"
    if shape == "teardrop":
        r, c = f"{wide / 2:.6g}", f"{tall - wide / 2:.6g}"
        return teardrop_area.pure(wide, tall), f"{r} × √({c}² − {r}²) + {r}² × (π ÷ 2 + asin({r} ÷ {c}))"
    if shape == "leaf":
        arcs = f"({a}² + {b}²)² ÷ (8 × {a}²) × asin(2 × {a} × {b} ÷ ({a}² + {b}²))"
        return leaf_area.pure(wide, tall), f"{arcs} − {b} × ({b}² − {a}²) ÷ (4 × {a})"
    if shape == "oval":
        return math.pi / 4 * wide * tall, f"π ÷ 4 × {a} × {b}"
    return wide * tall, f"{a} × {b}"


def edge_of(shape: str, long: float, narrow: float) -> tuple[float, str]:
    """Perimeter (mm) of a disc, rectangle or oval, longer side first, and how a pencil works it."""
    a, b = f"{long:.6g}", f"{narrow:.6g}"
    if shape == "disc":
        return math.pi * long, f"π × {a}"
    if shape == "rectangle":
        return 2 * (long + narrow), f"2 × ({a} + {b})"
    h = f"({a} − {b})² ÷ ({a} + {b})²"
    # Ramanujan's second form, which a pencil can follow; the figure itself is worked exactly.
    worked = f"π × ({a} + {b}) ÷ 2 × (1 + 3 × {h} ÷ (10 + √(4 − 3 × {h})))"
    return ellipse_perimeter.pure(long, narrow), worked
