"""A strip bent round its stone from above: marked in the overlap, and cut there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.pen import arc
from sheetgen.draw.bezels import walled
from sheetgen.draw.cutaway import laid, led, stroke
from sheetgen.draw.gesture import Gesture
from sheetgen.draw.sketches import oval_path

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

LAP = 0.09  # of its round: how far the ends pass each other, drawn larger than it is


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    stone = walled(scene.piece)
    t = max(stone.sheet * k, 0.9)
    long, narrow = (stone.long + 2 * stone.room) * k, (stone.narrow + 2 * stone.room) * k
    pen.oval((0, 0), stone.long * k, stone.narrow * k, "thin")
    pen.oval((0, 0), stone.long * k * 0.55, stone.narrow * k * 0.55, "fold")
    if abs(long - narrow) < 0.01:  # noqa: PLR2004 - a round stone
        path = arc((0, 0), (long + t) / 2, 0, 360, 96)[:-1]
    else:
        path = oval_path(long, narrow, t, straight=False)
    # It begins under the middle of a long side, and its other end passes it outside.
    first = max(range(len(path)), key=lambda i: path[i][1])
    run = [*path[first:], *path[:first]]
    lap = round(len(run) * LAP)
    beyond = [(x, y + t * (1.05 + 0.6 * max(0, i - 1) / lap)) for i, (x, y) in enumerate(run[: lap + 1])]
    climb = [(x, y + t * 1.05 * i / 4) for i, (x, y) in enumerate(run[-4:], 1)]
    laid(pen, [*run[:-4], *climb, *beyond], t)
    low = run[0][1]
    x = run[lap // 2][0]
    stroke(pen, (x, low - t), (x, low + t * 2.6 + 1.2))
    beside = long / 2 + t + 3.0
    led(pen, (long / 2 + t * 0.5, -narrow * 0.12), (beside, -narrow * 0.12), "strip")
    led(pen, (stone.long * k * 0.48, narrow * 0.12), (beside, narrow * 0.12 + 2.2), "stone")
    led(pen, (x, low + t * 2.6 + 0.9), (beside, low + t * 2.6 + 1.6), ["mark, and", "cut here"])
    return "A strip bent round its stone, from above: the overlap is marked across both ends, and cut there"


GESTURE = Gesture("bent bezel", _draw, most=4)
