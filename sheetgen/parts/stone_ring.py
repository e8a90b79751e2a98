"""Stone ring: seats round a circle, opened in wet clay for stones that are set after firing."""

from __future__ import annotations

import math
from collections.abc import Iterator

from sheetgen.base.flat import Flat, Oval, disc
from sheetgen.base.material import Clay, Stone
from sheetgen.base.pen import Extent
from sheetgen.facts.stones import LEAST_WEB
from sheetgen.parts import field, seats
from sheetgen.parts.figure import figure, flag, inline, need, size, take, tool
from sheetgen.parts.kind import Part
from sheetgen.parts.piece import Piece
from sheetgen.parts.seats import FLOOR, WEB

_KEEPS = f"(drill + {WEB}) × around ÷ wet_around − stone.size.high"
# The circle that is wide enough however it is rounded to be marked.
_CIRCLE = (
    f"up(max((stone.size.high + apart) ÷ sin(π ÷ number), "
    f"fired((drill + {WEB}) ÷ sin(π ÷ number) + 0.05 mm, clay.shrinkage.usual)), 0.1 mm)"
)
_EDGE = f"drill + {2 * LEAST_WEB:g} mm"
AROUND = 4.0  # mm drawn round the seats of a ring that stands on no disc


def flat(piece: Piece) -> Iterator[Flat]:
    """A guide to prick through: the edge of the disc that they stand on, which is cut elsewhere."""
    on_disc = piece.has(StoneRing.wet_across)
    wide = piece[StoneRing.wet_across] if on_disc else piece[StoneRing.wet_around] + piece[StoneRing.drill] + AROUND
    yield Flat(disc(wide), line="fold")


def drilled(piece: Piece, around: Extent) -> Iterator[Oval]:
    """The seats round the middle of what reaches so far, two of them level above, as they are drawn when drilled."""
    middle = (around.left + around.right) / 2, (around.top + around.bottom) / 2
    r, drill, n = piece[StoneRing.wet_around] / 2, piece[StoneRing.drill], int(piece[StoneRing.stones])
    for i in range(n):
        turn = 2 * math.pi * (i + 0.5) / n - math.pi / 2
        yield Oval((middle[0] + r * math.cos(turn), middle[1] + r * math.sin(turn)), drill, drill)


# fmt: off
class StoneRing(Part):
    """Counted by chords, straight from stone to stone: π ÷ asin((stone + gap) ÷ circle). The arc overfills.

    Counted for the largest stone of the size and opened for the largest shrinkage. Seats are marked by eye and drill,
    so no gap comes out truer than the marking.
    """

    kind = "stone ring"

    clay = field.item(Clay, "the clay the seats are made in", role="made in")
    stone = field.item(Stone, "the stone, round", role="holds")
    around = field.length("finished diameter of the circle through the middles of the stones", above=0)
    number = field.maybe_count("how many stones, when fewer than fit", at_least=2, at_most=500)
    gap = field.maybe_length(f"least gap between two stones, finished; what keeps {WEB} of wet clay between two seats if it is left out", at_least=0)
    clearance = field.length("room round the stone in its seat", default="0.1 mm", at_least=0)
    across = field.maybe_length("finished diameter of the disc they stand on", above=0)
    thickness = field.maybe_length("thickness of the clay they are drilled in, wet", above=0)
    depth = field.maybe_length("how deep the seats are opened, wet; as the stone is high if it is left out", above=0)
    floor = field.length("clay left under the stones, finished", default=FLOOR, at_least=0)
    drilled_in = field.neighbour("the flat part in whose middle they are drilled, whose template is to show them", role="drilled in")

    apart = inline("gap or least_gap")
    most = inline("ring_count(around, stone.size.high, apart)")
    deep = flag("depth or stone.height")

    least_gap = figure("Gap that keeps the clay between two seats", "mm", f"max(0 mm, {_KEEPS})", when="not gap",
                       about="Between two of the largest stones, finished.")
    stones = figure("Stones in the ring", "", "number or most", "whole", about="How many stand round the circle.",
                    needs=(need("around ≥ stone.size.high + apart", "has no room for two stones of {stone.size.high}", at="around", least="stone.size.high + apart"), need("number ≤ most", "is more than stones of {stone.size.high} with that gap find room round {around}", at="number", help=f"{{most}} or fewer, or a circle of {{{_CIRCLE}}} or more", when="number and around ≥ stone.size.high + apart")))
    even_gap = figure("Gap, evened out", "mm", "ring_gap(around, stone.size.high, stones)",
                      about="Clear gap between two of the largest stones, finished.")
    turn = figure("Turn from stone to stone, degrees", "", "360 ÷ stones", about="Angle between two neighbours, for marking with a protractor.")
    wet_around = figure("Circle through the middles, wet", "mm", "wet(around, clay.shrinkage)", "tenth", about="Circle to mark.")
    wet_pitch = figure("Middle to middle, wet", "mm", "wet_around × sin(π ÷ stones)", "out", about="From stone to stone, straight, for dividers.")
    seat = seats.seat
    drill = seats.drill
    loosest = seats.loosest
    web = figure("Clay between two seats, wet", "mm", "wet_pitch − drill", about="What is left between two holes.")
    needed = seats.needed
    wet_across = figure("Disc, cut wet", "mm", "wet(across, clay.shrinkage)", "tenth", when="across",
                        about="The disc they stand on, drawn round them; its clay belongs to the part that it is.")

    sizes = (
        size("circle through the middles", "wet_around", finished="around", fires="fired(wet_around, clay.shrinkage)", tool="template"),
        size("middle to middle", "wet_pitch", finished="even_gap + stone.size.high", fires="fired(wet_pitch, clay.shrinkage)",
             tool="template or dividers"),
        size("seats, each", "drill", fires="fired(drill, clay.shrinkage)", tool="drill"),
    )
    takes = (take("stone", "count × stones", each="stones"),)
    tools = (tool("drill", "drill"),)
    needs = (
        seats.round_only("a round stone, or a seat for each"),
        seats.web("web", _KEEPS),
        need(f"wet_across ≥ wet_around + {_EDGE}", "brings the seats to the edge of the disc", at="around",
             most=f"max(0 mm, across − fired({_EDGE}, clay.shrinkage))", when="across", rule="least-web"),
        seats.thick_enough,
    )
    flat = flat
    drilled = drilled
