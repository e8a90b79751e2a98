"""What a printed page is checked by: bars of 100 mm and of 4 in both ways, and marks that a bank card must reach.

The bars meet in a corner at the lower left. A card of the size ID-1 laid into that corner reaches both marks.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.facts.paper import CARD_HEIGHT, CARD_WIDTH
from sheetgen.facts.units import MM_PER_INCH

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen, Point

BAR = 100.0
INCHES = 4
SIDE, FOOT = 18.0, 16.0  # the strips at the left and at the foot that the bars take, mm
CORNER = 12.0  # where they meet, from the left and from the foot
APART = 4.0  # the bar of millimetres from the bar of inches
LEAST = BAR + 8 + FOOT  # height of a drawing that has them
CARD_SAYS = "card"


def bars(pen: Pen, foot: float) -> None:
    """All four bars, on a drawing whose foot is at `foot`."""
    x, y = CORNER, foot - CORNER
    four = INCHES * MM_PER_INCH
    pen.line([(x - APART, y), (x - APART, y - BAR)], "cut")
    pen.line([(x, y + APART), (x + BAR, y + APART)], "cut")
    pen.line([(x, y), (x, y - four)], "cut")
    pen.line([(x, y), (x + four, y)], "cut")
    for i in range(11):
        reach = 3.2 if i % 5 == 0 else 1.6
        _tick(pen, (x - APART, y - i * BAR / 10), (-reach, 0))
        _tick(pen, (x + i * BAR / 10, y + APART), (0, reach))
    for i in range(2 * INCHES + 1):
        reach = 1.6 if i % 2 else 2.6
        _tick(pen, (x, y - i * MM_PER_INCH / 2), (-reach, 0))
        _tick(pen, (x + i * MM_PER_INCH / 2, y), (0, reach))
    pen.text((x - APART - 4.2, y - BAR / 2 + 12), f"{BAR:g} mm", anchor="middle", turn=-90)
    pen.text((x + BAR / 2 + 12, y + APART + 6.2), f"{BAR:g} mm", anchor="middle")
    pen.text((x, y - four - 1.4), f"{INCHES} in", anchor="middle")
    pen.text((x + four + 1.4, y + 1), f"{INCHES} in")
    pen.line([(x, y - CARD_HEIGHT), (x + 4, y - CARD_HEIGHT)], "meet")
    pen.line([(x + CARD_WIDTH, y), (x + CARD_WIDTH, y - 4)], "meet")
    pen.text((x + 3.2, y - CARD_HEIGHT + 1.2), CARD_SAYS, size=2.6, anchor="end", turn=-90)
    pen.text((x + CARD_WIDTH - 1.2, y - 1.2), CARD_SAYS, size=2.6, anchor="end")


def _tick(pen: Pen, at: Point, by: Point) -> None:
    pen.line([at, (at[0] + by[0], at[1] + by[1])], "thin")
