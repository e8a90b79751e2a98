"""More forming diagrams drawn to scale: folded strips and fringes, rings of stones, chains, boxes, bent wire.

Sizes are in mm of the piece; `k` is how many mm of paper stand for one of them, and words are ready to print.
"""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass
from itertools import pairwise, repeat
from typing import TYPE_CHECKING

from sheetgen.base.pen import LETTER, SIZE, Pen, Point, arc
from sheetgen.draw.kept import Kept
from sheetgen.draw.sketches import link, linked, wire

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sheetgen.base.printed import Printed

COLUMN, FEW, LINE = 55.0, 4, 3.8  # mm wide; so many lines, a line apart in mm, stand under each other before they part
ROOM = 2.2  # mm on paper: a hole that a cross can stand in
CLEAR = 1.85  # mm from a wire's edge to the middle of a number beside it
HALF = 1.6  # mm from the middle of a number to its edge
SLANTS = (0, 35, -35, 60, -60)  # degrees from straight across a wire
JOINTS, THIRD = 12, 3  # of more joints each third is numbered, so that numbers stand apart
STEP = 0.5  # mm between two points of a wire that a number keeps clear of
THIN = 0.8  # mm on paper: two edges nearer than that run into one line
MOST = 40  # strips drawn one by one; of more only the outermost and the line of their ends


