"""A surgeon's knot: the ends go twice round each other, and then once round the other way."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.draw.cutaway import led
from sheetgen.draw.gesture import Gesture
from sheetgen.draw.woven import Spot, Strand, woven
from sheetgen.parts.bead_round import BeadRound

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

FIRST, SECOND = 5, 3
"""Crossings of a double turn and of a single one: an odd number, so that each end comes out on the other side."""
WAYS = 1, -1
"""Which strand crosses over first: the second turn goes the other way."""
STEPS = 15  # runs from one crossing to the next


def twist(half: float, reach: float, level: float, crossings: int, way: int) -> tuple[list[Spot], list[Spot]]:
    """Two strands round each other, from left and from right below; each comes out above on the other side.

    `half` is how long the twist is to each side, `reach` how far a strand swings out, `way` which crosses over first.
    """
    n = crossings * STEPS
    angles = [math.pi * crossings * i / n for i in range(n + 1)]
    xs = [half * (2 * i / n - 1) for i in range(n + 1)]
    one = [(x, level + reach * math.cos(a), way * math.sin(a)) for x, a in zip(xs, angles, strict=True)]
    other = [(x, level - reach * math.cos(a), -way * math.sin(a)) for x, a in zip(xs, angles, strict=True)]
    return one, list(reversed(other))


def _round(a: Spot, b: Spot, out: float) -> list[Spot]:
    """Half a turn outwards from one level to another."""
    middle, r = (a[1] + b[1]) / 2, (a[1] - b[1]) / 2
    found: list[Spot] = []
    for i in range(1, STEPS):
        turn = math.pi * i / STEPS
        across = a[0] + (b[0] - a[0]) * i / STEPS
        found.append((across + out * math.sin(turn), middle + r * math.cos(turn), 0.0))
    return found


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece = scene.piece
    thread = piece[BeadRound.thread]
    cord = (thread.thickness if thread is not None else 0.7) * k
    reach = cord * 0.95
    low, up = twist(cord * 4.6, reach, 0.0, FIRST, WAYS[0])
    level = -cord * 5.6
    # The second turn goes the other way: the end that lay over goes under.
    left, right = twist(cord * 2.9, reach, level, SECOND, WAYS[1])
    wide = cord * 2.6
    standing = cord * 4.6 + 6.0
    one = [(-standing, low[0][1] + 1.0, 0.0), *low, *_round(low[-1], right[0], wide), *right,
           (right[-1][0] - 5.0, right[-1][1] - 2.4, 0.0)]  # fmt: skip
    two = [(standing, up[0][1] + 1.0, 0.0), *up, *_round(up[-1], left[0], -wide), *left,
           (left[-1][0] + 5.0, left[-1][1] - 2.4, 0.0)]  # fmt: skip
    woven(pen, [Strand(one, cord, begins=False), Strand(two, cord, begins=False)], stretch=3)
    x = standing + 1.0
    led(pen, (left[-1][0], level - reach), (x - 4.0, level - reach - 1.6), ["2 once, the", "other way"])
    led(pen, (cord * 4.6, reach * 0.4), (x, 2.0), "1 twice")
    return (
        "A surgeon's knot, loose: the two ends are led twice round each other, drawn up, and led once round each "
        "other the other way"
    )


GESTURE = Gesture("surgeon's knot", _draw, most=3)
