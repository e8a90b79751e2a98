"""A figure-eight link in three moves: one half round its peg, the other the other way, both ends trimmed."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.pen import arc
from sheetgen.draw.cutaway import stroke
from sheetgen.draw.gesture import Gesture, side_by_side
from sheetgen.draw.woven import Spot, Strand, woven
from sheetgen.parts import pegs
from sheetgen.parts.figure_eight import FigureEight

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen, Point
    from sheetgen.draw.gesture import Scene

PAST = 1.0  # mm: how far an end passes the middle before it is trimmed


def _toward(a: Point, b: Point, far: float) -> Point:
    """So far from a on the way to b."""
    share = far / math.dist(a, b)
    return a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece = scene.piece
    first, second, d = piece[FigureEight.peg_used], piece[FigureEight.second_used], piece[FigureEight.wire].thickness
    r1, r2 = (first + d) / 2 * k, (second + d) / 2 * k
    c, wire = float(piece[pegs.centres]) * k, d * k
    # Upright, the first peg above. Each half leaves the slanting middle at its touch, goes round, and comes back.
    lean = math.degrees(math.asin(min(1.0, (r1 + r2) / c)))
    one = arc((0, 0), r1, 180 - lean, 360 + lean, 48)  # from the left touch over the top to the right one
    two = arc((0, c), r2, 180 + lean, -lean, 48)
    mid = (0.0, c * r1 / (r1 + r2))
    half = wire / 2 / max(0.3, math.sin(math.radians(2 * (90 - lean))))

    def up(path: list[Point], level: float) -> list[Spot]:
        return [(x, y, level) for x, y in path]

    def on_pegs(on: Pen) -> None:
        for y, peg in ((0.0, first), (c, second)):
            on.circle((0, y), peg * k, "thin")
            on.cross((0, y))

    # The slanting middle runs from the right touch of the upper peg to the left touch of the lower one.
    back_one = [one[0], _toward(one[0], mid, math.dist(one[0], mid) + PAST * k + half)]
    back_two = [two[-1], _toward(two[-1], mid, math.dist(two[-1], mid) + PAST * k + half)]

    def halfway(on: Pen) -> None:
        on_pegs(on)
        long = _toward(one[-1], two[0], math.dist(one[-1], two[0]) + 6.0)
        woven(on, [Strand(up([long, one[-1]], 0.0), wire, ends=False),
                   Strand(up([*reversed(one)], 0.5), wire, begins=False, ends=False),
                   Strand(up(back_one, 1.0), wire, begins=False)])  # fmt: skip

    def both(on: Pen) -> None:
        on_pegs(on)
        whole(on, back_one, back_two)

    def whole(on: Pen, end_one: list[Point], end_two: list[Point]) -> None:
        woven(on, [Strand(up([one[-1], two[0]], 0.0), wire, begins=False, ends=False),
                   Strand(up([*reversed(one)], 0.5), wire, begins=False, ends=False),
                   Strand(up(two, 0.5), wire, begins=False, ends=False),
                   Strand(up(end_one, 1.0), wire, begins=False),
                   Strand(up(end_two, 1.0), wire, begins=False)])  # fmt: skip

    def trimmed(on: Pen) -> None:
        ends = [[start, _toward(start, mid, math.dist(start, mid) - half)] for start in (one[0], two[-1])]
        whole(on, *ends)
        for _, (x, y) in ends:
            dx, dy = two[0][0] - one[-1][0], two[0][1] - one[-1][1]
            far = math.hypot(dx, dy)
            reach = wire * 1.1
            stroke(on, (x - dx / far * reach, y - dy / far * reach), (x + dx / far * reach, y + dy / far * reach))

    side_by_side(pen, [(halfway, ["one half"]), (both, ["the other"]), (trimmed, ["cut here"])], gap=2.5)  # fmt: skip
    return (
        "An eight in three moves: the middle of the wire lies slantwise between the pegs and one half goes round its "
        "peg, back to the middle; the other half goes round its peg the other way; both ends are cut where they meet "
        "the slanting middle"
    )


GESTURE = Gesture("eight on two pegs", _draw, most=3)
