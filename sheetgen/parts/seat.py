"""Seat: one hole in wet clay for one stone that is set after firing, and how thick the clay must be under it."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Oval
from sheetgen.base.material import Clay, Stone
from sheetgen.base.pen import Extent
from sheetgen.facts.stones import LEAST_WEB
from sheetgen.parts import field, seats
from sheetgen.parts.figure import aside, figure, need, size, take, tool
from sheetgen.parts.kind import Part
from sheetgen.parts.piece import Piece
from sheetgen.parts.seats import WEB

_ROOM = f"opened + {2 * LEAST_WEB:g} mm"


def drilled(piece: Piece, around: Extent) -> Iterator[Oval]:
    """The seat in the middle of its host."""
    middle = (around.left + around.right) / 2, (around.top + around.bottom) / 2
    if piece.has(Seat.drill):
        yield Oval(middle, piece[Seat.drill], piece[Seat.drill])
    else:
        yield Oval(middle, piece[Seat.seat], piece[Seat.seat_width])


# fmt: off
class Seat(Part):
    """Opened for the largest stone at the largest shrinkage (worst case of the range); depth likewise.

    The stone hangs on its pointed back or lies on its flat one; how it sits in the hole is tried with the stone
    itself. Carats hold for a stone cut as a brilliant (gemmology course pages), with a thin girdle, and not for a
    cabochon.
    """

    kind = "seat"

    clay = field.item(Clay, "the clay the seat is made in", role="made in")
    stone = field.item(Stone, "the stone", role="holds")
    clearance = field.length("room round the stone in its seat", default="0.1 mm", at_least=0)
    proud = field.length("how far the stone's face stands above the clay, finished", default="0 mm", at_least=0)
    floor = field.length("clay left under the stone, finished", default="0.5 mm", at_least=0)
    thickness = field.length("thickness one layer of clay is rolled to", above=0, role="rolled to")
    width = field.maybe_length("finished width of the piece across the seat", above=0)
    drilled_in = field.neighbour("the flat part in whose middle it is drilled, whose template is to show it", role="drilled in")

    narrow = aside("mm", "stone.width.high if stone.width else stone.size.high")
    opened = aside("mm", "seat if stone.width else drill")

    seat = seats.seat
    seat_width = figure("Seat, width opened wet", "mm", "seat_wet(narrow, clearance, clay.shrinkage.high)", when="stone.width",
                        about="Width of an oval seat.")
    drill = figure("Drill", "mm", "atleast(seat, drawer.drill)", about="Smallest owned drill that is not under the seat.", at="stone",
                   when="not stone.width")
    loosest = figure("Loosest fit", "mm", "fired(opened, clay.shrinkage.low) − stone.size.low",
                     about="Room round the smallest stone at the least shrinkage.")
    depth = figure("Depth, wet", "mm", "wet(stone.height.high − proud, clay.thickness_shrinkage.high)", "bench up", when="stone.height",
                   about="Deep enough for the highest stone if the clay shrinks most.",
                   needs=(need("proud < stone.height.high", "leaves the stone on the clay and not in it", at="proud", help="less than {stone.height.high}", when="stone.height"),))
    stands = figure("Stone's face over the clay (− under it), fired", "mm", "stone.height − fired(depth, clay.thickness_shrinkage)",
                    when="stone.height", about="What that comes out at; below zero the face lies deeper than the clay.")
    needed = figure("Clay needed, wet", "mm", "depth + wet(floor, clay.thickness_shrinkage.high)", "most", when="stone.height",
                    about="Seat and floor together.", role="clay needed")
    layers = figure("Layers of clay", "", "up(needed ÷ thickness)", "whole up", when="stone.height",
                    about="How many layers of the rolled thickness that asks for.")
    fired_floor = figure("Floor under the stone, fired", "mm", "fired(layers × thickness − depth, clay.thickness_shrinkage)", when="stone.height",
                         about="What is left under the stone in that many layers.")
    carats = seats.carats

    dries = "layers × thickness if stone.height else thickness"
    sizes = (
        size("seat", "drill", fires="fired(drill, clay.shrinkage)", tool="drill", when="not stone.width"),
        size("seat, length", "seat", fires="fired(seat, clay.shrinkage)", tool="template or cutter", when="stone.width"),
        size("seat, width", "seat_width", fires="fired(seat_width, clay.shrinkage)", tool="template or cutter", when="stone.width"),
        size("depth of the seat", "depth", finished="stone.height − proud", fires="fired(depth, clay.thickness_shrinkage)", tool="calliper",
             when="stone.height"),
    )
    takes = (take("stone"),)
    tools = (tool("drill", "drill", when="not stone.width"),)
    needs = (
        seats.right_way,
        need("stone.height", "is wanted with its height, and stock does not say how high {stone.name} is", at="stone",
             help="give its height in stock"),
        need(f"wet(width, clay.shrinkage) ≥ {_ROOM}", f"leaves less than {{{WEB}}} of clay beside the seat", at="width",
             least=f"fired({_ROOM}, clay.shrinkage)", when="width", rule="least-web"),
    )
    drilled = drilled
