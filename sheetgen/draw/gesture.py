"""How a gesture is drawn: the scene that it asks, and pictures set side by side."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, TypeVar

from sheetgen.base.frozen import Frozen
from sheetgen.base.pen import FIGURE, LETTER, SIZE, Moved, Pen
from sheetgen.draw.kept import Kept

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from sheetgen.base.figure import Figure
    from sheetgen.base.material import Item
    from sheetgen.base.printed import Printed
    from sheetgen.parts.kind import Part
    from sheetgen.parts.piece import Piece

T = TypeVar("T")

LABEL, NUMBER = SIZE, FIGURE  # of words, and of a number that is set
LINE = 3.5  # mm from one line of labels to the next


@dataclass(frozen=True, slots=True)
class Scene:
    """What a gesture may ask: its part; those named beside it, then all others; what is used; the project's figures."""

    piece: Piece
    others: tuple[Piece, ...] = ()
    uses: tuple[Item, ...] = ()
    figures: Mapping[str, Figure] = field(default_factory=Frozen)

    def figure(self, name: str) -> Printed | None:
        """A figure of the project as it is printed, by its name in arithmetic."""
        found = self.figures.get(name)
        return found.printed if found is not None else None

    def wanted(self, name: str) -> Printed:
        """One that facts/gestures.py says the gesture wants. KeyError where there is none."""
        return self.figures[name].printed

    def other(self, *kinds: type[Part]) -> Piece | None:
        """The nearest other part of one of these kinds."""
        names = {kind.kind for kind in kinds}
        return next((one for one in self.others if one.kind in names), None)

    def using(self, sort: type[T], *had: str, but: Item | None = None) -> T | None:
        """The first thing of a sort that is used, of which stock says all of these; not one that is known already."""
        found = (one for one in self.uses if isinstance(one, sort) and one != but)
        return next((one for one in found if all(getattr(one, name) is not None for name in had)), None)


@dataclass(frozen=True, slots=True)
class Gesture:
    """A gesture by its name in facts/gestures.py.

    `draw(pen, scene, k)` draws it, `k` mm on paper for 1 mm of the piece, and returns its text alternative: what it
    shows and how, without a full stop. `most` is the largest scale that helps.
    """

    name: str
    draw: Callable[[Pen, Scene, float], str]
    most: float = 10.0


Picture = tuple["Callable[[Pen], None]", "Sequence[str]"]
"""What draws a picture, and the lines of words under it."""


def side_by_side(pen: Pen, pictures: Sequence[Picture], gap: float = 3.0) -> None:
    """Pictures from left to right, each with its words in the middle under it, all words beginning on one line.

    A picture without words under it may reach farther down than they do.
    """
    drawn = []
    for draw, lines in pictures:
        kept = Kept()
        draw(kept)
        drawn.append((kept, lines))
    labelled = [kept.extent.bottom for kept, lines in drawn if lines]
    under, x = max(labelled, default=0.0) + LABEL + 1.2, 0.0
    for kept, lines in drawn:
        extent = kept.extent
        wide = max([extent.width, *(LETTER * LABEL * len(line) for line in lines)])
        middle = x + wide / 2
        kept.again(Moved(pen, (middle - (extent.left + extent.right) / 2, 0)))
        for i, line in enumerate(lines):
            pen.text((middle, under + i * LINE), line, size=LABEL, anchor="middle")
        x += wide + gap
