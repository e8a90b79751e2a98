"""What seats drilled in wet clay share: the hole, the drill for it, and the weight of a stone cut as a brilliant.

Figures stand here and are named in each kind where its own order wants them.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spread import Spread, spread
from sheetgen.formulas import carats as cut
from sheetgen.formulas.stones import seat_wet
from sheetgen.parts.drawer import neighbours
from sheetgen.parts.kind import Part, Worker, figure

if TYPE_CHECKING:
    from sheetgen.base.material import Clay, Stone
    from sheetgen.parts.given import Given

LEAST_FLOOR = 0.5  # mm of fired metal under a stone: common practice
LEAST_WEB = 0.5  # mm of wet clay between two seats and beside them: common practice


class Seated(Part):
    """A stone in a hole drilled for it."""

    clay: Given[Clay]
    stone: Given[Stone]
    clearance: Given[Spread]

    seat: Worker
    drill: Worker

    @property
    def enough(self) -> str:
        """The smallest drills that are large enough."""
        return neighbours(self.tools_over("drill", self.seat.usual), self.seat.usual, 2)

    def drill_for_seat(self) -> float:
        """The smallest owned drill that is not under the seat, mm."""
        return self.tool_over("drill", self.seat.usual, "stone")

    @property
    def loose(self) -> float:
        """Room round the smallest stone in the drilled hole at the least shrinkage, mm."""
        return self.drill.usual * (1 - self.clay.shrinkage.low) - self.stone.size.low


class Weighed(Part):
    """A stone whose weight follows from its sizes, if it is cut as a brilliant."""

    stone: Given[Stone]

    @property
    def brilliant(self) -> tuple[Spread, str]:
        """Carats and their working."""
        stone = self.stone
        return cut.brilliant(stone.size, stone.width, stone.height or spread(0), stone.density or 0)

    @property
    def carats_worked(self) -> str:
        """How a brilliant's weight is worked."""
        return self.brilliant[1]


def _known(part: Weighed) -> bool:
    return part.stone.height is not None and part.stone.density is not None


@figure("Stone's weight, if it is cut as a brilliant", "ct", "{carats_worked}", when=_known)
def carats(part: Weighed) -> Spread:
    """By the formula for diamond, scaled by density."""
    return part.brilliant[0]


@figure("Seat, opened wet", "mm", "({stone.size.high} + {clearance}) ÷ (1 − {clay.shrinkage.high})")
def seat(part: Seated) -> float:
    """Hole, or the length of an oval one, that still takes the stone at the largest shrinkage."""
    return seat_wet(part.stone.size.high, part.clearance.usual, part.clay.shrinkage.high)


@figure("Drill", "mm", "atleast({seat}, {enough})")
def drill(part: Seated) -> float:
    """Smallest owned drill that is not under the seat."""
    return part.drill_for_seat()


@figure("Loosest fit", "mm", "{drill} × (1 − {clay.shrinkage.low}) − {stone.size.low}")
def loosest(part: Seated) -> float:
    """Room round the smallest stone at the least shrinkage."""
    return part.loose
