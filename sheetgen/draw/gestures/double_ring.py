"""A ring of two turns, spread and turned on as a key goes on its ring."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.draw.gesture import LABEL, LINE, Gesture
from sheetgen.draw.woven import Spot, Strand, woven
from sheetgen.parts.jump_ring import JumpRing

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

FLAT = 0.34  # how low the ring is seen lying
TURNS, RUNS = 2, 60  # runs in each turn


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece = scene.piece
    d, r = piece[JumpRing.wire].thickness * k, (piece.usual(JumpRing.inner) / 2) * k
    r += d / 2
    spread = 2.1 * d

    # The turns lie on each other behind, and are spread where what goes on comes between them, in front.
    path: list[Spot] = []
    for i in range(TURNS * RUNS + 1):
        turn = i / RUNS
        angle = 2 * math.pi * turn
        near = max(0.0, math.sin(angle)) if turn > 1 else 0.0
        rise = -d * (turn - 0.5) - (spread - d) * near
        path.append((r * math.cos(angle), FLAT * r * math.sin(angle) + rise, math.sin(angle) + turn * 0.01))
    # What it goes on: a ring that stands, its wire between the two turns in front.
    ring: list[Spot] = [
        (d * 1.1 * math.cos(a), FLAT * r - 0.9 * d + 2.4 * d + 2.2 * d * math.sin(a), 0.5 + 0.55 * math.cos(a - 0.6))
        for a in (2 * math.pi * i / 48 for i in range(49))
    ]
    woven(pen, [Strand(path, d), Strand(ring, d * 0.8, begins=False, ends=False)], stretch=3)
    way = [((r + d + 0.6) * math.cos(a), (FLAT * r + d) * math.sin(a) - 3.2 * d)
           for a in (math.radians(205 + 5 * i) for i in range(10))]  # fmt: skip
    pen.line(way[:-1], "thin")
    pen.arrow(way[-1], (way[-1][0] - way[-2][0], way[-1][1] - way[-2][1]))
    low = FLAT * r + 4.4 * d + LABEL
    pen.text((0, low), "spread a little,", size=LABEL, anchor="middle")
    pen.text((0, low + LINE), "turn it on, twice round", size=LABEL, anchor="middle")
    return (
        "A ring of two turns: its turns are spread a little, what hangs in it goes between them, and the ring is turned"
        " until both turns have gone through"
    )


GESTURE = Gesture("double ring", _draw, most=3)
