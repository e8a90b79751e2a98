"""A row drawn on its way: bits each turned to lie along it, wire over wire on one side and under it on the other."""

from __future__ import annotations

import math
from functools import partial
from typing import TYPE_CHECKING

from sheetgen.draw.pens import Clipped, Strokes, Swung
from sheetgen.draw.rows import crossings
from sheetgen.draw.windows import MEETS, within

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.pen import Pen, Point
    from sheetgen.draw.bits import Bit
    from sheetgen.draw.way import Way

FAR = 1e4  # mm: beyond any piece
NEAR = 2.0  # thicknesses of wire round a joint in which two wires cross


def laid(pen: Pen, bits: Sequence[Bit], on: Way, joints: Sequence[float]) -> None:
    """Bits on their way, each from its joint to the next."""
    closed = on.closed
    pens = [_swung(pen, bit, on.at(a), on.at(b)) for bit, a, b in zip(bits, joints, joints[1:], strict=False)]
    order = sorted(range(len(bits)), key=lambda i: bits[i].layer)
    for i in order:
        bit, start = bits[i], joints[i]
        if bit.led is not None:
            bit.led(pen, partial(_beside, on, start))
            continue
        strokes = Strokes()
        bit.draw(strokes)
        pens[i].cover(strokes.closed("cut"))
        bit.draw(pens[i])
    rank = {i: n for n, i in enumerate(order)}
    for i, j in crossings(bits, closed=closed):
        near = NEAR * max(bits[i].wire, bits[j].wire)
        if rank[i] < rank[j]:
            _again(pens[i], bits[i], (0.0, bits[i].end - near), (FAR, FAR))
        else:
            _again(pens[j], bits[j], (-FAR, -FAR), (0.0, bits[j].top + near))


def _beside(on: Way, start: float, s: float, x: float) -> Point:
    """A point of a bit that begins at `start`."""
    return on.beside(start + s, x)


def _swung(pen: Pen, bit: Bit, start: Point, end: Point) -> Pen:
    """A pen on which a bit that hangs lies from start to end; of one that is turned, its top at the end."""
    if bit.turned:
        start, end = end, start
    long = math.dist(start, end) or 1.0
    down = ((end[0] - start[0]) / long, (end[1] - start[1]) / long)
    return Swung(pen, (start[0] - bit.top * down[0], start[1] - bit.top * down[1]), down)


def _again(pen: Pen, bit: Bit, corner: Point, far: Point) -> None:
    """What lies in a window of a bit, drawn over what covers it; its lines run on into those they meet."""
    strokes = Strokes()
    bit.draw(strokes)
    pen.cover([part for loop in strokes.closed("cut") if (part := within(loop, corner, far))])
    bit.draw(Clipped(pen, (corner[0] - MEETS, corner[1] - MEETS), (far[0] + MEETS, far[1] + MEETS)))