def captioned(pen: Pen, draw: Callable[[Pen], None], lines: Sequence[str]) -> None:
    """A picture with lines of words under it, in two columns when they are many."""
    kept = Kept()
    draw(kept)
    kept.again(pen)
    extent = kept.extent
    apart = max(SIZE * LETTER * len(words) for words in lines) + 1.5
    columns = max(1, min(int(COLUMN / apart), math.ceil(len(lines) / FEW)))
    rows = math.ceil(len(lines) / columns)
    for i, words in enumerate(lines):
        at = (extent.left + apart * (i // rows), extent.bottom + 4.6 + LINE * (i % rows))
        pen.text(at, words)


def over_bar(radius: float, first: float, second: float, joined: tuple[float, float] = (0, 0)) -> list[Point]:
    """The middle of a strip hung over a bar at (0, 0): down one side, round, down the other.

    The drops count from the bar's middle; or from where both come together, so far under it and half a thickness aside.
    """
    meet, half = joined
    if not meet:
        return [(-radius, first), *arc((0, 0), radius, 180, 360, 48), (radius, second)]
    far = math.hypot(meet, half)
    lean = math.degrees(math.acos(radius / far) + math.atan2(half, meet))
    # The strip touches the bar at this angle from straight down, and runs from there to the point where both meet.
    left, right = [(-half, meet + first), (-half, meet)], [(half, meet), (half, meet + second)]
    return [*left, *arc((0, 0), radius, 90 + lean, 450 - lean, 64), *right]


def folded(pen: Pen, path: Sequence[Point], bar: float, thickness: float, k: float) -> None:
    """A strip in section over its bar."""
    pen.circle((0, 0), bar * k, "thin")
    pen.cross((0, 0))
    run = [(x * k, y * k) for x, y in path]
    if thickness * k < THIN:
        pen.line(run)
    else:
        wire(pen, run, thickness * k)


def stone_ring(pen: Pen, sizes: tuple[Printed, Printed, Printed], n: int, disc: float, k: float) -> None:
    """Holes round a circle, two of them level above: the circle, the holes, the pitch from middle to middle."""
    around, hole, pitch = sizes
    r, half = around / 2 * k, 180 / n
    outer = max(disc, around + hole) / 2 * k
    if disc:
        pen.circle((0, 0), disc * k)
    pen.circle((0, 0), 2 * r, "centre")
    pen.cross((0, 0))
    centres = arc((0, 0), r, -90 - half, 270 - half, n)[:n]  # two level above, to measure from middle to middle
    for centre in centres:
        pen.circle(centre, hole * k)
        if hole * k > ROOM:
            pen.cross(centre)
    pen.across(-outer - 4, centres[0][0], centres[1][0], pitch.words, to=centres[0][1])
    pen.across(outer + 6, -r, r, f"Ø {around.words}", to=0)
    pen.text((0, outer + 11), f"{n} × Ø {hole.words}", anchor="middle")


def fringe(pen: Pen, drops: Sequence[float], strip: tuple[float, float], words: tuple[str, str, str], k: float) -> None:
    """Strips, their width and gap, hanging from the line y = 0: the first drop, the last or longest, and the edge."""
    width, gap = strip
    fills = (len(drops) * (width + gap) - gap) * k
    lefts = [i * (width + gap) * k for i in range(len(drops))]
    longest = max(range(len(drops)), key=lambda i: drops[i])
    few = range(len(drops)) if len(drops) <= MOST else sorted({0, longest, len(drops) - 1})
    for i in few:
        pen.box((lefts[i], 0), width * k, drops[i] * k, "thin" if width * k < 2 * THIN else "cut")
    if len(drops) > MOST:
        pen.line([(x + width * k / 2, d * k) for x, d in zip(lefts, drops, strict=True)], "thin")
    pen.upright(-5, 0, drops[0] * k, words[0], to=0)
    if max(drops) != min(drops):
        other = longest if longest not in {0, len(drops) - 1} else len(drops) - 1
        pen.upright(fills + 7, 0, drops[other] * k, words[1], to=lefts[other] + width * k)
    pen.across(max(drops) * k + 6, 0, fills, words[2], to=max(drops) * k)


@dataclass(frozen=True, slots=True)
class Chain:
    """Inside lengths of link and ring, the link's inside width, their wires, how many, rings at each end, clasp; mm."""

    link: float
    across: float
    ring: float
    wire: float
    ring_wire: float
    links: int
    ends: tuple[int, int]
    clasp: float


def chain(pen: Pen, run: Chain, words: tuple[str, str], k: float) -> None:
    """A chain pulled taut, its lengths to scale: clasp, end rings, the first links and the last, the repeat marked."""
    x = 0.0
    wide = run.across
    reach = max(wide / 2 + run.wire, run.ring / 2 + run.ring_wire) * k
    paths: list[tuple[list[Point], float]] = []

    def put(inside: float, across: float, thick: float) -> float:
        """One link or ring, its inside from x on; returns where the next begins, its wire in this one's."""
        paths.append(([(x + a, b) for a, b in link(inside * k, across * k, thick * k)], thick * k))
        return x + inside * k

    if run.clasp:
        pen.box((0, -reach * 0.6), run.clasp * k, reach * 1.2)
        pen.text((run.clasp * k / 2, reach + 3.2), "clasp", anchor="middle")
        x = run.clasp * k
    for _ in range(run.ends[0]):
        x = put(run.ring, run.ring, run.ring_wire)
    shown = run.links if run.links <= 4 else 3  # noqa: PLR2004 - a few, so that they are seen
    for i in range(shown):
        if i == shown - 1 and shown < run.links:
            for side in (1.5, 3.5):
                pen.line([(x + side + dx, y) for dx, y in ((0.6, -reach), (-0.6, -1), (0.6, 1), (-0.6, reach))], "thin")
            x += 5
        first = x
        x = put(run.link, wide, run.wire)
        if i == 0:
            pen.across(reach + 5, first, x, words[0], to=reach * 0.5)
            if run.links > 1:
                pen.across(-reach - 4, first, x + run.ring * k, words[1], to=-reach * 0.5)
        if run.ring and i < shown - 1:
            x = put(run.ring, run.ring, run.ring_wire)
    for _ in range(run.ends[1]):
        x = put(run.ring, run.ring, run.ring_wire)
    linked(pen, paths)


@dataclass(frozen=True, slots=True)
class Case:
    """A box as it is put together, wet.

    Its sides are those of the base, the length of the two walls down, and the height; `plate` is how thick its base is.
    """

    sides: tuple[Printed, Printed, Printed, Printed]
    wall: float
    plate: float
    mitred: bool
    lid: bool
    lip: Printed | None


def case(pen: Pen, box: Case, k: float) -> None:
    """From above how the walls meet, and under it in section how they stand on the base, the lid lifted."""
    across, down, wall_down, height = box.sides
    wide, tall, t = across * k, down * k, box.wall * k
    pen.box((0, 0), wide, tall)
    pen.box((t, t), wide - 2 * t, tall - 2 * t)
    for x, inner in ((0.0, t), (wide, wide - t)):
        for y, level in ((0.0, t), (tall, tall - t)):
            pen.line([(x, y if box.mitred else level), (inner, level)])
    pen.across(-4, 0, wide, across.words, to=0)
    pen.upright(-4, 0, tall, down.words, to=0)
    if not box.mitred:
        pen.upright(wide + 7, t, tall - t, wall_down.words, to=wide)
    y = tall + (6 if box.lid else 14.5)
    plate, lip = box.plate * k, (box.lip or 0) * k
    if box.lid:
        pen.box((0, y), wide, plate)
        pen.text((wide + 3, y + 2), "lid")
        y += plate
        if lip:
            pen.box(((wide - lip) / 2, y), lip, plate)
            y += plate
            pen.across(y + 5, (wide - lip) / 2, (wide + lip) / 2, f"lip {box.lip.words}" if box.lip else "", to=y)
            y += 4
        y += 5
    high = height * k
    for x in (0.0, wide - t):
        pen.box((x, y), t, high)
    pen.box((0, y + high), wide, plate)
    pen.text((wide + 3, y + high + plate), "base")
    pen.upright(-4, y, y + high, height.words, to=0)


def bent(pen: Pen, path: Sequence[Point], joints: Sequence[Point], d: float, k: float) -> None:
    """A bent wire, its start ringed, with a numbered mark across it where each piece ends; of many, each third."""
    run = [(x * k, y * k) for x, y in path]
    wire(pen, run, d * k)
    start, *others = [(x * k, y * k) for x, y in joints]
    pen.circle(start, d * k + 1.6, "thin")
    told = [i for i in range(1, len(others) + 1) if len(others) <= JOINTS or i % THIRD == 0 or i == len(others)]
    marks = _marks(tuple(run), tuple(others[i - 1] for i in told), start, d * k)
    for i, (mark, number) in zip(told, marks, strict=True):
        pen.line(mark, "thin")
        pen.text((number[0], number[1] + 1.05), str(i), anchor="middle")


@functools.lru_cache(maxsize=256)
def _marks(
    run: tuple[Point, ...], joints: tuple[Point, ...], start: Point, thick: float
) -> tuple[tuple[tuple[Point, Point], Point], ...]:
    """The line across a wire at each of its joints, and the middle of its number; mm on paper."""
    wires = [point for pair in pairwise(run) for point in _sampled(*pair)]
    wires += arc(start, thick / 2 + 0.8, 0, 360, 16)
    numbers: list[Point] = []
    found = []
    for x, y in joints:
        near = min(range(len(run)), key=lambda j: math.dist(run[j], (x, y)))
        (ax, ay), (bx, by) = run[max(0, near - 1)], run[min(len(run) - 1, near + 1)]
        long = math.hypot(bx - ax, by - ay) or 1
        nx, ny = -(by - ay) / long, (bx - ax) / long
        far, (ux, uy) = _free((x, y), (nx, ny), thick / 2, (wires, numbers))
        numbers.append((x + ux * far, y + uy * far))
        ends = [(x + ux * r, y + uy * r) for r in (-thick / 2, far - HALF)]
        found.append(((ends[0], ends[1]), numbers[-1]))
        wires += _sampled(*ends)  # no number stands on another's mark
    return tuple(found)


def _sampled(a: Point, b: Point) -> list[Point]:
    """Points on a run, no more than STEP apart, its end among them."""
    steps = max(1, math.ceil(math.dist(a, b) / STEP))
    return [(a[0] + (b[0] - a[0]) * i / steps, a[1] + (b[1] - a[1]) * i / steps) for i in range(1, steps + 1)]


def _free(
    joint: Point, across: Point, edge: float, taken: tuple[Sequence[Point], Sequence[Point]]
) -> tuple[float, Point]:
    """How far from the wire, and which way, a number stands clear of wires and numbers, none of which its mark crosses.

    Straight across the wire if it can be, else aslant.
    """
    best = (-1.0, edge + 3, across)
    for slant in SLANTS:
        c, s = math.cos(math.radians(slant)), math.sin(math.radians(slant))
        way = (across[0] * c - across[1] * s, across[0] * s + across[1] * c)
        for reach in (1.9, 2.3, 2.7, 3.3, 4.0, 5.0, 6.5, 8.0, 10.0, 13.0):
            for side in (way, (-way[0], -way[1])):
                far = edge + reach
                spots = [(joint[0] + side[0] * far * n / 12, joint[1] + side[1] * far * n / 12) for n in range(1, 13)]
                clear = min(map(math.dist, taken[0], repeat(spots[-1]))) - edge
                for number in taken[1]:
                    clear = min(clear, min(map(math.dist, spots, repeat(number))) - HALF + 0.3)
                if clear >= CLEAR:
                    return far, side
                best = max(best, (clear, far, side))
    return best[1:]


def held(pen: Pen, wide: float, deep: float, words: str) -> None:
    """The end that strips are held in, above the line y = 0."""
    pen.box((0, -deep), wide, deep)
    for x in (wide * 0.02, wide * 0.98):
        pen.line([(x, 0), (x, -deep)], "fold")
    pen.text((wide / 2, -deep - 1.4), words, anchor="middle")
