"""Bezel strip: a strip of thin sheet bent round a stone and closed edge to edge."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat, box
from sheetgen.base.material import Sheet, Stone
from sheetgen.facts.stones import HIGH_BEZEL
from sheetgen.parts import closed_strip, field, from_sheet
from sheetgen.parts.closed_strip import ClosedStrip
from sheetgen.parts.figure import figure, need, size, take
from sheetgen.parts.piece import Piece


def flat(piece: Piece) -> Iterator[Flat]:
    """The strip."""
    yield Flat(box(piece[BezelStrip.cut], piece[BezelStrip.strip]))


# fmt: off
class BezelStrip(ClosedStrip):
    """The stone's outline + π × thickness (Steiner's formula): exact for round stones and for ellipses.

    Worked for the largest stone of the size, with room round it. Stones that are no true ellipse, and how the strip is
    pressed over the stone, are not known here: try it round the stone before it is soldered.
    """

    kind = "bezel strip"

    sheet = field.item(Sheet, "the sheet, or bezel strip, by its thickness", role="made of")
    stone = field.item(Stone, "the stone: round, or oval when stock gives its width", role="holds")
    high = field.length("finished height of the strip", above=0)
    room = field.length("room round the stone, added to its size", default="0.1 mm", at_least=0)
    trim = field.length("length added for filing the ends to fit", default="1 mm", at_least=0)
    kerf = field.length("sheet lost at each cut; nothing for shears", default="0 mm", at_least=0)

    long = figure("Stone, long way, with its room", "mm", "stone.size.high + room", about="Largest of the size.")
    narrow = figure("Stone, narrow way, with its room", "mm", "stone.width.high + room", when="stone.width", about="Largest of the size.",
                    needs=(need("stone.width.high ≤ stone.size.high", "is wider than it is long in stock", at="stone", help="its size is the long way, {stone.width.high}", when="stone.width"),))
    meets = figure("Strip, ends meet", "mm", "bezel_oval(long, narrow, sheet.thickness) if stone.width else bezel_round(long, sheet.thickness)",
                   "tenth", about="Along the middle of the thickness, edge to edge.")
    cut = closed_strip.cut
    strip = figure("Strip height", "mm", "high", "tenth", about="Across the strip.")
    area = from_sheet.share("Share of a sheet for one", "sheet", "cut", "strip", gap="kerf", at="high")
    mass = figure("Weight, each", "g", "meets × strip × sheet.thickness × sheet.density ÷ 1000 mm³/cm³", about="The closed strip.", role="metal mass")

    sizes = (
        size("strip, with its trim", "cut", tool="ruler"),
        size("strip height", "strip", finished="high", tool="dividers"),
    )
    takes = (
        from_sheet.take_sheet("sheet", "area", "cut", "strip"),
        take("stone"),
    )
    needs = (
        need(f"high ≤ {HIGH_BEZEL / 3} × stone.height.low", "is more than two thirds of the stone's height ({stone.height.low}): it buckles as it is pressed over", at="high",
             most=f"{HIGH_BEZEL / 3} × stone.height.low", when="stone.height and high < stone.height.low", doubt=True, rule="high-bezel"),
        need("high < stone.height.low", "is as high as the stone ({stone.height.low})", at="high",
             help="less than {stone.height.low}, unless the stone stands on a step", when="stone.height", doubt=True),
        need("high > sheet.thickness", "is no more than the sheet is thick", at="high", help="more than {sheet.thickness}"),
    )
    flat = flat
