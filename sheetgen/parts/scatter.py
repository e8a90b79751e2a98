"""Scatter: stones strewn over a flat plate of clay, so many as cover a share of it, or so many as are wanted."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat, Oval, box
from sheetgen.base.material import Clay, Stone
from sheetgen.parts import field, seats
from sheetgen.parts.clay_piece import CLAY_AS_CUT
from sheetgen.parts.figure import aside, figure, flag, inline, need, size, take, tool
from sheetgen.parts.kind import Part
from sheetgen.parts.piece import Piece
from sheetgen.parts.seats import FLOOR, WEB

_KEEPS = f"fired(drill + {WEB}, clay.shrinkage.usual) − stone.size.high"
_LEAST = "less + stone.size.high"
_COVERED = "100 × share_covered(area, {}, stone.size.high)"


def flat(piece: Piece) -> Iterator[Flat]:
    """The plate."""
    across = piece[Scatter.wet_across]
    down = piece[Scatter.wet_down] if piece.has(Scatter.wet_down) else across
    thickness = piece.usual(Scatter.thickness)
    if piece[Scatter.shape] == "rectangle":
        yield Flat(box(across, down), thickness=thickness)
    else:
        yield Flat(Oval((across / 2, down / 2), across, down), thickness=thickness)


# fmt: off
class Scatter(Part):
    """At most so many, by area and edge (Groemer's theorem, 1960): a bound that no layout passes and few reach.

    Stones strewn by eye come to rest far below it. How they lie is not worked: lay them out once, dry, and count. The
    bound is for the area that their middles may take, counted for the largest stone.
    """

    kind = "scatter"

    clay = field.item(Clay, "the clay of the plate", role="made of")
    stone = field.item(Stone, "the stone, round", role="holds")
    shape = field.one_of("the plate", "disc", "rectangle", "oval")
    across = field.length("finished width of the plate", above=0)
    down = field.maybe_length("finished height of a rectangle or oval", above=0)
    share = field.ratio("how much of the plate inside its margin the stones cover", default="30 %")
    number = field.maybe_count("how many stones, instead of a share")
    gap = field.maybe_length(f"least gap between two stones, finished; what keeps {WEB} of wet clay between two seats if it is left out", at_least=0)
    margin = field.length("clay kept free along the edge, finished", default="1 mm", at_least=0)
    clearance = field.length("room round a stone in its seat", default="0.1 mm", at_least=0)
    thickness = field.length("thickness the plate is rolled to", above=0, role="rolled to")
    depth = field.maybe_length("how deep the seats are opened, wet; as the stone is high if it is left out", above=0)
    floor = field.length("clay left under the stones, finished", default=FLOOR, at_least=0)

    apart = inline("gap or least_gap")
    deep = flag("depth or stone.height")
    tall = aside("mm", "across if shape is disc else (down or across)")
    longest = aside("mm", "max(across, tall)")
    shortest = aside("mm", "min(across, tall)")
    wet_margin = aside("mm", "wet(margin, clay.shrinkage)")
    # An even line inside an oval is no oval: Steiner's formula, good while no bend is tighter than the margin.
    even = flag("shape is oval and margin × longest ≤ shortest² ÷ 2")
    less = aside("mm", "2 × margin")
    wide_in = aside("mm", "across − less")
    tall_in = aside("mm", "tall − less")
    # What the middles of the stones may take: half a stone further in.
    by = aside("mm", "margin + stone.size.high ÷ 2")
    even_by = flag("shape is oval and by × longest ≤ shortest² ÷ 2")
    wide_by = aside("mm", f"across − ({_LEAST})")
    tall_by = aside("mm", f"tall − ({_LEAST})")
    long_by = aside("mm", "max(wide_by, tall_by)")
    short_by = aside("mm", "min(wide_by, tall_by)")
    area_by = inline("oval_inside(longest, shortest, by) if even_by else wide_by × tall_by if shape is rectangle else π ÷ 4 × wide_by² if shape is disc else π ÷ 4 × wide_by × tall_by")
    edge_by = inline("oval_inside_edge(longest, shortest, by) if even_by else 2 × (wide_by + tall_by) if shape is rectangle else π × wide_by if shape is disc else ellipse_perimeter(long_by, short_by)")
    plate = inline("wet_across × wet_down if shape is rectangle else π ÷ 4 × wet_across² if shape is disc else π ÷ 4 × wet_across × wet_down")

    area = figure("Area inside the margin", "mm²",
                  "oval_inside(longest, shortest, margin) if even else wide_in × tall_in if shape is rectangle else π ÷ 4 × wide_in² if shape is disc else π ÷ 4 × wide_in × tall_in",
                  about="Finished area that stones may cover; of an oval too slim for Steiner's formula, the oval that much smaller each way.")
    least_gap = figure("Gap that keeps the clay between two seats", "mm", f"max(0 mm, {_KEEPS})", when="not gap",
                       about="Between two of the largest stones, finished.")
    most = figure("Stones, at most", "", "most_scattered(area_by, edge_by, stone.size.high + apart)", "whole",
                  about="No layout holds more with that gap and margin.",
                  needs=(need(f"across > {_LEAST}", "leaves no stone room inside the margin", at="across", help=f"more than {{{_LEAST}}}, or a smaller margin"), need(f"tall > {_LEAST}", "leaves no stone room inside the margin", at="down", help=f"more than {{{_LEAST}}}, or a smaller margin", when="down and shape is not disc")))
    stones = figure("Stones", "", "number or stones_for_share(area, share, stone.size.high)", "whole", about="How many are strewn.",
                    needs=(need("stones ≤ most", "is more than can lie there: {most} stones of {stone.size.high} is the bound", at="number", help="{most} or fewer, or a smaller gap", when="number"), need("stones ≤ most", "asks for {stones} stones of {stone.size.high}: {most} is the bound", at="share", help=f"{{down({_COVERED.format('most')})}} % or less, or a smaller gap", when="not number"), need("stones ≥ 1", "covers not one stone", at="share", help=f"{{up({_COVERED.format('1')})}} % or more", when="not number")))
    covered = figure("Share covered", "%", _COVERED.format("stones"), "tenth", about="By the largest stones, of the area inside the margin.")
    seat = seats.seat
    drill = seats.drill
    needed = seats.needed
    wet_spacing = figure("Seats apart, middle to middle, wet, at the least", "mm", "wet(stone.size.high + apart, clay.shrinkage)", "bench most",
                         about="Two seats stand no nearer.")
    wet_across = figure("Plate, across, cut wet", "mm", "wet(across, clay.shrinkage)", "tenth", about="Width to cut.")
    wet_down = figure("Plate, down, cut wet", "mm", "wet(tall, clay.shrinkage)", "tenth", when="shape is not disc", about="Height to cut.")
    clay_mass = figure("Clay under them, each", "g", "plate × thickness × clay.density ÷ 1000 mm³/cm³", "mass up",
                       about="The plate as it is cut, seats not taken out.", role="clay mass")

    sizes = (
        size("plate, across", "wet_across", finished="across", fires="fired(wet_across, clay.shrinkage)", tool="template"),
        size("plate, down", "wet_down", finished="tall", fires="fired(wet_down, clay.shrinkage)", tool="template", when="shape is not disc"),
        size("seats, each", "drill", fires="fired(drill, clay.shrinkage)", tool="drill"),
        size("seat to seat, at the least", "wet_spacing", finished="apart + stone.size.high", fires="fired(wet_spacing, clay.shrinkage)",
             tool="dividers"),
    )
    takes = (
        take("stone", "count × stones", each="stones"),
        CLAY_AS_CUT,
    )
    tools = (tool("drill", "drill"),)
    needs = (
        need("not down", "is for a rectangle or an oval, and this is a disc", at="down", help="take it out", when="shape is disc"),
        need("down", "is wanted for shape: {shape}", at="down", help="down: 12 mm", when="shape is not disc"),
        seats.round_only("a round stone"),
        seats.thick_enough,
        seats.web("wet_spacing − drill", _KEEPS),
    )
    flat = flat
