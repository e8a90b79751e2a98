"""The end of a strand: through beads, crimp and ring, and back through the crimp and into the beads."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.material import Finding
from sheetgen.base.pen import arc
from sheetgen.draw.cutaway import cut, laid, led
from sheetgen.draw.gesture import LABEL, Gesture
from sheetgen.parts.strung_wire import StrungWire

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen, Point
    from sheetgen.draw.gesture import Scene

BEADS = 2
WALL = 0.15  # of its inside: how thick the wall of a crimp is drawn
RING = 4.0  # mm: the inside of a ring of which stock says nothing
LEAST = 0.9  # mm on paper: a thinner wall cannot be hatched
CRIMP = 1.6  # of its inside: how long one is drawn where stock does not say


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece = scene.piece
    crimp, bead, wire = piece[StrungWire.crimp], piece[StrungWire.bead], piece[StrungWire.thread].thickness * k
    wide = (bead.size.usual if bead is not None else 6.0) * k
    long = (bead.length.usual if bead is not None else 6.0) * k
    inside = (crimp.inside if crimp is not None and crimp.inside else 3 * wire / k) * k
    tube = (crimp.length if crimp is not None and crimp.length else CRIMP * inside / k) * k
    ring = scene.using(Finding, "inside", but=crimp)
    bored = (ring.inside if ring is not None and ring.inside else RING) * k
    thick = bored / 4 if ring is None or ring.wire is None else ring.wire * k

    start, x = -BEADS * long, 2.2
    room = x + tube + 2.6
    hung = (room + bored / 2 + thick - wire * 1.2, 0.0)
    pen.circle(hung, bored + 2 * thick)
    pen.circle(hung, bored)
    # Both wires side by side, and the loop in the ring.
    y, end = wire * 0.56, room + thick - wire + 0.2
    bend: list[Point] = [(end + px * 1.2, py) for px, py in arc((0, 0), 1.5 * y, -90, 90, 16)]
    turn = [(room - 1.2, -y), *bend, (room - 1.2, y)]
    laid(pen, [(start - 4.5, -y), *turn, (start + 0.6 * long, y)], wire, begins=False)
    for side in (-1, 1):
        inner, outer = side * inside / 2, side * (inside / 2 + max(inside * WALL, LEAST))
        cut(pen, [(x, inner), (x + tube, inner), (x + tube, outer), (x, outer)], apart=0.6)
    for i in range(BEADS):
        middle = (start + (i + 0.5) * long, 0.0)
        pen.cover([[(middle[0] + px * long / wide, py) for px, py in arc((0, 0), wide / 2, 0, 360, 64)]])
        pen.oval(middle, long, wide)
    for level in (-y, y):
        first = start if level < 0 else start + 0.6 * long
        for edge in (-wire / 2, wire / 2):
            pen.line([(first, level + edge), (0, level + edge)], "fold")
    pen.line([(start + 0.6 * long, y - wire / 2), (start + 0.6 * long, y + wire / 2)])
    low = wide / 2 + LABEL + 1.0
    led(pen, (x + tube / 2, inside * (0.5 + WALL)), (x + tube / 2 - 3, low), "crimp", "middle")
    led(pen, (room + bored / 2, bored / 2), (room + bored / 2 + 1, low), "ring", "middle")
    led(pen, (start + 0.7 * long, y), (start - 4.5, low), "end in two beads")
    return (
        "The end of the strand in section: the wire comes out of the last two beads, goes through the crimp and round "
        "the ring, and back through the crimp into the same two beads"
    )


GESTURE = Gesture("end led back", _draw, most=4)
