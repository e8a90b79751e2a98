"""Cord and wire that cross over and under: drawn from the lowest stretch to the uppermost."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.draw.sketches import band

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.pen import Pen, Point

Spot = tuple[float, float, float]
"""Right, down, and towards whoever looks, mm."""


@dataclass(frozen=True, slots=True)
class Strand:
    """The middle of a cord, and how thick it is; an end that is drawn is cut square, another goes on."""

    path: Sequence[Spot]
    thickness: float
    begins: bool = True
    ends: bool = True


def woven(pen: Pen, strands: Sequence[Strand], stretch: int = 4) -> None:
    """Strands in their order of depth; `stretch` is how many runs of a path lie at one depth together."""
    pieces: list[tuple[float, list[Point], list[Point], list[tuple[Point, Point]]]] = []
    for strand in strands:
        flat = [(x, y) for x, y, _ in strand.path]
        left, right = band(flat, strand.thickness)
        last = len(flat) - 1
        for first in range(0, last, stretch):
            end = min(first + stretch, last)
            depth = sum(z for _, _, z in strand.path[first : end + 1]) / (end + 1 - first)
            shut = [(left[0], right[0])] if strand.begins and first == 0 else []
            shut += [(left[end], right[end])] if strand.ends and end == last else []
            pieces.append((depth, left[first : end + 1], right[first : end + 1], shut))
    for _, left, right, shut in sorted(pieces, key=lambda one: one[0]):
        pen.cover([[*left, *reversed(right)]])
        pen.line(left)
        pen.line(right)
        for a, b in shut:
            pen.line([a, b])
