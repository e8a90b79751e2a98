"""Hollow lentil: two domes of clay joined rim to rim, with a hole that lets the air out in the kiln."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat, disc
from sheetgen.base.material import Clay
from sheetgen.facts.clay import CREASES, LEAST_VENT
from sheetgen.facts.tools import CUTTER_REACH, DOME_NEAR, NEAR, NEAR_LEAST
from sheetgen.parts import field
from sheetgen.parts.clay_piece import CLAY_AS_CUT, as_good, bears
from sheetgen.parts.figure import aside, figure, flag, need, size, stand, tool
from sheetgen.parts.kind import Part
from sheetgen.parts.piece import Piece

_OFF = f"max({NEAR_LEAST:g} mm, {NEAR:g} × thick)"
_GIVE = "it comes out {round(thick_out.usual, 0.1 mm)} thick on the ball of {ball}; give that thickness"


def flat(piece: Piece) -> Iterator[Flat]:
    """One disc; two are cut."""
    yield Flat(disc(piece[Lentil.wet_disc]), times=2, thickness=piece.usual(Lentil.thickness), what="halves")


# fmt: off
class Lentil(Part):
    """Each half is a dome of equal area (Archimedes, On the Sphere and Cylinder, I.42), its rim sanded flat for the joint.

    Sanding takes height off each half, so a half is formed that much higher; before that it stands on the inner edge of
    its rim, and is sanded flat to the outer edge first. A closed hollow bursts in the kiln: it has a hole, through one
    half or the joint. Clay stretches as it is laid over a ball, so a disc is right to half a mm.
    """

    kind = "hollow lentil"
    reshaped = True
    on_shelf = (stand("across_wet", "across_wet", "2 × wet_high"),)

    clay = field.item(Clay, "the clay it is cut from", role="made of")
    across = field.length("finished width", above=0)
    thick = field.length("finished thickness over all, crown to crown", above=0)
    thickness = field.length("thickness the clay is rolled to", above=0, role="rolled to")
    rolled_first = field.maybe_length("thickness it is rolled to before the texture", above=0, role="rolled first")
    grain = field.one_of("the way the texture's grain runs, as the template lies", "none", "along", "across", role="grain")
    texture = bears("ribs")
    sanded = field.length("height sanded off each rim, finished", default="0.3 mm", at_least=0)
    vent = field.length("finished hole that lets the air out", default="1 mm", at_least=0)

    rise = figure("Rise of a half, before it is sanded", "mm", "thick ÷ 2 + sanded", about="Of the outside, finished.")
    radius = figure("Radius of the outside", "mm", "cap_radius(across, thick ÷ 2)", about="Of the ball that a half is part of.",
                    needs=(need("thick ≤ across", "is more than a ball of that width", at="thick", most="across"),))
    # Across the rim before it is sanded: it is wider where it is lower, and as wide as asked when it is sanded.
    formed = aside("mm", "2 × √(rise × (2 × radius − rise))",
                   needs=(need("rise ≤ radius", "leaves nothing to sand of so deep a half", at="thick", help="thinner, or less sanded"),))
    fired_thickness = figure("Fired thickness", "mm", "fired(thickness, clay.thickness_shrinkage)", about="Of its wall.",
                             needs=(need("fired_thickness.high < thick ÷ 2", "leaves no hollow between two such walls", at="thickness"),))
    disc_wanted = aside("mm", "wet(cap_blank(formed, rise) × (1 − fired_thickness ÷ (2 × radius)), clay.shrinkage)")
    cutter = aside("mm", "nearest(usual(disc_wanted), drawer.round_cutter, 1) if drawer.round_cutter")
    by_cutter = flag(f"drawer.round_cutter and {as_good('cutter', 'disc_wanted')}")
    wet_disc = figure("Discs, cut wet", "mm",
                      "cutter if by_cutter else wet(cap_blank(formed, rise) × (1 − fired_thickness ÷ (2 × radius)), clay.shrinkage)", "tenth",
                      about=f"Two are cut: with the round cutter owned, where the clay's own shrinkage differs by more, and no more than {CUTTER_REACH:g} mm.")
    ball = figure("Ball, across", "mm", f"nearest(2 × (wet(radius, clay.shrinkage) − thickness), drawer.dome_former, {DOME_NEAR:g})", at="thick",
                  about="Both halves are laid over it.")
    # Of the clay on the ball used, wet: radius of its middle and of its outside, and the cosine of its rim's angle.
    middle = aside("mm", "ball ÷ 2 + thickness ÷ 2")
    outer = aside("mm", "ball ÷ 2 + thickness")
    level = aside("", "1 − wet_disc² ÷ (8 × middle²)")
    formed_high = figure("Half, height over all before sanding, wet", "mm", "outer − (outer − thickness) × level", "out",
                         about="From the table that the inner edge of its rim stands on to its crown.")
    wet_high = figure("Half, height over all when it is sanded, wet", "mm", "outer × (1 − level) − usual(wet(sanded, clay.shrinkage))", "out",
                      about="From the table that its flat rim stands on to its crown.",
                      needs=(need("wet_high > 0 mm", "leaves nothing of a half on the ball of {ball}", at="sanded", help="less"),))
    across_wet = aside("mm", "2 × √(wet_high × (2 × outer − wet_high))")
    thick_out = figure("Thickness that comes out", "mm", "fired(2 × wet_high, clay.shrinkage)", about="Crown to crown on the ball used, fired.")
    width_out = figure("Width that comes out", "mm", "fired(across_wet, clay.shrinkage)",
                       about="Across the joint on the ball used, fired.")
    drill = figure("Vent, drill", "mm", "nearest(usual(wet(vent, clay.shrinkage)), drawer.drill)", when="vent", at="vent",
                   about="The hole to make in one half before they are joined.", role="drilled with")
    vent_out = figure("Vent, fired", "mm", "fired(drill, clay.shrinkage)", when="vent", about="What it comes out at.", role="vent")
    clay_mass = figure("Clay, each", "g", "2 × disc_mass(wet_disc, thickness, clay.density)", "mass up", role="clay mass",
                       about="Both discs as they are cut.")
    fired_mass = figure("Fired weight, each", "g", "clay_mass × clay.metal_share", about="Metal left, what is sanded off not taken out.", role="metal mass")

    sizes = (
        size("discs, two for each", "wet_disc", tool="round cutter", when="by_cutter"),
        size("discs, two for each", "wet_disc", tool="template", when="not by_cutter"),
        size("ball to lay them over", "ball", tool="dome former"),
        size("half, high before its rim is sanded", "formed_high", tool="calliper"),
        size("half, high when its rim is sanded", "wet_high", tool="calliper"),
        size("vent", "drill", finished="vent", fires="vent_out", tool="drill", when="vent"),
    )
    takes = (CLAY_AS_CUT,)
    tools = (
        tool("round cutter", "cutter", when="by_cutter"),
        tool("dome former", "ball"),
        tool("drill", "drill", when="vent"),
    )
    needs = (
        need("vent", "is nothing: a closed hollow bursts in the kiln", at="vent", help=f"{LEAST_VENT:g} mm or more"),
        need(f"vent ≥ {LEAST_VENT:g} mm", "lets too little out in the kiln", at="vent", least=f"{LEAST_VENT:g} mm", when="vent", rule="least-vent"),
        need(f"rise ≤ {CREASES:g} × across", "is so deep that a flat disc creases", at="thick", most=f"max(0 mm, {2 * CREASES:g} × across − 2 × sanded)",
             help="or less sanded", when="thick ≤ across", doubt=True),
        need(f"thick_out − thick ≤ {_OFF}", "is {thick_out.usual − thick} less than the drawer allows", at="thick", help=_GIVE, doubt=True),
        need(f"thick − thick_out ≤ {_OFF}", "is {thick − thick_out.usual} more than the drawer allows", at="thick", help=_GIVE, doubt=True),
    )
    flat = flat
