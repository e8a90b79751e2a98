"""Outlines cut off at a window."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.pen import Point


MEETS = 0.1  # mm: by how much a line is drawn beyond a window, so that no gap shows where it goes on


def within(loop: Sequence[Point], corner: Point, far: Point) -> list[Point]:
    """The part of a closed outline that lies in a window (after Sutherland and Hodgman)."""
    found = list(loop)
    for axis in (0, 1):
        for edge, way in ((corner[axis], 1), (far[axis], -1)):
            kept: list[Point] = []
            for a, b in zip(found, [*found[1:], *found[:1]], strict=True):
                inside, next_inside = way * (a[axis] - edge) >= 0, way * (b[axis] - edge) >= 0
                if inside:
                    kept.append(a)
                if inside != next_inside:
                    share = (edge - a[axis]) / (b[axis] - a[axis])
                    kept.append((a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])))
            found = kept
    return found
