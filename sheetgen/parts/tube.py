"""Tube: a strip of clay wound round a former, overlapped, cut through both layers and joined edge to edge."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base import sketches
from sheetgen.base.figure import Made
from sheetgen.base.material import Clay
from sheetgen.base.spread import Spread, spread
from sheetgen.base.trouble import CannotBe
from sheetgen.formulas.shrinkage import fired_mass, fired_size, wet_size
from sheetgen.formulas.wrap import former_for, inside_over, strip_round
from sheetgen.parts import given
from sheetgen.parts.kind import Finding, Part, Take, figure, neighbours, template_clay

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from sheetgen.base.figure import Size
    from sheetgen.base.pen import Pen


class Tube(Part):
    """The strip's length is that of its middle layer, π × (inside + thickness); a former is a tool, so it decides."""

    kind = "tube"

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

    @figure("Strip, ends meet", "mm", "π × ({wet_inside} + {thickness})", rounding="tenth")
    def strip_meets(self) -> Spread:
        """Round the former, where the two ends meet."""
        return strip_round(self.wet_inside, self.thickness)

    @figure("Strip, cut", "mm", "{strip_meets} + {overlap}", rounding="bench up")
    def strip_cut(self) -> Spread:
        """Round the former, with the overlap."""
        return self.strip_meets + self.overlap

    @figure("Outside, fired", "mm", "{fired_inside} + 2 × {thickness} × (1 − {clay.thickness_shrinkage})")
    def fired_outside(self) -> Spread:
        """What the tube measures across when finished."""
        return self.fired_inside + fired_size(self.thickness, self.clay.thickness_shrinkage) * 2

    @figure("Clay, each", "g", "{strip_cut} × {wet_length} × {thickness} × {clay.density} ÷ 1000", rounding="mass up")
    def clay_mass(self) -> Spread:
        """The strip as it is cut, the overlap included."""
        return self.strip_cut * spread(self.wet_length.usual) * self.thickness * self.clay.density / 1000

    @figure(
        "Fired weight, each", "g",
        "{strip_meets} × {wet_length} × {thickness} × {clay.density} ÷ 1000 × {clay.metal_share}",
    )  # fmt: skip
    def fired_mass(self) -> Spread:
        """Metal left of the joined tube."""
        wet = self.strip_meets * spread(self.wet_length.usual) * self.thickness * self.clay.density / 1000
        return fired_mass(wet, self.clay.metal_share)

    def takes(self) -> Iterator[Take]:
        """Clay, the overlap included."""
        yield Take(self.clay, self.clay_mass * self.count, "clay_mass")

    def made(self) -> Iterator[Made]:
        """Length, bore and strip."""
        s = self.clay.shrinkage
        sheet = 2 * self.turns.usual * self.release_sheet.usual
        yield Made("length", "wet_length", self.length, lambda wet: fired_size(wet, s), "ruler or grid")
        yield Made(
            "bore", "former_used", self.inside, lambda former: fired_size(former + sheet, s),
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
        first = self.rolled_first
        if first is not None and first.usual < self.thickness.usual:
            yield Finding("rolled first", "is thinner than the last thickness", f"{self.thickness.usual:g} mm or more")
        if 0 < self.overlap.usual < self.thickness.usual:
            yield Finding("overlap", "is less than the clay is thick", "3 mm to 6 mm is usual", "warning")

    def view(self, pen: Pen) -> float:
        """A cylinder seen a little from above."""
        wide, long = self.fired_outside.usual, self.length.usual
        sketches.cylinder(pen, wide, long)
        return long

    def template(self, pen: Pen, size: Callable[[str], Size]) -> None:
        """The strip: its length along the former upright, the line where the ends meet."""
        across, down, meets = size("strip_cut"), size("wet_length"), size("strip_meets")
        pen.box((0, 0), across, down)
        pen.line([(meets, 0), (meets, down)], "meet")
        pen.across(-4, 0, meets, f"{meets.words} meets here", to=0)
        pen.across(down + 5, 0, across, f"{across.words} cut", to=down)
        pen.upright(-4, 0, down, down.words, to=0)

    def template_note(self, size: Callable[[str], Size]) -> str:  # noqa: ARG002 - the same words at every size
        """Thickness and clay."""
        return template_clay(self.thickness.usual, self.clay)

    def diagram(self, pen: Pen, size: Callable[[str], Size], k: float) -> str:
        """The strip on its former, in section."""
        former, sheet = size("former_used"), self.release_sheet.usual * self.turns.usual
        words = (f"former {former.words}", f"overlap {self.overlap.usual:g}")
        sketches.wound(pen, former, sheet, self.thickness.usual, self.overlap.usual, words, k)
        sheeted = f" over {sheet:g} mm of release sheet" if sheet else ""
        return f"A strip wound round a former of {former.words} mm{sheeted}, overlapping {words[1][8:]} mm, one cut through both layers"
