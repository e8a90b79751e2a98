"""Three strips plaited: the right one over the middle, then the left one over the middle, and so on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.draw.cutaway import torn
from sheetgen.draw.gesture import LABEL, Gesture, side_by_side
from sheetgen.draw.made import plaited
from sheetgen.draw.woven import Spot, Strand, woven
from sheetgen.parts.slit_strips import SlitStrips

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.draw.gesture import Scene

LONG = 5.0  # strip widths: how much is drawn of them
RUNS = 24


def _across(start: float, end: float, long: float, up: float, w: float) -> Strand:
    """A strip led from one place to another, both in widths of a strip from the middle."""
    path: list[Spot] = []
    for i in range(RUNS + 1):
        share = i / RUNS
        ease = share * share * (3 - 2 * share)
        path.append(((start + (end - start) * ease) * w, share * long, up))
    return Strand(path, w * 0.92, begins=False, ends=True)


def _draw(pen: Pen, scene: Scene, k: float) -> str:
    w = float(scene.piece[SlitStrips.width]) * k
    long = LONG * w

    def taped(on: Pen) -> None:
        tape = [(-1.9 * w, -1.1 * w), (1.9 * w, -1.1 * w), (1.9 * w, 0.1 * w), (-1.9 * w, 0.1 * w)]
        on.cover([tape])
        on.line(tape, "thin", closed=True)
        on.text((0, -0.5 * w + LABEL * 0.25), "tape", size=LABEL, anchor="middle")

    def first(on: Pen) -> None:
        woven(on, [_across(-1, -1, long * 0.8, 0, w), _across(0, 1, long * 0.8, 0, w),
                   _across(1, 0, long * 0.8, 1, w)], stretch=99)  # fmt: skip
        taped(on)

    def second(on: Pen) -> None:
        half = long * 0.55
        upper = [_across(-1, -1, half, 0, w), _across(0, 1, half, 0, w), _across(1, 0, half, 1, w)]
        moved = {-1: (-1, 0, 3), 1: (1, 1, 2), 0: (0, -1, 2)}
        strands = []
        for strand, at in zip(upper, (-1, 1, 0), strict=True):
            start, end, up = moved[at]
            rest = [(x, y + half, float(up)) for x, y, _ in _across(start, end, half, up, w).path]
            strands.append(Strand([*strand.path, *rest[1:]], w * 0.92, begins=False))
        woven(on, strands, stretch=RUNS)
        taped(on)

    def plait(on: Pen) -> None:
        plaited(on, w, (0.1 * w, long * 0.9 + 0.1 * w), lambda s, x: (x, s))
        for y, beyond in ((0.1 * w, -w), (long * 0.9 + 0.1 * w, w)):
            on.cover([[(-2 * w, y), (2 * w, y), (2 * w, y + beyond), (-2 * w, y + beyond)]])
            torn(on, (0, y), 3.0 * w)

    side_by_side(pen, [(first, ["right over", "the middle"]), (second, ["left over", "the middle"]),
                       (plait, ["and so on"])], gap=4.0)  # fmt: skip
    return (
        "Three strips plaited: the right one is led over the middle one, which goes to the right; then the left one "
        "over the new middle; and so on, from right and left in turn"
    )


GESTURE = Gesture("plait", _draw, most=1.5)
