"""Ear wire: a fish hook, worked from its loop, its front, the bend over the ear and its back."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.bend import Bend
from sheetgen.base.cases import Cases
from sheetgen.base.flat import Flat
from sheetgen.base.pen import Point
from sheetgen.facts.wires import EAR_WIRE_THICK, EAR_WIRE_THIN
from sheetgen.parts import bent, field
from sheetgen.parts.figure import aside, figure, need, size, tool
from sheetgen.parts.piece import Piece
from sheetgen.parts.wire_piece import WirePiece, too_tight


def path(piece: Piece) -> list[Point]:
    """The middle of the wire, mm: from (0, 0) once round its loop, up, over, and down at the back."""
    loop, front, bend, back = (
        Cases(piece.usual(one)) for one in (EarWire.loop, EarWire.front, EarWire.bend_used, EarWire.back)
    )
    return bent.path((Bend(loop, 360), Bend(front), Bend(bend, 180), Bend(back)), piece[EarWire.wire].thickness)


def flat(piece: Piece) -> Iterator[Flat]:
    """The middle of the wire at true size."""
    yield bent.line(path(piece))


# fmt: off
class EarWire(WirePiece):
    """A full turn, a straight, half a turn and a straight, along the middle of the wire.

    What an ear carries with ease, and whether its owner bears the metal, no figure knows.
    """

    kind = "ear wire"

    loop = field.length("inside of the loop: where it sits on the pliers' jaw", default="2 mm", above=0)
    front = field.length("straight from the loop up to the bend", default="8 mm", at_least=0)
    bend = field.length("inside diameter of the bend over the ear", default="10 mm", above=0)
    back = field.length("straight behind the ear", default="16 mm", at_least=0)

    loop_turn = aside("mm", "turned_loop(loop, wire.thickness)")
    bend_turn = aside("mm", "arc_length(bend_used, 180, wire.thickness)")

    bend_used = figure("Rod", "mm", "nearest(bend, drawer.rod)", about="The bend over the ear comes out at this inside.", at="bend")
    one = figure("Wire in one ear wire", "mm", "ear_wire(loop, front, bend_used, back, wire.thickness)", "out", about="Along the middle of the wire.")
    drop = figure("Hangs, top of the ear's hole to inside of the loop", "mm", "bend_used ÷ 2 + front + loop ÷ 2", "out",
                  about="How far below it what hangs in the loop begins.", role="adds")
    long = figure("Length over all", "mm", "bend_used ÷ 2 + wire.thickness + max(front + loop ÷ 2 + wire.thickness, back)", "out",
                  about="From the top of the bend to the lower of loop and back.")

    sizes = (
        size("wire for one", "cut", tool="ruler"),
        size("bend, inside", "bend_used", finished="bend", tool="rod"),
        size("length over all", "long", tool="ruler"),
    )
    tools = (tool("rod", "bend_used"),)
    needs = (
        *WirePiece.needs,
        too_tight("loop", "loop"),
        need(f"wire.thickness ≥ {EAR_WIRE_THIN:g} mm", "({wire.thickness}) is so thin that a hook of it opens", at="wire", least=f"{EAR_WIRE_THIN:g} mm",
             rule="ear-wire"),
        need(f"wire.thickness ≤ {EAR_WIRE_THICK:g} mm", "({wire.thickness}) is too thick for the usual piercing", at="wire", most=f"{EAR_WIRE_THICK:g} mm",
             rule="ear-wire"),
        need("back ≥ front", "is shorter than the front, and the hook slips out of the ear", at="back", least="front", doubt=True),
    )
    flat = flat
