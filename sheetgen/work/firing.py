"""Firing: walked once, for its time and its curve on the studio's kiln; and whether a torch would do instead."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.interval import Interval
from sheetgen.base.material import Clay, Tool
from sheetgen.facts.kiln import FULL_FAST, FULL_SLOW, ROOM, UNLOAD
from sheetgen.facts.times import COOLING_FAST, COOLING_SLOW, TORCH_ACROSS, TORCH_MASS
from sheetgen.facts.units import MINUTES_PER_HOUR
from sheetgen.formulas.firing import cooling_minutes, ramp_minutes
from sheetgen.model.worked import Walk
from sheetgen.parts.by_torch import told, too_much

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sheetgen.base.material import Item, Phase
    from sheetgen.base.rounding import Rounder
    from sheetgen.parts.piece import Piece
    from sheetgen.work.evaluator import Evaluator

COOLING_POINTS = 12  # of a cooling curve


def kiln_of(uses: Sequence[Item], evaluator: Evaluator) -> Tool | None:
    """The kiln that a step uses; else the studio's first."""
    tools = (one for one in (*uses, *evaluator.library.stock.items.values()) if isinstance(one, Tool))
    return next((tool for tool in tools if tool.kind == "kiln"), None)


def walk(phases: Sequence[Phase], kiln: Tool | None) -> Walk:
    """All phases: each heated from where the last one left the kiln, the last cooled to unloading.

    Where the studio did not measure its kiln, anything between a quick and a slow one.
    """
    full = (kiln and kiln.full_rate) or Interval((FULL_FAST + FULL_SLOW) / 2, FULL_SLOW, FULL_FAST)
    cooling = (kiln and kiln.cooling) or Interval((COOLING_FAST + COOLING_SLOW) / 2, COOLING_FAST, COOLING_SLOW)
    quick = _Walker(lambda rate: rate.high, full, cooling.low, lambda hold: hold.low)
    usual = _Walker(lambda rate: rate.usual, full, cooling.usual, lambda hold: hold.usual)
    slow = _Walker(lambda rate: rate.low, full, cooling.high, lambda hold: hold.high)
    lines: list[str] = []
    for i, phase in enumerate(phases):
        start = slow.at
        spans = [walker.heated(phase) for walker in (quick, usual, slow)]
        ramp, hold = (_ends(spans[0][n], spans[2][n]) for n in (0, 1))
        lines.append(f"{start:g} to {phase.to:g} °C: {ramp} min, hold {hold} min")
        last = i == len(phases) - 1
        below = float(UNLOAD) if last and phase.cool_below is None else phase.cool_below
        if below is not None and float(ROOM) < below < phase.to:
            cools = [walker.cooled(below) for walker in (quick, usual, slow)]
            lines.append(f"cool to {below:g} °C: {_ends(cools[0], cools[2])} min")
    minutes = Interval(usual.time, min(quick.time, usual.time), max(slow.time, usual.time))
    return Walk(minutes, "; ".join(lines), tuple(quick.points), tuple(slow.points))


class _Walker:
    """One way through a firing: how fast it heats, cools and how long it holds."""

    def __init__(self, rate: object, full: Interval, cooling: float, hold: object) -> None:
        self.rate, self.full, self.cooling, self.hold = rate, full, cooling, hold
        self.time, self.at = 0.0, float(ROOM)
        self.points: list[tuple[float, float]] = [(0.0, self.at)]

    def heated(self, phase: Phase) -> tuple[float, float]:
        """Minutes of heating and of holding."""
        ramp = 0.0
        if phase.to > self.at:
            ramp = float(ramp_minutes.pure(self.at, phase.to, self.rate(phase.rate or self.full) * MINUTES_PER_HOUR))  # type: ignore[operator]
            self._to(ramp, phase.to)
        hold = float(self.hold(phase.hold))  # type: ignore[operator]
        self._to(hold, phase.to)
        return ramp, hold

    def cooled(self, below: float) -> float:
        """Minutes of cooling."""
        start, begun = self.at, self.time
        for step in range(1, COOLING_POINTS + 1):
            cooler = start * (below / start) ** (step / COOLING_POINTS)
            long = float(cooling_minutes.pure(start, cooler, float(ROOM), self.cooling))
            self._to(begun + long - self.time, cooler)
        return self.time - begun

    def _to(self, minutes: float, temperature: float) -> None:
        self.time, self.at = self.time + minutes, temperature
        self.points.append((self.time, temperature))


def _ends(low: float, high: float) -> str:
    """Two ends of a time in a working."""
    ends = [f"{x:.0f}" for x in (low, high)]
    return ends[0] if low == high else " to ".join(ends)


def torch(clay: Clay, parts: Mapping[str, Piece], rounder: Rounder) -> str:
    """Whether the pieces of a clay could be fired with a torch instead, and why not."""
    if not clay.torch:
        return "No torch."
    if clay.strength == "full" and any(program.strength == "least" for program in clay.programs):
        return "No torch: a flame does not give the strength that this is worked for."
    if any(part.roles.get("vent") or part.roles.get("vent of") for part in parts.values()):
        return "No torch: a flame does not heat a hollow through evenly."
    for part in parts.values():
        if clay in part.roles.get("made of", ()) and (said := too_much(part)):
            return f"No torch: {part.name.replace('_', ' ')} {said}."
    return (
        f"A torch would do too, by the clay maker’s directions: no piece is over {TORCH_MASS:g} g "
        f"or {told(TORCH_ACROSS, rounder)} across."
    )
