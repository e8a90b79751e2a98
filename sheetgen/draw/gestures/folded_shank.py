"""A strip folded over its rod, in section: legs pressed down beside it, feet bent out, the rod on piles of cards."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.pen import arc
from sheetgen.base.spelling import counted
from sheetgen.draw.cutaway import cut, high, led, stroke, wide
from sheetgen.draw.gesture import LABEL, LINE, Gesture
from sheetgen.draw.sketches import band
from sheetgen.facts.gauges import CARD
from sheetgen.parts.bail import Bail

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

TIP = 0.5  # mm: how far a foot is tipped up, for the hollow that it lies in
LEVEL = 1.0  # mm on paper: the mat


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    piece, leg, foot = scene.piece, scene.wanted("wet_leg"), scene.wanted("wet_foot")
    rod, t = piece[Bail.former_used], piece.usual(Bail.thickness)
    r, up = (float(rod) + t) / 2 * k, float(leg) * k
    thick, out = t * k, float(foot) * k
    mat = up
    # A pile of cards stands behind, under each end of the rod.
    pile, half = up - float(rod) / 2 * k, float(rod) / 2 * k * 0.8
    cards = max(1, round(pile / k / CARD))
    for i in range(cards + 1):
        y = mat - pile * i / cards
        pen.line([(-half, y), (half, y)], "thin")
    for x in (-half, half):
        pen.line([(x, mat), (x, mat - pile)], "thin")
    # Bent square where it meets the mat, tipped up at the end.
    corner = thick * 0.55
    lift = math.atan2(TIP * k, max(out, 0.1))
    foot_level = mat - thick / 2
    bend = [(r + corner * (1 - math.cos(a)), foot_level - corner * (1 - math.sin(a)))
            for a in (math.pi / 2 * i / 8 for i in range(9))]  # fmt: skip
    end = (r + thick / 2 + out * math.cos(lift) - thick / 2, foot_level - out * math.sin(lift) * 0.8)
    right = [*bend, end]
    path = [*[(-x, y) for x, y in reversed(right)], *arc((0, 0), r, 180, 360, 48), *right]
    left_edge, right_edge = band(path, thick)
    cut(pen, [*left_edge, *reversed(right_edge)])
    pen.circle((0, 0), float(rod) * k)
    stroke(pen, (-end[0] - 3, mat + 0.25), (end[0] + 3, mat + 0.25))
    pen.cross((0, 0))
    high(pen, -end[0] - 2.6, (0, mat), leg.words, to=-r)
    wide(pen, mat + 2.6, (r + thick / 2, end[0]), foot.words, to=mat)
    # A line apart from the mat upwards, however short the legs are.
    beside, tip = end[0] + 3.2, mat + LABEL * 0.1
    pile_words = tip - LINE
    leg_words = min(up * 0.35 + 1.2, pile_words - LINE)
    led(pen, (float(rod) * k * 0.36, -0.6), (beside, min(-r + 1.0, leg_words - LINE)), f"former {rod.words}")
    led(pen, (r, up * 0.35), (beside, leg_words), "leg")
    led(pen, (half, mat - pile * 0.45), (beside, pile_words), counted(cards, "card"))
    led(pen, (end[0] - 0.4, end[1]), (beside, tip), "tip up")
    return (
        f"A strip folded over a former of {rod.told}, in section: the former lies on {counted(cards, 'card')}, so that "
        f"its middle is {leg.told} above the mat; the legs are pressed down beside it, and at the mat the last "
        f"{foot.told} of each are bent out as a foot, its end tipped up"
    )


GESTURE = Gesture("folded shank", _draw, most=4)
