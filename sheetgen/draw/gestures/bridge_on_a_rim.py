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
    for way in (-1, 1):
        half = around.width / 2 * k
        tall = around.height / 2 * k
        ends = [(half * (0.94 if y < 0 else 1.0), hole + y * tall) for y in (-1, 1)]
        slip(pen, [(way * (ends[0][0] - FILLET * 2.4 * k), ends[0][1] - FILLET * k),
                   (way * min(ends[0][0] + FILLET * k, math.sqrt(max(0.0, r**2 - (ends[0][1] - FILLET * k) ** 2))),
                    ends[0][1] - FILLET * k),
                   (way * min(ends[1][0] + FILLET * k, math.sqrt(max(0.0, r**2 - (ends[1][1] + FILLET * k) ** 2))),
                    ends[1][1] + FILLET * k),
                   (way * (ends[1][0] - FILLET * 2.4 * k), ends[1][1] + FILLET * k)])  # fmt: skip
    on = Moved(pen, (-(around.left + around.right) / 2 * k, hole - (around.top + around.bottom) / 2 * k))
    runs = [[(x * k, y * k) for x, y in run] for run in flat.runs]
    on.cover([runs[0]])
    flat.draw(Scaled(on, k))
    on.cross(((around.left + around.right) / 2 * k, (around.top + around.bottom) / 2 * k))
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
