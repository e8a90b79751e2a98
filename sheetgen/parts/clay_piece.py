"""What every piece cut from rolled clay has: the clay it takes, what a wet size fires to, what stands by its template."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spread import GRAIN, Spread
from sheetgen.facts.gauges import CARD
from sheetgen.formulas.shrinkage import fired_size
from sheetgen.parts.kind import Finding, Part, Take, Worker

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.material import Clay
    from sheetgen.parts.given import Given


def fired_by(clay: Clay) -> Callable[[float], Spread]:
    """What a wet size in the plane of the piece fires to, mm."""
    return lambda wet: fired_size(wet, clay.shrinkage)


def template_clay(thickness: float, clay: Clay) -> str:
    """What to roll to, and what shrinkage a template is drawn for."""
    cards = round(thickness / CARD)
    off = abs(cards * CARD - thickness)
    near = f", {'' if off < GRAIN else 'about '}{cards} cards" if off < CARD / 4 else ""
    return f"roll to {thickness:g} mm{near}; {clay.name}, drawn for {clay.shrinkage.usual * 100:g} % shrinkage"


SAME_HOLE = 0.06  # mm between a hole and its drill: less than dry clay lets one tell
LEAST_EDGE = 1.0  # mm of finished metal outside a hole that something hangs from: common practice
STRAW = 2.5  # mm: a narrower hole is drilled, since no straw and few cutters are so small


def bored(wide: float) -> str:
    """What a hole so wide (mm) is made with in wet or dry clay."""
    return "drill" if wide < STRAW else "drill, cutter or straw"


class ClayPiece(Part):
    """A piece cut from clay that is rolled to a thickness; a kind says in `clay_mass` how much of it one piece takes."""

    clay: Given[Clay]
    thickness: Given[Spread]
    clay_mass: Worker

    def drills(self, wide: float) -> Iterator[tuple[str, float]]:
        """The owned drill that a hole so wide (mm) is made with, if there is one."""
        near = min(self.bench.owned("drill"), key=lambda size: abs(size - wide), default=0.0)
        if abs(near - wide) <= SAME_HOLE:
            yield "drill", near

    def takes(self) -> Iterator[Take]:
        """Clay as cut."""
        yield Take(self.clay, self.clay_mass * self.count, "clay_mass")

    def rolls_thinner(self) -> Iterator[Finding]:
        """Texture only thins."""
        first = getattr(self, "rolled_first", None)
        if isinstance(first, Spread) and first.usual < self.thickness.usual:
            yield Finding("rolled first", "is thinner than the last thickness", f"{self.thickness.usual:g} mm or more")

    def template_note(self, size: Callable[[str], Size]) -> str:  # noqa: ARG002 - the same words at every size
        """Thickness and clay."""
        return template_clay(self.thickness.usual, self.clay)
