"""What drawings in section are made of: cut faces hatched, slip dotted, wire laid over wire, words led to a spot."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING

from sheetgen.base.pen import Extent, Pen, Point, arc
from sheetgen.draw.gesture import LABEL, LINE, NUMBER
from sheetgen.draw.sketches import band

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sheetgen.base.pen import Anchor

APART = 1.0  # mm on paper between two lines of a hatching
DOTS = 0.95  # and between two dots of slip
SPOT = 0.32
STROKE = 0.5  # mm wide
CLEAR = 0.8  # mm between words and the line from them
ROOM = 4.4  # mm between two edges that the arrows of a dimension stand between


def cut(pen: Pen, loop: Sequence[Point], *, leans: int = 1, apart: float = APART) -> None:
    """A face that is cut through: its outline, hatched; what touches it leans the other way, -1."""
    pen.cover([loop])
    for a, b in _strokes(loop, leans, apart):
        pen.line([a, b], "thin")
    pen.line(loop, closed=True)


def slip(pen: Pen, loop: Sequence[Point]) -> None:
    """Slip, adhesive or soft clay: its outline, dotted."""
    pen.cover([loop])
    ys = [y for _, y in loop]
    rows = math.ceil((max(ys) - min(ys)) / DOTS)
    for row in range(rows):
        y = min(ys) + (row + 0.5) * DOTS
        ends = _crossings(loop, y)
        for left, right in zip(ends[::2], ends[1::2], strict=False):
            first = math.ceil((left + 0.3) / DOTS - (row % 2) / 2)
            last = math.floor((right - 0.3) / DOTS - (row % 2) / 2)
            for i in range(first, last + 1):
                pen.circle(((i + (row % 2) / 2) * DOTS, y), SPOT, "solid")
    pen.line(loop, "thin", closed=True)


def solder(pen: Pen, corner: Point, right: float, up: float) -> None:
    """A fillet of solder in a corner, so far along both sides of it."""
    x, y = corner
    pen.line([(x, y), (x + right, y), (x, y + up)], "solid", closed=True)


def laid(pen: Pen, path: Sequence[Point], thickness: float, *, begins: bool = True, ends: bool = True) -> None:
    """Wire or cord laid over what is drawn already, by its two edges; where it goes on, an end is left open."""
    left, right = band(path, thickness)
    pen.cover([[*left, *reversed(right)]])
    pen.line(left)
    pen.line(right)
    for drawn, i in ((begins, 0), (ends, -1)):
        if drawn:
            pen.line([left[i], right[i]])


def led(pen: Pen, to: Point, at: Point, lines: str | Sequence[str], anchor: Anchor = "start") -> None:
    """Words at a spot on the page, their first baseline there, and a thin line from beside them to what they name."""
    words = [lines] if isinstance(lines, str) else lines
    box = Extent()
    for on in (box, pen):
        for i, line in enumerate(words):
            on.text((at[0], at[1] + i * LINE), line, size=LABEL, anchor=anchor)
    # From the side of the words that faces it: level with their middle, or from above or below.
    x = min(max(to[0], box.left - CLEAR), box.right + CLEAR)
    y = min(max(to[1], box.top - CLEAR / 2), box.bottom + CLEAR / 2)
    if x in {box.left - CLEAR, box.right + CLEAR}:
        y = at[1] - 0.33 * LABEL if anchor != "end" or len(words) == 1 else y
    pen.line([to, (x, y)], "thin")


def stroke(pen: Pen, a: Point, b: Point) -> None:
    """What a blade cuts, or a pencil marks: the one heavy line."""
    far = math.dist(a, b) or 1
    nx, ny = -(b[1] - a[1]) / far * STROKE / 2, (b[0] - a[0]) / far * STROKE / 2
    pen.line([(a[0] + nx, a[1] + ny), (b[0] + nx, b[1] + ny), (b[0] - nx, b[1] - ny), (a[0] - nx, a[1] - ny)], "solid",
             closed=True)  # fmt: skip


def pushed(pen: Pen, tail: Point, tip: Point) -> None:
    """An arrow from tail to tip."""
    along = (tip[0] - tail[0], tip[1] - tail[1])
    far = math.hypot(*along) or 1
    short = (tip[0] - along[0] / far, tip[1] - along[1] / far)  # the line ends inside its head
    pen.line([tail, short], "thin")
    pen.arrow(tip, along)


def turning(pen: Pen, centre: Point, radius: float, start: float, end: float) -> None:
    """An arrow on an arc, degrees clockwise from the right."""
    way = math.copysign(1, end - start)
    run = arc(centre, radius, start, end - way * math.degrees(0.9 / radius), 32)
    pen.line(run, "thin")
    tip = arc(centre, radius, end, end + 1, 1)[0]
    pen.arrow(tip, (tip[0] - run[-1][0], tip[1] - run[-1][1]))


def high(pen: Pen, x: float, ends: tuple[float, float], words: str, *, to: float) -> None:
    """How far from one height to another, at `x`; extension lines from `to`, words on the far side, large and level."""
    away, (top, low) = math.copysign(1.0, x - to), sorted(ends)
    for y in (top, low):
        pen.line([(to + 0.6 * away, y), (x + 0.8 * away, y)], "thin")
    _between(pen, (x, top), (x, low))
    anchor: Anchor = "start" if away > 0 else "end"
    pen.text((x + 1.3 * away, (top + low) / 2 + NUMBER * 0.35), words, size=NUMBER, anchor=anchor)


def wide(pen: Pen, y: float, ends: tuple[float, float], words: str, *, to: float) -> None:
    """How far from left to right, at height `y`; extension lines from `to`, words on the far side, large."""
    away, (left, right) = math.copysign(1.0, y - to), sorted(ends)
    for x in (left, right):
        pen.line([(x, to + 0.6 * away), (x, y + 0.8 * away)], "thin")
    _between(pen, (left, y), (right, y))
    pen.text(((left + right) / 2, y + (NUMBER if away > 0 else -1.2)), words, size=NUMBER, anchor="middle")


def _between(pen: Pen, a: Point, b: Point) -> None:
    """The arrows of a dimension: between its ends, or from outside where there is no room."""
    far = math.dist(a, b) or 1
    along = ((b[0] - a[0]) / far, (b[1] - a[1]) / far)
    back = (-along[0], -along[1])
    if far >= ROOM:
        pen.line([a, b], "thin")
        pen.arrow(a, back)
        pen.arrow(b, along)
        return
    pushed(pen, (a[0] + 3.4 * back[0], a[1] + 3.4 * back[1]), a)
    pushed(pen, (b[0] + 3.4 * along[0], b[1] + 3.4 * along[1]), b)


def torn(pen: Pen, at: Point, wide: float) -> None:
    """Where a piece goes on that is not drawn: a wave across it."""
    x, y = at
    steps = [i / 12 for i in range(13)]
    pen.line([(x + (s - 0.5) * wide, y + 0.5 * math.sin(s * 2 * math.pi)) for s in steps], "thin")


def _strokes(loop: Sequence[Point], leans: int, apart: float) -> Iterator[tuple[Point, Point]]:
    """The lines of a hatching at 45°, each from edge to edge."""
    half = math.sqrt(0.5)
    turned = [((x - leans * y) * half, (leans * x + y) * half) for x, y in loop]
    low, high = min(y for _, y in turned), max(y for _, y in turned)
    for i in range(math.floor(low / apart) + 1, math.ceil(high / apart)):
        level = i * apart + 1e-7
        ends = _crossings(turned, level)
        for a, b in zip(ends[::2], ends[1::2], strict=False):
            yield tuple(((x + leans * level) * half, (-leans * x + level) * half) for x in (a, b))  # type: ignore[misc]


def _crossings(loop: Sequence[Point], level: float) -> list[float]:
    """Where a level line meets a closed outline, from left to right."""
    found = []
    for (x1, y1), (x2, y2) in pairwise([*loop, loop[0]]):
        if (y1 > level) != (y2 > level):
            found.append(x1 + (level - y1) * (x2 - x1) / (y2 - y1))
    return sorted(found)
