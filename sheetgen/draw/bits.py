"""Bits of a row: what hangs, lies or is threaded one after the other, each drawn by itself."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.draw import sketches

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from sheetgen.base.pen import Pen, Point

    Place = Callable[[float, float], Point]
    """A point of the paper, so far along a bit and so far to its side, mm."""


@dataclass(frozen=True, slots=True)
class Bit:
    """`draw` draws it hanging, the middle of its top at (0, 0); the row passes from `top` below that, `long` on.

    `wire` is how thick it is where it hangs in wire, 0 for what is threaded or held; `hangs_on`: the next one may hang
    in it. A `plate` begins and ends outside the rings beside it. What has a higher `layer` lies over its neighbours.
    `led`, of what is supple, draws it along the row instead. One that is `turned` lies with its top to the next.
    """

    draw: Callable[[Pen], object]
    long: float
    top: float = 0.0
    wire: float = 0.0
    hangs_on: bool = True
    plate: bool = False
    layer: int = 0
    led: Callable[[Pen, Place], None] | None = None
    turned: bool = False

    @property
    def end(self) -> float:
        """Where the next one meets it, below its top."""
        return self.top + self.long


def ring(inside: float, across: float, thick: float) -> Bit:
    """A link or ring of wire by its inside, along the row and across."""
    path = [(y, thick + x) for x, y in sketches.link(inside, across, thick)]
    return Bit(lambda pen: sketches.wire(pen, path, thick, closed=True), inside, thick, thick)


def bead(long: float, wide: float) -> Bit:
    """A bead, a knot or whatever else is threaded and oval."""
    return Bit(lambda pen: pen.oval((0, long / 2), wide, long), long)


def between(bits: Iterable[Bit], other: Bit) -> Iterator[Bit]:
    """The bits with another between each and the next."""
    for i, bit in enumerate(bits):
        if i:
            yield other
        yield bit
