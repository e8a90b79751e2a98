"""A ring led through two holes of a cap, in section: its seam is turned under and buried in clay."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.pen import arc
from sheetgen.draw.cutaway import cut, laid, led, slip, stroke
from sheetgen.draw.gesture import Gesture
from sheetgen.parts.hole import Hole
from sheetgen.parts.jump_ring import JumpRing
from sheetgen.parts.shape import CutShape, cut_size

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

LUMP = 1.0  # mm: by how much the ball of clay is smaller than the ring is inside, and how far wire is hidden


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece, hole, cap = scene.piece, scene.other(Hole), scene.other(CutShape)
    inside, wire = piece.usual(JumpRing.inner), piece[JumpRing.wire].thickness * k
    r = (inside * k + wire) / 2
    t = (cap.usual(CutShape.thickness) if cap is not None else 1.0) * k
    wide = (cut_size(cap)[0] if cap is not None else 2.6 * inside) * k
    bored = (float(hole[Hole.drill_used]) if hole is not None else 1.6 * wire / k) * k
    at = wide / 2 - float(hole[Hole.wet_middle]) * k if hole is not None else r
    # The lump: between wire and cap, and on round the wire at the seam.
    low = t / 2 + 0.05
    half = (inside - LUMP) / 2 * k
    bottom = r + wire / 2 + LUMP * k * 0.6
    lump = [(-half * 0.86, low), *((half * 1.15 * math.cos(a), low + (bottom - low) * math.sin(a) ** 0.8)
             for a in (math.pi - math.pi * i / 32 for i in range(33))), (half * 0.86, low)]  # fmt: skip
    slip(pen, lump)
    # What of the ring stands out of the clay is seen; the rest lies behind it, with the seam in its middle.
    sunk = math.degrees(math.asin(min(1.0, low / r))) + 14
    laid(pen, arc((0, 0), r, 180 - sunk, 360 + sunk, 96), wire, begins=False, ends=False)
    for edge in (-wire / 2, wire / 2):
        pen.line(arc((0, 0), r + edge, sunk, 180 - sunk, 48), "fold")
    stroke(pen, (0, r - wire / 2), (0, r + wire / 2))
    for left, right in ((-wide / 2, -at - bored / 2), (-at + bored / 2, at - bored / 2), (at + bored / 2, wide / 2)):
        cut(pen, [(left, -t / 2), (right, -t / 2), (right, t / 2), (left, t / 2)])
    beside = wide / 2 + 2.6
    led(pen, (r * 0.75, -r * 0.75), (beside, -r * 0.62), "eye")
    led(pen, (wide / 2, 0), (beside, 1.0), "cap")
    led(pen, (half * 0.85, (low + bottom) / 2), (beside, t / 2 + 4.6), "clay")
    led(pen, (0.2, r), (beside, max(bottom, t / 2 + 8.4) + 0.6), "seam")
    return (
        "A cap in section: the eye goes down through one hole and up through the other with room in both; its seam is "
        "turned under the cap and buried in a ball of clay, which fills the room between wire and cap"
    )


GESTURE = Gesture("eye through a cap", _draw, most=3)
