"""How long a firing takes, as a range: ramps, holds and cooling."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spread import Spread, spread
from sheetgen.facts.kiln import FULL_FAST, FULL_SLOW, ROOM, UNLOAD
from sheetgen.facts.times import COOLING_FAST, COOLING_SLOW
from sheetgen.facts.units import MINUTES_PER_HOUR
from sheetgen.formulas.firing import cooling_minutes, ramp_minutes

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sheetgen.base.material import Phase


def firing_minutes(phases: Sequence[Phase]) -> Spread:
    """Minutes of all phases: each heated from where the last one left the kiln, the last cooled to unloading."""
    full = Spread((FULL_FAST + FULL_SLOW) / 2, FULL_SLOW, FULL_FAST)
    constant = Spread((COOLING_FAST + COOLING_SLOW) / 2, COOLING_FAST, COOLING_SLOW)
    total, start = spread(0.0), float(ROOM)
    for i, phase in enumerate(phases):
        if phase.to > start:
            total = total + ramp_minutes(start, phase.to, (phase.rate or full) * MINUTES_PER_HOUR)
        total = total + phase.hold
        start = phase.to
        last = i == len(phases) - 1
        below = float(UNLOAD) if last else phase.cool_below
        if below is not None and below < start:
            total = total + cooling_minutes(start, below, float(ROOM), constant)
            start = below
    return total
