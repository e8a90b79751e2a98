"""Slit strips: narrow strips cut lengthwise from a wider ribbon."""

from __future__ import annotations

from sheetgen.base.material import Fibre
from sheetgen.parts import field
from sheetgen.parts.figure import aside, figure, need, size, take
from sheetgen.parts.kind import Part
from sheetgen.parts.strand import spool


# fmt: off
class SlitStrips(Part):
    """As many strips side by side as the ribbon is wide, each length of ribbon giving that many.

    Woven ribbon frays when it is slit, and leather stretches: what that costs in width is given, and not worked.
    """

    kind = "slit strips"
    hazards = ("blade",)

    fibre = field.item(Fibre, "the ribbon, by its width in stock", role="made of")
    width = field.length("width of each strip", above=0)
    length = field.length("length of each strip, as it is cut", above=0)
    strips = field.count("how many strips in one piece")
    edge = field.length("selvage cut off at each side of the ribbon", default="0 mm", at_least=0)
    kerf = field.length("width lost between two strips", default="0 mm", at_least=0)
    trim = field.length("length lost at the end of each length of ribbon", default="0 mm", at_least=0)

    usable = figure("Ribbon, without its edges", "mm", "(fibre.width or 0) − 2 × edge", about="Width to slit.",
                    needs=(need("fibre.width", "({fibre.name}) has no width in stock, so it is no ribbon", at="fibre", help="add its width to stock"), need("usable > 0 mm", "takes the whole ribbon", at="edge", help="less than {fibre.width ÷ 2}", when="fibre.width")))
    side_by_side = figure("Strips side by side", "", "down((usable + kerf) ÷ (width + kerf))", "whole", about="From one length of ribbon.",
                          needs=(need("side_by_side ≥ 1", "is more than what is left of the ribbon", at="width", most="usable"),))
    strips_all = figure("Strips for all", "", "count × strips", "whole", about="In all pieces.")
    lengths = figure("Lengths of ribbon", "", "up(strips_all ÷ side_by_side)", "whole", about="Each slit into strips side by side.")
    one_length = aside("mm", "length + trim")
    ribbon_length = figure("Ribbon for all", "mm", "lengths × (length + trim)", "length up", about="What to buy, before any allowance.")
    spare = figure("Strips to spare", "", "lengths × side_by_side − strips_all", "whole", about="More than are needed.")
    offcut = figure("Width left over", "mm", "usable − side_by_side × (width + kerf) + kerf", "out", about="Beside the strips, edges not counted.")

    takes = (take("fibre", "ribbon_length"),)
    sizes = (
        size("length, {lengths} lengths together", "ribbon_length", tool="ruler", when="lengths > 1"),
        size("length", "ribbon_length", tool="ruler", when="lengths ≤ 1"),
    )
    needs = (spool("fibre", "one_length", "length"),)
