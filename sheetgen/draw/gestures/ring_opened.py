"""A ring opened sideways, its ends past each other, and never apart."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.draw.cutaway import pushed, stroke
from sheetgen.draw.gesture import Gesture, side_by_side
from sheetgen.draw.sketches import oval_path
from sheetgen.draw.woven import Strand, woven
from sheetgen.parts.jump_ring import JumpRing
from sheetgen.parts.toggle import Toggle

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen, Point
    from sheetgen.draw.gesture import Scene

FLAT = 0.5  # how low the ring is seen lying
GAP = 26  # of 360: what is missing of one that is pulled apart


def _path(scene: Scene, k: float) -> tuple[list[Point], float]:
    """The middle of the wire from the middle of a long side round to there again, and its thickness, mm on paper."""
    piece = scene.piece
    if piece.kind == Toggle.kind:
        long = wide = float(piece[Toggle.eye_used])
        thick, straight = piece.usual(Toggle.staff), False
    else:
        long, wide, thick = piece.usual(JumpRing.inner), piece.usual(JumpRing.narrow), piece[JumpRing.wire].thickness
        straight = piece[JumpRing.shape] == "oval"
    path = [(x * k, y * k) for x, y in oval_path(long, wide, thick, straight=straight)]
    # Its seam is in front, in the middle of a long side.
    first = min(range(len(path)), key=lambda i: (abs(path[i][0]) > thick * k, -path[i][1], abs(path[i][0])))
    return [*path[first:], *path[: first + 1]], thick * k


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    path, d = _path(scene, k)
    lift, last = d * 1.5, len(path) - 1

    def sideways(on: Pen) -> None:
        tilted = [(x, y * FLAT + lift * (i / last - 0.5), y) for i, (x, y) in enumerate(path)]
        woven(on, [Strand(tilted, d)])
        (left, right) = tilted[0], tilted[-1]
        reach = d / 2 + 1.2
        pushed(on, (left[0] - d, left[1] - reach), (left[0] - d, left[1] - reach - 4.2))
        pushed(on, (right[0] + d, right[1] + reach), (right[0] + d, right[1] + reach + 4.2))

    def apart(on: Pen) -> None:
        gone = round(last * GAP / 360)
        open_ring = [(x * 1.06, y, 0.0) for x, y in path[gone : last - gone + 1]]
        woven(on, [Strand(open_ring, d)])
        xs, ys = [x for x, _ in path], [y for _, y in path]
        left, right, top, low = min(xs) - d, max(xs) + d, min(ys) - d, max(ys) + d
        for a, b in (((left, top), (right, low)), ((left, low), (right, top))):
            stroke(on, a, b)

    side_by_side(pen, [(sideways, ["open sideways"]), (apart, ["never apart"])], gap=5.0)
    return "A ring opened sideways, one end towards you and one away, so that it stays round; never pulled apart"


GESTURE = Gesture("ring opened", _draw, most=2.5)
