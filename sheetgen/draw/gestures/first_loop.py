"""The loop that a bent wire begins with: turned round, then its neck bent back so that it stands in the middle."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.draw.gesture import Gesture
from sheetgen.draw.turning import begun

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    begun(pen, scene.piece, (["1 round the rod"], ["2 bend the", "neck back"]), k)
    return (
        "The loop that the wire begins with in two moves: turned round its rod, then its neck bent back sharply, until "
        "the loop stands centred over the stem and its end touches the neck"
    )


GESTURE = Gesture("first loop", _draw, most=3)
