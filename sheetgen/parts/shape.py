"""Cut shape: a disc, rectangle, oval, teardrop, leaf, polygon or an outline of one's own, cut flat from rolled clay."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat, Oval, Shape, box, disc
from sheetgen.base.material import Clay
from sheetgen.facts.clay import SAME_HOLE, STRAW
from sheetgen.facts.fit import LEAST_RIM_SHAPE
from sheetgen.facts.tools import CUTTER_REACH
from sheetgen.formulas.shapes import outline_of
from sheetgen.parts import field
from sheetgen.parts.clay_piece import CLAY_AS_CUT, as_good, bears
from sheetgen.parts.figure import aside, figure, flag, inline, need, size, tool
from sheetgen.parts.kind import Part
from sheetgen.parts.piece import Piece

_RIM = f"{LEAST_RIM_SHAPE:g} mm"
HAIR = "0.005 mm"  # that an arc of straight runs may lie inside the true one
_WANTED = "is wanted for shape: {shape}"


def outlined(piece: Piece, wide: float, tall: float) -> Shape:
    """The outline at a size, mm, its upper left corner at (0, 0); a scaled one keeps its proportions."""
    shape, path = piece[CutShape.shape], piece[CutShape.path]
    if shape == "outline" and path is not None:
        return path.scaled(wide / path.width).placed()
    if shape == "rectangle":
        return box(wide, tall)
    sides = piece[CutShape.sides]
    drawn = outline_of(shape, wide, tall, float(sides) if sides is not None else 0)
    return drawn or Oval((wide / 2, tall / 2), wide, tall)


def cut_size(piece: Piece) -> tuple[float, float]:
    """Width and height as they are cut and printed, mm."""
    if piece[CutShape.shape] == "disc":
        across = piece[CutShape.cutter_used if piece.has(CutShape.cutter_used) else CutShape.wet_disc]
        return across, across
    down = CutShape.wet_down if piece.has(CutShape.wet_down) else CutShape.wet_tall
    return piece[CutShape.wet_across], piece[down]


def flat(piece: Piece) -> Iterator[Flat]:
    """The outline and the hole in the middle of its width and height."""
    wide, tall = cut_size(piece)
    outline = outlined(piece, wide, tall)
    if not isinstance(outline, Oval):
        tall = outline.height
    holes = (disc(piece[CutShape.wet_hole], (wide / 2, tall / 2)),) if piece.has(CutShape.wet_hole) else ()
    path, traced = piece[CutShape.path], None
    if piece[CutShape.shape] == "outline" and path is not None:
        larger = wide / path.width
        traced = ((-min(x for x, _ in path.points) * larger, -min(y for _, y in path.points) * larger), larger)
    yield Flat(outline, holes, thickness=piece.usual(CutShape.thickness), traced=traced)


# fmt: off
class CutShape(Part):
    """Sides grow by 1 ÷ (1 − s); a flat piece shrinks alike both ways in its plane.

    A teardrop is a circle and its two tangents from the tip; a leaf is two equal arcs; a hole stands in the middle of
    width and height. Soft clay drags a little under a blade: a cutter leaves a truer edge than a hand does.
    """

    kind = "cut shape"

    clay = field.item(Clay, "the clay it is cut from", role="made of")
    shape = field.one_of("what is cut", "disc", "rectangle", "oval", "teardrop", "leaf", "polygon", "outline")
    across = field.maybe_length("finished width; of a polygon from corner to corner, the widest way; of an outline, to scale it", above=0)
    down = field.maybe_length("finished height of a rectangle, oval, teardrop or leaf", above=0)
    sides = field.maybe_count("how many sides a polygon has", at_least=3, at_most=60)
    path = field.outline("an outline of one's own: a closed SVG path, finished size in mm")
    thickness = field.length("thickness the clay is rolled to", above=0, role="rolled to")
    grain = field.one_of("the way the texture's grain runs, as the template lies", "none", "along", "across", role="grain")
    texture = bears("ribs")
    rolled_first = field.maybe_length("thickness it is rolled to before the texture", above=0, role="rolled first")
    hole = field.maybe_length("finished diameter of a hole in the middle", above=0, role="opens")
    span = field.maybe_length("how far it lies free between its supports in the fire", above=0, role="span")
    cutter = field.maybe_length("the round cutter to use for a disc, when the tool decides", above=0)
    cut_with = field.one_of("a disc with a round cutter where one owned is as good, by its template, or with the nearest cutter owned", "either", "template", "cutter")

    by_cutter = flag("shape is disc and cutter or shape is disc and cut_with is cutter")
    two_sided = flag("shape is rectangle or shape is oval or shape is teardrop or shape is leaf")
    scaled = flag("shape is not disc and not two_sided")
    drawn = aside("mm", "across or (path.width if path)",
                  needs=(need("across", _WANTED, at="across", help="across: 20 mm", when="shape is not outline and not by_cutter or shape is disc and not cutter"), need("sides", _WANTED, at="sides", help="sides: 6", when="shape is polygon"), need("path", _WANTED, at="path", help="path: M0 0 L20 0 L10 15 Z", when="shape is outline")))
    corners = inline("sides or 3")  # never 3 unasked: `drawn` wants the sides of a polygon
    wanted = aside("mm", "cutter or usual(wet(drawn, clay.shrinkage))", at="across")
    tall = aside("", "(path.height ÷ path.width if path) if shape is outline else polygon_tall(corners)")
    share = aside("", "(path.area ÷ path.width² if path)")
    radius = aside("mm", "wet_across ÷ 2")
    to_middle = aside("mm", "wet_down − wet_across ÷ 2")

    disc_wanted = aside("mm", "wet(drawn, clay.shrinkage)")
    near = aside("mm", "nearest(usual(disc_wanted), drawer.round_cutter, 1) if drawer.round_cutter")
    stamped = flag(f"shape is disc and not by_cutter and cut_with is either and drawer.round_cutter and {as_good('near', 'disc_wanted')}")
    wet_disc = figure("Disc, cut wet", "mm", "near if stamped else wet(drawn, clay.shrinkage)", "tenth", when="shape is disc and not by_cutter",
                      about=f"Diameter to cut: the round cutter owned, where the clay's own shrinkage differs by more, and no more than {CUTTER_REACH:g} mm.")
    cutter_used = figure("Round cutter", "mm", "cutter or nearest(wanted, drawer.round_cutter)", when="by_cutter", at="across",
                         about="The cutter that the disc is cut with.")
    fired_disc = figure("Disc, fired", "mm", "fired(cutter_used, clay.shrinkage)", when="by_cutter", about="What the cutter's disc comes out at.")
    wet_across = figure("Width, cut wet", "mm", "wet(drawn, clay.shrinkage)", "tenth", when="shape is not disc", about="Width to cut.")
    wet_down = figure("Height, cut wet", "mm", "(wet(down, clay.shrinkage) if down)", "tenth", when="two_sided", about="Height to cut.",
                      needs=(need("down", _WANTED, at="down", help="down: 12 mm", when="two_sided"), need("wet_down > wet_across", "is too little: a {shape} is higher than wide, and this is {drawn} wide", at="down", help="more than {drawn}, or less across", when="shape is teardrop or shape is leaf")))
    wet_tall = figure("Height, cut wet", "mm", "wet_across × tall", "tenth", when="scaled", about="Height of the outline as it is cut.")
    wet_hole = figure("Hole, cut wet", "mm", "wet(hole, clay.shrinkage)", "tenth", when="hole", about="Diameter of the hole to cut.", role="drilled with")

    area = inline("disc_area(cutter_used if by_cutter else wet_disc) if shape is disc else (wet_across × wet_down if shape is rectangle else oval_area(wet_across, wet_down) if shape is oval else teardrop_area(radius, to_middle) if shape is teardrop else leaf_area(wet_across, wet_down)) if two_sided else polygon_area(corner_circle(wet_across, corners), corners) if shape is polygon else share × wet_across²")
    room = aside("mm",
                 f"fired_disc if by_cutter else (path.room × drawn ÷ path.width + {HAIR} if path) if shape is outline else polygon_room(corner_circle(drawn, corners), corners) if shape is polygon else (teardrop_room(drawn ÷ 2, down − drawn ÷ 2) if down) if shape is teardrop else min(drawn, down or drawn)", role="covers")

    clay_mass = figure("Clay, each", "g", "area × thickness × clay.density ÷ 1000 mm³/cm³", "mass up", role="clay mass",
                       about="The piece as it is cut, the hole not taken out.")
    fired_mass = figure("Fired weight, each", "g",
                        "(area − (disc_area(wet_hole) if hole)) × thickness × clay.density ÷ 1000 mm³/cm³ × clay.metal_share",
                        about="Metal left, the hole taken out.", role="metal mass")

    sizes = (
        size("disc", "cutter_used", finished="across", fires="fired_disc", tool="round cutter", when="by_cutter"),
        size("disc", "wet_disc", finished="across", fires="fired(wet_disc, clay.shrinkage)", tool="round cutter", when="stamped"),
        size("disc", "wet_disc", finished="across", fires="fired(wet_disc, clay.shrinkage)", tool="template",
             when="shape is disc and not by_cutter and not stamped"),
        size("width", "wet_across", finished="drawn", fires="fired(wet_across, clay.shrinkage)", tool="template", when="shape is not disc"),
        size("height", "wet_down", finished="down", fires="fired(wet_down, clay.shrinkage)", tool="template", when="two_sided"),
        size("height", "wet_tall", finished="drawn × tall", fires="fired(wet_tall, clay.shrinkage)", tool="template", when="scaled"),
        size("hole", "wet_hole", finished="hole", fires="fired(wet_hole, clay.shrinkage)", tool="drill", when=f"hole and wet_hole < {STRAW:g} mm"),
        size("hole", "wet_hole", finished="hole", fires="fired(wet_hole, clay.shrinkage)", tool="drill, cutter or straw",
             when=f"hole and wet_hole ≥ {STRAW:g} mm"),
    )
    takes = (CLAY_AS_CUT,)
    tools = (
        tool("round cutter", "cutter_used", when="by_cutter", given="cutter"),
        tool("round cutter", "near", when="stamped"),
        tool("drill", "wet_hole", when="hole", within=f"{SAME_HOLE:g} mm"),
    )
    needs = (
        *( need(wanted, "is given, and shape: {shape} has none", at=name, help="take it out", when=name) for name, wanted in (("down", "two_sided"), ("sides", "shape is polygon"), ("path", "shape is outline"), ("cutter", "shape is disc")) ),
        need("not cutter", "is given, and the cutter decides", at="across", help="take it out", when="across and shape is disc"),
        need(f"room > 2 × {_RIM}", "leaves no rim: the piece is not so wide round its middle", at="hole", help="no hole", when="hole"),
        need("hole < room", "leaves no rim", at="hole", most=f"room − 2 × {_RIM}", when=f"hole and room > 2 × {_RIM}"),
        need(f"hole ≤ room − 2 × {_RIM}", f"leaves less than {{{_RIM}}} of rim", at="hole", most=f"room − 2 × {_RIM}",
             when=f"hole and room > 2 × {_RIM} and hole < room", rule="least-rim"),
    )
    flat = flat
