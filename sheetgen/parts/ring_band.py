"""Ring band: a strip of clay wound on a ring former, sized so that it fires to a finger."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.figure import Made
from sheetgen.base.material import Clay
from sheetgen.base.spread import Spread, floor
from sheetgen.facts.rings import US_STEP, WIDE_BAND_SIZE_FROM, WIDE_BAND_SIZES_UP
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.formulas.rings import iso_size, jp_size, us_size
from sheetgen.formulas.shrinkage import fired_size, wet_size
from sheetgen.formulas.wrap import former_for, inside_over
from sheetgen.parts import given, wound
from sheetgen.parts.clay_piece import fired_by
from sheetgen.parts.kind import Finding, figure
from sheetgen.parts.wound import WoundStrip

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sheetgen.base.pen import Pen


LARGEST_FORMER = 16  # US size at the end of a ring former: common practice


class RingBand(WoundStrip):
    """Ring sizes: US by D = 0.458 + 0.032 n inch; UK by BS 6820 (C = 40 + 1.25 k); ISO 8653; Japan D = (38 + n) ÷ 3.

    A ring fired round a plug cannot shrink past the plug (common practice).
    """

    kind = "ring band"
    round_figure, along_figure = "former", "wet_width"

    clay = given.item(Clay, "the clay it is rolled from")
    size = given.length("the finger's ring size, as US 7, UK N½, ISO 54 or JP 14, or an inside diameter", above=10)
    width = given.length("finished width of the band", above=0)
    thickness = given.length("thickness the clay is rolled to at last", above=0)
    rolled_first = given.maybe_length("thickness it is rolled to before the texture", above=0)
    release_sheet = given.length("thickness of the release sheet round the former", default="0.1 mm", at_least=0)
    turns = given.count("turns of release sheet", default="1", at_least=0, at_most=10)
    grain = given.one_of("the way the texture's grain runs, as the template lies", "none", "along", "across")
    overlap = given.length("overlap to cut through, wet", default="4 mm", at_least=0)
    wide_band = given.one_of("whether a wide band is made half a US size larger", "larger", "as given")

    @figure("Added for a wide band", "mm", "{wide_worked}")
    def wide(self) -> float:
        """Half a US size on the inside from 6 mm of width (common practice)."""
        is_wide = self.wide_band == "larger" and self.width.usual >= WIDE_BAND_SIZE_FROM
        return WIDE_BAND_SIZES_UP * US_STEP * MM_PER_INCH if is_wide else 0.0

    @property
    def wide_worked(self) -> str:
        """How the addition is worked."""
        return f"{WIDE_BAND_SIZES_UP:g} × {US_STEP:g} × {MM_PER_INCH:g}" if self.wide.usual else "0"

    @figure("Inside, finished", "mm", "{size} + {wide}")
    def inside(self) -> Spread:
        """Inside diameter when finished."""
        return self.size + self.wide

    @figure("Finger, US size", "US", "({size} ÷ 25.4 − 0.458) ÷ 0.032")
    def finger_us(self) -> Spread:
        """The size of the finger as a US sizer reads it."""
        return us_size(self.size)

    @figure("Finger, UK size", "UK", "(π × {size} − 40) ÷ 1.25")
    def finger_uk(self) -> Spread:
        """The size of the finger as a UK sizer reads it: letters counted from C."""
        return (iso_size(self.size) - 40) / 1.25

    @figure("Former wanted", "mm", "{inside} ÷ (1 − {clay.shrinkage}) − 2 × {turns} × {release_sheet}")
    def former_wanted(self) -> float:
        """The former that would fit exactly."""
        return former_for(
            wet_size(self.inside.usual, self.clay.shrinkage.usual), self.release_sheet.usual, self.turns.usual
        )

    @figure("Former", "mm", "round({former_wanted} × 10) ÷ 10", rounding="tenth")
    def former(self) -> float:
        """Place on a tapered ring former, marked to a tenth of a millimetre; everything after is worked from it."""
        return floor(self.former_wanted.usual * 10 + 0.5) / 10

    @figure("Former, US size", "US", "({former} ÷ 25.4 − 0.458) ÷ 0.032")
    def former_us(self) -> Spread:
        """The former's place on a US mandrel."""
        return us_size(self.former)

    @figure("Former, UK size", "UK", "(π × {former} − 40) ÷ 1.25")
    def former_uk(self) -> Spread:
        """The former's place on a UK mandrel: letters counted from C."""
        return (iso_size(self.former) - 40) / 1.25

    @figure("Inside of the clay", "mm", "{former} + 2 × {turns} × {release_sheet}")
    def wet_inside(self) -> Spread:
        """Former and release sheet together."""
        return inside_over(self.former, self.release_sheet, self.turns)

    strip_meets = wound.strip_meets
    strip_cut = wound.strip_cut

    @figure("Width, cut wet", "mm", "{width} ÷ (1 − {clay.shrinkage})", rounding="bench")
    def wet_width(self) -> Spread:
        """Across the band."""
        return wet_size(self.width, self.clay.shrinkage)

    @figure("Inside, fired", "mm", "{wet_inside} × (1 − {clay.shrinkage})")
    def fired_inside(self) -> Spread:
        """What the inside comes out at."""
        return fired_size(self.wet_inside, self.clay.shrinkage)

    @figure("Fires to, US size", "US", "({fired_inside} ÷ 25.4 − 0.458) ÷ 0.032")
    def fired_us(self) -> Spread:
        """Its US size when fired."""
        return us_size(self.fired_inside)

    @figure("Fires to, UK size", "UK", "(π × {fired_inside} − 40) ÷ 1.25")
    def fired_uk(self) -> Spread:
        """Its UK size when fired: letters counted from C."""
        return (iso_size(self.fired_inside) - 40) / 1.25

    @figure("Fires to, ISO 8653 size", "ISO", "π × {fired_inside}")
    def fired_iso(self) -> Spread:
        """Its inside circumference when fired, mm."""
        return iso_size(self.fired_inside)

    @figure("Fires to, Japanese size", "JP", "3 × {fired_inside} − 38")
    def fired_jp(self) -> Spread:
        """Its Japanese size when fired."""
        return jp_size(self.fired_inside)

    @figure("Clay, each", "g", "{strip_cut} × {wet_width} × {thickness} × {clay.density} ÷ 1000", rounding="mass up")
    def clay_mass(self) -> Spread:
        """The strip as it is cut, the overlap included."""
        return self.wet_mass(self.strip_cut, self.wet_width)

    @figure(
        "Fired weight, each", "g",
        "{strip_meets} × {wet_width} × {thickness} × {clay.density} ÷ 1000 × {clay.metal_share}",
    )  # fmt: skip
    def fired_mass(self) -> Spread:
        """Metal left of the joined band."""
        return self.metal(self.wet_width)

    def made(self) -> Iterator[Made]:
        """Former, strip and width."""
        fires, sheet = fired_by(self.clay), self.sheeted
        yield Made(
            "inside, without a plug", "former", self.inside, lambda former: fires(former + sheet),
            "ring former + release sheet" if sheet else "ring former",
        )  # fmt: skip
        yield Made("width", "wet_width", self.width, fires, "ruler or grid")
        yield Made("strip, with the overlap", "strip_cut", tool="ruler or grid")

    def tools(self) -> Iterator[tuple[str, float]]:
        """The ring former."""
        yield "ring former", self.former.usual

    def check(self) -> Iterator[Finding]:
        """A finger's size; texture only thins."""
        if self.size.usual > 30:  # noqa: PLR2004 - wider than any finger
            yield Finding("size", f"an inside of {self.size.usual:.1f} mm is wider than a thumb", "US 15 is 23.8 mm")
        if self.former_us.usual > LARGEST_FORMER:
            helped = "a clay that shrinks less, a smaller size, or a former of that diameter turned for it"
            message = (
                f"wants a former of {self.former.usual:.1f} mm, past the end of a ring former (US {LARGEST_FORMER:g})"
            )
            yield Finding("size", message, helped, "warning")
        if self.fired_us.high - self.fired_us.low > 1:
            helped = "test strips of your own, and a plug of the finished size in the kiln"
            yield Finding(
                "clay", "shrinks so unevenly that the ring may fire more than a US size off", helped, "warning"
            )
        yield from super().check()

    def view(self, pen: Pen) -> float:
        """The band along the finger: outside, inside."""
        inside = self.fired_inside.usual
        outside = inside + 2 * self.thickness.usual * (1 - self.clay.thickness_shrinkage.usual)
        pen.circle((0, outside / 2), outside)
        pen.circle((0, outside / 2), inside)
        return outside
