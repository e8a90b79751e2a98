"""What every piece cut from rolled clay has: the clay it takes, what a wet size fires to, what stands by its template."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.spread import Spread
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
    near = f", about {cards} cards" if abs(cards * CARD - thickness) < CARD / 4 else ""
    return f"roll to {thickness:g} mm{near}; {clay.name}, drawn for {clay.shrinkage.usual * 100:g} % shrinkage"


class ClayPiece(Part):
    """A piece cut from clay that is rolled to a thickness; a kind says in `clay_mass` how much of it one piece takes."""

    clay: Given[Clay]
    thickness: Given[Spread]
    clay_mass: Worker

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
