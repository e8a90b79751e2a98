"""Bail: a strip of clay folded over a straw or rod, its two tails left to be joined to the piece."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat, box
from sheetgen.base.material import Clay
from sheetgen.parts import field
from sheetgen.parts.clay_piece import CLAY_AS_CUT
from sheetgen.parts.figure import aside, figure, need, size, stand, tool
from sheetgen.parts.kind import Part
from sheetgen.parts.piece import Piece

_TIGHT = "is less than the clay is thick, and so tight a fold cracks"


def flat(piece: Piece) -> Iterator[Flat]:
    """The strip, lying."""
    yield Flat(box(piece[Bail.strip], piece[Bail.wet_width]), thickness=piece.usual(Bail.thickness))


# fmt: off
class Bail(Part):
    """Worked on the middle of the clay: half a turn, π ÷ 2 × (inside + thickness), and two tails hanging straight.

    Where the tails are brought together `meeting` below the middle of the former, the strip leaves it along two
    tangents (an open belt, Wikipedia, Belt problem), and the tails count from there. Clay stretches a little over a
    thin former and sags before it is dry, so the blank is right to about half a millimetre.
    """

    kind = "bail"
    reshaped = True
    on_shelf = (stand("wet_width", "former_used + 2 × thickness", "max(wet_front, wet_back) + former_used + 2 × thickness"),)

    clay = field.item(Clay, "the clay it is cut from", role="made of")
    inside = field.maybe_length("finished inside across the loop; or give the former", above=0)
    former = field.maybe_length("the straw or rod to use, when the tool decides", above=0)
    width = field.length("finished width of the strip", above=0)
    front_tail = field.length("finished length of the front tail", above=0)
    back_tail = field.length("finished length of the back tail", above=0)
    meeting = field.maybe_length("how far under the former's middle the tails come together, finished", above=0)
    thickness = field.length("thickness the clay is rolled to", above=0, role="rolled to")

    either = (("inside", "former"),)

    wanted = aside("mm", "former or usual(wet(inside, clay.shrinkage))", at="inside")
    fired_thickness = aside("mm", "fired(thickness, clay.thickness_shrinkage)")

    former_used = figure("Former", "mm", "former or nearest(wanted, drawer.former)", about="The straw or rod to fold over.", at="inside")
    fired_inside = figure("Inside, fired", "mm", "fired(former_used, clay.shrinkage)", about="What the loop comes out at, across.")
    wet_front = figure("Front tail, wet", "mm", "wet(front_tail, clay.shrinkage)", "tenth", about="From the end of the strip to the first fold line.")
    wet_back = figure("Back tail, wet", "mm", "wet(back_tail, clay.shrinkage)", "tenth",
                      about="From the second fold line to the other end of the strip.")
    wet_meeting = figure("Tails come together under the former's middle, wet", "mm", "wet(meeting, clay.shrinkage)", "tenth",
                         about="Where to press the two tails together.", when="meeting")
    over_former = figure(
        "Over the former", "mm",
        "hung_over((former_used + thickness) ÷ 2, wet_meeting) if meeting else π × (former_used + thickness) ÷ 2", "out",
        about="The part of the strip between its two tails, along the middle of the clay.",
        needs=(
            # What is offered still clears the loop when it is rounded to be marked.
            need("wet_meeting > (former_used + thickness) ÷ 2", "brings the tails together inside the loop",
                 at="meeting", least="fired((former_used + thickness) ÷ 2 + 0.2 mm, clay.shrinkage.usual)",
                 when="meeting"),
        ),
    )
    strip = figure("Strip, cut wet", "mm", "wet_front + over_former + wet_back", "bench", about="Length of the strip: tail, fold, tail.")
    wet_width = figure("Width, cut wet", "mm", "wet(width, clay.shrinkage)", "bench", about="Width of the strip.")
    clay_mass = figure("Clay, each", "g", "strip × wet_width × thickness × clay.density ÷ 1000 mm³/cm³", "mass up", about="The strip as it is cut.",
                       role="clay mass")
    fired_mass = figure("Fired weight, each", "g", "clay_mass × clay.metal_share", about="Metal left.", role="metal mass")

    sizes = (
        size("strip length", "strip", tool="ruler or grid"),
        size("strip width", "wet_width", finished="width", fires="fired(wet_width, clay.shrinkage)", tool="ruler or grid"),
        size("inside of the loop", "former_used", finished="inside", fires="fired_inside", tool="straw or rod"),
    )
    takes = (CLAY_AS_CUT,)
    tools = (tool("former", "former_used", given="former"),)
    needs = (
        need("former_used ≥ thickness", _TIGHT, at="former", least="thickness", when="former", doubt=True),
        need("former_used ≥ thickness", _TIGHT, at="inside", least="fired(thickness, clay.shrinkage.low)", when="not former", doubt=True),
    )
    flat = flat
