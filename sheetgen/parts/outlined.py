"""A flat piece of clay by its outline: round, square, drawn by compass and ruler, or by a path of one's own."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spread import Spread, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas import shapes
from sheetgen.parts.clay_piece import ClayPiece

if TYPE_CHECKING:
    from sheetgen.base.outline import Outline
    from sheetgen.base.pen import Pen, Point
    from sheetgen.parts.given import Given

TWO_SIDED = ("rectangle", "oval", "teardrop", "leaf")
SCALED = ("polygon", "outline")


class Outlined(ClayPiece):
    """Its finished sizes, and its outline at any size."""

    shape: Given[str]
    across: Given[Spread | None]
    down: Given[Spread | None]
    sides: Given[Spread | None]
    path: Given[Outline | None]

    @property
    def drawn(self) -> Spread:
        """Finished width, mm. CannotBe if it is not given."""
        if self.shape == "outline":
            if self.path is None:
                raise self.lacks("path", "M0 0 L20 0 L10 15 Z")
            return self.across or spread(self.path.width)
        if self.across is None:
            raise self.lacks("across", "20 mm")
        return self.across

    @property
    def finished_down(self) -> Spread:
        """Finished height, mm. CannotBe if it is not given."""
        if self.down is None:
            raise self.lacks("down", "12 mm")
        return self.down

    @property
    def sided(self) -> float:
        """How many sides a polygon has; 0 of another shape. CannotBe if it is not given."""
        if self.shape == "polygon" and self.sides is None:
            raise self.lacks("sides", "6")
        return self.sides.usual if self.sides else 0

    def lacks(self, field: str, example: str) -> CannotBe:
        """What to say of a shape that lacks a field."""
        return CannotBe(f"a cut shape that is {self.shape} wants {field}", f"{field}: {example}", field)

    def outlined(self, wide: float, tall: float) -> Outline | None:
        """The outline at a size, of a shape that is neither round nor square; a scaled one keeps its proportions."""
        if self.shape == "outline":
            return self.path.scaled(wide / self.path.width).placed() if self.path else None
        return shapes.outline_of(self.shape, wide, tall, self.sided)

    @property
    def tall(self) -> float:
        """Height of a scaled outline over its width."""
        unit = self.outlined(1, 1)
        return unit.height if unit else 0

    def flat_piece(self, pen: Pen, corner: Point, wide: float, tall: float, hole: float) -> Point:
        """The outline from its upper left corner, and its hole; returns the middle."""
        outline = self.outlined(wide, tall)
        tall = outline.height if outline else tall
        middle = (corner[0] + wide / 2, corner[1] + tall / 2)
        if outline:
            pen.line([(corner[0] + x, corner[1] + y) for x, y in outline.points], closed=True)
        elif self.shape == "rectangle":
            pen.box(corner, wide, tall)
        else:
            pen.oval(middle, wide, tall)
        if hole:
            pen.circle(middle, hole)
        return middle
