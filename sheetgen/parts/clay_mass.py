"""Clay by mass: pieces weighed and not measured, and what becomes of the clay rolled beyond them."""

from __future__ import annotations

from sheetgen.base.material import Clay
from sheetgen.facts.allowances import OFFCUT_LOSS_LEAST, OFFCUT_LOSS_MOST
from sheetgen.parts import field
from sheetgen.parts.clay_piece import CLAY_AS_CUT
from sheetgen.parts.figure import aside, figure, inline, need, size, stand
from sheetgen.parts.kind import Part


# fmt: off
class ClayByMass(Part):
    """A piece loses what is not metal in it, and nothing else: fired mass = wet mass × metal share.

    What is rolled beyond the pieces is gathered, less what dries and sticks (3 to 10 %, common practice), and goes
    back into the wrap. It says how large a slab is, and not whether a shape fits on it.
    """

    kind = "clay by mass"

    clay = field.item(Clay, "the clay", role="made of")
    mass = field.maybe_mass("wet clay in one piece; or give its finished weight", above=0)
    weight = field.maybe_mass("finished weight of one piece", above=0)
    thickness = field.maybe_length("thickness it is rolled to, if it is rolled", above=0, role="rolled to")
    rolling = field.maybe_ratio("clay rolled beyond the pieces, as a share of them; left out, the clay's own allowance")

    either = (("mass", "weight"),)

    share = inline("rolling or clay.allowance")
    ball = aside("mm", "ball_across(clay_mass, clay.density)")
    loss = aside("", f"{OFFCUT_LOSS_LEAST:g}-{OFFCUT_LOSS_MOST:g}")

    clay_mass = figure("Clay, each", "g", "mass or wet_mass(weight, clay.metal_share)", about="Wet clay in one piece.", role="clay mass")
    fired_mass = figure("Fired weight, each", "g", "fired_mass(clay_mass, clay.metal_share)", about="Metal left of one piece.", role="metal mass")
    all_pieces = figure("Clay in all the pieces", "g", "count × clay_mass", about="What stays in the pieces.")
    taken = figure("Clay to take, rolling allowance and all", "g", "all_pieces × (1 + share)", "mass up", about="What is taken out of the wrap.")
    offcuts = figure("Offcuts", "g", "taken − all_pieces", about="What is left on the mat.")
    back = figure("Back into the wrap", "g", "offcuts × (1 − loss)", about="What comes back of the offcuts.")
    used_up = figure("Used up, with what is lost", "g", "taken − back", "mass up", about="What the packet is lighter by.")
    from_packet = figure("Pieces from one packet, at most", "", "down(clay.pack ÷ clay_mass)", "whole", when="clay.pack",
                         about="Were nothing lost and every offcut rolled again.")
    area = figure("Slab, area for one piece", "mm²", "slab_area(clay_mass, thickness, clay.density)", when="thickness",
                  about="What one piece covers at that thickness.")
    side = figure("Side of a square slab of all the clay", "mm", "√(slab_area(taken, thickness, clay.density))", "bench", when="thickness",
                  about="How large the slab is, were it rolled square.")

    on_shelf = (
        stand("ball", "ball", "ball", when="not thickness"),
        stand("√(slab_area(clay_mass, thickness, clay.density))", "√(slab_area(clay_mass, thickness, clay.density))", "thickness", when="thickness"),
    )
    takes = (CLAY_AS_CUT,)
    """The pieces; the allowance of stock comes on top as for every other part."""
    sizes = (size("slab, were it square", "side", tool="slats", when="thickness"),)
    needs = tuple(( need("clay_mass ≤ clay.pack", "is more than one packet holds", at=name, most=most, help="or join several by kneading", when=f"clay.pack and {name}", doubt=True) for name, most in (("mass", "clay.pack"), ("weight", "fired_mass(clay.pack, clay.metal_share)")) ))
