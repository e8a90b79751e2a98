"""The eye of a toggle's bar: from the front, and from above left open for the chain and then shut."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.pen import arc
from sheetgen.draw.cutaway import high, laid, wide
from sheetgen.draw.gesture import Gesture, side_by_side
from sheetgen.parts.toggle import Toggle

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

ARM = 0.6  # wires: how much of an arm is drawn beside the eye


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece, left_open = scene.piece, scene.figure("left_open")
    eye, staff = piece[Toggle.eye_used], piece.usual(Toggle.staff)
    d, r = staff * k, (float(eye) + staff) / 2 * k
    reach = r + d / 2 + ARM * d
    gap = (float(left_open) if left_open is not None else staff * 0.7) * k

    def front(on: Pen) -> None:
        """The turn of the wire before its two arms, which stand in one line."""
        laid(on, [(-reach, r), (reach, r)], d, begins=False, ends=False)
        edges = [arc((0, 0), r + side * d / 2, 0, 360, 64)[:-1] for side in (1, -1)]
        on.cover(edges)
        for edge in edges:
            on.line(edge, closed=True)
        hole = float(eye) / 2 * k
        wide(on, -r - d / 2 - 1.6, (-hole, hole), eye.words, to=0)

    def above(on: Pen, room: float) -> None:
        """Both arms pass each other for the width of the eye; each ends there in its round."""
        y = (d + room) / 2
        for way, level in ((-1, -y), (1, y)):
            far, near = way * reach, -way * (r + d / 2)
            tip = arc((near + way * d / 2, level), d / 2, -90, 90, 16) if way < 0 else (
                arc((near + way * d / 2, level), d / 2, 270, 90, 16))  # fmt: skip
            edge = [(far, level - d / 2), *tip, (far, level + d / 2)]
            on.cover([edge])
            on.line(edge)

    def opened(on: Pen) -> None:
        above(on, gap)
        if left_open is not None:
            high(on, reach + 2.0, (-gap / 2, gap / 2), left_open.words, to=r + d / 2)

    def shut(on: Pen) -> None:
        above(on, 0.0)

    pictures = [(front, ["in front"]), (opened, ["from above:", "left open"]), (shut, ["chain in,", "shut"])]
    side_by_side(pen, pictures, gap=2.2)
    told = f", left open by {left_open.told}" if left_open is not None else ", left open"
    return (
        f"The eye of the bar, {eye.told} inside: from the front; from above, its arms side by side{told} for the chain;"
        " and pressed shut when the chain is in"
    )


GESTURE = Gesture("toggle eye", _draw, most=3)
