"""Box: a shallow box of clay, four walls standing on a base plate, with a lid or without."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat, box
from sheetgen.base.material import Clay
from sheetgen.facts.clay import DEEP_BOX, LEAST_INSIDE
from sheetgen.parts import field
from sheetgen.parts.clay_piece import CLAY_AS_CUT
from sheetgen.parts.figure import Need, aside, figure, flag, need, size, stand
from sheetgen.parts.kind import Part
from sheetgen.parts.piece import Piece

APART, BESIDE = 9.0, 14.0  # mm between the outlines of a template: one under the other, and the lip aside


def flat(piece: Piece) -> Iterator[Flat]:
    """Base and flat lid with the lip beside it, a wall of each length under them."""
    wide, tall, high = piece[Box.wet_across], piece[Box.wet_down], piece[Box.wet_wall]
    walls, plates = piece.usual(Box.thickness), piece.usual(Box.base_rolled)
    lid = piece[Box.lid] != "none"
    yield Flat(box(wide, tall), thickness=plates, times=2 if lid else 1, what="base and lid" if lid else "base")
    down = piece[Box.wall_down]
    for left, long, other in ((0.0, wide, down), (wide + BESIDE, down, wide)):
        what = "walls" if long == other else "long walls" if long > other else "short walls"
        yield Flat(box(long, high, (left, tall + APART)), thickness=walls, times=2, what=what)
    if piece.has(Box.lip_across):
        lip = box(piece[Box.lip_across], piece[Box.lip_down], (wide + BESIDE, 0.0))
        yield Flat(lip, thickness=plates, what="lip")


def _room(side: str) -> tuple[Need, ...]:
    """Two walls leave something between them."""
    says, outside = "leaves no room between two walls of {thickness}", "sizes_are is outside"
    enough = f"fired(2 × thickness + {LEAST_INSIDE:g} mm, clay.shrinkage.usual)"
    wide = f"wet({side}, clay.shrinkage)"
    return (
        need(f"{wide} > 2 × thickness", says, at=side, least=enough, help="or thinner walls", when=outside),
        need(
            f"{wide} ≥ 2 × thickness + {LEAST_INSIDE:g} mm",
            "leaves hardly any room between two walls of {thickness}",
            at=side,
            least=enough,
            help="or thinner walls",
            rule="least-inside",
            when=f"{outside} and {wide} > 2 × thickness",
        ),
    )


def _lip(side: str) -> Need:
    """The room on both sides of the lip does not take all of it."""
    most = f"fired(wet_{side} − 2 × thickness − 0.4 mm, clay.shrinkage.usual) ÷ 2"  # and less than a step of the ruler
    return need(f"lip_{side} > 0 mm", f"leaves the lid's lip no room {side}", at="clearance", most=most)


# fmt: off
class Box(Part):
    """Put together wet or dry, before firing, so walls and base are fitted to each other in wet sizes (plane geometry).

    A butted corner: the walls across run full length and those down stand between them. A mitred corner: all four run
    full length and their ends are cut at 45°. The base is rounded first and the rest worked from it, so that they meet.
    Walls lean, and a large flat base warps, if they dry unevenly.
    """

    kind = "box"
    dries = "max(thickness, base_rolled)"
    on_shelf = (
        stand("wet_across", "wet_down", "wet_wall + base_rolled"),
        stand("wet_across", "wet_down", "2 × base_rolled", when="lid is not none"),
    )

    clay = field.item(Clay, "the clay it is built from", role="made of")
    across = field.length("finished width", above=0)
    down = field.length("finished length the other way", above=0)
    sizes_are = field.one_of("of the outside, or of the inside", "outside", "inside")
    wall_height = field.length("finished height of the walls above the base, inside", above=0)
    thickness = field.length("thickness the walls are rolled to", above=0, role="rolled to")
    base_thickness = field.maybe_length("thickness base and lid are rolled to, if not that of the walls", above=0, role="rolled to")
    corners = field.one_of("how the walls meet", "butted", "mitred")
    lid = field.one_of("a flat plate on top, or one with a second plate under it that sits inside", "none", "flat", "with a lip")
    clearance = field.length("room on each side of the lid's lip, finished", default="0.3 mm", at_least=0)

    lipped = flag("lid is with_a_lip")
    base_rolled = aside("mm", "base_thickness or thickness")
    taken_off = aside("mm", "(2 × thickness if corners is butted)")
    cut_off = aside("g",
                    "((wall_strip − 2 × (wet_across + wall_down)) × wet_wall × thickness + (4 × thickness² × wet_wall if corners is mitred)) × clay.density ÷ 1000 mm³/cm³")
    fired_across = aside("mm", "fired(wet_across, clay.shrinkage)")
    fired_down = aside("mm", "fired(wet_down, clay.shrinkage)")

    wet_across = figure("Base, across, cut wet", "mm", "wet(across, clay.shrinkage) + (2 × thickness if sizes_are is inside)", "tenth",
                        about="Width of the base plate, and length of the two walls across, which run over the corners.", needs=_room("across"))
    wet_down = figure("Base, down, cut wet", "mm", "wet(down, clay.shrinkage) + (2 × thickness if sizes_are is inside)", "tenth",
                      about="Length of the base plate the other way.", needs=_room("down"))
    wet_wall = figure("Walls, height cut wet", "mm", "wet(wall_height, clay.shrinkage)", "tenth",
                      about="Width of the strip that the walls are cut from.")
    wall_down = figure("Two walls down, length cut wet", "mm", "wet_down − taken_off", "tenth",
                       about="Between the others where they butt; along their outside where they are mitred.")
    wall_strip = figure("Wall strip, all four", "mm", "2 × (wet_across + wall_down)", "bench up", about="Strip to roll for all the walls.")
    inside_across = figure("Inside across, fired", "mm", "fired(wet_across − 2 × thickness, clay.shrinkage)", about="Room between the walls.")
    inside_down = figure("Inside down, fired", "mm", "fired(wet_down − 2 × thickness, clay.shrinkage)",
                         about="Room between the walls, the other way.")
    fired_height = figure("Height over all without its lid, fired", "mm",
                          "fired(wet_wall, clay.shrinkage) + fired(base_rolled, clay.thickness_shrinkage)", about="Walls and base.")
    lip_across = figure("Lip of the lid, across, cut wet", "mm", "wet_across − 2 × thickness − wet(2 × clearance, clay.shrinkage)", "tenth",
                        about="Width of the plate under the lid.", when="lipped", needs=(_lip("across"),))
    lip_down = figure("Lip of the lid, down, cut wet", "mm", "wet_down − 2 × thickness − wet(2 × clearance, clay.shrinkage)", "tenth",
                      about="Length of the plate under the lid the other way.", when="lipped", needs=(_lip("down"),))
    clay_mass = figure("Clay, each", "g",
                       "(wall_strip × wet_wall × thickness + (wet_across × wet_down + (wet_across × wet_down if lid is not none) + (lip_across × lip_down if lipped)) × base_rolled) × clay.density ÷ 1000 mm³/cm³",
                       "mass up", about="Walls, base and lid as they are cut.", role="clay mass")
    fired_mass = figure("Fired weight, each", "g", "(clay_mass − cut_off) × clay.metal_share",
                        about="Metal left, what is cut off the strip and at mitres taken out.", role="metal mass")

    sizes = (
        *( size(label.format(way), f"wet_{way}", when=f"lid is {lid}", tool="template", finished=f"{way} if sizes_are is outside else fired_{way}", fires=f"fired_{way}") for way, labels in (("across", ("base and two walls, {}", "base, lid and two walls, {}")), ("down", ("base, {}", "base and lid, {}"))) for lid, label in zip(("none", "not none"), labels, strict=True) ),
        size("two walls down", "wall_down", tool="template"),
        size("height of the walls", "wet_wall", finished="wall_height", fires="fired(wet_wall, clay.shrinkage)", tool="ruler or grid"),
        *( size(f"lip of the lid, {way}", f"lip_{way}", finished=f"inside_{way} − 2 × clearance", fires=f"fired(lip_{way}, clay.shrinkage)", tool="template", when="lipped") for way in ("across", "down") ),
    )
    takes = (CLAY_AS_CUT,)
    needs = (
        need(f"wall_height ≤ {DEEP_BOX:g} × min(across, down)", "is more than half the narrow side: walls lean before dry", at="wall height",
             most=f"{DEEP_BOX:g} × min(across, down)", doubt=True),
    )
    flat = flat
