"""Hole: a starter hole in unfired clay that fires to an opening or lets a ring's wire through."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Around, Oval
from sheetgen.base.material import Clay, Wire
from sheetgen.base.pen import Extent
from sheetgen.base.spot import Spot
from sheetgen.facts.fit import CLOSE, LEAST_EDGE
from sheetgen.parts import field
from sheetgen.parts.figure import aside, figure, need, size, tool
from sheetgen.parts.kind import Part
from sheetgen.parts.piece import Piece

_TOO_SMALL = "may fire to {fired.low}, and the wire is {for_wire.thickness}"
_ENOUGH = "atleast(for_wire.thickness ÷ (1 − clay.shrinkage.high), drawer.drill, 100 mm)"


def drilled(piece: Piece, around: Extent) -> Iterator[Oval]:
    """The hole, its middle where it is placed, or so far from an edge; one at each of two edges."""
    drill = piece[Hole.drill_used]
    if (place := piece[Hole.place]) is not None:
        yield Oval(_placed(place, around, piece.usual(Hole.grows)), drill, drill)
        return
    deep = piece[Hole.wet_middle]
    x, y = (around.left + around.right) / 2, (around.top + around.bottom) / 2
    spots = {
        "top": (x, around.top + deep),
        "bottom": (x, around.bottom - deep),
        "left": (around.left + deep, y),
        "right": (around.right - deep, y),
    }
    for edge in piece[Hole.beside].split(" and "):
        yield Oval(spots[edge], drill, drill)


def _placed(place: Spot, around: Extent, grows: float) -> tuple[float, float]:
    """A finished spot on the wet template: from its upper left corner; where the drawing shows it, of a traced one."""
    if isinstance(around, Around) and around.traced:
        (x, y), larger = around.traced
        return x + place.x * larger, y + place.y * larger
    return around.left + place.x * grows, around.top + place.y * grows


# fmt: off
class Hole(Part):
    """A hole shrinks with the clay round it. For a wire it is sized at the largest shrinkage, so the wire passes.

    Give the opening, or the drill, or only the wire. Sized for wet clay: a hole drilled in dry clay comes out larger
    by what drying had taken already, which stock does not say. It may be opened with a bur after firing, never closed.
    """

    kind = "hole"

    clay = field.item(Clay, "the clay it is made in", role="made in")
    opening = field.maybe_length("finished diameter", above=0)
    drill = field.maybe_length("the drill to use, when the tool decides", above=0)
    for_wire = field.maybe_item(Wire, "the wire of the ring that must pass", role="lets through")
    clearance = field.length("room round that wire", default="0.2 mm", at_least=0)
    edge = field.length("finished metal between the hole and the nearest edge", default="1.5 mm", above=0, role="keeps clear")
    width = field.maybe_length("finished width of the piece across the hole", above=0)
    drilled_in = field.neighbour("the flat part it is drilled in, whose template is to show it", role="drilled in")
    beside = field.one_of("the edge of that part, as its template lies, from whose middle it is measured", "top", "bottom", "left", "right",
                          "left and right", "top and bottom")
    place = field.spot("or where its middle stands on that part, as 10 mm, 4 mm: right and down from the upper left corner of the finished piece; on an outline of one's own, where its drawing has 10, 4")
    vent_of = field.neighbour("the hollow part that it lets the air out of", role="vent of")
    starter = field.maybe_length("the smaller drill that it is begun with", above=0, role="begun with")
    thickness = field.maybe_length("thickness the clay is rolled to, for how far round the ring must reach", above=0, role="rolled to")

    wanted = aside("mm", "(usual(wet(opening, clay.shrinkage)) if opening)")
    rim_fired = aside("mm", "(fired(thickness.high, clay.thickness_shrinkage.low) if thickness)")
    grows = aside("", "1 ÷ (1 − clay.shrinkage)")

    drill_used = figure("Drill", "mm",
                        "drill or (nearest(wanted, drawer.drill) if opening else (atleast(wet(for_wire.thickness + clearance, clay.shrinkage.high), drawer.drill) if for_wire))",
                        about="The drill to make the hole with, before firing.", at="opening or for_wire", role="drilled with",
                        needs=(need("opening or drill or for_wire", "or drill is wanted, or the wire that must pass", at="opening", help="opening: 1.5 mm"),))
    fired = figure("Hole, fired", "mm", "fired(drill_used, clay.shrinkage)", about="What the hole comes out at.", role="opens")
    wet_middle = figure("Middle of the hole from the edge, wet", "mm", "wet(edge, clay.shrinkage) + drill_used ÷ 2", "tenth",
                        about="Where to mark it.", when="not place")
    room = figure("Room round the wire, at the least, fired", "mm", "fired(drill_used, clay.shrinkage.high) − for_wire.thickness", when="for_wire",
                  about="How much wider than its wire the hole is if the clay shrinks most.")
    least_ring = figure("Inside of the ring, at the least", "mm", "√(edge² + rim_fired²)", "bench up",
                        about="A smaller ring does not reach round the edge: the corner of the rim stands in its way.",
                        when="for_wire and thickness and not place", role="reaches round")

    sizes = (
        size("hole", "drill_used", finished="opening", fires="fired", tool="drill"),
        size("middle of the hole from the edge", "wet_middle", fires="fired(wet_middle, clay.shrinkage)", tool="calliper", when="not place"),
    )
    tools = (
        tool("drill", "drill_used", given="drill"),
        tool("drill", "starter", when="starter", given="starter"),
    )
    needs = (
        need("not opening or not drill", "is given beside the opening, and only one can decide", at="drill", help="take one of them out"),
        need("drilled_in", "is given, and not in which part", at="place", help="add drilled in: …", when="place"),
        need("starter < drill_used", "is no smaller than the drill that follows it ({drill_used})", at="starter", help="less, or take it out",
             when="starter"),
        need(f"room ≥ {CLOSE:g} mm", "may fire to {fired.low}, and that is so close round a wire of {for_wire.thickness} that it binds", at="clearance",
             help="0.2 mm or more", when="for_wire and not drill and not opening and room ≥ 0 mm", doubt=True, rule="close-fit"),
        need("room ≥ 0 mm", _TOO_SMALL, at="drill", least=_ENOUGH, when="for_wire and drill"),
        need("room ≥ 0 mm", _TOO_SMALL, at="opening", least=f"fired({_ENOUGH}, clay.shrinkage.usual)", when="for_wire and opening and not drill"),
        need(f"edge ≥ {LEAST_EDGE:g} mm", "leaves so little metal that a ring pulls out", at="edge", least=f"{LEAST_EDGE:g} mm",
             rule="least-edge"),
        need("width ≥ fired + 2 × edge", "does not hold the hole with that edge on both sides", at="width", least="fired + 2 × edge",
             help="or a smaller edge", when="width"),
    )
    drilled = drilled
