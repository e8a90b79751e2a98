"""A drill with its flag of tape, in section: it stops when the flag touches the clay."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.draw.cutaway import cut, high, led
from sheetgen.draw.gesture import LABEL, Gesture
from sheetgen.parts.scatter import Scatter
from sheetgen.parts.seat import Seat
from sheetgen.parts.stone_ring import StoneRing
from sheetgen.parts.stone_row import StoneRow
from sheetgen.parts.tube import Tube

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.base.printed import Printed
    from sheetgen.draw.gesture import Scene

POINT = 118.0  # degrees of a drill's point, common practice
DRILLS = {StoneRow.kind: StoneRow.drill, StoneRing.kind: StoneRing.drill, Seat.kind: Seat.drill,
          Scatter.kind: Scatter.drill}  # fmt: skip
FLAGS = ("flag", "seat_depth")
"""The figures of a project that say where its flag is put."""


def _depth(scene: Scene) -> Printed:
    """How far from the tip the flag is put: as the project says, else through the strip or down to the seat's depth."""
    found = next((one for name in FLAGS if (one := scene.figure(name)) is not None), None)
    piece = scene.piece
    if found is not None:
        return found
    if piece.kind == Seat.kind and piece.has(Seat.depth):
        return piece[Seat.depth]
    thick = next(iter(piece.roles.get("rolled to", ())), None)
    return piece.length(thick.usual if thick is not None else float(piece[DRILLS[piece.kind]]), "fine")


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece, depth, tube = scene.piece, _depth(scene), scene.other(Tube)
    drill, deep = piece[DRILLS[piece.kind]], float(depth) * k
    half = float(drill) / 2 * k
    through = piece.kind == StoneRow.kind
    wall = tube.usual(Tube.thickness) if tube is not None else 1.0
    under = (wall if through else float(depth) * 0.6) * k
    reach = half * 2.6
    point = min(half / math.tan(math.radians(POINT / 2)), deep * 0.8)
    tip = [(-half, deep - point), (0.0, deep), (half, deep - point)]
    edges: list[tuple[float, float]] = [(-reach, 0), (-half, 0), *tip, (half, 0), (reach, 0)]
    if through:
        cut(pen, [*edges, (reach, deep), (0.01, deep), (-0.01, deep), (-reach, deep)])
        cut(pen, [(-reach, deep), (reach, deep), (reach, deep + under), (-reach, deep + under)], leans=-1)
    else:
        cut(pen, [*edges, (reach, deep + under), (-reach, deep + under)])
    top = -max(9.0, deep * 1.4)
    body = [(-half, top), (-half, deep - point), (0.0, deep), (half, deep - point), (half, top)]
    pen.cover([body])
    pen.line(body)
    for i in range(4):
        y = deep - point - (i + 0.2) * half * 1.5
        if y - half * 0.9 > 0:  # the flag hides what is above
            pen.line([(-half, y), (half, y - half * 0.9)], "thin")
    flag = [(-half - 0.4, -3.4), (half + 5.4, -3.4), (half + 5.4, 0.0), (-half - 0.4, 0.0)]
    pen.cover([flag])
    pen.line(flag, closed=True)
    pen.text((half * 0.2 + 2.6, -0.7), "tape", size=LABEL, anchor="middle")
    high(pen, -reach - 2.0, (0, deep), depth.words, to=-half)
    beside = max(reach, half + 5.4) + 2.4
    led(pen, (half, top + 2.0), (half + 3.0, top + 3.0), f"drill {drill.words}")
    led(pen, (reach * 0.9, deep * 0.5), (beside, deep * 0.5 + 1.0), "strip" if through else "clay")
    if through:
        led(pen, (reach * 0.9, deep + under * 0.5), (beside, deep + under * 0.5 + 2.6), "wall: stop")
    return (
        f"A drill of {drill.told} in its seat, in section: a flag of tape stands {depth.told} from its tip, and the "
        f"drill is turned by hand until the flag touches{', which is at the wall below' if through else ''}"
    )


GESTURE = Gesture("flag on the drill", _draw, most=5)
