"""Coil: wire wound on a rod and left as a coil, close or with gaps: a spring end, a bead, a sleeve."""

from __future__ import annotations

from sheetgen.parts import field, wound_rings
from sheetgen.parts.figure import aside, figure, need, size, tool
from sheetgen.parts.wire_piece import WirePiece, too_tight


# fmt: off
class Coil(WirePiece):
    """A helix on the mean diameter: each turn is √((π × (inside + wire))² + pitch²).

    The inside is that of the rod; sprung wire opens by `springback`, which is measured on a trial coil and not worked.
    How stiff the coil is as a spring is not known here.
    """

    kind = "wire coil"

    inside = field.maybe_length("inside diameter; or give the rod", above=0)
    rod = field.maybe_length("the rod to wind it on, when the tool decides", above=0)
    springback = wound_rings.springback
    turns = field.maybe_number("turns; or give the length", at_least=1)
    length = field.maybe_length("finished length, filled with whole turns; or give the turns", above=0)
    gap = field.length("gap between two turns; 0 for a close coil", default="0 mm", at_least=0)
    ends = field.length("straight wire left at both ends, together, which stays", default="0 mm", at_least=0)

    either = (("inside", "rod"), ("turns", "length"))

    wanted = aside("mm", "0 mm if rod else rod_for(inside, springback)")
    rod_used = figure("Rod", "mm", "rod or nearest(wanted, drawer.rod)", at="inside", about="Rod to wind on.")
    inner = figure("Inside that comes out", "mm", "rod_used × (1 + springback)", about="Inside diameter off the rod.")
    pitch = figure("Turn to turn", "mm", "wire.thickness + gap", about="Middle of one turn to the middle of the next.")
    wound = figure("Turns that come out", "", "turns or down((length − wire.thickness) ÷ pitch)",
                   about="As given, or as many whole ones as the length takes.",
                   needs=(need("wound ≥ 1", "is less than one turn", at="length", least="wire.thickness + pitch", help="or thinner wire", when="length"),))
    to_wind = figure("Turns to wind on the rod", "", "wound × (usual(inner) + wire.thickness) ÷ (rod_used + wire.thickness)", when="springback",
                     about="More than come out where the coil springs open: the same wire goes round a wider coil fewer times.")
    long = figure("Length that comes out", "mm", "coil_long(wire.thickness, pitch, wound)", "out", about="End to end, without straight ends.")
    outside = figure("Outside", "mm", "ring_outside(inner, wire.thickness)", about="Outside diameter.")
    one = figure("Wire in one coil", "mm", "coil_wire(inner, wire.thickness, pitch, wound) + ends", "out", about="Along the middle of the wire.")

    sizes = (
        size("inside", "rod_used", finished="inside", fires="rod_used × (1 + springback)", tool="rod"),
        size("length, by its turns", "to_wind", finished="length", fires="long", tool="calliper", counted="turns", when="springback"),
        size("length, by its turns", "wound", finished="length", fires="long", tool="calliper", counted="turns", when="not springback"),
        size("wire for one", "cut", tool="ruler"),
    )
    tools = (tool("rod", "rod_used", given="rod"),)
    needs = (
        *WirePiece.needs,
        too_tight("inside", "inner", when="not rod"),
        too_tight("rod", "inner", when="rod"),
    )
