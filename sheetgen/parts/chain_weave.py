"""Chain weave: closed round rings through each other, one in one or two in two, or a weave measured on a trial."""

from __future__ import annotations

from sheetgen.parts import field, wound_rings
from sheetgen.parts.figure import aside, figure, need, size, tool
from sheetgen.parts.wound_rings import WoundRings


# fmt: off
class ChainWeave(WoundRings):
    """Pulled taut, touching inner walls coincide: a weave gets longer by the same with every repeat.

    Two rings side by side are taken to lie flat. More of them lean, and so do other weaves: there a repeat is measured
    on a trial, and the first is taken to be as long as those after it, but for the wire at both ends.
    """

    kind = "chain weave"

    length = field.length("finished length over all, pulled taut", above=0)
    together = field.count("rings side by side: 1 is one in one, 2 is two in two", default="1", at_most=9)
    repeat_rings = field.maybe_count("rings in one repeat of another weave")
    grows = field.maybe_length("how much longer a trial gets by one repeat, pulled taut", above=0)
    through = field.maybe_count("the most wires that pass through one ring of another weave", at_most=18)
    inside = field.maybe_length("inside diameter of a closed ring; or give the rod", above=0)
    rod = field.maybe_length("the rod to wind on, when the tool decides", above=0)
    counted_over = field.length("length along it that its rings are counted over, such as 1 in", default="10 mm", above=0)
    springback = wound_rings.springback
    kerf = wound_rings.kerf
    coil = wound_rings.coil
    tails = wound_rings.tails

    either = (("inside", "rod"),)

    rod_wanted = figure("Rod wanted", "mm", "rod_for(inside + (kerf ÷ π if kerf), springback)", when="inside",
                        about="The rod that would fit exactly.")
    rod_used = figure("Rod", "mm", "rod or nearest(rod_wanted, drawer.rod)", at="inside", about="Rod to wind on.")
    inner = figure("Inside of a closed ring", "mm", "rod_used × (1 + springback) − (kerf ÷ π if kerf)", about="Off the rod, less what the saw takes.")
    aspect = figure("Inside, times the wire", "", "aspect(inner, wire.thickness)", about="Inside over wire: what weavers of rings go by.")
    passing = aside("", "through or 2 × together")
    least = figure("Inside, at the least", "mm", "bundle_ratio(passing) × wire.thickness", "most", at="through",
                   about="The smallest circle round the wires that pass through one ring, all at once.")
    pitch = figure("Longer by one repeat", "mm", "grows or (inner if together = 1 else linked_pitch(inner, wire.thickness, together))", "fine",
                   at="together", about="As it is measured; of the plain chains, as it is worked.",
                   needs=(need("inner ≥ least", "does not let {passing} wires through, which take {least}", at="inside", least="least", when="inside"), need("inner ≥ least", "does not let {passing} wires through, which take {least}", at="rod", least="rod_for(least + kerf ÷ π, springback)", when="rod"), need("grows or together ≤ 2", "is more than is worked here: three and more lean", at="together", help="give grows, measured on a trial"), need("grows", "is that of another weave, whose growth is measured", at="repeat rings", help="give grows, measured on a trial", when="repeat_rings"), need("through", "is that of another weave, whose rings may hold more wires", at="repeat rings", help="give through, the most wires in one ring", when="repeat_rings")))
    ends = aside("mm", "2 × wire.thickness + (inner − pitch if not repeat_rings)")
    repeats = figure("Repeats", "", "max(1, up((length − ends) ÷ pitch))", "whole", about="Whole ones, so that it comes out no shorter.")
    comes_out = figure("Length that comes out", "mm", "repeats × pitch + ends", "out", about="Over all, pulled taut.")
    each = figure("Rings in one piece", "", "repeats × (repeat_rings or together)", "whole", about="In all repeats.")
    over = figure("Length that its rings are counted over", "mm", "counted_over", about="Along the middle of a piece.")
    per_length = figure("Rings in that length", "", "(repeat_rings or together) × counted_over ÷ pitch", about="On the mean.")
    rings = figure("Rings for all", "", "count × each", "whole", about="For all pieces, none to spare.")
    one = figure("Wire for one ring", "mm", "ring_wire(inner, wire.thickness) + (kerf if kerf)", "out",
                 about="Along the middle of the wire, the cut included.")
    per_coil = wound_rings.per_coil
    coils = wound_rings.coils
    wire_length = wound_rings.wire_length
    mass = figure("Weight, each", "g", "each × wire_grams(wire.thickness, one − kerf, wire.density)", about="One piece, all rings.", role="metal mass")

    sizes = (
        size("inside", "rod_used", finished="inside", fires="inner", tool="rod"),
        size("length, by its repeats", "repeats", finished="length", fires="comes_out", tool="ruler", counted="repeats"),
    )
    tools = (tool("rod", "rod_used", given="rod"),)
