"""A wrapped loop in three stages: bent over its neck, turned and led across, and wound down to the bead."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.pen import arc
from sheetgen.base.spelling import counted
from sheetgen.draw.cutaway import high, laid
from sheetgen.draw.gesture import Gesture, side_by_side
from sheetgen.draw.woven import Strand, woven
from sheetgen.parts.head_pin import HeadPin
from sheetgen.parts.on_wire import OnWire
from sheetgen.parts.wrapped_link import WrappedLink

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.pen import Pen, Point
    from sheetgen.draw.gesture import Scene

SINK = 0.35  # of a bead's width: how much of it is drawn
BACK = 62.0  # degrees: how far the neck leans out, so that the loop stands over it


def _neck_and_loop(neck: float, r: float) -> list[Point]:
    """The middle of the wire, up from (0, 0), bent to the left and round a loop over it to where it meets the neck."""
    centre = (0.0, -neck - r * (1 + math.cos(math.radians(BACK))) * 0.62)
    start = 90 + BACK
    return [(0.0, 0.0), (0.0, -neck * 0.55), (0.0, -neck), *arc(centre, r, start, start + 360 - BACK - 28, 48)]


def _turn(pen: Pen, y: float, d: float) -> None:
    """One turn of wire in front of the neck, its ends round where it goes behind."""
    half, lean = d * 0.98, d * 0.16
    run = [*arc((half, y - lean), d / 2, -90, 90, 16), *arc((-half, y + lean), d / 2, 90, 270, 16)]
    pen.cover([run])
    pen.line(run, closed=True)


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece = scene.piece
    figure = WrappedLink.neck if piece.kind == WrappedLink.kind else HeadPin.neck
    neck, d = piece[figure], piece[OnWire.wire].thickness * k
    loop, turns = piece.usual(OnWire.loop), int(piece[OnWire.wraps])
    bead, stem = piece[OnWire.bead].size.usual * k, float(neck) * k
    path = _neck_and_loop(stem, (loop * k + d) / 2)

    def on_bead(on: Pen) -> None:
        half = math.degrees(math.acos(1 - 2 * SINK))
        cap = arc((0, bead / 2), bead / 2, -90 - half, -90 + half, 48)
        on.cover([cap])
        on.line(cap)

    def bent(on: Pen) -> None:
        bend = d * 0.9
        run: Sequence[Point] = [(0, 0.5 * d), (0, -stem + 0.4 * d), *arc((bend, -stem), bend, 180, 270, 12)]
        laid(on, [*run, (bend + 2.6 * d, -stem - bend)], d)
        on_bead(on)
        high(on, -d / 2 - 2.2, (0, -stem), neck.words, to=-d / 2)

    def turned(on: Pen) -> None:
        x, y = path[-1]
        reach = max(3.2 * d, 4.0)
        under = [(a, b, 0.0) for a, b in [(0.0, 0.5 * d), *path]]
        over = [(x, y, 1.0), ((x + 0.2) / 3, -stem + d * 0.1, 1.0), (-reach, -stem + d * 0.75, 1.0)]
        woven(on, [Strand(under, d, ends=False), Strand(over, d, begins=False)])
        on_bead(on)

    def wound(on: Pen) -> None:
        x, y = path[-1]
        under = [(a, b, 0.0) for a, b in [(0.0, 0.5 * d), *path]]
        over = [(x, y, 1.0), (x * 0.5 + d * 0.4, (y - stem) / 2, 1.0), (d * 0.4, -stem + d * 0.5, 1.0)]
        woven(on, [Strand(under, d, ends=False), Strand(over, d, begins=False, ends=False)])
        step = stem / turns
        for i in range(turns):
            _turn(on, -stem + (i + 0.5) * step, d)
        on_bead(on)

    side_by_side(pen, [(bent, ["1 leave", "a neck"]), (turned, ["2 loop,", "cross"]),
                       (wound, ["3 wind", counted(turns, "turn")])], gap=2.0)  # fmt: skip
    return (
        f"A wrapped loop in three stages: a neck of {neck.told} is left bare and the wire bent over; a loop is turned "
        f"and the tail led across the neck; the tail is wound {counted(turns, 'turn')} down to the bead"
    )


GESTURE = Gesture("wrapped loop", _draw, most=5)
