"""Tube: a strip of clay wound round a former, overlapped, cut through both layers and joined edge to edge."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat, box
from sheetgen.base.material import Clay
from sheetgen.parts import field, wound
from sheetgen.parts.figure import figure, need, size, stand, tool
from sheetgen.parts.piece import Piece
from sheetgen.parts.wound import Wound


def flat(piece: Piece) -> Iterator[Flat]:
    """The strip, the side along the former upright."""
    strip = box(piece[Tube.strip_cut], piece[Tube.wet_length])
    yield Flat(strip, thickness=piece.usual(Tube.thickness), meets=piece[Tube.strip_meets])


# fmt: off
class Tube(Wound):
    """The strip's length is that of its middle layer, π × (inside + thickness); a former is a tool, so it decides."""

    kind = "tube"
    on_shelf = (stand("wet_inside + 2 × thickness", "wet_inside + 2 × thickness", "wet_length"),)

    clay = field.item(Clay, "the clay it is rolled from", role="made of")
    length = field.length("finished length", above=0)
    inside = field.maybe_length("finished inside diameter; or give the former", above=0)
    former = field.maybe_length("the former to use, when the tool decides", above=0)

    either = (("inside", "former"),)

    former_wanted = figure("Former wanted", "mm", "former_for(usual(wet(inside, clay.shrinkage)), turns, release_sheet)", when="not former",
                           about="The former that would fit exactly.")
    former_used = figure("Former", "mm", "former or nearest(former_wanted, drawer.former)", about="The former to wind round.", at="inside")
    wet_inside = figure("Inside of the clay", "mm", "inside_over(former_used, turns, release_sheet)", about="Former and release sheet together.")
    fired_inside = figure("Inside, fired", "mm", "fired(wet_inside, clay.shrinkage)", about="What the bore comes out at.", role="open at both ends")
    wet_length = figure("Length, cut wet", "mm", "wet(length, clay.shrinkage)", "bench", about="Along the former.")
    strip_meets = wound.strip_meets
    strip_cut = wound.strip_cut
    fired_outside = figure("Outside, fired", "mm", "fired_inside + 2 × fired(thickness, clay.thickness_shrinkage)",
                           about="What the tube measures across when finished.")
    clay_mass = figure("Clay, each", "g", "strip_cut × wet_length × thickness × clay.density ÷ 1000 mm³/cm³", "mass up",
                       about="The strip as it is cut, the overlap included.", role="clay mass")
    fired_mass = figure("Fired weight, each", "g", "strip_meets × wet_length × thickness × clay.density ÷ 1000 mm³/cm³ × clay.metal_share",
                        about="Metal left of the joined tube.", role="metal mass")

    sizes = (
        size("length", "wet_length", finished="length", fires="fired(wet_length, clay.shrinkage)", tool="ruler or grid"),
        size("bore", "former_used", finished="inside", fires="fired_inside", tool="former + release sheet", when="sheeted > 0 mm"),
        size("bore", "former_used", finished="inside", fires="fired_inside", tool="former", when="sheeted = 0 mm"),
        size("strip, with the overlap", "strip_cut", tool="ruler or grid"),
    )
    tools = (tool("former", "former_used", given="former"),)
    needs = (*Wound.needs, need("overlap = 0 mm or overlap ≥ thickness", "is less than the clay is thick", at="overlap", help="3 mm to 6 mm is usual", doubt=True))
    flat = flat
