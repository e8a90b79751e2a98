"""A knot that is led down to its bead with the awl, and drawn tight against it."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.pen import arc
from sheetgen.draw.cutaway import led, pushed, wide
from sheetgen.draw.gesture import Gesture, side_by_side
from sheetgen.draw.woven import Spot, Strand, woven
from sheetgen.parts.bead_strand import BeadStrand

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

END = 2.08  # where the curve of the knot is cut off


def overhand(size: float) -> list[Spot]:
    """The middle of a loose overhand knot, `size` wide and its ends level (the trefoil knot of Shastri, 1992).

    x = t³ − 3t, y = t⁴ − 4t², z = t⁵ − 10t: a long knot whose projection crosses itself three times.
    """
    steps = [(i / 60 - 1) * END for i in range(121)]
    scale = size / (END**3 - 3 * END) / 2
    low = END**4 - 4 * END**2
    return [((t**3 - 3 * t) * scale, (low - (t**4 - 4 * t * t)) * scale * 0.75, t**5 - 10 * t) for t in steps]


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece = scene.piece
    bead, knot = piece[BeadStrand.bead], piece.length(piece.usual(BeadStrand.knot))
    thread = piece[BeadStrand.thread]
    cord = (thread.thickness if thread is not None else 0.5) * k
    across, long, tied = bead.size.usual * k, bead.length.usual * k, float(knot) * k

    def threaded(on: Pen) -> None:
        """The bead that the knot goes to, its hole at (0, 0)."""
        woven(on, [Strand([(-long - 3, 0, 0), (0, 0, 0)], cord, begins=False, ends=False)])
        on.cover([[(-long / 2 + x * long / across, y) for x, y in arc((0, 0), across / 2, 0, 360, 64)]])
        on.oval((-long / 2, 0), long, across)

    def loose(on: Pen) -> None:
        threaded(on)
        loop = overhand(long * 1.5)
        left = loop[0][0]
        x0 = 3.0 - left
        path = [(0.0, 0.0, -30.0), *((x + x0, y, z) for x, y, z in loop), (loop[-1][0] + x0 + 3.0, 0.0, 30.0)]
        # The awl stands in the loop, in front of what is behind it.
        woven(on, [Strand(path, cord, begins=False, ends=False)], stretch=3)
        low = max(y for _, y, _ in path)
        tip = (x0 - 0.1, low * 0.52)
        awl = [tip, (tip[0] + 7.5, tip[1] + 7.2), (tip[0] + 6.1, tip[1] + 8.2)]
        on.cover([awl])
        on.line(awl, closed=True)
        led(on, (tip[0] + 4.6, tip[1] + 5.0), (tip[0] + 9.0, tip[1] + 4.4), "awl")
        pushed(on, (x0 - 1.0, -cord - 1.6), (1.0, -cord - 1.6))

    def tight(on: Pen) -> None:
        threaded(on)
        woven(on, [Strand([(0, 0, 0), (tied + 5, 0, 0)], cord, begins=False, ends=False)])
        # Three bands of cord over each other, as long together as a knot is.
        high = cord * 2.3
        lump = [(tied / 2 + x * tied / high, y) for x, y in arc((0, 0), high / 2, 0, 360, 48)]
        on.cover([lump])
        on.line(lump, closed=True)
        for share in (0.34, 0.66):
            run = [(tied * share + math.sin(math.pi * (i / 8 - 0.5)) * tied * 0.16, (i / 8 - 0.5) * high * 0.9)
                   for i in range(9)]  # fmt: skip
            on.line(run)
        wide(on, across / 2 + 3, (0, tied), knot.words, to=high / 2)

    side_by_side(pen, [(loose, ["lead to the bead"]), (tight, ["draw tight"])], gap=3.0)
    return (
        "A knot beside a bead: tied loosely round the point of the awl, which leads its loop along the silk to the "
        f"bead; then drawn tight hard against the bead, {knot.told} long"
    )


GESTURE = Gesture("knot beside a bead", _draw, most=4)
