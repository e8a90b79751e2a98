"""Cast piece: a pattern of wax or printed resin, cast in metal; how much metal to melt, and what comes back of it."""

from __future__ import annotations

from sheetgen.base.material import Metal
from sheetgen.facts.casting import BUTTON_LEAST, BUTTON_MOST, WAX_LEAST, WAX_MOST
from sheetgen.parts import field
from sheetgen.parts.figure import figure, need, take
from sheetgen.parts.kind import Part


# fmt: off
class CastPiece(Part):
    """Metal fills the room of the pattern: its weight × the metal's density ÷ the pattern's (casting supplier, Wax weight).

    What a caster adds for the button is a maker's rule; the sprue is weighed with the pattern or given apart. Investment,
    burn-out and pouring are the caster's: this only weighs.
    """

    kind = "cast piece"
    hazards = ("torch", "melt")

    metal = field.item(Metal, "the metal it is cast in", role="made of")
    pattern = field.mass("weight of one finished pattern, without its sprue", above=0)
    pattern_density = field.density("of the pattern: carving wax, or the resin's data", default=f"{WAX_LEAST:g}-{WAX_MOST:g} g/cm³")
    sprue = field.mass("weight of sprue and tree for all the pieces, as patterns are weighed", default="0 g", at_least=0)
    button = field.ratio("metal added for the button, as a share of tree and pieces", default=f"{BUTTON_LEAST:g}-{BUTTON_MOST:g}")
    lost = field.ratio("of each piece, filed and polished away", default="5 %", at_most=0.5)

    times = figure("Metal for one gram of pattern", "", "metal.density ÷ pattern_density", about="How many times heavier the metal is.")
    cast = figure("Weight as cast, each", "g", "pattern × times", about="Off its sprue, before it is filed.")
    finished = figure("Finished weight, each", "g", "cast × (1 − lost)", about="Filed and polished.")
    tree = figure("Metal in pieces and sprue", "g", "(count × pattern + sprue) × times", about="What stands in the flask.")
    melted = figure("Metal to melt", "g", "tree × (1 + button)", "most", about="Enough for the heaviest case, button and all.")
    back = figure("Comes back: sprue and button", "g", "melted.high − count × cast", about="Of what is weighed out, to be cleaned and melted again.")

    takes = (take("metal", "melted", spent="count × cast"),)
    needs = (
        need("pattern_density.high < metal.density", "is no lighter than the metal", at="pattern density",
             help="the pattern's own density, not the metal's"),
    )
