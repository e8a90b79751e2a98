"""What the drawings of a stone in its wall share: the sizes of a bezel strip or cup, and the side of the stone."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sheetgen.parts.bezel_cup import BezelCup
from sheetgen.parts.bezel_strip import BezelStrip

if TYPE_CHECKING:
    from sheetgen.base.pen import Point
    from sheetgen.parts.piece import Piece

DOME = 2.4  # exponent of the side of a cabochon, which rises straight and then leans in
FLAT = 0.4  # of its width: how high a stone is drawn where stock does not say


@dataclass(frozen=True, slots=True)
class Walled:
    """A stone with its wall, mm: long and narrow way, height; the wall's height, thickness and room at each side."""

    long: float
    narrow: float
    tall: float
    wall: float
    sheet: float
    room: float
    plate: float

    def side(self, half: float, k: float, steps: int = 24) -> list[Point]:
        """The outline of the stone from above its middle down to its foot on the right, `half` its width."""
        found = []
        for i in range(steps + 1):
            x = half * i / steps
            found.append((x * k, -self.tall * (1 - (x / half) ** DOME) ** (1 / DOME) * k))
        return found


def walled(piece: Piece) -> Walled:
    """The sizes of either kind; `plate` is what it stands on, and 0 where the part does not say."""
    if piece.kind == BezelCup.kind:
        stone, sheet = piece[BezelCup.stone], piece[BezelCup.strip]
        wall, room = float(piece[BezelCup.wall]), piece.usual(BezelCup.room)
        plate = piece.usual(BezelCup.plate_thickness)
    else:
        stone, sheet = piece[BezelStrip.stone], piece[BezelStrip.sheet]
        wall, room, plate = float(piece[BezelStrip.strip]), piece.usual(BezelStrip.room), 0.0
    long = stone.size.usual
    narrow = stone.width.usual if stone.width is not None else long
    tall = stone.height.usual if stone.height is not None else FLAT * narrow
    return Walled(long, narrow, tall, wall, sheet.thickness, room / 2, plate)
