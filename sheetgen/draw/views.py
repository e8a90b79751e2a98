"""Pieces seen from the front when they are finished, at true size; the middle of their top is at (0, 0)."""

from __future__ import annotations

import math
from collections.abc import Sequence

from sheetgen.base.pen import Moved, Pen, Point, arc
from sheetgen.draw.sketches import link, linked, wire
from sheetgen.parts.strand import ROUND

Bead = tuple[float, float]
"""Length along its hole and size across, mm."""


def loop(pen: Pen, top: float, inside: float, d: float) -> float:
    """A round loop of wire; returns where its outside ends below."""
    wire(pen, arc((0, top + inside / 2 + d), (inside + d) / 2, 0, 360, 64)[:-1], d, closed=True)
    return top + inside + 2 * d


def wraps(pen: Pen, top: float, turns: int, d: float) -> float:
    """Close wraps round a stem; returns where they end below."""
    for i in range(turns):
        pen.oval((0, top + (i + 0.5) * d), 3 * d, d * 1.2)
    return top + turns * d


def beads(pen: Pen, top: float, run: Sequence[Bead]) -> float:
    """Beads threaded under each other; returns where the last ends below."""
    for long, wide in run:
        pen.oval((0, top + long / 2), wide, long)
        top += long
    return top


def beads_round(pen: Pen, run: Sequence[Bead], whole: float) -> float:
    """Beads threaded round a closed strand `whole` mm long, from its top on; returns how far down it reaches."""
    r, most = whole / (2 * math.pi), max(wide for _, wide in run)
    middle, gone = (0.0, r + most / 2), (whole - sum(long for long, _ in run)) / 2
    pen.circle(middle, 2 * r, "thin")
    for long, wide in run:
        turn = (gone + long / 2) / r - math.pi / 2
        centre, across = (middle[0] + r * math.cos(turn), middle[1] + r * math.sin(turn)), min(long, wide)
        pen.cover([arc(centre, across / 2, 0, 360, 48)])
        pen.circle(centre, across)
        gone += long
    return 2 * r + most


def strand(pen: Pen, run: Sequence[Bead], whole: float) -> float:
    """Beads hanging straight; of a strand `whole` mm long that goes round a neck or wrist, closed to a round."""
    return beads_round(pen, run, whole) if whole >= ROUND else beads(pen, 0, run)


Links = Sequence[tuple[float, float, float]]
"""Inside length, inside width and wire of each link or ring, mm, in their order."""


def chain(pen: Pen, run: Links) -> float:
    """A chain hanging straight; returns where the inside of its last link ends."""
    gone, paths = run[0][2], []
    for inside, across, thick in run:
        paths.append(([(y, gone + x) for x, y in link(inside, across, thick)], thick))
        gone += inside
    linked(pen, paths)
    return gone


def chain_round(pen: Pen, run: Links, whole: float) -> float:
    """A chain closed to a round `whole` mm inside its links, its gap at the top; returns how far down it reaches."""
    r, gone = whole / (2 * math.pi), (whole - sum(inside for inside, _, _ in run)) / 2
    most = max(across / 2 + thick for _, across, thick in run)
    paths = []
    for inside, across, thick in run:
        turn = (gone + inside / 2) / r - math.pi / 2
        along = (-math.sin(turn), math.cos(turn))
        at = (r * math.cos(turn), r + most + r * math.sin(turn))
        path = [(x - inside / 2, y) for x, y in link(inside, across, thick)]
        turned = [(at[0] + x * along[0] - y * along[1], at[1] + x * along[1] + y * along[0]) for x, y in path]
        paths.append((turned, thick))
        gone += inside
    linked(pen, paths)
    return 2 * (r + most)


def strewn(shape: str, number: int) -> list[Point]:
    """Spots that lie evenly over a shape 1 wide and 1 high round (0, 0), and in no rows.

    In a round or oval the seeds of a sunflower (Vogel, 1979); in a rectangle Roberts' sequence of 2018.
    """
    if shape == "rectangle":
        plastic = 1.324717957244746
        return [((i / plastic) % 1 - 0.5, (i / plastic**2) % 1 - 0.5) for i in range(1, number + 1)]
    golden = math.pi * (3 - math.sqrt(5))
    radii = [math.sqrt((i + 0.5) / number) / 2 for i in range(number)]
    return [(radius * math.cos(i * golden), radius * math.sin(i * golden)) for i, radius in enumerate(radii)]


def placed(pen: Pen, points: Sequence[Point], d: float) -> float:
    """A bent wire, the middle of its top at (0, 0); returns how far down it reaches."""
    left, right = min(x for x, _ in points), max(x for x, _ in points)
    top, low = min(y for _, y in points), max(y for _, y in points)
    wire(Moved(pen, (-(left + right) / 2, d / 2 - top)), points, d)
    return low - top + d


def coil(pen: Pen, outside: float, long: float, pitch: float, d: float) -> None:
    """A coil upright, each turn a slanting stretch of wire in front."""
    half = (outside - d) / 2
    for i in range(max(1, round((long - d) / pitch))):
        y = d / 2 + i * pitch
        wire(pen, [(-half, y), (half, y + min(pitch, long - d))], d)


def stone(pen: Pen, centre: Point, wide: float, tall: float) -> None:
    """A stone face on: its outline and its table."""
    pen.oval(centre, wide, tall, "thin")
    pen.oval(centre, wide / 2, tall / 2, "thin")


def washer(pen: Pen, outside: float, opening: float) -> None:
    """A disc with an opening, or with none."""
    pen.circle((0, outside / 2), outside)
    if opening:
        pen.circle((0, outside / 2), opening)
