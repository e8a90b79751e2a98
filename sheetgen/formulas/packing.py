"""The smallest round bundle of equal round cords."""

from __future__ import annotations

import math

from sheetgen.base.trouble import CannotBe
from sheetgen.facts import fibre as facts
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula

_PACKING = "Wikipedia, Circle packing in a circle"

# Closed forms of the enclosing circle's radius, cords of radius 1. 10 alone is a printed number.
_RADIUS: dict[int, float] = {
    1: 1.0,
    2: 2.0,
    3: 1 + 2 / math.sqrt(3),
    4: 1 + math.sqrt(2),
    5: 1 + math.sqrt(2 + 2 / math.sqrt(5)),
    6: 3.0,
    7: 3.0,
    8: 1 + 1 / math.sin(math.pi / 7),
    9: 1 + math.sqrt(4 + 2 * math.sqrt(2)),
    10: facts.PACK_10,
    11: 1 + 1 / math.sin(math.pi / 9),
    13: 2 + math.sqrt(5),
    18: 1 + math.sqrt(2) + math.sqrt(6),
    19: 1 + math.sqrt(2) + math.sqrt(6),
}
MOST_KNOWN = max(_RADIUS)


@formula("bundle ÷ cord, closed forms", source=_PACKING, valid="1 to 19; 12 and 14 to 17 take the next larger bundle")
def bundle_ratio(n: float) -> float:
    """Diameter of the smallest bundle of n equal cords over one cord. CannotBe for more than 19 or less than 1."""
    count = round(n) if math.isfinite(n) else 0
    if count != n or not 1 <= count <= MOST_KNOWN:
        raise CannotBe(
            f"no exact bundle is known here for {guard.shown(n, 'cords')}",
            help=f"whole cords, 1 to {MOST_KNOWN}; more go by their fill",
            field="count",
        )
    return _RADIUS[min(known for known in _RADIUS if known >= count)]


@formula(
    "bundle = cord × √(cords ÷ fill)", source="areas; fill is common practice, 0.5 to 0.75 for yarn", valid="many cords"
)
def bundle_of_many(n: float, cord: float, fill: float) -> float:
    """Diameter (mm) of a bundle of many cords (mm) that fill a share of it. CannotBe for a share off 0 to 1."""
    guard.above_zero(n, "a number of cords", "count", "")
    guard.above_zero(cord, "a cord", "cord")
    guard.share(fill, "the fill of a bundle", "fill", zero=False)
    return cord * math.sqrt(n / fill)


@formula("bundle = cord × bundle ratio to 19 cords, then cord × √(cords ÷ fill)", source=_PACKING)
def bundle_diameter(n: float, cord: float, fill: float) -> float:
    """Diameter (mm) of a round bundle of n cords (mm); `fill` counts from 20 cords on. CannotBe as its parts."""
    guard.above_zero(cord, "a cord", "cord")
    if n <= MOST_KNOWN:
        return cord * bundle_ratio.pure(n)
    return bundle_of_many.pure(n, cord, fill)


@formula("bundle = √(4 × strips × width × thickness ÷ (π × fill))", source="areas; fill is common practice")
def bundle_of_strips(n: float, width: float, thickness: float, fill: float) -> float:
    """Diameter (mm) of a bundle of flat strips (mm). CannotBe for a share off 0 to 1."""
    guard.above_zero(n, "a number of strips", "count", "")
    guard.above_zero(width, "a strip's width", "width")
    guard.above_zero(thickness, "a strip's thickness", "thickness")
    guard.share(fill, "the fill of a bundle", "fill", zero=False)
    return math.sqrt(4 * n * width * thickness / (math.pi * fill))


@formula("share filled = cords ÷ ratio²", source=_PACKING)
def bundle_fill(n: float) -> float:
    """Share of the smallest bundle that n equal cords fill. CannotBe as bundle_ratio."""
    return n / bundle_ratio.pure(n) ** 2
