"""Washer: a disc of clay with a round opening in its middle, cut by template or with two cutters from the drawer."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat, disc
from sheetgen.base.material import Clay
from sheetgen.base.printed import Printed
from sheetgen.facts.fit import LEAST_RIM
from sheetgen.parts import field
from sheetgen.parts.clay_piece import CLAY_AS_CUT
from sheetgen.parts.figure import Need, aside, figure, flag, inline, need, size, tool
from sheetgen.parts.kind import Part
from sheetgen.parts.piece import Piece


def outer_cut(piece: Piece) -> Printed:
    """What the outside is cut at, by its cutter or by the template."""
    return piece[Washer.cutter_outside if piece.has(Washer.cutter_outside) else Washer.wet_outside]


def inner_cut(piece: Piece) -> Printed:
    """What the opening is cut at."""
    return piece[Washer.cutter_opening if piece.has(Washer.cutter_opening) else Washer.wet_opening]


def flat(piece: Piece) -> Iterator[Flat]:
    """Two circles on one centre."""
    outside = outer_cut(piece)
    hole = disc(inner_cut(piece), (outside / 2, outside / 2))
    yield Flat(disc(outside), (hole,), thickness=piece.usual(Washer.thickness))


# fmt: off
def _rims(at: str, given: str, widest: str) -> tuple[Need, Need]:
    """The rim stands, whichever way the opening was given; of the widest opening a tenth is kept, as it is cut."""
    return (
        need("cut_opening < cut_outside", "leaves no rim: it is cut at {cut_opening}", at=at, most=widest, help="a wider outside", when=given),
        need(f"rim ≥ {LEAST_RIM:g} mm", "leaves a rim of {rim.usual}, fired", at=at, most=widest, help="a wider outside",
             when=f"{given} and cut_opening < cut_outside", rule="least-rim"),
    )


class Washer(Part):
    """Both diameters grow by 1 ÷ (1 − s): in its plane a flat piece shrinks alike, its opening with it.

    What is lifted out of the middle is clay as good as the rest. A thin rim drags and goes oval when it is lifted wet.
    """

    kind = "washer"

    clay = field.item(Clay, "the clay it is cut from", role="made of")
    outside = field.maybe_length("finished outside diameter; or give its cutter", above=0)
    opening = field.maybe_length("finished diameter of the opening; or give its cutter", above=0)
    outside_cutter = field.maybe_length("the cutter of the outside, when the tool decides", above=0)
    opening_cutter = field.maybe_length("the cutter of the opening, when the tool decides", above=0)
    cut_with = field.one_of("by a template, or with the nearest round cutters owned", "template", "cutters")
    thickness = field.length("thickness the clay is rolled to", above=0, role="rolled to")

    either = (("outside", "outside_cutter"), ("opening", "opening_cutter"))

    punched = flag("outside_cutter or cut_with is cutters")
    opened = flag("opening_cutter or cut_with is cutters")

    wet_outside = figure("Outside, cut wet", "mm", "wet(outside, clay.shrinkage)", "tenth", when="not punched", about="Outside diameter to cut.")
    cutter_outside = figure("Outside, round cutter", "mm", "outside_cutter or nearest(usual(wet(outside, clay.shrinkage)), drawer.round_cutter)",
                            when="punched", about="The cutter of the outside.", at="outside")
    wet_opening = figure("Opening, cut wet", "mm", "wet(opening, clay.shrinkage)", "tenth", when="not opened",
                         about="Diameter of the opening to cut.")
    cutter_opening = figure("Opening, round cutter", "mm", "opening_cutter or nearest(usual(wet(opening, clay.shrinkage)), drawer.round_cutter)",
                            when="opened", about="The cutter of the opening.", at="opening")
    cut_outside = inline("cutter_outside if punched else wet_outside")
    cut_opening = inline("cutter_opening if opened else wet_opening")
    fired_outside = figure("Outside, fired", "mm", "fired(cut_outside, clay.shrinkage)", about="What the outside comes out at.", role="covers")
    fired_opening = figure("Opening, fired", "mm", "fired(cut_opening, clay.shrinkage)", about="What the opening comes out at.", role="opens")
    rim = figure("Rim, fired", "mm", "fired((cut_outside − cut_opening) ÷ 2, clay.shrinkage)", about="Width of the metal round the opening.")
    widest = aside("mm", f"cut_outside − 2 × wet({LEAST_RIM:g} mm, clay.shrinkage.usual)")
    clay_mass = figure("Clay, each", "g", "disc_mass(cut_outside, thickness, clay.density)", "mass up",
                       about="The disc as it is cut, the opening not taken out.", role="clay mass")
    middle = figure("Clay out of the middle, each", "g", "disc_mass(cut_opening, thickness, clay.density)", about="What goes back into the wrap.")
    fired_mass = figure("Fired weight, each", "g", "fired_mass(clay_mass − middle, clay.metal_share)", about="Metal left, the opening taken out.", role="metal mass")

    sizes = (
        size("outside", "cutter_outside", finished="outside", fires="fired_outside", tool="round cutter", when="punched"),
        size("outside", "wet_outside", finished="outside", fires="fired_outside", tool="cutter or template", when="not punched"),
        size("opening", "cutter_opening", finished="opening", fires="fired_opening", tool="round cutter", when="opened"),
        size("opening", "wet_opening", finished="opening", fires="fired_opening", tool="cutter or template", when="not opened"),
    )
    takes = (CLAY_AS_CUT,)
    tools = (
        tool("round cutter", "cutter_outside", when="punched", given="outside_cutter"),
        tool("round cutter", "cutter_opening", when="opened", given="opening_cutter"),
    )
    needs = (
        *_rims("opening", "not opening_cutter", "fired(down(widest, 0.1 mm), clay.shrinkage.usual)"),
        *_rims("opening cutter", "opening_cutter", "widest"),
    )
    flat = flat
