"""A wall before and after it is pushed over its stone, in section; and the order of the pushes, from above."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.draw.bezels import walled
from sheetgen.draw.cutaway import cut, pushed
from sheetgen.draw.gesture import LABEL, NUMBER, Gesture, side_by_side
from sheetgen.parts.metal_disc import MetalDisc

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen, Point
    from sheetgen.draw.gesture import Scene

THICK = 3.0  # mm on paper: a wall is drawn no thinner than a third of this, or its hatching is a smear
LEANS = 0.5  # of a wall's height: what of it is pushed in
PLAN = 11.0  # mm on paper: the long way of the stone from above


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    stone, disc = walled(scene.piece), scene.other(MetalDisc)
    plate = (stone.plate or (disc[MetalDisc.sheet].thickness if disc is not None else 0.8)) * k
    half, t = (stone.narrow if stone.plate else stone.long) / 2, max(stone.sheet * k, THICK / 3.2)
    inner, wall = (half + stone.room) * k, stone.wall * k
    edge = stone.side(half, k)

    def section(on: Pen) -> None:
        cut(on, [(-inner - t - 1.2, 0), (inner + t + 1.2, 0), (inner + t + 1.2, plate), (-inner - t - 1.2, plate)])
        outline = [*[(-x, y) for x, y in reversed(edge)], *edge[1:]]
        on.line(outline, closed=True)
        cut(on, [(-inner - t, 0), (-inner - t, -wall), (-inner, -wall), (-inner, 0)], apart=0.7, leans=-1)
        cut(on, _pushed_in(edge, inner, t, wall), apart=0.7, leans=-1)
        on.line([(0, edge[0][1] - 2.0), (0, plate + 1.6)], "centre")
        tip = (inner + t * 0.7, -wall * 0.92)
        pushed(on, (tip[0] + 4.4, tip[1] - 2.6), (tip[0] + 0.5, tip[1] - 0.3))
        for x, words in ((-inner * 0.55, "before"), (inner * 0.55, "after")):
            on.text((x, plate + LABEL + 1.2), words, size=LABEL, anchor="middle")

    def order(on: Pen) -> None:
        wide, tall = PLAN, PLAN * stone.narrow / stone.long
        lift = tall / 2 + 4.3 - plate  # its lowest arrow ends where the section does
        on.oval((0, -lift), wide, tall)
        on.oval((0, -lift), wide + 1.8, tall + 1.8)
        for number, (x, y) in (("1", (-1, 0)), ("2", (1, 0)), ("3", (0, -1)), ("4", (0, 1))):
            reach = (wide if x else tall) / 2 + 1.1
            pushed(on, (x * (reach + 3.2), y * (reach + 3.2) - lift), (x * (reach + 0.1), y * (reach + 0.1) - lift))
            aside = (x * (reach + 2.0), -1.4) if x else (2.2, y * (reach + 2.2) + NUMBER * 0.35)
            on.text((aside[0], aside[1] - lift), number, size=NUMBER, anchor="middle")
        on.text((0, plate + LABEL + 1.2), "then between", size=LABEL, anchor="middle")

    side_by_side(pen, [(section, []), (order, [])], gap=2.5)
    return (
        "A stone in its wall in section: before, the wall stands straight; after, its edge lies on the stone. From "
        "above the order of the pushes: 1 and 2 opposite, 3 and 4 across, then between"
    )


def _pushed_in(edge: list[Point], inner: float, t: float, wall: float) -> list[Point]:
    """The right wall with its upper part on the side of the stone; it keeps its height along its inside."""
    upright = wall * (1 - LEANS)
    line: list[Point] = [(inner, 0.0), (inner, -upright)]
    gone = upright
    # From there it follows the stone: the outline from where it is as high as the upright part.
    run = [p for p in reversed(edge) if p[1] < -upright]
    before = line[-1]
    for p in run:
        step = math.dist(before, p)
        if gone + step > wall:
            share = (wall - gone) / step
            line.append((before[0] + (p[0] - before[0]) * share, before[1] + (p[1] - before[1]) * share))
            break
        line.append(p)
        gone, before = gone + step, p
    outer = []
    for i, (x, y) in enumerate(line):
        a, b = line[max(0, i - 1)], line[min(len(line) - 1, i + 1)]
        far = math.dist(a, b) or 1
        outer.append((x - (b[1] - a[1]) / far * t, y + (b[0] - a[0]) / far * t))
    return [*line, *reversed(outer)]


GESTURE = Gesture("set bezel", _draw, most=6)
