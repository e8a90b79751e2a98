"""An overlap cut through at a slant, in section: what is taken away, and how the two ends fit."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.draw.cutaway import cut, led, stroke
from sheetgen.draw.gesture import Gesture, side_by_side
from sheetgen.parts.ring_band import RingBand

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

BESIDE = 3.0  # thicknesses: how much of the strip is drawn to each side of the overlap


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece, face = scene.piece, scene.wanted("seam_face")
    t, lap = piece.usual(RingBand.thickness) * k, float(piece[RingBand.overlap]) * k
    # The longer the cut face for the thickness, the further the blade leans.
    slant = math.sqrt(max(0.0, float(face) ** 2 - piece.usual(RingBand.thickness) ** 2)) * k
    half = lap / 2
    long = half + BESIDE * t

    def base(on: Pen) -> None:
        on.line([(-long, t + 0.15), (long, t + 0.15)])
        on.line([(-long, t + 1.0), (long, t + 1.0)], "thin")

    def through(on: Pen) -> None:
        """The end on the left climbs over the other and lies on it; the cut goes through the middle."""
        base(on)
        cut(on, [(0.0, 0.0), (long, 0.0), (long, t), (slant, t)], leans=-1)
        loose = [(-half, 0.0), (0.0, 0.0), (slant, t), (-half, t)]
        on.cover([loose])
        on.line(loose, "fold", closed=True)
        rise = [i / 12 for i in range(13)]
        # The end on the left: level, up over the beginning of the other, level again to the cut; and back below.
        climb = [(-half - 1.4 * t * (1 - s), t * (1 + math.cos(math.pi * s)) / 2) for s in rise]
        upper = [(-long, 0.0), (climb[0][0] - 0.5 * t, 0.0), *((x, y - t) for x, y in climb), (-slant, -t), (0.0, 0.0),
                 (-half, 0.0), *reversed(climb), (-long, t)]  # fmt: skip
        cut(on, upper)
        end = [(-slant, -t), (half, -t), (half, 0.0), (0.0, 0.0)]
        on.cover([end])
        on.line(end, "fold", closed=True)
        far = 4.4 / math.hypot(slant, t)
        tip, back = (slant * 1.04, t * 1.04), (-slant * (1 + far), -t * (1 + far))
        stroke(on, tip, back)
        led(on, (half * 0.75, -t * 0.5), (half + 1.8, -t - 1.0), "off")

    def fitted(on: Pen) -> None:
        base(on)
        cut(on, [(-long * 0.8, 0.0), (-slant / 2, 0.0), (slant / 2, t), (-long * 0.8, t)])
        cut(on, [(-slant / 2, 0.0), (long * 0.8, 0.0), (long * 0.8, t), (slant / 2, t)], leans=-1)

    leaning = f"lean {lean.words}, cut both" if (lean := scene.figure("lean")) is not None else "lean, cut both"
    side_by_side(pen, [(through, [leaning]), (fitted, ["fit the slopes"])], gap=3.0)
    return (
        "The overlap in section: the blade leans away from the loose end on top and cuts through both layers, a face "
        f"of {face.told}; both loose ends, broken lines, are taken away, and the two slopes fit on each other"
    )


GESTURE = Gesture("seam at a slant", _draw, most=3)
