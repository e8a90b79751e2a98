"""What is drilled in a flat part: whether the part has a template, clay enough, and metal left beside the hole."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING

from sheetgen.base.cuts import extent_of, loops, outlines
from sheetgen.base.pen import Recorder
from sheetgen.base.spread import GRAIN, Spread
from sheetgen.parts.clay_piece import LEAST_EDGE
from sheetgen.parts.kind import Finding

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.pen import Point
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.parts.kind import Part

ROUNDED = 0.1  # mm that rounding for the bench may take from what was asked


def drilled(part: Part, worked: Worked, version: WorkedVersion) -> Iterator[Finding]:
    """What cannot be, or is doubtful, of one part that is drilled in another."""
    into = getattr(part, "drilled_in", None)
    if into is None:
        return
    host = version.parts[into.name]
    if not type(host).flat():
        flat = [p.name.replace("_", " ") for p in version.parts.values() if type(p).flat()]
        yield Finding("drilled in", f"is '{into.name}', which has no template", f"one of {', '.join(flat)}")
        return
    needed, deep = getattr(part, "needed", None), host.deep()
    if isinstance(needed, Spread) and deep is not None and deep.usual < needed.usual - GRAIN:
        message = f"is '{into.name}', rolled to {deep.usual:g} mm, and seat and floor want {needed.usual:.2f} mm"
        yield Finding("drilled in", message, "thicker clay, the layers as a part of their own, or less floor")
    if isinstance(edge := getattr(part, "edge", None), Spread):
        yield from _beside(part, host, edge, worked, version)


def _beside(part: Part, host: Part, edge: Spread, worked: Worked, version: WorkedVersion) -> Iterator[Finding]:
    """Metal left between a hole and the outline it is drilled in, where that narrows or curves."""
    flat, spots = Recorder(), Recorder()
    host.template(flat, worked.sizes(version, host))
    found = outlines(flat)
    if not found:
        return
    part.mark(spots, worked.sizes(version, part), extent_of(found[0]))
    runs = loops(found[0])
    wet = min(_nearest(centre, runs) - across / 2 for _, centre, across, _ in spots.ovals)
    left = wet * (1 - part.clay.shrinkage.usual)  # type: ignore[attr-defined]  # as it has a clay
    if left < edge.usual - ROUNDED:
        message = f"is {edge.usual:g} mm, and only {max(0.0, left):.1f} mm of '{host.name}' is left beside the hole"
        helped = "more edge, so that the hole lies where it is wider, or a smaller hole"
        yield Finding("edge", message, helped, "warning" if left >= LEAST_EDGE else "error")


def _nearest(centre: Point, runs: list[list[Point]]) -> float:
    """How far a point is from the nearest of some lines."""
    return min(_apart(centre, a, b) for run in runs for a, b in pairwise(run))


def _apart(p: Point, a: Point, b: Point) -> float:
    """How far a point is from a stretch of line."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    along = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy or 1)
    t = min(1.0, max(0.0, along))
    return math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy)
