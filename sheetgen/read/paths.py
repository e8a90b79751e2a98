"""An SVG path to a closed outline in mm; the one module that knows fontTools' path reader."""

from __future__ import annotations

import functools
from itertools import pairwise
from typing import TYPE_CHECKING

from fontTools.pens.recordingPen import RecordingPen
from fontTools.svgLib.path import parse_path

from sheetgen.base.outline import Outline
from sheetgen.base.trouble import CannotBe

if TYPE_CHECKING:
    from sheetgen.base.place import Word
    from sheetgen.base.trouble import Troubles

LONGEST = 20_000
MOST_POINTS = 6000
LARGEST = 2000.0  # mm: larger than any piece, and not so large that a sum overflows
SEGMENT = 24
Point = tuple[float, float]


def outline(path: Word, troubles: Troubles) -> Outline | None:
    """The outline, or None with a trouble at the path."""
    try:
        return trace(str(path))
    except CannotBe as fault:
        troubles.add(fault.message, path.place, fault.help)
        return None


@functools.lru_cache(maxsize=256)
def trace(path: str) -> Outline:
    """The outline of a path. Raises CannotBe for one that is open, empty, in several pieces or crosses itself."""
    if len(path) > LONGEST:
        raise CannotBe(f"the path is {len(path)} characters long", f"at most {LONGEST}; simplify it")
    pen = RecordingPen()
    try:
        parse_path(path, pen)
    except Exception as fault:  # noqa: BLE001 - the reader raises whatever its parser meets
        raise CannotBe(f"the path cannot be read: {fault}", "a path such as M0 0 L20 0 L10 15 Z") from None
    points = _points(pen)
    if len(points) > 1 and points[0] == points[-1]:
        points.pop()
    if len(points) > MOST_POINTS:
        raise CannotBe(
            f"the path has {len(points)} points", f"at most {MOST_POINTS}, a curve being {SEGMENT}; simplify it"
        )
    if not all(abs(n) <= LARGEST for point in points for n in point):
        raise CannotBe("the path reaches too far", f"sizes are in mm; at most {LARGEST:g} from the origin")
    found = Outline(tuple(points))
    if len(points) < 3 or found.area < 0.01:  # noqa: PLR2004 - a triangle at least
        raise CannotBe("the path encloses nothing", "draw a closed outline, finished size in mm")
    near = [(round(x, 6), round(y, 6)) for x, y in points]
    corners = [p for p, after in zip(near, [*near[1:], near[0]], strict=True) if p != after]
    if len(set(corners)) < len(corners):
        raise CannotBe("the path meets itself: two of its corners are one", "draw the outline once round")
    if found.crossing():
        x, y = found.crossing() or (0, 0)
        raise CannotBe(
            f"the path crosses itself near {x:.1f}, {y:.1f}", "draw the outline once round, without crossing"
        )
    return found


def _points(pen: RecordingPen) -> list[Point]:
    """Straight runs along one closed contour."""
    points: list[Point] = []
    closed = 0
    for verb, args in pen.value:
        if verb == "moveTo":
            if points:
                raise CannotBe("the path has more than one outline", "one closed outline a part; a hole is a field")
            points = [args[0]]
        elif verb == "lineTo":
            points.append(args[0])
        elif verb in {"curveTo", "qCurveTo"}:
            ends = [points[-1], *args]
            points += [_bezier(ends, i / SEGMENT) for i in range(1, SEGMENT + 1)]
        elif verb == "closePath":
            closed += 1
        elif verb == "endPath":
            raise CannotBe("the path is open", "end it with Z")
    if not closed:
        raise CannotBe("the path is open or empty", "begin with M and end with Z")
    return [p for i, p in enumerate(points) if i == 0 or p != points[i - 1]]


def _bezier(ends: list[Point], t: float) -> Point:
    """A point of a Bézier curve of any degree (de Casteljau)."""
    while len(ends) > 1:
        ends = [(a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t) for a, b in pairwise(ends)]
    return ends[0]
