"""Tube: a strip of clay wound round a former, overlapped, cut through both layers and joined edge to edge."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base import sketches
from sheetgen.base.figure import Made
from sheetgen.base.material import Clay
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.shrinkage import fired_size, wet_size
from sheetgen.formulas.wrap import former_for, inside_over
from sheetgen.parts import given, wound
from sheetgen.parts.clay_piece import fired_by
from sheetgen.parts.drawer import neighbours
from sheetgen.parts.kind import Finding, figure
from sheetgen.parts.wound import WoundStrip

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.pen import Pen
    from sheetgen.base.spread import Spread


class Tube(WoundStrip):
    """The strip's length is that of its middle layer, π × (inside + thickness); a former is a tool, so it decides."""

    kind = "tube"
    round_figure, along_figure = "former_used", "wet_length"

    clay = given.item(Clay, "the clay it is rolled from")
    length = given.length("finished length", above=0)
    inside = given.maybe_length("finished inside diameter; or give the former", above=0)
    former = given.maybe_length("the former to use, when the tool decides", above=0)
    thickness = given.length("thickness the clay is rolled to at last", above=0)
    rolled_first = given.maybe_length("thickness it is rolled to before the texture", above=0)
    release_sheet = given.length("thickness of the release sheet round the former", default="0 mm", at_least=0)
    turns = given.count("turns of release sheet", default="1", at_least=0, at_most=10)
    grain = given.one_of("the way the texture's grain runs, as the template lies", "none", "along", "across")
    overlap = given.length("overlap to cut through, wet", default="4 mm", at_least=0)

    @property
    def wanted(self) -> float:
        """The former that would fit exactly, mm."""
        if self.former is not None:
            return self.former.usual
        if self.inside is None:
            raise CannotBe("inside or the former is wanted, one of the two", "give one", "inside")
        wet = wet_size(self.inside.usual, self.clay.shrinkage.usual)
        return former_for(wet, self.release_sheet.usual, self.turns.usual)

    @property
    def owned(self) -> str:
        """The formers in the drawer nearest to the wanted one."""
        return neighbours([] if self.former is not None else self.bench.owned("former"), self.wanted)

    @figure(
        "Former wanted", "mm", "{inside} ÷ (1 − {clay.shrinkage}) − 2 × {turns} × {release_sheet}",
        when=lambda part: part.former is None,
    )  # fmt: skip
    def former_wanted(self) -> float:
        """The former that would fit exactly."""
        return self.wanted

    @figure("Former", "mm", "nearest({wanted}, {owned})")
    def former_used(self) -> float:
        """The former to wind round."""
        return self.wanted if self.former is not None else self.tool("former", self.wanted, "inside")

    @figure("Inside of the clay", "mm", "{former_used} + 2 × {turns} × {release_sheet}")
    def wet_inside(self) -> Spread:
        """Former and release sheet together."""
        return inside_over(self.former_used, self.release_sheet, self.turns)

    @figure("Inside, fired", "mm", "{wet_inside} × (1 − {clay.shrinkage})")
    def fired_inside(self) -> Spread:
        """What the bore comes out at."""
        return fired_size(self.wet_inside, self.clay.shrinkage)

    @figure("Length, cut wet", "mm", "{length} ÷ (1 − {clay.shrinkage})", rounding="bench")
    def wet_length(self) -> Spread:
        """Along the former."""
        return wet_size(self.length, self.clay.shrinkage)

    strip_meets = wound.strip_meets
    strip_cut = wound.strip_cut

    @figure("Outside, fired", "mm", "{fired_inside} + 2 × {thickness} × (1 − {clay.thickness_shrinkage})")
    def fired_outside(self) -> Spread:
        """What the tube measures across when finished."""
        return self.fired_inside + fired_size(self.thickness, self.clay.thickness_shrinkage) * 2

    @figure("Clay, each", "g", "{strip_cut} × {wet_length} × {thickness} × {clay.density} ÷ 1000", rounding="mass up")
    def clay_mass(self) -> Spread:
        """The strip as it is cut, the overlap included."""
        return self.wet_mass(self.strip_cut, self.wet_length)

    @figure(
        "Fired weight, each", "g",
        "{strip_meets} × {wet_length} × {thickness} × {clay.density} ÷ 1000 × {clay.metal_share}",
    )  # fmt: skip
    def fired_mass(self) -> Spread:
        """Metal left of the joined tube."""
        return self.metal(self.wet_length)

    def made(self) -> Iterator[Made]:
        """Length, bore and strip."""
        fires, sheet = fired_by(self.clay), self.sheeted
        yield Made("length", "wet_length", self.length, fires, "ruler or grid")
        yield Made(
            "bore", "former_used", self.inside, lambda former: fires(former + sheet),
            "former + release sheet" if sheet else "former",
        )  # fmt: skip
        yield Made("strip, with the overlap", "strip_cut", tool="ruler or grid")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The former."""
        yield "former", self.former_used.usual

    def check(self) -> Iterator[Finding]:
        """One of bore and former; texture only thins."""
        if (self.inside is None) == (self.former is None):
            yield Finding("inside", "or the former is wanted, one of the two", "give one")
        if self.former is not None:
            yield from self.not_owned("former", self.former.usual, "former")
        yield from super().check()
        if 0 < self.overlap.usual < self.thickness.usual:
            yield Finding("overlap", "is less than the clay is thick", "3 mm to 6 mm is usual", "warning")

    def view(self, pen: Pen) -> float:
        """A cylinder seen a little from above."""
        wide, long = self.fired_outside.usual, self.length.usual
        sketches.cylinder(pen, wide, long)
        return long
