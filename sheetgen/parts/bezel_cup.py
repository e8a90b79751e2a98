"""Bezel cup: a wall of metal strip bent round a stone and soldered to a base plate."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat, box
from sheetgen.base.material import Sheet, Stone
from sheetgen.base.outline import Outline
from sheetgen.base.pen import Point
from sheetgen.facts.stones import HIGH_BEZEL
from sheetgen.formulas.shapes import oval_grown
from sheetgen.parts import field, from_sheet, seats
from sheetgen.parts.figure import aside, figure, inline, need, size, take
from sheetgen.parts.kind import Part
from sheetgen.parts.piece import Piece

APART = 9.0  # mm on the template between the strip and the base


def middle(piece: Piece) -> Point:
    """Where the middle of the base lies on the template."""
    across = piece[BezelCup.base_across]
    return across / 2, piece[BezelCup.wall] + APART + (piece[BezelCup.base_down] if _oval(piece) else across) / 2


def _oval(piece: Piece) -> bool:
    return piece.has(BezelCup.base_down)


def flat(piece: Piece) -> Iterator[Flat]:
    """The strip, and under it the base."""
    yield Flat(box(piece[BezelCup.strip_cut], piece[BezelCup.wall]), what="wall")
    x, y = middle(piece)
    long, by = piece[BezelCup.stone].size.high, piece.usual(BezelCup.grown)
    edge = oval_grown(long, piece.usual(BezelCup.narrow), by)
    yield Flat(Outline(tuple((x + dx, y + dy) for dx, dy in edge)), what="base")


# fmt: off
class BezelCup(Part):
    """Strip on its middle: the stone's outline + π × (room + strip), whatever its shape (Steiner's formula).

    Bending thins the outside of a strip and rolling stretches it: try the strip round the stone before it is soldered.
    How high the wall must stand hangs on where the stone's side begins to lean, which no measure of stock says; a
    third of the stone at least is a maker's rule. Carats hold for a brilliant cut, and not for a cabochon.
    """

    kind = "bezel cup"
    hazards = ("torch", "pickle", "metal edge")

    strip = field.item(Sheet, "the metal of the wall", role="made of")
    base = field.maybe_item(Sheet, "the metal of the base plate, if not that of the wall", role="made of")
    stone = field.item(Stone, "the stone, round or oval", role="holds")
    room = field.length("how much wider than the largest stone the cup is", default="0.1 mm", at_least=0)
    height = field.maybe_length("height of the wall; a pointed stone wants it; left out, by the stone's height", above=0)
    reach = field.ratio("how much of a flat-backed stone's height the wall covers", default="40 %", at_least=0.05)
    under = field.length("what lies under the stone in the cup", default="0 mm", at_least=0)
    trim = field.length("strip left over to file the seam true", default="0.5 mm", at_least=0)
    kerf = field.length("strip lost at each cut; nothing for shears", default="0 mm", at_least=0)
    spacing = field.length("sheet left round the base, to saw it out", default="1 mm", at_least=0)
    rim = field.length("base left outside the wall all round", default="0.5 mm", at_least=0)

    narrow = aside("mm", "stone.width.high if stone.width else stone.size.high", needs=(seats.right_way,))
    outline = inline("ellipse_perimeter(stone.size.high, narrow) if stone.width else π × stone.size.high")
    plate_thickness = aside("mm", "base.thickness if base else strip.thickness")
    plate_density = aside("g/cm³", "base.density if base else strip.density")
    blank_down = aside("mm", "base_down if stone.width else base_across")
    edges = aside("mm", "2 × spacing")
    grown = aside("mm", "(base_across − stone.size.high) ÷ 2")  # how far the base's edge lies outside the stone

    strip_meets = figure("Strip, ends meet", "mm", "outline + π × (room + strip.thickness)", "tenth", about="Along the middle of the strip.")
    strip_cut = figure("Strip, cut", "mm", "strip_meets + trim", "bench up", about="With what is filed away at the seam.")
    wall = figure("Wall, height above the base", "mm", "height or under + reach × (stone.height.high if stone.height)", "tenth",
                  about="Width of the strip.",
                  needs=(need("stone.height", "is wanted with its height, and stock does not say how high {stone.name} is", at="stone", help="give its height in stock, or height: 2.5 mm here", when="not height"),))
    base_across = figure("Base, across", "mm", "stone.size.high + room + 2 × (strip.thickness + rim)", "tenth",
                         about="The plate's length, the rim included.")
    base_down = figure("Base, the narrow way", "mm", "narrow + room + 2 × (strip.thickness + rim)", "tenth", when="stone.width",
                       about="The plate's width, the rim included.")
    wall_area = from_sheet.share("Share of a sheet for the wall", "strip", "strip_cut", "wall", gap="kerf", at="stone")
    base_area = figure("Metal of the base, cut to its edge", "mm²", "π ÷ 4 × stone.size.high × narrow + outline × grown + π × grown²",
                       about="The stone's outline grown evenly.")
    base_blank = figure("Share of a sheet for the base", "mm²", "of_base if base else of_strip",
                        about=from_sheet.ABOUT.format("the rectangle round it"),
                        needs=(from_sheet.comes_out("base", "base_across", "blank_down", at="stone", edges="edges", when="base"), from_sheet.comes_out("strip", "base_across", "blank_down", at="stone", edges="edges", when="not base")))
    of_base = inline(from_sheet.share_text("base", "base_across", "blank_down", "spacing", "edges"))
    of_strip = inline(from_sheet.share_text("strip", "base_across", "blank_down", "spacing", "edges"))
    mass = figure("Weight, each", "g",
                  "(strip_meets × wall × strip.thickness × strip.density + base_area × plate_thickness × plate_density) ÷ 1000 mm³/cm³",
                  about="Wall and base as they are soldered, without solder and stone.", role="metal mass")
    carats = seats.carats

    sizes = (
        size("strip length", "strip_cut", tool="calliper"),
        size("strip width", "wall", tool="calliper"),
        size("base, across", "base_across", tool="template"),
        size("base, the narrow way", "base_down", tool="template", when="stone.width"),
    )
    takes = (
        from_sheet.take_sheet("strip", "wall_area", "strip_cut", "wall"),
        from_sheet.take_sheet("base", "base_blank", "base_across", "blank_down", edges="edges", when="base"),
        from_sheet.take_sheet("strip", "base_blank", "base_across", "blank_down", edges="edges", when="not base"),
        take("stone"),
    )
    needs = (
        need("wall − under ≤ stone.height.high", "buries the stone: the wall is higher than it stands", at="height", most="under + stone.height.high",
             when="stone.height"),
        need(f"wall − under ≤ {HIGH_BEZEL / 3} × stone.height.low", "covers more than two thirds of the stone's height ({stone.height.low}): it buckles as it is pressed over",
             at="height", most=f"under + {HIGH_BEZEL / 3} × stone.height.low", when="stone.height and wall − under ≤ stone.height.high", doubt=True, rule="high-bezel"),
        need("wall > under", "ends under the stone", at="height", help="more than {under}"),
    )
    flat = flat
