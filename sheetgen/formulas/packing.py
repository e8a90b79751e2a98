"""The smallest round bundle of equal round cords."""

from __future__ import annotations

import math

from sheetgen.base.interval import GRAIN, floor
from sheetgen.base.trouble import CannotBe
from sheetgen.facts import fibre as facts
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula, numeric

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


@numeric(
    "bundle ÷ cord, closed forms", source=_PACKING, units=" -> ",
    valid="1 to 19; 12 and 14 to 17 take the next larger bundle",
)  # fmt: skip
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


bundle_of_many = formula(
    "cords_bundled(cords, cord, fill)", "cord × √(cords ÷ fill)",
    about="Diameter (mm) of a bundle of many cords (mm) that fill a share of it.",
    source="areas; fill is common practice, 0.5 to 0.75 for yarn",
    valid="cords > 0 and cord > 0 and fill > 0 and fill ≤ 1",
)  # fmt: skip


bundle_of_strips = formula(
    "strips_bundled(strips, width, thickness, fill)", "√(4 × strips × width × thickness ÷ (π × fill))",
    about="Diameter (mm) of a bundle of flat strips (mm) that fill a share of it.",
    source="areas; fill is common practice",
    valid="strips > 0 and width > 0 and thickness > 0 and fill > 0 and fill ≤ 1",
)  # fmt: skip

strips_in = formula(
    "strips_in(inside, width, thickness, fill)", "down(π × max(inside, 0)² × fill ÷ (4 × width × thickness))",
    about="The most flat strips (mm) whose bundle goes into an inside (mm).", source="areas; fill is common practice",
    valid="width > 0 and thickness > 0 and fill > 0 and fill ≤ 1",
)  # fmt: skip


@numeric("the most cords whose bundle is no wider than the inside", source=_PACKING, units=", -> ")
def cords_in(inside: float, fill: float) -> float:
    """The most cords that go into an inside, told in cords across; from 20 on by the share they fill. 0 for none."""
    guard.share(fill, "the fill of a bundle", "fill", zero=False)
    most = floor(max(0.0, inside) ** 2 * fill)
    if most > MOST_KNOWN:
        return most
    return max((n for n in range(1, MOST_KNOWN + 1) if bundle_ratio.pure(n) <= inside + GRAIN), default=0)
