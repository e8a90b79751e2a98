"""Ring band: a strip of clay wound on a ring former, sized so that it fires to a finger."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat, box
from sheetgen.base.material import Clay
from sheetgen.facts.rings import (
    BROAD_BAND,
    FIRED_OFF,
    FORMER_OFF,
    LARGEST_FORMER,
    LEAST_BAND,
    THUMB,
    US_STEP,
    WIDE_BAND_SIZE_FROM,
    WIDE_BAND_SIZES_UP,
)
from sheetgen.facts.units import MM_PER_INCH
from sheetgen.formulas.rings import jp_diameter, uk_mm, us_diameter
from sheetgen.parts import field, wound
from sheetgen.parts.figure import aside, figure, need, stand, tool
from sheetgen.parts.figure import size as made
from sheetgen.parts.piece import Piece
from sheetgen.parts.wound import Wound


def _us(mm: str) -> str:
    """Where the US scale has a name for an inside: from size 0 on."""
    return f"{mm}.low ≥ {us_diameter(0):.6g} mm"


def _uk(mm: str) -> str:
    """Where the UK scale has one: A to Z½."""
    return f"π × {mm}.low ≥ {uk_mm('A'):g} mm and π × {mm}.high ≤ {uk_mm('Z½'):g} mm"


def flat(piece: Piece) -> Iterator[Flat]:
    """The strip, the side along the former upright."""
    strip = box(piece[RingBand.strip_cut], piece[RingBand.wet_width])
    yield Flat(strip, thickness=piece.usual(RingBand.thickness), meets=piece[RingBand.strip_meets])


# fmt: off
class RingBand(Wound):
    """Ring sizes: US by D = 0.458 + 0.032 n inch; UK by BS 6820 (C = 40 + 1.25 k); ISO 8653; Japan D = (38 + n) ÷ 3.

    A ring fired round a plug cannot shrink past the plug (common practice).
    """

    kind = "ring band"
    on_shelf = (stand("wet_inside + 2 × thickness", "wet_inside + 2 × thickness", "wet_width"),)

    clay = field.item(Clay, "the clay it is rolled from", role="made of")
    size = field.length("the finger's ring size, as US 7, UK N½, ISO 54 or JP 14, or an inside diameter", above=10)
    width = field.length("finished width of the band", above=0)
    release_sheet = field.length("thickness of the release sheet round the former", default="0.1 mm", at_least=0)
    wide_band = field.one_of("whether a wide band is made half a US size larger", "larger", "as given")

    wide = figure("Added for a wide band", "mm",
                  f"{WIDE_BAND_SIZES_UP:g} × {US_STEP:g} × {MM_PER_INCH:g} mm if wide_band is larger and width ≥ {WIDE_BAND_SIZE_FROM:g} mm else 0 mm",
                  about="Half a US size on the inside from 6 mm of width (common practice).")
    inside = figure("Inside, finished", "mm", "size + wide", about="Inside diameter when finished.", role="on a plug")
    finger_us = figure("Finger, US size", "US", "us(size)", when=_us("size"), about="The size of the finger as a US sizer reads it.")
    finger_uk = figure("Finger, UK size", "UK", "uk(size)", when=_uk("size"),
                       about="The size of the finger as a UK sizer reads it: letters counted from C.")
    former_wanted = figure("Former wanted", "mm", "former_for(usual(wet(inside, clay.shrinkage)), turns, release_sheet)",
                           about="The former that would fit exactly.")
    former = figure("Former", "mm", "nearest(former_wanted, drawer.ring_former) if drawer.ring_former else round(former_wanted, 0.1 mm)",
                    about="The nearest owned, or a place on a tapered ring former, marked to a tenth of a millimetre; everything after is worked from it.",
                    at="size")
    former_us = figure("Former, US size", "US", "us(former)", when=_us("former"), about="The former's place on a US mandrel.")
    former_uk = figure("Former, UK size", "UK", "uk(former)", when=_uk("former"), about="The former's place on a UK mandrel: letters counted from C.")
    wet_inside = figure("Inside of the clay", "mm", "inside_over(former, turns, release_sheet)", about="Former and release sheet together.")
    strip_meets = wound.strip_meets
    strip_cut = wound.strip_cut
    wet_width = figure("Width, cut wet", "mm", "wet(width, clay.shrinkage)", "bench", about="Across the band.")
    fired_inside = figure("Inside, fired", "mm", "fired(wet_inside, clay.shrinkage)", about="What the inside comes out at.")
    fired_us = figure("Fires to, US size", "US", "us(fired_inside)", when=_us("fired_inside"), about="Its US size when fired.")
    fired_uk = figure("Fires to, UK size", "UK", "uk(fired_inside)", when=_uk("fired_inside"),
                      about="Its UK size when fired: letters counted from C.")
    fired_iso = figure("Fires to, ISO 8653 size", "ISO", "iso(fired_inside)", about="Its inside circumference when fired, mm.")
    fired_jp = figure("Fires to, Japanese size", "JP", "jp(fired_inside)", when=f"fired_inside.low ≥ {jp_diameter(1):g} mm",
                      about="Its Japanese size when fired.")
    clay_mass = figure("Clay, each", "g", "strip_cut × wet_width × thickness × clay.density ÷ 1000 mm³/cm³", "mass up",
                       about="The strip as it is cut, the overlap included.", role="clay mass")
    fired_mass = figure("Fired weight, each", "g", "strip_meets × wet_width × thickness × clay.density ÷ 1000 mm³/cm³ × clay.metal_share",
                        about="Metal left of the joined band.", role="metal mass")

    fired_thick = aside("mm", "fired(thickness, clay.thickness_shrinkage)")
    fired_outside = aside("mm", "fired_inside + 2 × fired(thickness, clay.thickness_shrinkage)")

    sizes = (
        made("inside, without a plug", "former", finished="inside", fires="fired_inside", tool="ring former + release sheet", when="sheeted > 0 mm"),
        made("inside, without a plug", "former", finished="inside", fires="fired_inside", tool="ring former", when="sheeted = 0 mm"),
        made("width", "wet_width", finished="width", fires="fired(wet_width, clay.shrinkage)", tool="ruler or grid"),
        made("strip, with the overlap", "strip_cut", tool="ruler or grid"),
    )
    tools = (tool("ring former", "former"),)
    needs = (
        *Wound.needs,
        need(f"round(fired_thick, 0.1 mm) ≥ {LEAST_BAND:g} mm", "fires to {fired_thick}, and so thin a band bends on the finger", at="thickness",
             least=f"wet({LEAST_BAND:g} mm, clay.thickness_shrinkage.usual)", doubt=True, rule="thin-band"),
        need(f"width ≤ {BROAD_BAND:g} mm or wide_band is larger", "is so wide that it feels tighter than its size", at="width", help="wide band: larger",
             doubt=True, rule="wide-band"),
        need(f"size ≤ {THUMB:g} mm", "is wider than a thumb", at="size", help="US 15 is {US 15}"),
        need(f"former ≤ US {LARGEST_FORMER:g}", f"wants a former of {{former}}, past the end of a ring former (US {LARGEST_FORMER:g})", at="size",
             help="a clay that shrinks less, a smaller size, or a former of that diameter turned for it", doubt=True),
        need(f"former − former_wanted ≤ US {FORMER_OFF:g} − US 0 and former_wanted − former ≤ US {FORMER_OFF:g} − US 0",
             "wants a former of {former_wanted}, and the nearest owned is more than half a US size off", at="size",
             help="a size that fires to {fired_inside} inside, or another former in stock", doubt=True),
        need(f"fired_inside.high − fired_inside.low ≤ US {FIRED_OFF:g} − US 0", "shrinks so unevenly that the ring may fire more than a US size off", at="clay",
             help="test strips of your own, and a plug of the finished size in the kiln", doubt=True),
    )
    flat = flat
