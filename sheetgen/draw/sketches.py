"""Forming diagrams drawn to scale from numbers: how a strip lies on its former, where the wire crosses, where to bend.

Every size is in mm; `k` is how many mm of paper stand for one mm of the piece.
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING

from sheetgen.base.pen import Pen, Point, arc
from sheetgen.parts.wound import Wound

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.pen import Line
    from sheetgen.base.printed import Printed
    from sheetgen.parts.piece import Piece


def strip(pen: Pen, cut: Printed, meets: Printed, wide: Printed | None, thick: float = 0) -> None:
    """On the template of a strip that is closed on itself the line where its ends meet; of wire by its thickness."""
    down = float(wide) if wide is not None else thick
    pen.line([(meets, 0), (meets, down)], "meet")
    pen.across(-4, 0, meets, f"{meets.words} meets here", to=0)
    pen.across(down + 5, 0, cut, f"{cut.words} cut", to=down)
    if wide is not None:
        pen.upright(-4, 0, down, wide.words, to=0)


def strip_on_former(pen: Pen, piece: Piece, former: Printed, sheet: float, k: float) -> str:
    """A strip of clay on its former over a release sheet, mm thick, in section."""
    overlap, thick = piece[Wound.overlap], piece.usual(Wound.thickness)
    words = (f"former {former.words}", f"overlap {overlap.words}")
    wound(pen, former, sheet, thick, overlap, words, k)
    over = f" over {piece.length(sheet, 'fine').told} of release sheet" if sheet else ""
    return (
        f"A strip wound round a former of {former.told}{over}, overlapping {overlap.told}, one cut through both layers"
    )


def wound(pen: Pen, former: float, sheet: float, clay: float, overlap: float, words: tuple[str, str], k: float) -> None:
    """A strip wound round a former over its release sheet, ends overlapping, one cut through both layers."""
    inner = (former / 2 + sheet) * k
    outer, top = inner + clay * k, inner + 2 * clay * k
    centre = (0.0, 0.0)
    pen.circle(centre, former * k, "thin")
    pen.cross(centre)
    # The strip goes all the way round, climbs over its own beginning and lies on it; the cut is in the middle there.
    half = math.degrees(overlap * k / outer / 2) if outer else 0
    climb = min(60.0, math.degrees(1.6 * clay * k / outer)) if outer else 0
    under, begins = inner + clay * k / 2, 270 - half - climb
    level = arc(centre, under, -90 - half, begins, 96)
    lifts = [(i / 12, clay * k * (1 - math.cos(math.pi * i / 12)) / 2) for i in range(1, 12)]
    rise = [_polar(under + lift, begins + climb * share) for share, lift in lifts]
    wire(pen, [*level, *rise, *arc(centre, outer + clay * k / 2, 270 - half, 270 + half, 24)], clay * k)
    pen.line([(0, -inner + 1), (0, -top - 5)], "fold")
    pen.text((1.2, -top - 3), "cut both layers")
    pen.text((0, outer + 4), words[0], anchor="middle")
    pen.line([_polar(top, -90 - half), _polar(top + 2.5, -90 - half)], "thin")
    pen.text((_polar(top + 3, -90 - half)[0] - 1, _polar(top + 3, -90 - half)[1]), words[1], anchor="end")


def cap(
    pen: Pen, ball: float, clay: float, chord: float, k: float, *, over: bool
) -> tuple[float, float, float, float, float]:
    """A disc of clay in section on its ball, or in its cup, as it lies, its ball's middle at (0, 0).

    How far it reaches to each side, and its rim outside; how far down its crown lies, its rim outside and inside.
    """
    middle = ball / 2 + (clay / 2 if over else -clay / 2)
    half = math.degrees(2 * math.asin(min(1.0, chord / (4 * middle))))
    inner, outer = (middle - clay / 2) * k, (middle + clay / 2) * k
    turn = 1 if over else -1
    flip = -90 if over else 90
    low = [(x, y) for x, y in arc((0, 0), inner, flip - half, flip + half, 48)]
    high = [(x, y) for x, y in arc((0, 0), outer, flip - half, flip + half, 48)]
    pen.line([*low, *reversed(high)], "cut", closed=True)
    reach = min(90.0, half + 14)
    pen.line(arc((0, 0), ball / 2 * k, flip - reach, flip + reach, 48), "thin")
    rim, foot = (-turn * r * math.cos(math.radians(half)) for r in (outer, inner))
    edge = max(abs(x) for x, _ in (*low, *high))
    return edge, outer * math.sin(math.radians(half)), -turn * outer, rim, foot


def dome(
    pen: Pen, ball: float, clay: float, chord: float, words: tuple[str, str, str], k: float, *, over: bool
) -> None:
    """A dome in section on its ball, or in its cup: width and height of the clay outside, as it lies, wet."""
    edge, reach, crown, rim, foot = cap(pen, ball, clay, chord, k, over=over)
    turn = 1 if over else -1
    pen.across(foot + turn * 6, -reach, reach, words[0], to=rim + turn)
    pen.upright(edge + 6, min(crown, foot), max(crown, foot), words[1], to=reach)
    pen.text((0, crown + turn * (clay * k + 4.4)), words[2], anchor="middle")


def cylinder(pen: Pen, wide: float, long: float) -> None:
    """A tube seen a little from above, the middle of its top at (0, 0)."""
    turns = [math.pi * i / 32 for i in range(33)]
    half = [(wide / 2 * math.cos(a), wide * 0.14 * math.sin(a)) for a in turns]
    pen.line([*((x, -y) for x, y in half), *((x, long + y) for x, y in reversed(half))], closed=True)
    pen.line(half)


def band(points: Sequence[Point], thickness: float) -> tuple[list[Point], list[Point]]:
    """The two edges of a wire of some thickness along its middle line."""
    left, right = [], []
    steps = list(pairwise(points))
    before, after = [*steps[:1], *steps], [*steps, *steps[-1:]]
    for (x, y), ((bx, by), (cx, cy)), ((ax, ay), (ex, ey)) in zip(points, before, after, strict=True):
        dx, dy = ex - ax + cx - bx, ey - ay + cy - by
        long = math.hypot(dx, dy) or 1
        nx, ny = -dy / long * thickness / 2, dx / long * thickness / 2
        left.append((x + nx, y + ny))
        right.append((x - nx, y - ny))
    return left, right


def wire(pen: Pen, points: Sequence[Point], thickness: float, kind: Line = "cut", *, closed: bool = False) -> None:
    """A wire drawn by its two edges; open ends are cut square."""
    if closed:
        for edge in _edges(points, thickness):
            pen.line(edge, kind, closed=True)
    else:
        left, right = band(points, thickness)
        pen.line([*left, *reversed(right)], kind, closed=True)


def _edges(points: Sequence[Point], thickness: float) -> tuple[list[Point], list[Point]]:
    """The two edges of a wire closed on itself."""
    left, right = band([*points, points[0], points[1]], thickness)
    return left[:-2], right[:-2]


def linked(pen: Pen, run: Sequence[tuple[Sequence[Point], float]]) -> None:
    """Links that hang in each other, each the middle of its wire from where it lies in the next one, and its thickness.

    Each crosses the next twice, once over and once under it.
    """
    for path, thickness in run:
        pen.cover(_edges(path, thickness))
        wire(pen, path, thickness, closed=True)
    for path, thickness in run[:-1]:
        quarter = path[: len(path) // 4 + 1]
        straight = [path[-1]] if math.dist(path[-1], path[0]) > thickness / 100 else []
        _over(pen, [*straight, *quarter], thickness)


def _over(pen: Pen, run: Sequence[Point], thickness: float) -> None:
    """A stretch of wire that lies over what is drawn already."""
    left, right = band(run, thickness)
    pen.cover([[*left, *reversed(right)]])
    pen.line(left)
    pen.line(right)


def crossed_over(pen: Pen, path: Sequence[Point], thickness: float) -> None:
    """The first run of a crossed belt, from wheel to wheel, over the run that comes back."""
    first = max(range(len(path) - 1), key=lambda i: math.dist(path[i], path[i + 1]))
    _over(pen, path[first - 1 : first + 3], thickness)


def belt(r1: float, r2: float, apart: float, *, crossed: bool) -> list[Point]:
    """A belt over two wheels on a level line, the first at (0, 0): the closed path of its middle, by their radii."""
    lean = (r1 + r2) if crossed else (r1 - r2)
    turn = math.degrees(math.asin(max(-1.0, min(1.0, lean / apart))))
    # It leaves a wheel where it touches the straight run: at 90° ∓ turn from the line of centres.
    one = arc((0, 0), r1, 90 - turn, 270 + turn, 64)
    start, end = (90 + turn, -90 - turn) if crossed else (-90 + turn, 90 - turn)
    return [*one, *arc((apart, 0), r2, start, end, 64)]


def _under(path: Sequence[Point], crossing: float, d: float) -> list[Point]:
    """A crossed belt opened where its last run goes under its first, at (crossing, 0)."""
    start, end = path[0], path[-1]
    long = math.dist(start, end)
    along = ((start[0] - end[0]) / long, (start[1] - end[1]) / long)
    # The runs cross at twice the angle that each makes with the line of centres; a slanting end reaches further.
    angle = 2 * abs(math.asin(max(-1.0, min(1.0, along[1]))))
    half = d / 2 * (1 + max(0.0, math.cos(angle))) / max(math.sin(angle), 0.2)
    before, after = ((crossing + side * half * along[0], side * half * along[1]) for side in (-1, 1))
    return [after, *path, before]


def two_pegs(
    pen: Pen, first: float, second: float, gap: float, d: float, words: tuple[str, str], k: float, *, crossed: bool
) -> None:
    """Two pegs and the path of the wire round them, crossed (a figure eight) or open (a long link)."""
    r1, r2 = (first + d) / 2 * k, (second + d) / 2 * k
    c = (gap + (first + second) / 2) * k
    pen.circle((0, 0), first * k, "thin")
    pen.circle((c, 0), second * k, "thin")
    pen.cross((0, 0))
    pen.cross((c, 0))
    path = belt(r1, r2, c, crossed=crossed)
    if crossed:
        wire(pen, _under(path, c * r1 / (r1 + r2), d * k), d * k)
        crossed_over(pen, path, d * k)
    else:
        wire(pen, path, d * k, closed=True)
    below = max(r1, r2) + d * k / 2
    pen.across(below + 5, first / 2 * k, c - second / 2 * k, words[0], to=below * 0.2)
    pen.across(-below - 4, 0, c, words[1], to=-0.5)


def oval_path(length: float, width: float, d: float, *, straight: bool) -> list[Point]:
    """The middle of a wire round an inside that is a level oval: with straight sides, or an ellipse grown evenly."""
    if straight:
        r, half = (width + d) / 2, (length - width) / 2
        return [*arc((half, 0), r, -90, 90, 32), *arc((-half, 0), r, 90, 270, 32)]
    points = []
    for x, y in arc((0, 0), 1, 0, 360, 96)[:-1]:
        nx, ny = x * width, y * length
        out = d / 2 / math.hypot(nx, ny)
        points.append((x * length / 2 + nx * out, y * width / 2 + ny * out))
    return points


def oval(pen: Pen, length: float, width: float, d: float, words: tuple[str, str], k: float, *, straight: bool) -> None:
    """An oval ring, its seam in the middle of a long side, away from the pull."""
    path = oval_path(length * k, width * k, d * k, straight=straight)
    wire(pen, path, d * k, closed=True)
    edge, outer = width * k / 2, (width / 2 + d) * k
    pen.line([(0, -edge + 0.6), (0, -outer - 1.4)], "cut")
    pen.text((1.2, -outer - 2), "seam")
    reach = length * k / 2
    pen.inside(0, -reach, reach, words[0], below=outer + 5)
    pen.upright(reach + d * k + 5, -edge, edge, words[1], to=(length - width) * k / 2 if straight else 0)


def round_ring(pen: Pen, inside: float, d: float, words: str, k: float) -> None:
    """A round ring with its inside."""
    r = (inside + d) / 2 * k
    wire(pen, arc((0, 0), r, 0, 360, 96)[:-1], d * k, closed=True)
    edge = inside / 2 * k
    pen.inside(0, -edge, edge, words, below=r + d * k / 2 + 5)


def stops(pen: Pen, length: float, marks: Sequence[tuple[float, str]], d: float, k: float, room: float = 0) -> None:
    """A straight wire with the places to bend at, each by its distance from the left end (running dimensions, ISO 129).

    Of the left half the words stand below, of the right half above, so that no line crosses them; `room` is how far
    beads on the wire reach to each side.
    """
    pen.box((0, -d * k / 2), length * k, d * k)
    near = max(d, room) * k / 2
    left = [mark for mark in sorted(marks) if mark[0] <= length / 2]
    right = [mark for mark in sorted(marks) if mark[0] > length / 2]
    pen.circle((0, 0), 1.4, "thin")
    for i, (at, words) in enumerate(left):
        _stop(pen, at * k, near + 4.5 + 4.2 * (len(left) - 1 - i), d * k / 2, words)
    for i, (at, words) in enumerate(right):
        _stop(pen, at * k, -near - 2.5 - 4.2 * i, d * k / 2, words)


def _stop(pen: Pen, x: float, y: float, edge: float, words: str) -> None:
    """One mark across the wire, led to its words: to the right below it, to the left above it."""
    down = 1 if y > 0 else -1
    pen.line([(x, -down * (edge + 0.8)), (x, y)], "thin")
    pen.arrow((x, down * edge), (0, -down))
    pen.text((x + down * 0.9, y), words, anchor="start" if down > 0 else "end")


def _polar(radius: float, degrees: float) -> Point:
    return radius * math.cos(math.radians(degrees)), radius * math.sin(math.radians(degrees))


def link(inside: float, across: float, thick: float) -> list[Point]:
    """The middle of a link's wire, its inside from (0, 0) on to the right; a short one is no oval but round."""
    r = (min(across, inside) + thick) / 2
    straight = max(0.0, inside + thick - 2 * r)
    right, left = (inside + straight) / 2, (inside - straight) / 2
    return [*arc((right, 0), r, -90, 90, 32), *arc((left, 0), r, 90, 270, 32)]
