"""A pen that measures what it draws and keeps it, to be set elsewhere or to be read: what is drawn is drawn once."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from sheetgen.base.pen import SIZE, Anchor, Extent, Line, Pen, Point
from sheetgen.base.spelling import apostrophes
from sheetgen.draw.paper import Paper

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.model.drawing import Drawing

NO_END = (math.inf, math.inf)


class TooLarge(Exception):
    """What is drawn has passed the width or height that it may take."""


@dataclass(slots=True)
class Kept(Pen):
    """How far a drawing reaches, and all that it is made of. TooLarge as soon as it reaches farther than `most`."""

    most: tuple[float, float] = NO_END
    extent: Extent = field(default_factory=Extent)
    _drawn: list[tuple[str, tuple[Any, ...], dict[str, Any]]] = field(default_factory=list)

    def line(self, points: Sequence[Point], kind: Line = "cut", *, closed: bool = False) -> None:
        """As Pen.line."""
        self.extent.line(points, kind, closed=closed)
        self._keep("line", (tuple(points), kind), closed=closed)

    def oval(self, centre: Point, width: float, height: float, kind: Line = "cut") -> None:
        """As Pen.oval."""
        self.extent.oval(centre, width, height, kind)
        self._keep("oval", (centre, width, height, kind))

    def text(self, at: Point, words: str, *, size: float = SIZE, anchor: Anchor = "start", turn: float = 0) -> None:
        """As Pen.text."""
        self.extent.text(at, words, size=size, anchor=anchor, turn=turn)
        self._keep("text", (at, words), size=size, anchor=anchor, turn=turn)

    def cover(self, loops: Sequence[Sequence[Point]]) -> None:
        """As Pen.cover."""
        self._keep("cover", (tuple(map(tuple, loops)),))

    def _keep(self, what: str, told: tuple[Any, ...], **more: Any) -> None:  # noqa: ANN401 - what a pen is told
        self._drawn.append((what, told, more))
        extent = self.extent
        if extent.right - extent.left > self.most[0] or extent.bottom - extent.top > self.most[1]:
            raise TooLarge

    def again(self, pen: Pen) -> None:
        """All of it on another pen."""
        for what, told, more in self._drawn:
            getattr(pen, what)(*told, **more)

    @property
    def words(self) -> tuple[str, ...]:
        """Its words, as they stand on paper."""
        return tuple(apostrophes(told[1]) for what, told, _ in self._drawn if what == "text")


@dataclass(frozen=True, slots=True, eq=False)
class Fitted:
    """A drawing at the scale at which it fits: what is drawn, its upper left corner, its sides, what it says."""

    kept: Kept
    corner: Point
    width: float
    height: float
    says: str
    true: bool

    @property
    def words(self) -> tuple[str, ...]:
        """Its words, as they stand on paper."""
        return self.kept.words

    def drawing(self) -> Drawing:
        """On paper, its outlines as fine as all else."""
        pen = Paper(outline="thin")
        self.kept.again(pen)
        return pen.drawing(self.corner, self.width, self.height, self.says, true=self.true)
