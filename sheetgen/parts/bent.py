"""The line of a bent wire: the middle of its straights and arcs, laid end to end."""

from __future__ import annotations

import math
from collections.abc import Sequence

from sheetgen.base.bend import Bend
from sheetgen.base.flat import Flat
from sheetgen.base.outline import Outline
from sheetgen.base.pen import Point, arc


def legs(form: tuple[Bend, ...], thick: float) -> list[list[Point]]:
    """The middle of each piece of a form as points, mm: it starts upwards, and an arc turns right unless it says left."""
    at, heading = (0.0, 0.0), -90.0
    found: list[list[Point]] = []
    for bend in form:
        long, turn = bend.size.usual, math.radians(heading)
        if not bend.degrees:
            found.append([at, (at[0] + long * math.cos(turn), at[1] + long * math.sin(turn))])
        else:
            side = -1 if bend.left else 1
            r, out = (long + thick) / 2, math.radians(heading + 90 * side)
            centre = (at[0] + r * math.cos(out), at[1] + r * math.sin(out))
            start = heading - 90 * side
            found.append([at, *arc(centre, r, start, start + side * bend.degrees)[1:]])
            heading += side * bend.degrees
        at = found[-1][-1]
    return found


def path(form: tuple[Bend, ...], thick: float) -> list[Point]:
    """The middle of the whole wire, mm."""
    return [(0.0, 0.0), *(point for leg in legs(form, thick) for point in leg[1:])]


def line(points: Sequence[Point]) -> Flat:
    """Such a line as a template, its upper left corner at (0, 0)."""
    return Flat(Outline(tuple(points)).placed(), closed=False)
