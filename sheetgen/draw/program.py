"""The program of a firing as a curve: how fast, how hot, how long held, and how cold it is opened; no axis to read.

Not to scale in time: what is set on the kiln's programmer stands in numbers.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.pen import FIGURE, SIZE, Moved
from sheetgen.draw.paper import Paper
from sheetgen.model.numbers import Numbers

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.material import Phase
    from sheetgen.base.pen import Pen
    from sheetgen.base.rounding import Rounder
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import WorkedVersion

WIDE, TALL = 84.0, 17.0
NARROW = 62.0  # mm: what a phone of 390 px holds with every word of 16 px
ABREAST = 2  # curves that stand side by side with every number clear of the next
UNDER = 3.0  # mm from one curve to the next below it
BESIDE = 4.0  # mm from one curve's last number to the next one's first
LARGE = 5.2  # mm high
UP, UP_NARROW, HOLD = 0.2, 0.3, 0.62  # of the width: where the hold begins, beside another curve too, and ends
COOLING = ((0.0, 0.0), (0.06, 0.3), (0.14, 0.56), (0.24, 0.76), (0.4, 1.0))  # of the width and of the height


def programs(version: WorkedVersion, rounder: Rounder, *, stacked: bool = False) -> dict[int, Drawing]:
    """The program of every firing in a kiln, by the index of its step."""
    firings = ((i, step.firing) for i, step in enumerate(version.steps))
    return {i: program(phases, rounder, stacked=stacked) for i, phases in firings if phases}


def program(phases: Sequence[Phase], rounder: Rounder, *, stacked: bool = False) -> Drawing:
    """One curve a phase, two side by side; or narrow, one under the other, as a phone shows them."""
    pen, whole = Paper(), NARROW if stacked else WIDE
    abreast = 1 if stacked else min(len(phases), ABREAST)
    wide, down = whole / abreast, SIZE + TALL + UNDER
    numbers = Numbers(rounder)
    says, row = [], 0
    for number, phase in enumerate(phases):
        lines = {label: f"{value} {unit}".strip() for label, value, unit in numbers.firing(phase)}
        row, place = divmod(number, abreast)
        _curve(Moved(pen, (place * wide, row * down)), 0.0, wide - BESIDE * (abreast > 1), lines)
        says.append(", ".join(f"{label.lower()} {told}" for label, told in lines.items()))
    tall = TALL + SIZE + 1 + row * down
    return pen.drawing((0, -SIZE), whole, tall, f"Kiln program: {'; then '.join(says)}")


def _curve(pen: Pen, left: float, wide: float, lines: dict[str, str]) -> None:
    narrow = wide <= WIDE / 2
    up, held = left + (UP_NARROW if narrow else UP) * wide, left + HOLD * wide
    run = [(left, TALL), (up, 0.0), (held, 0.0), *((held + x * wide, y * TALL * 0.9) for x, y in COOLING)]
    pen.line(run, "cut")
    pen.line([(left, TALL), (left + wide, TALL)], "thin")
    middle = (up + held) / 2
    size = FIGURE if narrow else LARGE
    pen.text((middle, 6.2), lines["Heat to"], size=size, anchor="middle")
    pen.text((middle, 12.2), lines["Hold"], size=size, anchor="middle")
    if "Heat up at" in lines:
        number, _, unit = lines["Heat up at"].rpartition(" ")
        pen.text((left, 3.0), number, size=SIZE)
        pen.text((left, 6.4), unit, size=SIZE)
    if "Cool below" in lines:
        pen.text((left + wide, 6.2), lines["Cool below"], size=size, anchor="end")
        pen.text((left + wide, 0.6), "shut to", size=SIZE, anchor="end")
