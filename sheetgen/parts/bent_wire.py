"""Bent wire: ear wires, hooks, pins and forms of one's own, given as straights and arcs one after another."""

from __future__ import annotations

from collections.abc import Iterator

from sheetgen.base.flat import Flat
from sheetgen.facts.tools import NEAR, NEAR_LEAST
from sheetgen.parts import bent, field
from sheetgen.parts.figure import figure, need, size, tool
from sheetgen.parts.piece import Piece
from sheetgen.parts.wire_piece import WirePiece

NEAREST = "nearest(form.size, drawer.rod, 999)"  # however far off it is


def flat(piece: Piece) -> Iterator[Flat]:
    """The middle of the wire at true size."""
    yield bent.line(bent.path(piece[BentWire.form], piece[BentWire.wire].thickness))


# fmt: off
class BentWire(WirePiece):
    """Straights as they are, arcs on the middle of the wire: π × (inside + wire) × degrees ÷ 360.

    All in one plane. A bend tighter than the wire is thick stretches it, wire springs back from its jaw, and hammering
    lengthens it: none of that is known here, so bend one for a trial.
    """

    kind = "bent wire"

    form = field.bends("straights and arcs from one end to the other, an arc by its inside diameter, degrees and side: straight 12 mm, arc 5 mm 180 left, straight 20 mm")

    one = figure("Wire in one piece", "mm", "sum(form: arc_length(form.size, form.degrees, wire.thickness) if form.degrees else form.size)", "out",
                 about="Along the middle of the wire.", at="form",
                 needs=(need("one > 0 mm", "wants at least one straight or arc that is more than nothing", at="form", help="straight 12 mm"),))

    sizes = (size("wire for one", "cut", tool="ruler"),)
    tools = (tool("rod", "form.size", each="form"),)
    needs = (
        *WirePiece.needs,
        need("form.size ≥ wire.thickness", "has a bend of {form.size}, tighter than the wire is thick: it thins there, and may crack", at="form",
             least="wire.thickness", when="form.degrees", each="form", doubt=True),
        need(f"({NEAREST} − form.size)² ≤ max({NEAR_LEAST:g} mm, {NEAR:g} × form.size)²", "has a bend of {form.size}, and no rod near it is in the drawer", at="form",
             help=f"the nearest is of {{{NEAREST}}}", when="form.degrees", each="form", doubt=True),
    )
    flat = flat
