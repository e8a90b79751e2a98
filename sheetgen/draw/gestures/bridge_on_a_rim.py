"""A bridge laid on the rim of a dome, seen from behind: how far its hole is from the top of the rim."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.pen import Moved
from sheetgen.draw.cutaway import high, led, slip
from sheetgen.draw.gesture import Gesture
from sheetgen.draw.pens import Scaled
from sheetgen.parts.dome import Dome
from sheetgen.parts.shape import CutShape

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

FILLET = 1.8  # mm: how wide the slip is drawn beside an end


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece, dome, below = scene.piece, scene.other(Dome), scene.wanted("hole_below")
    [flat] = piece.flat
    around = flat.extent
    across = float(dome[Dome.wet_across]) if dome is not None else around.width * 1.1
    thick = dome.usual(Dome.thickness) if dome is not None else piece.usual(CutShape.thickness)
    r = across / 2 * k
    inside = r - thick * k
    hole = float(below) * k - r  # the middle of the bridge's hole, the middle of the dome at (0, 0)
    pen.circle((0, 0), 2 * r)
    pen.circle((0, 0), 2 * inside, "thin")
    middle = ((around.left + around.right) / 2, (around.top + around.bottom) / 2)
    outline = [((x - middle[0]) * k, (y - middle[1]) * k + hole) for x, y in flat.runs[0]]
    for side in (-1, 1):  # slip along its upper and its lower edge, where they meet the rim
        y = hole + side * around.height / 2 * k
        end = max(x for x, level in outline if abs(level - y) < FILLET * k / 2)
        out = y + side * FILLET * k
        rim = min(end, math.sqrt(max(0.0, r**2 - out**2)))
        for way in (-1, 1):
            slip(pen, [(way * x, level) for x, level in ((end - 3 * FILLET * k, y), (end, y), (rim, out),
                                                         (end - 3 * FILLET * k, out))])  # fmt: skip
    pen.cover([outline])
    flat.draw(Scaled(Moved(pen, (-middle[0] * k, hole - middle[1] * k)), k))
    pen.cross((0, hole))
    high(pen, -r - 3.0, (-r, hole), below.words, to=0)
    beside = r + 2.4
    led(pen, (r * 0.5, -math.sqrt(r**2 - (r * 0.5) ** 2) + thick * k / 2), (beside, -r + 2.6), "rim, top")
    led(pen, (r * 0.45, hole), (beside, hole + 1.0), "bridge")
    led(pen, (inside * 0.94, hole + around.height / 2 * k + FILLET * k * 0.6), (beside, hole + 7.2), "slip")
    led(pen, (r * 0.2, hole + around.height / 2 * k), (beside, hole + 12.4), ["longer edge", "down"])
    return (
        f"The back of the dome: the bridge lies on the rim from side to side, its longer edge down, the middle of its "
        f"hole {below.told} from the outer edge of the rim at the top, and slip all round both ends"
    )


GESTURE = Gesture("bridge on a rim", _draw, most=1.5)
