"""A coil cut to rings: one turn at a time down one line, and both faces of the cut made flush."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.pen import Moved, arc
from sheetgen.draw.cutaway import laid, stroke, torn
from sheetgen.draw.gesture import LABEL, Gesture, side_by_side
from sheetgen.draw.pens import Turned
from sheetgen.draw.sketches import oval_path, wire
from sheetgen.parts.jump_ring import JumpRing

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

SHOWN = 6  # turns of the coil
FACE = 4.4  # mm on paper: how thick a wire is drawn at its cut
APART = FACE + 3.4  # mm from the middle of one cut to that of the other


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece = scene.piece
    d, round_coil = piece[JumpRing.wire].thickness * k, piece[JumpRing.shape] == "round"
    # A round coil is seen lying, its axis level; an oval one by the flat of a long side.
    across = piece[JumpRing.inner] * k + 2 * d
    turns = min(SHOWN, piece.count + 1)

    def coil(on: Pen) -> None:
        half = (across - d) / 2
        for i in range(turns):
            x = i * d
            laid(on, [(x - d * 0.35, half), (x + d * 0.35, -half)], d, begins=False, ends=False)
            for y, (a, b) in ((half, (0, 180)), (-half, (180, 360))):
                on.line(arc((x + (-0.35 if y > 0 else 0.35) * d, y), d / 2, a, b, 16))
        on.line([(-d * 1.6, 0), ((turns + 0.4) * d, 0)], "fold")

    def oval(on: Pen) -> None:
        inside, narrow = piece.usual(JumpRing.inner) * k, piece.usual(JumpRing.narrow) * k
        for x in (-(inside - narrow) / 2, (inside - narrow) / 2):
            on.circle((x, 0), narrow, "thin")
            on.cross((x, 0))
        wire(on, oval_path(inside, narrow, d, straight=piece[JumpRing.shape] == "oval"), d, closed=True)
        y = -narrow / 2
        stroke(on, (0, y + 0.8), (0, y - d - 2.4))

    def faces(on: Pen) -> None:
        """The end of a wire as the first cut leaves it, and as the second does."""
        for row, words in enumerate(("1 cut: a point", "2 turn, cut flush")):
            y, point = row * APART, FACE * 0.5
            top, low, right = y - FACE / 2, y + FACE / 2, FACE * 1.1
            tip = [(right - point, top), (right, y), (right - point, low)]
            on.line([(0, top), (right - point, top), *([tip[1]] if not row else []), (right - point, low), (0, low)])
            if row:
                on.line(tip, "fold")
            torn(Turned(on), (y, 0), FACE)
            stroke(on, (right - point * row, top - 1.2), (right - point * row, low + 1.2))
            on.text((right + 1.8, y + LABEL * 0.35), words, size=LABEL)

    def beside(on: Pen) -> None:
        """The coil level with the middle of both cuts, near its words."""
        (coil if round_coil else oval)(Moved(on, (0, APART / 2)))

    said = ["one turn", "at a time"] if round_coil else ["cut a long side,", "away from the pull"]
    side_by_side(pen, [(beside, said), (faces, [])], gap=4.0)
    where = "down one line" if round_coil else "down one long side, away from the pull at the ends"
    return f"A coil cut {where}, a turn at a time; each cut leaves a point, which is cut off flush"


GESTURE = Gesture("cut coil", _draw, most=3)
