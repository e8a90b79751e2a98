"""A hollow piece in section: a tube with its cap and its foot, slip at both joins, and a hole that lets the air out."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.pen import arc
from sheetgen.draw.cutaway import cut, led, slip, torn
from sheetgen.draw.gesture import Gesture
from sheetgen.parts.dome import Dome
from sheetgen.parts.hole import Hole
from sheetgen.parts.shape import CutShape, cut_size
from sheetgen.parts.tube import Tube

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

FILLET = 0.8  # mm: how large the slip is drawn in its corner
SHOWN = 3.4  # mm of the wall drawn at each end


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece = scene.piece
    bore, t = float(piece[Tube.wet_inside]) / 2 * k, piece.usual(Tube.thickness) * k
    shapes = [one for one in scene.others if one.kind == CutShape.kind]
    dome = scene.other(Dome)
    vent = next((one for one in scene.others if one.kind == Hole.kind and one[Hole.vent_of] is not None), None)
    end, f = SHOWN * k, FILLET * k
    plates = [] if not shapes else shapes[-1:] if dome is not None else shapes[:2]
    low = 2 * end + 2.0
    for way in (-1, 1):
        for top, bottom in ((0.0, end), (low - end, low)):
            cut(pen, [(way * bore, top), (way * (bore + t), top), (way * (bore + t), bottom), (way * bore, bottom)])
        for y in (0.0, low):
            down = 1 if y == 0 else -1
            slip(pen, [(way * (bore + t), y), (way * (bore + t + f), y), (way * (bore + t), y + down * f)])
    for way in (-1, 1):
        for y in (end, low - end):
            torn(pen, (way * (bore + t / 2), y), t + 1.6)
    beside = bore + t + f + 2.6
    if dome is not None:
        middle, thick = dome.usual(Dome.middle) * k, dome.usual(Dome.thickness) * k
        rim = math.degrees(2 * math.asin(min(1.0, dome.usual(Dome.lean))))
        inner, outer = middle - thick / 2, middle + thick / 2
        base = (0.0, inner * math.cos(math.radians(rim)))
        cap = [*arc(base, outer, -90 - rim, -90 + rim, 48), *arc(base, inner, -90 + rim, -90 - rim, 48)]
        cut(pen, cap, leans=-1)
        side = math.radians(rim * 0.66)
        led(pen, (middle * math.sin(side), base[1] - middle * math.cos(side)), (beside, -2.4), "cap")
    for plate, y in zip(plates, (low,) if dome is not None else (0.0, low), strict=False):
        wide, thick = cut_size(plate)[0] / 2 * k, plate.usual(CutShape.thickness) * k
        layers = max(1, plate.count // piece.count) if y else 1
        opened = y and vent is not None and vent[Hole.drilled_in] is not None
        bored = float(vent[Hole.drill_used]) / 2 * k if opened and vent is not None else 0.0
        for i in range(layers):
            _plate(pen, wide, (y + i * thick, y + (i + 1) * thick) if y else (-thick, 0.0), bored)
        led(pen, (wide, y + (thick if y else -thick) / 2), (beside, y + (2.6 if y else -1.0)), "foot" if y else "cap")
    led(pen, (bore + t + f * 0.4, f * 0.3), (beside, 4.6), "slip")
    return (
        "A hollow piece in section: cap and foot stand out a little all round the tube, with slip in an unbroken line "
        "at both joins"
    )


def _plate(pen: Pen, wide: float, edges: tuple[float, float], bored: float) -> None:
    """A plate in section, with a hole in its middle or with none."""
    top, low = edges
    for left, right in ((-wide, -bored), (bored, wide)) if bored else ((-wide, wide),):
        cut(pen, [(left, top), (right, top), (right, low), (left, low)], leans=-1)


GESTURE = Gesture("closed hollow", _draw, most=2.5)
