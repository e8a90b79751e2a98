"""Jump rings, round and oval: wire, coil, kerf. Lengths run along the middle of the wire."""

from __future__ import annotations

import math

from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import guard
from sheetgen.formulas.formula import formula, numeric

_RING = "metalsmiths' forum: length of material = (inside diameter + thickness) × π"
_AGM = "exact: arithmetic-geometric mean, Abramowitz & Stegun ch. 17 as remembered"
_STEINER = "Steiner's formula for parallel curves"
_GEOMETRY = "plane geometry"


def _ring(inside: float, d: float) -> None:
    guard.above_zero(inside, "the inside of a ring", "inside")
    guard.above_zero(d, "a wire", "wire")


def _oval(length: float, width: float) -> None:
    guard.above_zero(length, "the length of an oval", "length")
    guard.above_zero(width, "the width of an oval", "width")
    if width > length:
        raise CannotBe(
            f"an oval {guard.shown(length)} long cannot be {guard.shown(width)} wide",
            help=f"the longer side first: {guard.shown(width)} long, {guard.shown(length)} wide",
            field="width",
        )


ring_wire = formula(
    "ring_wire(inside, wire)", "π × (inside + wire)", about="Wire (mm) in one round ring, from its inside (mm).",
    source=_RING, valid="inside > 0 and wire > 0",
)  # fmt: skip


ring_outside = formula(
    "ring_outside(inside, wire)", "inside + 2 × wire", about="Outside (mm) of a ring, from its inside (mm).",
    source=_GEOMETRY, valid="inside > 0 and wire > 0",
)  # fmt: skip


aspect_ratio = formula(
    "aspect(inside, wire)", "inside ÷ wire",
    about="Inside over wire thickness, both mm: what decides whether a weave fits.",
    source="craft magazine's article on aspect ratio, 2017", valid="inside > 0 and wire > 0",
)  # fmt: skip


@numeric("perimeter of an ellipse by the arithmetic-geometric mean of its half axes", source=_AGM, units="mm, mm -> mm")
def ellipse_perimeter(length: float, width: float) -> float:
    """Perimeter (mm) of an ellipse from its two axes (mm), longer first. CannotBe if the wider way round."""
    _oval(length, width)
    a, g = length / 2, width / 2
    weight, missing = 0.5, 0.5 * (a * a - g * g)
    square = a * a
    while abs(a - g) > 1e-15 * a:
        half_gap = (a - g) / 2
        a, g = (a + g) / 2, math.sqrt(a * g)
        weight *= 2
        missing += weight * half_gap**2
    return 2 * math.pi * (square - missing) / a


oval_wire_ellipse = formula(
    "ellipse_wire(length, width, wire)", "ellipse_perimeter(length, width) + π × wire",
    about="Wire (mm) in a ring whose inside (mm) is an ellipse.", source=_STEINER, valid="wire > 0",
)  # fmt: skip


oval_wire_stadium = formula(
    "oval_wire(length, width, wire)", "2 × (length − width) + π × (width + wire)",
    about="Wire (mm) in a ring whose inside (mm) has straight sides and round ends.", source=_STEINER,
    valid="width > 0 and width ≤ length and wire > 0",
)  # fmt: skip


closed_inside = formula(
    "closed_inside(inside, kerf)", "inside − kerf ÷ π",
    about="Inside (mm) of a ring whose saw cut (mm) is closed tight.", source=_GEOMETRY,
    valid="kerf ≥ 0 and kerf < π × inside",
)  # fmt: skip


rings_from_coil = formula(
    "rings_from(coil, wire)", "down(coil ÷ wire)", about="How many rings a close coil (mm) gives.",
    source="a close coil: one wire thickness a turn", valid="coil ≥ 0 and wire > 0",
)  # fmt: skip


coil_for_rings = formula(
    "coil_for(rings, wire)", "rings × wire", about="Length (mm) of a close coil of so many rings.",
    source="a close coil: one wire thickness a turn", valid="rings ≥ 0 and wire > 0",
)  # fmt: skip


former_before_springback = formula(
    "rod_for(inside, springback)", "inside ÷ (1 + springback)",
    about="Rod (mm) that leaves an inside (mm) when the coil opens by a measured share.",
    source="input: measured on a trial coil", valid="inside > 0 and 0 ≤ springback and springback < 1",
)  # fmt: skip


@numeric(
    "the most that two groups of rings through each other stand apart from centre to centre, found by halving",
    source="solid geometry: the middles of two touching wires are one wire apart; rings lie flat, side by side",
    units="mm, mm,  -> mm",
)
def linked_pitch(inside: float, d: float, together: float) -> float:
    """What a taut chain of rings (mm) gains by a link of so many side by side. CannotBe if they do not pass."""
    _ring(inside, d)
    r, aside = (inside + d) / 2, (together - 1) * d / 2

    def gap(apart: float, turn: float) -> float:
        """From the outermost ring of one group, level with its plane, to a point of the next group's."""
        return math.hypot(r - math.hypot(apart - r * math.cos(turn), aside), r * math.sin(turn) - aside)

    def least(apart: float) -> float:
        low, high = 0.0, math.pi / 2
        for _ in range(60):
            a, b = (2 * low + high) / 3, (low + 2 * high) / 3
            low, high = (low, b) if gap(apart, a) < gap(apart, b) else (a, high)
        return gap(apart, low)

    near, far = r, 2 * r
    if not 0 <= aside < r or least(near) < d:
        raise CannotBe(
            f"{guard.shown(together, 'rings')} side by side do not go through rings of {guard.shown(inside)} inside",
            help="fewer rings together, or wider ones",
            field="together",
        )
    for _ in range(60):
        middle = (near + far) / 2
        near, far = (middle, far) if least(middle) > d else (near, middle)
    return far
