"""Dome: a shallow cap formed from one flat disc laid over a ball, or pressed into a cup."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat, disc
from sheetgen.base.material import Clay
from sheetgen.facts.clay import CREASES
from sheetgen.facts.tools import CUTTER_REACH, DOME_NEAR, NEAR, NEAR_LEAST
from sheetgen.parts import field
from sheetgen.parts.clay_piece import CLAY_AS_CUT, as_good, bears
from sheetgen.parts.figure import aside, figure, flag, inline, need, size, stand, tool
from sheetgen.parts.piece import Piece
from sheetgen.parts.pierced import Pierced, bored

_OFF = f"max({NEAR_LEAST:g} mm, {NEAR:g} × rise)"
_GIVE = "it comes out {round(rise_out.usual, 0.1 mm)} high on the tool of {ball}; give that rise"


def flat(piece: Piece) -> Iterator[Flat]:
    """The disc with its holes."""
    wide = piece[Dome.wet_disc]
    hole, around, opening = (
        piece[cut] if piece.has(cut) else None for cut in (Dome.wet_hole, Dome.wet_around, Dome.wet_opening)
    )
    cut = bored((wide / 2, wide / 2), hole, around, opening, int(piece[Dome.holes]))
    yield Flat(disc(wide), (*cut,), thickness=piece.usual(Dome.thickness))


# fmt: off
class Dome(Pierced):
    """Equal areas: Archimedes, On the Sphere and Cylinder, I.42; Atkins, Practical Sheet and Plate Metal Work.

    Sizes are of the outside; the disc is worked on the middle of the thickness. Clay slumps and stretches a little as
    it is laid over a ball, so a disc is right to about half a millimetre, not to a tenth.
    """

    kind = "dome"
    reshaped = True
    on_shelf = (stand("wet_across", "wet_across", "wet_high"),)

    clay = field.item(Clay, "the clay it is cut from", role="made of")
    across = field.length("finished width, rim to rim, outside", above=0, role="covers")
    rise = field.length("finished rise, rim to crown, outside", above=0, role="domed")
    thickness = field.length("thickness the clay is rolled to", above=0, role="rolled to")
    formed = field.one_of("over a ball, or in a cup", "over", "in")
    cut_with = field.one_of("its disc with a round cutter where one owned is as good, by its template, or with the nearest cutter owned", "either", "template", "cutter")
    grain = field.one_of("the way the texture's grain runs, as the template lies", "none", "along", "across", role="grain")
    texture = bears("ribs")
    rolled_first = field.maybe_length("thickness it is rolled to before the texture", above=0, role="rolled first")

    radius = figure("Radius of the outside", "mm", "cap_radius(across, rise)", about="Radius of the outside, finished.",
                    needs=(need("rise ≤ across ÷ 2", "is past half a ball", at="rise", most="across ÷ 2", help="or {2 × rise} or more across"),))
    fired_thickness = figure("Fired thickness", "mm", "fired(thickness, clay.thickness_shrinkage)", about="Thickness of the finished dome.")
    inward = inline("1 − fired_thickness ÷ (2 × radius)")  # from the outside to the middle of the clay
    disc = figure("Disc, finished", "mm", "cap_blank(across, rise) × inward", about="Flat disc of the same area as the middle of the dome.")
    disc_wanted = aside("mm", "wet(disc, clay.shrinkage)")
    cutter = aside("mm", "nearest(usual(disc_wanted), drawer.round_cutter) if cut_with is cutter else nearest(usual(disc_wanted), drawer.round_cutter, 1) if drawer.round_cutter", at="across")
    by_cutter = flag(f"cut_with is cutter or drawer.round_cutter and cut_with is either and {as_good('cutter', 'disc_wanted')}")
    wet_disc = figure("Disc, cut wet", "mm", "cutter if by_cutter else wet(disc, clay.shrinkage)", "tenth",
                      about=f"Disc to cut: the round cutter owned, where the clay's own shrinkage differs by more, and no more than {CUTTER_REACH:g} mm, or where the cutter decides.")
    ball = figure("Ball or cup, across", "mm",
                  f"nearest(2 × (wet(radius, clay.shrinkage) − thickness), drawer.dome_former, {DOME_NEAR:g}) if formed is over else nearest(2 × wet(radius, clay.shrinkage), drawer.cup_former, {DOME_NEAR:g})",
                  about="Diameter of the ball it is laid over, or of the cup it is pressed in.", at="rise",
                  needs=(need("ball > 2 × thickness or formed is over", "fills the cup of {ball}", at="thickness", help="thinner clay, or a larger dome"),))
    # Of the clay on the ball used, wet: radius of its middle and of its outside, and the sine of a quarter of its angle.
    middle = aside("mm", "ball ÷ 2 + thickness ÷ 2 if formed is over else ball ÷ 2 − thickness ÷ 2")
    outer = aside("mm", "ball ÷ 2 + thickness if formed is over else ball ÷ 2")
    lean = aside("", "wet_disc ÷ (4 × middle)")
    wet_across = figure("Across outside, formed, wet", "mm", "4 × (middle + thickness ÷ 2) × lean × √(1 − lean²)", "out",
                        about="As a calliper takes it, across the outer edge of the rim.")
    wet_high = figure("Height over all, formed, wet", "mm", "middle + thickness ÷ 2 − (middle − thickness ÷ 2) × (1 − 2 × lean²)", "out",
                      about="From the table that its rim stands on to the top of its crown.")
    rise_out = figure("Rise that comes out", "mm", "fired(wet_disc² ÷ (8 × middle) × outer ÷ middle, clay.shrinkage)",
                      about="Rise of the outside on the ball used, fired: on the middle of the clay chord² = 2 × radius × rise.")
    width_out = figure("Width that comes out", "mm", "fired(2 × outer × sin(2 × asin(wet_disc ÷ (4 × middle))), clay.shrinkage)",
                       about="Width of the outside, rim to rim, on the ball used, fired.")
    hole_bent = figure("Hole, if the disc bends and does not stretch, cut wet", "mm", "wet(hole_punched(hole, radius) × inward, clay.shrinkage)",
                       "out", when="hole", about="Equal areas (Lambert).")
    hole_held = figure("Hole, if the rim is held and the disc stretches, cut wet", "mm",
                       "wet(hole_stretched(hole, across, rise) × inward, clay.shrinkage)", "out", when="hole",
                       about="Uniform stretch, a bounding model; real work lies between.")
    wet_hole = figure("Hole, cut wet", "mm", "(hole_bent + hole_held) ÷ 2", "tenth", when="hole",
                      about="Hole to cut in the middle, half way between the two below.")
    stretched = aside("", "0-1")  # how far the disc stretches: not at all, or as if its rim were held
    hole_fires = aside("mm",
                       "(fired(wet_hole, clay.shrinkage) × hole ÷ (inward) × ((1 − stretched) ÷ hole_punched(hole, radius) + stretched ÷ hole_stretched(hole, across, rise)) if hole)")
    wet_opening = figure("Holes, each cut wet", "mm", "wet(opening, clay.shrinkage)", "tenth", when="ringed", about="Each hole of the ring.", role="drilled with")
    wet_around = figure("Circle of the hole centres, wet", "mm", "wet(hole_punched(around, radius) × inward, clay.shrinkage)", "tenth", when="ringed",
                        about="Circle to mark on the flat disc (equal areas).")
    clay_mass = figure("Clay, each", "g", "disc_mass(wet_disc, thickness, clay.density)", "mass up",
                       about="The disc as it is cut, holes not taken out.", role="clay mass")
    fired_mass = figure("Fired weight, each", "g",
                        "fired_mass(sheet_mass(π ÷ 4 × (wet_disc² − holes_squared), thickness, clay.density), clay.metal_share)",
                        about="Metal left, the holes taken out.", role="metal mass")

    sizes = (
        size("disc, for the dome", "wet_disc", tool="round cutter", when="by_cutter"),
        size("disc, for the dome", "wet_disc", tool="template", when="not by_cutter"),
        size("ball to lay it over", "ball", tool="dome former", when="formed is over"),
        size("cup to press it in", "ball", tool="cup former", when="formed is in"),
        size("width outside, formed", "wet_across", finished="across", fires="fired(wet_across, clay.shrinkage)", tool="calliper"),
        size("height over all, formed", "wet_high", tool="calliper"),
        *Pierced.sizes,
    )
    takes = (CLAY_AS_CUT,)
    tools = (
        tool("round cutter", "cutter", when="by_cutter"),
        tool("dome former", "ball", when="formed is over"),
        tool("cup former", "ball", when="formed is in"),
        *Pierced.tools,
    )
    needs = (
        need(f"rise ≤ {CREASES:g} × across", "is so deep that a flat disc creases", at="rise", most=f"{CREASES:g} × across", when="rise ≤ across ÷ 2", doubt=True),
        need(f"rise_out − rise ≤ {_OFF}", "is {rise_out.usual − rise} less than the drawer allows", at="rise", help=_GIVE, when="rise ≤ across ÷ 2",
             doubt=True),
        need(f"rise − rise_out ≤ {_OFF}", "is {rise − rise_out.usual} more than the drawer allows", at="rise", help=_GIVE, when="rise ≤ across ÷ 2",
             doubt=True),
        *Pierced.needs,
    )
    flat = flat
