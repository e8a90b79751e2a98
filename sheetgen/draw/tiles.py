"""A template larger than a page: cut into tiles that overlap, with marks to join them by and a key of how they lie."""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.base.pen import Extent, Moved
from sheetgen.draw.pens import Clipped, Scaled, Turned

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.pen import Pen, Point

OVERLAP = 10.0
GRAIN = 1e-9
LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
KEY = (48.0, 14.0)  # room for the key, mm


@dataclass(frozen=True, slots=True)
class Tile:
    """One tile: its number, its window on the whole."""

    number: int
    corner: Point
    far: Point


@dataclass(frozen=True)
class Tiling:
    """How a drawing is cut into tiles of one size, `columns` beside each other and `rows` below each other."""

    extent: Extent
    columns: int
    rows: int
    wide: float
    tall: float

    @functools.cached_property
    def tiles(self) -> list[Tile]:
        """Every tile, in the order of reading."""
        found: list[Tile] = []
        for row in range(self.rows):
            for column in range(self.columns):
                x = self.extent.left + column * (self.wide - OVERLAP)
                y = self.extent.top + row * (self.tall - OVERLAP)
                found.append(Tile(len(found) + 1, (x, y), (x + self.wide, y + self.tall)))
        return found

    def crosses(self) -> Iterator[tuple[Point, str]]:
        """Two join marks on every seam between two tiles, each with its own letters."""
        number = 0
        for tile in self.tiles:
            (x1, y1), (x2, y2) = tile.corner, tile.far
            seams = []
            if tile.number % self.columns:
                seams += [(x2 - OVERLAP / 2, y1 + (y2 - y1) * share) for share in (0.25, 0.75)]
            if tile.number <= self.columns * (self.rows - 1):
                seams += [(x1 + (x2 - x1) * share, y2 - OVERLAP / 2) for share in (0.25, 0.75)]
            for at in seams:
                yield at, _letters(number)
                number += 1

    def onto(self, pen: Pen, tile: Tile, draw: Callable[[Pen], None], at: Point) -> None:
        """One tile, its upper left corner at a point: what lies in its window, the join marks, the edges to trim."""
        moved = Moved(pen, (at[0] - tile.corner[0], at[1] - tile.corner[1]))
        window = Clipped(moved, tile.corner, tile.far)
        draw(window)
        for (x, y), letters in self.crosses():
            if all(tile.corner[i] <= (x, y)[i] <= tile.far[i] for i in (0, 1)):
                window.line([(x - 3, y), (x + 3, y)], "thin")
                window.line([(x, y - 3), (x, y + 3)], "thin")
                window.circle((x, y), 2.4, "thin")
                window.text((x + 1.3, y - 1.3), letters)
        (x1, y1), (x2, y2) = tile.corner, tile.far
        column, row = (tile.number - 1) % self.columns, (tile.number - 1) // self.columns
        edges = [
            (column > 0, (x1, y1), (x1, y2)), (column < self.columns - 1, (x2, y1), (x2, y2)),
            (row > 0, (x1, y1), (x2, y1)), (row < self.rows - 1, (x1, y2), (x2, y2)),
        ]  # fmt: skip
        for seam, begin, end in edges:
            if seam:
                moved.line([begin, end], "thin")

    def key(self, pen: Pen, tile: Tile, draw: Callable[[Pen], None], at: Point) -> None:
        """How the tiles lie, this one framed twice."""
        scale = min(KEY[0] / self.extent.width, KEY[1] / self.extent.height)
        small = Scaled(pen, scale, (at[0] - self.extent.left * scale, at[1] - self.extent.top * scale))
        draw(small)
        inset = 0.8 / scale
        for one in self.tiles:
            x1, y1, x2, y2 = self._own(one)
            small.box((x1, y1), x2 - x1, y2 - y1, "thin")
            if one == tile:
                small.box((x1 + inset, y1 + inset), x2 - x1 - 2 * inset, y2 - y1 - 2 * inset, "thin")
            small.text(((x1 + x2) / 2, (y1 + y2) / 2 + 1 / scale), str(one.number), anchor="middle")

    def _own(self, tile: Tile) -> tuple[float, float, float, float]:
        """A tile as far as the middle of its seams."""
        e, half = self.extent, OVERLAP / 2
        (x1, y1), (x2, y2) = tile.corner, tile.far
        return (
            x1 if x1 <= e.left + GRAIN else x1 + half, y1 if y1 <= e.top + GRAIN else y1 + half,
            x2 if x2 >= e.right - GRAIN else x2 - half, y2 if y2 >= e.bottom - GRAIN else y2 - half,
        )  # fmt: skip


def tiling(extent: Extent, room: tuple[float, float]) -> Tiling:
    """As few tiles as cover a drawing, all of one size."""
    (columns, wide), (rows, tall) = _split(extent.width, room[0]), _split(extent.height, room[1])
    return Tiling(extent, columns, rows, wide, tall)


def _split(length: float, room: float) -> tuple[int, float]:
    """How many tiles a length takes, and how long each is."""
    count = max(1, math.ceil((length - OVERLAP) / (room - OVERLAP) - GRAIN))
    return count, (length + (count - 1) * OVERLAP) / count


def turned(extent: Extent) -> Extent:
    """The room that a drawing takes when it is turned a quarter."""
    return Extent(-extent.bottom, extent.left, -extent.top, extent.right)


def turned_draw(draw: Callable[[Pen], None]) -> Callable[[Pen], None]:
    """The drawing turned a quarter."""
    return lambda pen: draw(Turned(pen))


def _letters(number: int) -> str:
    letter = LETTERS[number % len(LETTERS)]
    return letter if number < len(LETTERS) else letter + str(number // len(LETTERS))
