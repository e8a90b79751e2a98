"""Stone row: seats along a straight edge, opened in wet clay for stones that are set after firing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from sheetgen.base.flat import Flat, Oval, box
from sheetgen.base.material import Clay, Stone
from sheetgen.base.pen import Extent
from sheetgen.facts.stones import LEAST_WEB
from sheetgen.parts import field, seats
from sheetgen.parts.clay_piece import CLAY_AS_CUT
from sheetgen.parts.figure import aside, figure, flag, inline, need, size, take, tool
from sheetgen.parts.kind import Part
from sheetgen.parts.piece import Piece
from sheetgen.parts.seats import FLOOR, WEB

_KEEPS = f"fired(drill + {WEB}, clay.shrinkage.usual) − stone.size.high"
_WIDE = f"drill + {2 * LEAST_WEB:g} mm"
AROUND = 4.0  # mm drawn round the seats of a row that is no strip of its own


def flat(piece: Piece) -> Iterator[Flat]:
    """The strip, or a guide to mark the seats by."""
    long = piece[StoneRow.wet_length]
    if piece.has(StoneRow.wet_width):
        yield Flat(box(long, piece[StoneRow.wet_width]), thickness=piece.usual(StoneRow.thickness))
    else:
        yield Flat(box(long, piece[StoneRow.drill] + AROUND), line="fold")


def drilled(piece: Piece, around: Extent) -> Iterator[Oval]:
    """The seats level across the middle of what reaches so far."""
    drill, pitch = piece[StoneRow.drill], piece.usual(StoneRow.wet_pitch) if piece.has(StoneRow.wet_pitch) else 0.0
    n, down = int(piece[StoneRow.stones]), (around.top + around.bottom) / 2
    first = (around.left + around.right - (n - 1) * pitch) / 2
    yield from (Oval((first + i * pitch, down), drill, drill) for i in range(n))


# fmt: off
class StoneRow(Part):
    """Counted for the largest stone of the size, so that every parcel fits; the hole for the largest shrinkage.

    The pitch is no size that is set: it comes out of the row's length, and is drawn where it is, so that no rounding
    adds up from seat to seat.
    """

    kind = "stone row"

    clay = field.item(Clay, "the clay the seats are made in", role="made of")
    along = field.length("finished length the row may take, edge to edge", above=0)
    stone = field.item(Stone, "the stone", role="holds")
    margin = field.length("clay kept at each end, finished", default="1.5 mm", at_least=0)
    gap = field.maybe_length(f"least gap between two stones, finished; what keeps {WEB} of wet clay between two seats if it is left out", at_least=0)
    clearance = field.length("room round the stone in its seat", default="0.1 mm", at_least=0)
    width = field.maybe_length("finished width of the strip the row stands on, if it is a strip of its own", above=0)
    thickness = field.length("thickness of that strip, rolled", default="1 mm", above=0, role="rolled to")
    depth = field.maybe_length("how deep the seats are opened, wet; through the strip if it is left out", above=0)
    floor = field.length("clay left under stones that go not through, finished", default=FLOOR, at_least=0)
    drilled_in = field.neighbour("the flat part in whose middle they are drilled", role="drilled in")

    apart = inline("gap or least_gap")
    has_gaps = flag("stones > 1")
    deep = flag("depth or drilled_in and stone.height")
    opened = aside("mm", "min(depth, thickness) if depth else thickness")

    least_gap = figure("Gap that keeps the clay between two seats", "mm", f"max(0 mm, {_KEEPS})", when="not gap",
                       about="Between two of the largest stones, finished.")
    stones = figure("Stones in the row", "", "row_count(along, margin, stone.size.high, apart)", "whole", about="How many fit.",
                    needs=(need("along ≥ 2 × margin + stone.size.high", "has no room for a stone of {stone.size.high} with these margins", at="along", least="2 × margin + stone.size.high", help="a smaller stone, or a smaller margin"),))
    even_gap = figure("Gap, evened out", "mm", "row_gap(along, margin, stone.size.high, stones)", when="has_gaps",
                      about="Gap between two of the largest stones, finished.")
    wet_pitch = figure("Pitch, wet", "mm", "wet(stone.size.high + even_gap, clay.shrinkage)", "out", when="has_gaps",
                       about="Centre to centre of two neighbours.")
    wet_span = figure("First seat to last, wet", "mm", "(stones − 1) × wet_pitch", "out", when="has_gaps",
                      about="Centre of the first seat to centre of the last; the row is centred on the clay.")
    seat = seats.seat
    drill = seats.drill
    loosest = seats.loosest
    web = figure("Clay between two seats, wet", "mm", "wet_pitch.usual − drill", when="has_gaps", about="What is left between two holes.")
    needed = seats.needed
    wet_length = figure("Strip length, cut wet", "mm", "wet(along, clay.shrinkage)", "bench", about="Length of the strip the row stands on.")
    wet_width = figure("Strip width, cut wet", "mm", "wet(width, clay.shrinkage)", "bench", when="width",
                       about="Width of the strip the row stands on.")
    clay_mass = figure("Clay, each", "g", "wet_length × wet_width × thickness × clay.density ÷ 1000 mm³/cm³", "mass up", when="width",
                       about="The strip as it is cut, seats not taken out.", role="clay mass")
    fired_mass = figure("Fired weight, each", "g",
                        "(wet_length × wet_width × thickness − stones × π ÷ 4 × drill² × opened) × clay.density ÷ 1000 mm³/cm³ × clay.metal_share",
                        when="width", about="Metal left, the seats taken out of the strip.", role="metal mass")

    sizes = (
        size("strip length", "wet_length", finished="along", fires="fired(wet_length, clay.shrinkage)", tool="ruler or grid", when="width"),
        size("strip width", "wet_width", finished="width", fires="fired(wet_width, clay.shrinkage)", tool="ruler or grid", when="width"),
        size("seats in the row, each", "drill", fires="fired(drill, clay.shrinkage)", tool="drill"),
        size("seat to seat", "wet_pitch", finished="even_gap + stone.size.high", fires="fired(wet_pitch.usual, clay.shrinkage)", tool="template",
             when="has_gaps"),
        size("first seat to last", "wet_span", finished="(stones − 1) × (even_gap + stone.size.high)", fires="fired(wet_span.usual, clay.shrinkage)",
             tool="template", when="has_gaps"),
    )
    takes = (
        take("stone", "count × stones", each="stones"),
        replace(CLAY_AS_CUT, when="width"),
    )
    tools = (tool("drill", "drill"),)
    needs = (
        need("stone.width.high ≥ stone.size.low", "is oval, and a row is drilled round", at="stone",
             help="a round stone, or a seat of its own for each", when="stone.width"),
        need("depth ≤ thickness", "goes {depth − thickness} through the strip, into what is under it", at="depth",
             help="{thickness} or less, or that much clay beneath", when="depth and width", doubt=True),
        need("depth ≥ thickness or thickness ≥ needed", "leaves {thickness − depth} of clay under the stones", at="depth",
             most="max(0 mm, thickness − wet(floor, clay.thickness_shrinkage.high))", help="or through the strip", when="depth and width",
             rule="least-floor"),
        need("thickness ≥ wet(stone.height.high, clay.thickness_shrinkage.high)", "lets the stones, {stone.height.high} high, through the strip",
             at="thickness", help="clay under the strip, or a depth", when="width and stone.height and not depth and not drilled_in", doubt=True),
        replace(seats.web("web", _KEEPS), when="has_gaps"),
        need(f"wet_width ≥ {_WIDE}", "leaves too little clay beside the seats", at="width", least=f"fired({_WIDE}, clay.shrinkage.low)", when="width",
             rule="least-web"),
    )
    flat = flat
    drilled = drilled
