"""Beads on a wire with a loop: where the wire is bent, and the beads on it while it is straight."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.base.interval import GRAIN
from sheetgen.parts.on_wire import OnWire

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.base.printed import Printed
    from sheetgen.draw.views import Bead
    from sheetgen.parts.piece import Piece

CAP = 0.7  # width of a cap in bead widths, as it is drawn


def marks(piece: Piece, beyond: Printed, end: float, neck: float) -> list[tuple[float, str]]:
    """Where to bend a wire that stands `beyond` out of its beads, from its end: mm, and what is there."""
    loop = piece.usual(OnWire.loop_turn)
    places = {"tail": beyond - end, "wraps": beyond - neck - loop, "loop": beyond - neck}
    named = {what: at for what, at in places.items() if at > GRAIN and (neck or what == "tail")}
    found = [(at, f"{what} to {piece.length(at, 'millimetre').words}") for what, at in named.items()]
    return [*found, (float(beyond), f"{'neck' if neck else 'loop'} to {beyond.words}")]


def run(piece: Piece) -> list[Bead]:
    """Beads and caps in their order."""
    bead, caps = piece[OnWire.bead], piece.usual(OnWire.caps)
    wide = bead.size.usual
    cap = [(caps / 2, wide * CAP)] if caps else []
    return [*cap, *[(bead.length.usual, wide)] * int(piece[OnWire.beads]), *cap]


def threaded(pen: Pen, piece: Piece, start: float, k: float) -> None:
    """The beads on a straight wire, lying from `start` on, mm."""
    for long, wide in run(piece):
        pen.oval(((start + long / 2) * k, 0), long * k, wide * k)
        start += long
