"""An eye in the hole of a cap, in section: its legs spread under the cap and bedded in slip."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.pen import arc
from sheetgen.draw.cutaway import cut, laid, led, slip
from sheetgen.draw.gesture import Gesture
from sheetgen.parts.dome import Dome
from sheetgen.parts.hole import Hole
from sheetgen.parts.tube import Tube

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen, Point
    from sheetgen.draw.gesture import Scene

STEM = 0.8  # of its hole: how thick a stem is drawn, of which neither part nor stock says anything
LOOP = 2.0  # stems: the inside of its loop
BURIED = 0.72  # of the room under the cap: how far the legs and the slip reach


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece, hole, tube = scene.piece, scene.other(Hole), scene.other(Tube)
    middle, t = piece.usual(Dome.middle) * k, piece.usual(Dome.thickness) * k
    wide = 2 * math.asin(min(1.0, piece.usual(Dome.lean)))
    bored = (piece.usual(Dome.wet_disc) / 8 if hole is None else float(hole[Hole.drill_used])) * k
    inner, outer = middle - t / 2, middle + t / 2
    # The crown of the cap lies at (0, 0): its middle stands straight below.
    base = (0.0, outer)
    rim = math.degrees(wide)
    for side in (-1, 1):
        edge = math.degrees(math.asin(bored / 2 / middle))
        top = arc(base, outer, -90 + side * edge, -90 + side * rim, 32)
        low = arc(base, inner, -90 + side * edge, -90 + side * rim, 32)
        cut(pen, [*top, *reversed(low)], leans=side)
    foot = (inner * math.sin(wide), outer - inner * math.cos(wide))
    stem = bored * STEM
    leg, reach = stem / 2, foot[0] * BURIED

    def under(x: float, deep: float) -> Point:
        """A spot so far under the inside of the cap."""
        return x, outer - math.sqrt(inner**2 - x**2) + deep

    bed = [under(reach * (i / 24 * 2 - 1), 0.05) for i in range(25)]
    lowest = max(bed[12][1] + leg * 2.6, bed[0][1] + 0.4)
    heap = [(reach * math.cos(a), bed[0][1] + (lowest - bed[0][1] + leg) * math.sin(a) ** 0.7)
            for a in (math.pi * i / 24 for i in range(1, 24))]  # fmt: skip
    slip(pen, [*bed, *heap])
    r = (LOOP * stem + leg) / 2
    up = -stem * 0.9
    turn = arc((0, up - r * 1.25), r, 90 + 34, 90 + 326, 48)
    bend = t + leg
    half: list[Point] = [(-leg / 2, up + 0.3), (-leg / 2, bend * 0.7)]
    spread = [under(-leg * 1.6 - (reach * 0.86 - leg * 1.6) * i / 8, leg * 0.75) for i in range(9)]
    left = [*reversed(spread), (-leg * 0.62, bend * 0.92), *reversed(half)]
    right = [(-x, y) for x, y in reversed(left)]
    laid(pen, [*left, *turn, *right], leg)
    beside = foot[0] + t + 3.0
    if tube is not None:
        bore = float(tube[Tube.wet_inside]) / 2 * k
        wall = tube.usual(Tube.thickness) * k
        for x in (bore, bore + wall):
            for way in (-1, 1):
                pen.line([(way * x, foot[1] + 0.8), (way * x, foot[1] + 5.2)], "fold")
        led(pen, (bore + wall, foot[1] + 4.0), (beside, foot[1] + 5.0), "tube")
    led(pen, (r * 0.9, up - r * 1.6), (beside, up - r * 1.2), "loop")
    led(pen, (foot[0] * 0.75, outer - (inner + t * 0.6) * math.cos(wide * 0.72)), (beside, up + 3.4), "cap")
    led(pen, (reach * 0.6, bed[0][1] + 0.2), (beside, foot[1] + 0.2), "legs in slip")
    return (
        "A cap in section: the eye stands through its hole with room all round, its legs lie spread under the cap, "
        "inside the place of the tube, and are buried in slip"
    )


GESTURE = Gesture("eye in a cap", _draw, most=4)
