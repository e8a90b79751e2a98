"""Forming diagrams and kiln curves, each scaled to stand beside its step."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sheetgen.base.pen import FIGURE, Extent
from sheetgen.draw import kinds
from sheetgen.draw.gestured import gestured
from sheetgen.draw.paper import Paper
from sheetgen.draw.pens import Scaled
from sheetgen.facts.units import MINUTES_PER_HOUR

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.material import Phase
    from sheetgen.base.pen import Pen
    from sheetgen.base.rounding import Rounder
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import Walk, WorkedVersion
    from sheetgen.parts.piece import Piece

WIDE, TALL, ENLARGED = 56.0, 60.0, 46.0  # mm: the column beside a step; how tall, and how tall for an enlargement
SCALES = (4.0, 3.0, 2.0, 1.5, 1.0, 2 / 3, 0.5, 0.4, 1 / 3, 0.25, 0.2, 0.1, 0.05)
CURVE = (36.0, 18.0)  # of a kiln curve, mm
LEFT = 18.0  # mm for its temperatures
NEAR = 0.01  # mm: on one middle


def diagrams(version: WorkedVersion) -> dict[str, Drawing]:
    """The diagram of every part that a step shows, and every gesture, by their names."""
    wanted = sorted({name for step in version.steps for name in step.diagrams if name in version.parts})
    drawn = ((name, _diagram(version.parts[name], version)) for name in wanted)
    return {name: drawing for name, drawing in drawn if drawing is not None} | gestured(version)


def _diagram(part: Piece, version: WorkedVersion) -> Drawing | None:
    """At the largest plain scale that fits the column; true size is preferred to a larger one that is not needed."""
    inside = [one for one in version.drilled_in(part) if kinds.drawn(part).centred and _in_the_middle(one, part)]

    def mark(one: Piece, on: Pen) -> str:
        return f"{one.title.lower()} {kinds.mark(on, one, Extent(0, 0, 0, 0))}"

    def draw(on: Pen, k: float) -> str:
        said = kinds.diagram(on, part, k)
        return ", ".join((said, *(mark(one, Scaled(on, k)) for one in inside))) if said else ""

    for k in SCALES:
        extent, pen = Extent(), Paper(outline="thin")
        says = draw(extent, k)
        if not says:
            return None
        if fits(extent, k):
            draw(pen, k)
            for words in (mark(one, Extent()) for one in inside):
                at = ((extent.left + extent.right) / 2, extent.bottom + 4.2)
                for on in (pen, extent):
                    on.text(at, words, anchor="middle")
            pen.text((extent.left, extent.bottom + 4.2), scale_words(k))
            corner = (extent.left - 0.5, extent.top - 0.5)
            wide = max(extent.width, 22.0) + 1
            return pen.drawing(corner, wide, extent.height + 6, f"{says}; drawn at {scale_words(k)}")
    return None


def fits(extent: Extent, k: float) -> bool:
    """Whether a diagram at a scale stands beside its step, with its scale under it.

    An enlargement that made the step taller than its words would cost more than it shows.
    """
    return extent.width <= WIDE and extent.height <= (ENLARGED if k > 1 else TALL) - 4


def scale_words(k: float) -> str:
    """A scale as a technical drawing names it (ISO 5455: enlargement X : 1, reduction 1 : X)."""
    if k == 1:
        return "scale 1 : 1"
    return f"scale {k:g} : 1" if k > 1 else f"scale 1 : {round(1 / k, 1):g}"


def _in_the_middle(hole: Piece, host: Piece) -> bool:
    """Whether a hole or seat stands in the middle of its host, and not beside an edge."""
    around = host.flat[0].extent
    middle = ((around.left + around.right) / 2, (around.top + around.bottom) / 2)
    return all(math.dist(one.centre, middle) < NEAR for one in hole.drilled)


def kiln_curves(version: WorkedVersion, rounder: Rounder) -> dict[int, Drawing]:
    """The curve of every firing, by the number of its step."""
    steps = enumerate(version.steps)
    return {i: kiln_curve(step.firing, step.walk, rounder) for i, step in steps if step.walk is not None}


def kiln_curve(phases: Sequence[Phase], walk: Walk, rounder: Rounder) -> Drawing:
    """Temperature against time: the quickest and the slowest that the kiln may go, with each hold's temperature."""
    pen = Paper()
    labels: dict[str, tuple[float, float, str]] = {}
    for minutes, degrees in walk.slow[1:]:
        if any(abs(degrees - phase.to) < 1 for phase in phases):
            labels.setdefault(f"{degrees:.0f} °C", (minutes, degrees, f"{degrees:.0f} °C"))
    _curve(pen, walk, list(labels.values()))
    holds = (_span(p.hold.low, p.hold.high) for p in phases)
    says = "; ".join(f"to {p.to:.0f} °C, hold {hold} min" for p, hold in zip(phases, holds, strict=True))
    ends = (rounder.decimal(line[-1][0] / MINUTES_PER_HOUR, 1, keep=True) for line in (walk.quick, walk.slow))
    if walk.quick != walk.slow:
        pen.text((WIDE - LEFT, 11.6), "whole: slow kiln; broken: quick", anchor="end")
    says = f"Kiln curve: {says}; {' to '.join(dict.fromkeys(ends))} h in all"
    return pen.drawing((-LEFT, -CURVE[1] - 1.5), WIDE, CURVE[1] + (14 if walk.quick != walk.slow else 10), says)


def _span(low: float, high: float) -> str:
    return " to ".join(dict.fromkeys(f"{end:.0f}" for end in (low, high)))


def _curve(pen: Pen, walk: Walk, labels: Sequence[tuple[float, float, str]]) -> None:
    """A slow kiln's temperature (°C) against time (min), with its words, and a quick one's; axes in hours and °C."""
    (wide, tall), points = CURVE, walk.slow
    longest, hottest = max(t for t, _ in points), max(c for _, c in points)
    hours = _axis_hours(longest)
    step = _marks_apart(longest)
    kx, ky = wide / (hours * 60), tall / (hottest * 1.15)
    pen.line([(0, -tall), (0, 0), (wide, 0)], "thin")
    for hour in range(0, hours + step, step):
        x = hour * 60 * kx
        if x <= wide + 0.1:
            pen.line([(x, 0), (x, 1)], "thin")
            pen.text((x, 4), f"{hour}", anchor="middle")
    pen.text((wide, 7.6), "hours", anchor="end")
    pen.line([(t * kx, -c * ky) for t, c in points], "cut")
    if walk.quick != points:
        pen.line([(t * kx, -c * ky) for t, c in walk.quick], "fold")
    # Temperatures stand at the axis, where no line crosses them, the hottest first; a level line leads to each.
    free = -math.inf
    for t, c, words in sorted(labels, key=lambda label: -label[1]):
        free = max(free + 4.6, -c * ky)
        pen.line([(-0.8, free), (0, -c * ky), (t * kx, -c * ky)], "thin")
        pen.text((-1.4, free + 1.3), words, size=FIGURE, anchor="end")


def _marks_apart(minutes: float) -> int:
    """Hours between two marks of the axis: a few marks for any length."""
    hours = max(1, math.ceil(minutes / 60))
    return next((s for s in (1, 2, 4, 6, 12, 24) if hours / s <= 6), 48)  # noqa: PLR2004 - a few marks on the axis


def _axis_hours(minutes: float) -> int:
    """Length of the time axis in hours, whole marks."""
    step = _marks_apart(minutes)
    return math.ceil(max(1, minutes / 60) / step) * step
