"""Forming diagrams and kiln curves, each scaled to stand beside its step."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base import sketches
from sheetgen.base.pen import Extent
from sheetgen.draw.paper import Paper
from sheetgen.draw.pens import Scaled
from sheetgen.facts.kiln import ROOM, UNLOAD
from sheetgen.facts.units import MINUTES_PER_HOUR
from sheetgen.formulas.firing import cooling_minutes, ramp_minutes

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.material import Pace, Phase
    from sheetgen.base.pen import Pen
    from sheetgen.model.drawing import Drawing
    from sheetgen.model.worked import Worked, WorkedVersion
    from sheetgen.parts.kind import Part

WIDE, TALL = 56.0, 60.0
SCALES = (4.0, 3.0, 2.0, 1.5, 1.0, 2 / 3, 0.5, 0.4, 1 / 3, 0.25, 0.2, 0.1, 0.05)
SMALL = 2.6


def diagrams(worked: Worked, version: WorkedVersion) -> dict[str, Drawing]:
    """The diagram of every part that a step shows."""
    wanted = {name for step in version.steps for name in step.diagrams}
    found = {}
    for name in sorted(wanted):
        drawing = _diagram(version.parts[name], worked, version)
        if drawing is not None:
            found[name] = drawing
    return found


def _diagram(part: Part, worked: Worked, version: WorkedVersion) -> Drawing | None:
    """At the largest plain scale that fits the column; true size is preferred to a larger one that is not needed."""
    # What has an edge of its own to keep stands beside one, and not in the middle.
    inside = [one for one in version.drilled_in(part) if part.centred and not hasattr(one, "edge")]

    def mark(one: Part, on: Pen) -> str:
        return f"{one.name.replace('_', ' ')} {one.mark(on, worked.sizes(version, one), Extent(0, 0, 0, 0))}"

    def draw(on: Pen, k: float) -> str:
        said = part.diagram(on, worked.sizes(version, part), k)
        return ", ".join((said, *(mark(one, Scaled(on, k)) for one in inside))) if said else ""

    for k in SCALES:
        extent, pen = Extent(), Paper()
        says = draw(extent, k)
        if not says:
            return None
        if extent.width <= WIDE and extent.height <= TALL - 4:
            draw(pen, k)
            for words in (mark(one, Extent()) for one in inside):
                at = ((extent.left + extent.right) / 2, extent.bottom + 4.2)
                for on in (pen, extent):
                    on.text(at, words, anchor="middle")
            pen.text((extent.left, extent.bottom + 4.2), scale_words(k), size=SMALL)
            corner = (extent.left - 0.5, extent.top - 0.5)
            wide = max(extent.width, 22.0) + 1
            return pen.drawing(corner, wide, extent.height + 6, f"{says}; drawn at {scale_words(k)}")
    return None


def scale_words(k: float) -> str:
    """A scale as a technical drawing names it (ISO 5455: enlargement X : 1, reduction 1 : X)."""
    if k == 1:
        return "scale 1 : 1"
    return f"scale {k:g} : 1" if k > 1 else f"scale 1 : {round(1 / k, 1):g}"


def kiln_curves(version: WorkedVersion) -> dict[int, Drawing]:
    """The curve of every firing, by the number of its step."""
    return {i: kiln_curve(step.firing, step.pace) for i, step in enumerate(version.steps) if step.firing and step.pace}


def kiln_curve(phases: Sequence[Phase], kiln: Pace) -> Drawing:
    """Temperature against time: the quickest and the slowest that the kiln may go, with each hold's temperature."""
    quick, slow = (
        _line(phases, kiln.full.high, kiln.cooling.low),
        _line(phases, kiln.full.low, kiln.cooling.high, long=True),
    )
    pen = Paper()
    labels = [(t, c, f"{c:.0f} °C") for t, c in slow[1:] if any(abs(c - p.to) < 1 for p in phases)][::2]
    labels = list({words: (t, c, words) for t, c, words in reversed(labels)}.values())
    wide, tall = 44.0, 26.0
    frame = [*slow, (max(slow[-1][0], quick[-1][0]), float(UNLOAD))]
    sketches.curve(pen, frame[:-1], labels, wide, tall, quick if quick != slow else ())
    says = "Kiln curve: " + "; ".join(
        f"to {p.to:.0f} °C, hold {p.hold.low:.0f} to {p.hold.high:.0f} min" for p in phases
    )
    ends = [f"{line[-1][0] / MINUTES_PER_HOUR:.1f}" for line in (quick, slow)]
    span = f"{' to '.join(dict.fromkeys(ends))} h"
    if ends[0] != ends[1]:
        pen.text((0, 11), "whole: slow kiln; broken: quick", size=SMALL)
    return pen.drawing((-13, -tall - 1), wide + 15, tall + 13, f"{says}; {span} in all")


def _line(phases: Sequence[Phase], rate: float, constant: float, *, long: bool = False) -> list[tuple[float, float]]:
    """Points of one curve, minutes and °C: heated at `rate`, cooled by `constant`, with the short holds or the long."""
    at, start = 0.0, float(ROOM)
    points = [(at, start)]
    for i, phase in enumerate(phases):
        speed = phase.rate.usual if phase.rate else rate
        if phase.to > start:
            at += ramp_minutes(start, phase.to, speed * MINUTES_PER_HOUR)
            points.append((at, phase.to))
        at += phase.hold.high if long else phase.hold.low
        points.append((at, phase.to))
        start = phase.to
        below = phase.cool_below or (float(UNLOAD) if i == len(phases) - 1 else None)
        if below is not None and float(ROOM) < below < start:
            for step in range(1, 13):
                cooler = start * (below / start) ** (step / 12)
                points.append((at + cooling_minutes(start, cooler, float(ROOM), constant), cooler))
            at, start = points[-1]
    return points
