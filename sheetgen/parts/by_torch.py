"""What is too large for a flame: common practice of torch firing, for the sheet that says so and the rule that stops it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.interval import Interval, interval
from sheetgen.base.printed import NBSP
from sheetgen.facts.times import TORCH_ACROSS, TORCH_MASS

if TYPE_CHECKING:
    from sheetgen.base.rounding import Rounder
    from sheetgen.parts.piece import Piece


def too_much(part: Piece) -> str:
    """Why a part is too much for a torch, after its name; empty where it is not."""
    mass: Interval = next(iter(part.roles.get("clay mass", ())), interval(0.0))
    if mass.high > TORCH_MASS:
        return f"weighs {mass.high:.0f} g, and {TORCH_MASS:g} g is the most"
    widest = max((s.finished.high for s in part.sizes if s.finished is not None), default=0)
    if widest > TORCH_ACROSS:
        return f"is {told(widest, part.rounder)} across, and {told(TORCH_ACROSS, part.rounder)} is the most"
    return ""


def told(mm: float, rounder: Rounder) -> str:
    """A width as a limit is told: whole millimetres, or inches."""
    return rounder.length(mm if rounder.inches else round(mm)).told.replace(NBSP, " ")
