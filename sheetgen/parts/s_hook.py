"""S-hook: two half turns the opposite way, a straight between them, and a tip past each."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat
from sheetgen.base.outline import Outline
from sheetgen.base.pen import Point, arc
from sheetgen.parts import field
from sheetgen.parts.figure import aside, figure, need, size, tool
from sheetgen.parts.piece import Piece
from sheetgen.parts.wire_piece import WirePiece, too_tight


def bent(piece: Piece) -> tuple[list[Point], Point, Point]:
    """The middle of the wire on its two rods, mm, and the middles of its bends."""
    wire, middle, tip = piece[SHook.wire].thickness, piece.usual(SHook.middle), piece.usual(SHook.tip)
    r, s = ((piece[rod] + wire) / 2 for rod in (SHook.upper_used, SHook.lower_used))
    above, below = (r, r), (2 * r + s, r + middle)
    line = [(0.0, r + tip), *arc(above, r, 180, 360), *arc(below, s, 180, 0), (2 * r + 2 * s, r + middle - tip)]
    return line, above, below


def flat(piece: Piece) -> Iterator[Flat]:
    """The middle of the wire."""
    yield Flat(Outline(tuple(bent(piece)[0])), line="centre", closed=False)


# fmt: off
class SHook(WirePiece):
    """Two half circles and straights, along the middle of the wire.

    It is the plain S, its mouths as wide as its bends. How far a tip is pressed in, how much the wire springs back and
    what hammering adds are not known here.
    """

    kind = "S-hook"

    upper = field.maybe_length("inside of the upper bend; or give the rod", above=0)
    lower = field.maybe_length("inside of the lower bend, if it differs", above=0)
    rod = field.maybe_length("the rod of the upper bend, when the tool decides", above=0)
    lower_rod = field.maybe_length("the rod of the lower bend, when the tool decides and it differs", above=0)
    length = field.length("finished length over all", above=0)
    tip = field.length("straight tip past each bend", default="3 mm", at_least=0)

    either = (("upper", "rod"),)

    upper_used = figure("Rod, upper bend", "mm", "rod or nearest(upper, drawer.rod)", at="upper", about="The upper bend comes out at this inside.")
    lower_used = figure("Rod, lower bend", "mm", "nearest(lower, drawer.rod) if lower else lower_rod or (rod or nearest(upper, drawer.rod))",
                        at="lower or upper", about="The lower bend comes out at this inside.")
    bends = aside("mm", "(upper_used + lower_used) ÷ 2 + 2 × wire.thickness")
    middle = figure("Straight between the bends", "mm", "length − (upper_used + lower_used) ÷ 2 − 2 × wire.thickness",
                    about="What is left of the length beside both bends.",
                    needs=(need("length ≥ bends", "is less than two bends on these rods ({bends})", at="length", least="bends", help="or smaller bends"),))
    one = figure("Wire in one hook", "mm", "middle + ring_wire(upper_used, wire.thickness) ÷ 2 + ring_wire(lower_used, wire.thickness) ÷ 2 + 2 × tip",
                 "out", about="Along the middle of the wire.")
    outside = figure("Length over all", "mm", "middle + (upper_used + lower_used) ÷ 2 + 2 × wire.thickness", "out", about="As bent, not hammered.")
    adds = figure("Inside, bend to bend", "mm", "length − 2 × wire.thickness", role="adds", about="What the hook adds to a chain pulled taut.")
    across = figure("Width over all", "mm", "upper_used + lower_used + 3 × wire.thickness", "out",
                    about="Both bends stand out, one to each side of the middle.")

    sizes = (
        size("wire for one", "cut", tool="ruler"),
        size("upper bend", "upper_used", finished="upper", tool="rod"),
        size("lower bend", "lower_used", finished="lower", tool="rod", when="lower or lower_rod"),
        size("lower bend", "lower_used", finished="upper", tool="rod", when="not lower and not lower_rod"),
    )
    tools = (
        tool("rod", "upper_used", given="rod"),
        tool("rod", "lower_used", given="lower_rod"),
    )
    needs = (
        *WirePiece.needs,
        need("not lower", "or lower rod is wanted, one of the two", at="lower", help="give one", when="lower_rod"),
        *(too_tight(name.replace("_", " "), name, when=name) for name in ("upper", "lower", "rod", "lower_rod")),
        need("tip ≤ middle + min(upper_used, lower_used) ÷ 2 + wire.thickness", "reaches past the other bend", at="tip",
             most="middle + min(upper_used, lower_used) ÷ 2 + wire.thickness"),
    )
    flat = flat
