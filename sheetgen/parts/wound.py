"""What a strip of clay wound round a former shares, tube or ring: its length, template, and picture on the former.

Figures stand here and are named in each kind where its own order wants them.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar

from sheetgen.base import sketches
from sheetgen.base.like import said, worded
from sheetgen.formulas.shrinkage import fired_mass
from sheetgen.formulas.wrap import strip_round
from sheetgen.parts.clay_piece import ClayPiece
from sheetgen.parts.kind import Finding, Worker, figure

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread
    from sheetgen.parts.given import Given


class WoundStrip(ClayPiece):
    """A kind names the figure of its former, and of the side that lies along it."""

    round_figure: ClassVar[str]
    along_figure: ClassVar[str]

    rolled_first: Given[Spread | None]
    release_sheet: Given[Spread]
    turns: Given[Spread]
    overlap: Given[Spread]

    wet_inside: Worker
    strip_meets: Worker
    strip_cut: Worker

    @property
    def sheeted(self) -> float:
        """What the release sheet adds to the former's diameter, mm."""
        return 2 * self.turns.usual * self.release_sheet.usual

    def wet_mass(self, long: Spread, along: Spread) -> Spread:
        """Clay in a strip as long as it is wound, g."""
        return long * along.usual * self.thickness * self.clay.density / 1000

    def metal(self, along: Spread) -> Spread:
        """Metal left of the joined strip, g."""
        return fired_mass(self.wet_mass(self.strip_meets, along), self.clay.metal_share)

    def check(self) -> Iterator[Finding]:
        """Texture only thins."""
        yield from self.rolls_thinner()

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """The strip: the side along the former upright, the line where the ends meet."""
        sketches.strip(pen, size("strip_cut"), size("strip_meets"), size(self.along_figure))

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The strip on its former, in section."""
        former, sheet = size(self.round_figure), self.sheeted / 2
        words = (f"former {former.words}", f"overlap {worded(self.overlap.usual, former, 'fine')}")
        sketches.wound(pen, former, sheet, self.thickness.usual, self.overlap.usual, words, k)
        over = f" over {worded(sheet, former, 'fine')} mm of release sheet" if sheet else ""
        return said(
            former,
            f"A strip wound round a former of {former.words} mm{over}, overlapping {words[1][8:]} mm, one cut through both layers",
        )


@figure("Strip, ends meet", "mm", "π × ({wet_inside} + {thickness})", rounding="tenth")
def strip_meets(part: WoundStrip) -> Spread:
    """Round the former, where the two ends meet."""
    return strip_round(part.wet_inside, part.thickness)


@figure("Strip, cut", "mm", "{strip_meets} + {overlap}", rounding="bench up")
def strip_cut(part: WoundStrip) -> Spread:
    """Round the former, with the overlap."""
    return part.strip_meets + part.overlap
