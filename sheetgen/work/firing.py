"""Firing: how long it takes on the studio's kiln, and whether a torch would do instead."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.material import Clay, Pace, Tool
from sheetgen.base.spread import Spread, spread
from sheetgen.facts.kiln import FULL_FAST, FULL_SLOW, ROOM, UNLOAD
from sheetgen.facts.times import COOLING_FAST, COOLING_SLOW, TORCH_ACROSS, TORCH_MASS
from sheetgen.facts.units import MINUTES_PER_HOUR
from sheetgen.formulas.firing import cooling_minutes, ramp_minutes
from sheetgen.work.stopped import Stopped
from sheetgen.work.waits import Wait

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.material import Phase
    from sheetgen.parts.kind import Part
    from sheetgen.work.bench import Workbench


def pace(bench: Workbench) -> Pace:
    """How fast the studio's own kiln is; where it did not measure it, anything between a quick and a slow one."""
    kiln = next((t for t in bench.library.stock.items.values() if isinstance(t, Tool) and t.kind == "kiln"), None)
    full = (kiln and kiln.full_rate) or Spread((FULL_FAST + FULL_SLOW) / 2, FULL_SLOW, FULL_FAST)
    return Pace(full, (kiln and kiln.cooling) or Spread((COOLING_FAST + COOLING_SLOW) / 2, COOLING_FAST, COOLING_SLOW))


def firing(phases: Sequence[Phase], kiln: Pace) -> Wait:
    """All phases: each heated from where the last one left the kiln, the last cooled to unloading."""
    total, start, worked = spread(0.0), float(ROOM), []
    for i, phase in enumerate(phases):
        ramp = spread(0.0)
        if phase.to > start:
            ramp = spread(ramp_minutes(start, phase.to, (phase.rate or kiln.full) * MINUTES_PER_HOUR))
        total = total + ramp + phase.hold
        worked.append(f"{start:g} to {phase.to:g} °C: {_ends(ramp)} min, hold {_ends(phase.hold)} min")
        start = phase.to
        last = i == len(phases) - 1
        below = float(UNLOAD) if last and phase.cool_below is None else phase.cool_below
        if below is not None and float(ROOM) < below < start:
            cool = spread(cooling_minutes(start, below, float(ROOM), kiln.cooling))
            total = total + cool
            worked.append(f"cool to {below:g} °C: {_ends(cool)} min")
            start = below
    return Wait(total, "firing and cooling", "; ".join(worked))


def torch(clay: Clay, bench: Workbench) -> str:
    """Whether the pieces of a clay could be fired with a torch instead, and why not."""
    if not clay.torch:
        return "Not with a torch: the data of this clay does not allow it."
    for part in bench.parts.values():
        try:
            said = _too_much(part, clay, bench)
        except Stopped:
            continue
        if said:
            return f"Not with a torch: {part.name.replace('_', ' ')} {said}."
    return (
        f"A torch would do too, by the clay maker’s directions: no piece is over {TORCH_MASS:g} g "
        f"or {TORCH_ACROSS:g} mm across."
    )


def _too_much(part: Part, clay: Clay, bench: Workbench) -> str:
    fields = type(part).fields()
    if "clay" not in fields or bench.given(part, fields["clay"]) is not clay:
        return ""
    workers = type(part).workers()
    if "clay_mass" in workers and part.has(workers["clay_mass"]):
        mass: Spread = part.clay_mass  # type: ignore[attr-defined]  # every clay kind has it
        if mass.high > TORCH_MASS:
            return f"weighs {mass.high:.0f} g, and {TORCH_MASS:g} g is the most"
    widest = max((m.finished.high for m in part.made() if m.finished is not None), default=0)
    if widest > TORCH_ACROSS:
        return f"is {widest:.0f} mm across, and {TORCH_ACROSS:g} mm is the most"
    return ""


def _ends(value: Spread) -> str:
    return f"{value.usual:.0f}" if value.exact else f"{value.low:.0f} to {value.high:.0f}"
