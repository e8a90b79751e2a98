"""Where a finished part stands in the front view: a spot, or below another part."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Spot:
    """The middle of a part's top edge, mm from the middle of the view: x to the right, y down."""

    x: float
    y: float


@dataclass(frozen=True, slots=True)
class Neighbour:
    """Another part of the project, by its name in arithmetic."""

    name: str
