"""Metal disc: a disc or washer of sheet, flat or to be domed."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat, disc
from sheetgen.base.material import Sheet
from sheetgen.facts.wires import DISC_STRETCHES
from sheetgen.parts import field
from sheetgen.parts.figure import aside, figure, inline, need, size, tool
from sheetgen.parts.from_sheet import comes_out, share_text, take_sheet
from sheetgen.parts.kind import Part
from sheetgen.parts.piece import Piece


def flat(piece: Piece) -> Iterator[Flat]:
    """The disc with its hole."""
    wide, hole = piece[MetalDisc.disc], piece[MetalDisc.hole]
    yield Flat(disc(wide), (disc(hole, (wide / 2, wide / 2)),) if hole else ())


# fmt: off
class MetalDisc(Part):
    """A domed disc keeps its area (Archimedes; Atkins, Practical Sheet and Plate Metal Work), on its middle layer.

    Hammered work stretches and thins, so that deep domes come out of smaller discs (Holtzapffel): a trial decides. A
    hole in a domed disc grows with the stretching, by how much is not known here.
    """

    kind = "metal disc"
    hazards = ("metal edge",)

    sheet = field.item(Sheet, "the sheet", role="made of")
    across = field.length("finished width, rim to rim, outside", above=0, role="covers")
    rise = field.maybe_length("finished rise of a domed disc, rim to crown, outside", above=0, role="domed")
    hole = field.maybe_length("diameter of a hole in the middle, as it is drilled in the flat disc", above=0, role="opens")
    cutting = field.one_of("sawn to any size, or punched with an owned disc cutter", "sawn", "punched")
    spacing = field.length("sheet left round each disc", default="1 mm", at_least=0)

    wanted = inline("middle_of_sheet(cap_blank(across, rise), radius, sheet.thickness) if rise else across")
    punch = inline("nearest(wanted, drawer.disc_cutter)")
    cut = aside("mm", "punch if cutting is punched else disc", at="across")  # a cutter cuts its own size, not a tenth
    edges = aside("mm", "2 × spacing")

    radius = figure("Radius of the outside", "mm", "cap_radius(across, rise)", when="rise", about="Radius of the outside, finished.",
                    needs=(need("rise ≤ across ÷ 2", "is past half a ball", at="rise", most="across ÷ 2", help="or {2 × rise} or more across", when="rise"),))
    disc = figure("Disc to cut", "mm", "punch if cutting is punched else wanted", "tenth", about="Diameter of the flat disc.", at="across")
    width_out = figure("Width that comes out", "mm", "across × cut ÷ wanted if rise else cut", when="cutting is punched",
                       about="Of the disc as punched, domed as deep in proportion.")
    area = figure("Share of a sheet for one", "mm²", share_text("sheet", "cut", "cut", "spacing", "edges"),
                  about="Of a sheet cut up in rows; where stock does not say how the sheet is sold, the square round it.",
                  needs=(comes_out("sheet", "cut", "cut", at="across", edges="edges"),))
    mass = figure("Weight, each", "g", "sheet_mass(π ÷ 4 × (cut² − (hole² if hole)), sheet.thickness, sheet.density)",
                  about="The disc, its hole taken out.", role="metal mass")

    sizes = (
        size("disc, for a dome {across} across", "disc", tool="template", when="rise and cutting is sawn"),
        size("disc, for a dome {across} across", "disc", tool="disc cutter", when="rise and cutting is punched"),
        size("disc", "disc", finished="across", tool="template", when="not rise and cutting is sawn"),
        size("disc", "disc", finished="across", tool="disc cutter", when="not rise and cutting is punched"),
    )
    takes = (take_sheet("sheet", "area", "cut", "cut", edges="edges"),)
    tools = (tool("disc cutter", "cut", when="cutting is punched"),)
    needs = (
        need("rise > sheet.thickness", "is no more than the sheet is thick", at="rise", help="more than {sheet.thickness}, or take it out",
             when="rise"),
        need("hole < cut", "leaves nothing of the disc", at="hole", most="max(0.1 mm, cut − 2 × sheet.thickness)", when="hole"),
        need("hole ≤ cut − 2 × sheet.thickness", "leaves less rim than the sheet is thick", at="hole", most="max(0.1 mm, cut − 2 × sheet.thickness)",
             when="hole and hole < cut", rule="least-rim"),
        need(f"rise ≤ {DISC_STRETCHES:g} × across", "grows as so deep a dome stretches", at="hole", help="drill it after doming",
             when="hole and rise and hole ≤ cut − 2 × sheet.thickness", doubt=True),
    )
    flat = flat
