"""Adhesive under the bar of a pin, in section: through the hole of the bridge, and spread behind it like a rivet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.pen import arc
from sheetgen.draw.cutaway import cut, led, slip
from sheetgen.draw.gesture import Gesture
from sheetgen.parts.adhesive_mix import AdhesiveMix
from sheetgen.parts.shape import CutShape

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

BAR = 1.0  # mm: how thick the bar of a pin is drawn, of which stock says only how long and wide it is
HEAD = 2.2  # holes: how wide the adhesive spreads behind


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece, mix = scene.piece, scene.other(AdhesiveMix)
    bored = float(piece[CutShape.hole] or 2.0) * k
    t = piece.usual(CutShape.thickness) * k
    coat = max((mix.usual(AdhesiveMix.depth) if mix is not None else 0.3) * k, 1.3)
    half, bar = bored * 2.6, BAR * k
    head = HEAD * bored / 2
    dome = [(-head, t), *((head * x, t + y * bored * 0.34) for x, y in arc((0, 0), 1, 180, 0, 24)[1:-1]), (head, t)]
    slip(pen, [(-half, -coat), (half, -coat), (half, 0), (bored / 2, 0), (bored / 2, t), *reversed(dome),
               (-bored / 2, t), (-bored / 2, 0), (-half, 0)])  # fmt: skip
    for way in (-1, 1):
        cut(pen, [(way * bored / 2, 0), (way * (half + 3), 0), (way * (half + 3), t), (way * bored / 2, t)])
    cut(pen, [(-half, -coat - bar), (half, -coat - bar), (half, -coat), (-half, -coat)], leans=-1)
    beside = half + 5.4
    led(pen, (half * 0.8, -coat - bar / 2), (beside, -coat - bar / 2), "bar of the pin")
    led(pen, (half * 0.9, t / 2), (beside, t / 2 + 2.0), "bridge")
    led(pen, (head * 0.4, t + bored * 0.16), (beside, t + 6.0), ["adhesive, spread", "behind the hole"])
    return (
        "The bridge in section with the bar of the pin over its hole: a thin coat of adhesive between them, the hole "
        "full of it, and a little spread behind the hole like the head of a rivet"
    )


GESTURE = Gesture("pin on its bridge", _draw, most=3)
