"""A crimp with its two wires in section: open, pressed in the notched place, folded in the round one."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.pen import arc
from sheetgen.draw.cutaway import cut, pushed
from sheetgen.draw.gesture import Gesture, side_by_side
from sheetgen.parts.strung_wire import StrungWire

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.pen import Pen, Point
    from sheetgen.draw.gesture import Scene

WALL = 0.15  # of its inside: how thick a wall is drawn, which stock does not say
ROOM = 1.12  # of a wire's thickness: what is left inside a lobe that is pressed


def _walled(pen: Pen, outer: Sequence[Point], inner: Sequence[Point]) -> None:
    """A closed wall: hatched between its two edges."""
    joined = [*outer, outer[0], inner[0], *reversed(inner)]
    cut(pen, joined, apart=0.7)
    pen.cover([inner])
    pen.line(outer, closed=True)
    pen.line(inner, closed=True)


def lobes(half: float, tall: float, pinch: float) -> list[Point]:
    """Two round lobes side by side, their middles `half` from the waist, `tall` high, dented from above by `pinch`."""
    r = tall / 2
    right, left = arc((half, 0), r, -90, 90, 24), arc((-half, 0), r, 90, 270, 24)
    dent = [(-half + 2 * half * i / 24, -r + pinch * math.sin(math.pi * i / 24) ** 2) for i in range(1, 24)]
    return [*right, *left, *dent]


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece = scene.piece
    crimp, thread = piece[StrungWire.crimp], piece[StrungWire.thread].thickness * k
    inside = (crimp.inside if crimp is not None and crimp.inside else 3 * thread / k) * k
    wall = WALL * inside

    def wires(on: Pen, apart: float, down: float = 0.0) -> None:
        for x in (-apart, apart):
            cut(on, arc((x, down), thread / 2, 0, 360, 32)[:-1], leans=-1, apart=0.7)

    def opened(on: Pen) -> None:
        _walled(on, arc((0, 0), inside / 2 + wall, 0, 360, 64)[:-1], arc((0, 0), inside / 2, 0, 360, 64)[:-1])
        wires(on, thread * 0.52, inside / 2 - thread * 0.72)

    # Pressing keeps the round of the wall: what it loses in height it gains in width.
    tall = thread * ROOM
    half = math.pi * (inside - tall) / 4

    def pressed(on: Pen) -> None:
        pinch = tall * 0.62
        _walled(on, lobes(half, tall + 2 * wall, pinch), lobes(half, tall, pinch - wall * 0.1))
        wires(on, half)
        top = -tall / 2 - wall
        pushed(on, (0, top - 3.6), (0, top + pinch - 0.4))

    def folded(on: Pen) -> None:
        """The lobes lie against each other, the dent between them shut to a slit."""
        r = tall / 2 + wall
        outer = [*arc((r, 0), r, -90, 90, 24), *arc((-r, 0), r, 90, 270, 24)]
        on.cover([outer])
        for x, begin in ((r, 1), (-r, -1)):
            _walled(on, arc((x, 0), r, 0, 360, 48)[:-1], arc((x, 0), tall / 2, 0, 360, 48)[:-1])
            cut(on, arc((x, 0), thread / 2, 0, 360, 32)[:-1], leans=-begin, apart=0.7)
        for way in (-1, 1):
            pushed(on, (way * (2 * r + 3.8), 0), (way * (2 * r + 0.5), 0))

    pictures = [(opened, ["open"]), (pressed, ["press"]), (folded, ["turn, fold"])]
    side_by_side(pen, pictures, gap=3.0)
    return (
        "A crimp in section with its two wires: open; pressed in the notched place of the pliers, flat and dented, one "
        "wire on each side; then turned and folded together in the round place"
    )


GESTURE = Gesture("crimp", _draw, most=8)
