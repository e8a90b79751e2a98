"""The bend and the loop that a bent wire ends with, in two moves."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.draw.gesture import Gesture
from sheetgen.draw.turning import ended

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    ended(pen, scene.piece, (["1 bend out"], ["2 loop back", "to the bend"]), k)
    return (
        "The end of the wire in two moves: bent out to one side, then turned back to a loop whose middle stands in "
        "line with the straight and whose end meets the bend"
    )


GESTURE = Gesture("last loop", _draw, most=3)
