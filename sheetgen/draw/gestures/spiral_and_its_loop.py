"""A flat spiral: pushed round with its straight end left, then that end bent upright and turned to a loop."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.pen import arc
from sheetgen.draw.cutaway import high, torn
from sheetgen.draw.gesture import Gesture, side_by_side
from sheetgen.draw.pens import Turned
from sheetgen.draw.woven import Strand, woven
from sheetgen.parts.flat_spiral import FlatSpiral, middle

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen, Point
    from sheetgen.draw.gesture import Scene

SHOWN = 0.5  # of the straight end: what is drawn of it before it is bent
WHOLE = 9999  # runs: a wire that crosses nothing is drawn in one


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece, stem = scene.piece, scene.figure("stem")
    d, across, tail = piece[FlatSpiral.wire].thickness, piece[FlatSpiral.wide], piece.usual(FlatSpiral.tail)
    # Turned so that the outer end lies on top: it runs to the right there.
    curl = [(y * k, -x * k) for x, y in middle(piece)]
    end, thick = curl[-1], d * k
    way = math.copysign(1.0, end[0] - curl[-2][0])
    reach = max(abs(x) for x, _ in curl) + thick / 2

    def left_straight(on: Pen) -> None:
        far = end[0] + way * tail * SHOWN * k
        path = [*curl, (far, end[1])]
        woven(on, [Strand([(x, y, 0.0) for x, y in path], thick, ends=False)], stretch=WHOLE)
        torn(Turned(on), (end[1], -far), thick + 1.6)

    def looped(on: Pen) -> None:
        stands = float(stem) if stem is not None else tail / 3
        jaw = max(d, (tail - stands) / math.pi - d)
        r, bend = (jaw + d) / 2 * k, thick * 0.6
        x, top = end[0] + way * bend, end[1] - stands * k
        corner: list[Point] = [(end[0] + way * bend * math.sin(a), end[1] - bend * (1 - math.cos(a)))
                               for a in (i * math.pi / 16 for i in range(1, 9))]  # fmt: skip
        # The loop stands over the stem: its neck leans out and it comes back to the neck.
        back = 58.0
        centre = (x, top - r * (1 + math.cos(math.radians(back))) * 0.6)
        loop = arc(centre, r, 90 + back, 90 + back + 360 - back - 22, 48)
        path = [*curl, *corner, (x, top), *loop]
        woven(on, [Strand([(a, b, 0.0) for a, b in path], thick)], stretch=WHOLE)
        if stem is not None:
            high(on, -way * -(reach + 1.5), (end[1], top), stem.words, to=x + way * thick)

    side_by_side(pen, [(left_straight, ["1 push round"]), (looped, ["2 up, loop"])], gap=4.0)
    left = f", {stem.told} of it left under the loop" if stem is not None else ""
    return (
        f"A flat spiral, {across.told} across, in two moves: the wire pushed round flat with its end left straight; "
        f"that end bent upright, away from the middle, and turned to a loop{left}"
    )


GESTURE = Gesture("spiral and its loop", _draw, most=3)
