"""S-hook: the wire's middle and edges to lay the hook on; the wire round its two rods; as it hangs."""

from __future__ import annotations

import math

from sheetgen.base.pen import Pen
from sheetgen.draw import sketches
from sheetgen.draw.drawn import Drawn, bend, wire_label
from sheetgen.parts.piece import Piece
from sheetgen.parts.s_hook import SHook, bent


def _template(pen: Pen, piece: Piece) -> None:
    wire, (line, _, below) = piece[SHook.wire].thickness, bent(piece)
    for edge in sketches.band(line, wire):
        pen.line(edge)
    low = below[1] + piece[SHook.lower_used] / 2 + wire
    pen.upright(-wire / 2 - 5, -wire / 2, low, piece[SHook.outside].words, to=-wire / 2)


def _note(piece: Piece) -> str:
    rods = f"rods Ø {piece[SHook.upper_used].words} and Ø {piece[SHook.lower_used].told}"
    return f"lay the bent hook on it; {piece[SHook.wire].name}, cut {piece[SHook.cut].told}; {rods}"


def _label(piece: Piece) -> str:
    return wire_label(piece[SHook.wire].name, piece[SHook.cut].told)


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    upper, lower, long, cut = (piece[f] for f in (SHook.upper_used, SHook.lower_used, SHook.outside, SHook.cut))
    d, (line, above, below) = piece[SHook.wire].thickness, bent(piece)

    for rod, (x, y) in ((upper, above), (lower, below)):
        pen.circle((x * k, y * k), rod * k, "thin")
        pen.cross((x * k, y * k))
    sketches.wire(pen, [(x * k, y * k) for x, y in line], d * k)
    pen.upright(-d * k / 2 - 5, -d * k / 2, (below[1] + lower / 2 + d) * k, long.words, to=-d * k / 2)
    return (
        f"Wire of {cut.told} bent round rods {upper.words} and {lower.told} the opposite way, {long.told} long over all"
    )


def _view(pen: Pen, piece: Piece) -> float:
    """The middle of the lower bend hangs under that of the upper one."""
    d, (line, (ax, ay), (bx, by)) = piece[SHook.wire].thickness, bent(piece)
    apart, top = math.hypot(bx - ax, by - ay), piece[SHook.upper_used] / 2 + d
    c, s = (by - ay) / apart, (bx - ax) / apart
    hung = [((x - ax) * c - (y - ay) * s, top + (x - ax) * s + (y - ay) * c) for x, y in line]
    sketches.wire(pen, hung, d)
    return top + apart + piece[SHook.lower_used] / 2


DRAWN = Drawn(SHook.kind, template=_template, note=_note, label=_label, deed=bend, diagram=_diagram, view=_view)
