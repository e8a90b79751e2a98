"""The way a row is laid: closed to an oval, or led back beside itself; where each bit begins on it."""

from __future__ import annotations

import math
from bisect import bisect_right
from dataclasses import dataclass
from itertools import accumulate, pairwise
from typing import TYPE_CHECKING

from sheetgen.base.pen import arc

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sheetgen.base.pen import Point
    from sheetgen.draw.bits import Bit

SLENDER = 1.75  # an oval's width in heights: that of the room that a picture has
BEND = 20.0  # mm: radius of the bend of a row that is led back; a plait of leather takes it without a fold
RUNS = 720
HALVINGS = 24  # of some millimetres: far finer than a pen
ROUND_MOST, ROUND_LEAST = 8.0, 9.2  # how often half the height of such an oval goes into its girth, at least and most


@dataclass(frozen=True, slots=True)
class Way:
    """A line on the paper by the lengths along it, mm; one that is closed begins again at its end."""

    points: Sequence[Point]
    gone: Sequence[float]
    closed: bool = False

    @property
    def long(self) -> float:
        """From end to end, or once round."""
        return self.gone[-1]

    def at(self, s: float) -> Point:
        """The point so far along."""
        s = s % self.long if self.closed else s
        i = min(max(bisect_right(self.gone, s) - 1, 0), len(self.points) - 2)
        (x1, y1), (x2, y2) = self.points[i], self.points[i + 1]
        share = (s - self.gone[i]) / (self.gone[i + 1] - self.gone[i])
        return x1 + share * (x2 - x1), y1 + share * (y2 - y1)

    def beside(self, s: float, x: float) -> Point:
        """The point so far along and so far to its side, the side to which a bit's right lies."""
        (x1, y1), (x2, y2) = self.at(s - 0.05), self.at(s + 0.05)
        long, (px, py) = math.hypot(x2 - x1, y2 - y1), self.at(s)
        return px + x * (y2 - y1) / long, py - x * (x2 - x1) / long


def way(points: Sequence[Point], *, closed: bool = False) -> Way:
    """A way through points."""
    return Way(points, [0.0, *accumulate(math.dist(a, b) for a, b in pairwise(points))], closed)


def joints(on: Way, bits: Sequence[Bit], start: float) -> list[float]:
    """Where each bit begins and the last one ends: what is stiff spans its length straight, what is supple follows."""
    found = [start]
    for bit in bits:
        found.append(found[-1] + (bit.long if bit.led is not None else _ahead(on, found[-1], bit.long)))
    return found


def _ahead(on: Way, s: float, long: float) -> float:
    """How far along the way a stiff length reaches from a point of it."""
    start = on.at(s)
    return _found(lambda a: math.dist(on.at(s + a), start) >= long, 0.0, min(on.long / 2, 2 * long + 1))


def closed(bits: Sequence[Bit], first: int) -> tuple[Way, list[float]]:
    """The oval that the bits close to, each at its length, and its joints; the first few lie in the middle below."""
    around = sum(bit.long for bit in bits)
    turns = arc((0, 0), 1, 90, 90 - 360, RUNS)

    def tried(size: float) -> tuple[Way, list[float]]:
        on = way([(x * SLENDER * size, y * size) for x, y in turns], closed=True)
        found = joints(on, bits, 0.0)
        for _ in range(3):
            found = joints(on, bits, found[0] - (found[0] + found[first]) / 2)
        return on, found

    def wide_enough(size: float) -> bool:
        on, found = tried(size)
        return on.long >= found[-1] - found[0]

    return tried(_found(wide_enough, around / ROUND_LEAST, around / ROUND_MOST))


def led_back(bits: Sequence[Bit]) -> tuple[Way, list[float]]:
    """A row that goes to the right and comes back below itself."""
    half = max(0.0, (sum(bit.long for bit in bits) - math.pi * BEND) / 2)
    bend = arc((half, BEND), BEND, -90, 90, RUNS // 4)
    on = way([(-1.0, 0.0), (0.0, 0.0), *bend, (-half - 2 * BEND, 2 * BEND)])
    return on, joints(on, bits, 1.0)


def _found(enough: Callable[[float], bool], low: float, high: float) -> float:
    """The least number that is enough, between two."""
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (low, middle) if enough(middle) else (middle, high)
    return (low + high) / 2
