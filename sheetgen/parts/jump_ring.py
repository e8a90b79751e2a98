"""Jump ring: wire wound close on a rod, round or oval, and cut into rings."""

from __future__ import annotations

from sheetgen.parts import field, wound_rings
from sheetgen.parts.figure import aside, figure, inline, need, size, tool
from sheetgen.parts.wire_piece import too_tight
from sheetgen.parts.wound_rings import WoundRings


# fmt: off
class JumpRing(WoundRings):
    """Wire round any convex rod is the rod's perimeter + π × wire, along its middle (Steiner's formula).

    The inside is that of the rod; sprung wire opens by `springback`, which is measured and not worked. The slope of a
    close coil adds a few hundredths of a millimetre to a ring, which is left out.
    """

    kind = "jump ring"

    shape = field.one_of("round, oval with straight sides, or oval as an ellipse", "round", "oval", "ellipse")
    inside = field.maybe_length("inside diameter, or an oval's inside length; of a round ring, or give the rod", above=0)
    inside_width = field.maybe_length("inside width of an oval", above=0)
    rod = field.maybe_length("the rod to wind a round coil on, when the tool decides", above=0)
    springback = wound_rings.springback
    kerf = wound_rings.kerf
    coil = wound_rings.coil
    tails = wound_rings.tails

    either = (("inside", "rod"),)

    rings = inline("count")
    rod_wanted = figure("Rod wanted", "mm", "rod_for(inside, springback)", when="shape is round and inside", about="The rod that would fit exactly.")
    rod_used = figure("Rod", "mm", "rod or nearest(rod_wanted, drawer.rod)", when="shape is round", at="inside", about="Rod to wind a round coil on.")
    inner = figure("Inside that comes out", "mm", "rod_used × (1 + springback) if shape is round else inside or 0 mm", role="ring inside",
                   about="Inside diameter off the rod; of an oval its inside length.",
                   needs=(need("inside", "{shape} wants its inside length and its inside width", at="shape", help="give inside and inside width", when="shape is not round"),))
    narrow = aside("mm", "inner if shape is round else inside_width or 0 mm",
                   needs=(need("inside_width", "{shape} wants its inside width too", at="shape", help="give inside width", when="shape is not round"),))
    inner_width = figure("Inside width", "mm", "narrow", when="shape is not round", about="Across an oval, from wall to wall.")
    one = figure("Wire for one ring", "mm",
                 "ring_wire(inner, wire.thickness) if shape is round else oval_wire(inner, narrow, wire.thickness) if shape is oval else ellipse_wire(inner, narrow, wire.thickness)",
                 "out", about="Along the middle of the wire.",
                 needs=(need("narrow ≤ inner", "is more than the inside length", at="inside width", most="inner"),))
    outside = figure("Outside", "mm", "ring_outside(inner, wire.thickness)", about="Outside diameter, or outside length of an oval.")
    closed = figure("Inside when closed", "mm", "closed_inside(inner, kerf)", when="shape is round and kerf",
                    about="A sawn ring closed tight loses the cut.")
    aspect = figure("Inside, times the wire", "", "aspect(narrow, wire.thickness)", about="Inside width over wire thickness: what weavers of rings go by.")
    per_coil = wound_rings.per_coil
    coils = wound_rings.coils
    coil_length = figure("Coil length", "mm", "coil_for(count, wire.thickness)", "millimetre up", when="not coil",
                         about="All the rings in one close coil.")
    wire_length = wound_rings.wire_length
    coil_wire = aside("mm", "per_coil × one + tails if coil else 0 mm")
    whole_coils = aside("", "down(wire.spool ÷ coil_wire) if coil and wire.spool else 0")
    per_spool = figure("Rings from one spool", "",
                       "whole_coils × per_coil + min(per_coil, max(0, down((wire.spool − whole_coils × (per_coil × one + tails) − tails) ÷ one))) if coil else down((wire.spool − tails) ÷ one)",
                       "whole", when="wire.spool and wire.spool > tails",
                       about="How many one pack gives: in one coil, or in coils as long as the rod takes, each with its ends.")
    mass = figure("Weight, each", "g", "wire_grams(wire.thickness, one − kerf, wire.density)", about="One ring as cut.", role="metal mass")

    sizes = (
        size("inside", "rod_used", finished="inside", fires="rod_used × (1 + springback) − kerf ÷ π", tool="rod", when="shape is round"),
        size("wire for one ring", "one", tool="ruler", when="shape is not round"),
        size("inside, long", "inner", tool="oval rod, or calliper", when="shape is not round"),
        size("inside, wide", "inner_width", tool="oval rod, or calliper", when="shape is not round"),
    )
    tools = (tool("rod", "rod_used", when="shape is round", given="rod"),)
    needs = (
        *WoundRings.needs,
        need("not inside_width", "is that of an oval, and the ring is round", at="inside width", help="write shape: oval, or take it out",
             when="shape is round"),
        need("not rod", "makes no oval", at="rod", help="write shape: round, or take it out and give both inside sizes", when="shape is not round"),
        too_tight("inside", "narrow", when="not rod and not inside_width"),
        too_tight("inside width", "narrow", when="inside_width"),
        too_tight("rod", "narrow", when="rod and not inside_width"),
    )
