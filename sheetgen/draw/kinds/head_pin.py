"""Head-pin drop: the wire straight, from the end that becomes the loop, and the finished drop."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import beaded, sketches, views
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.head_pin import HeadPin
from sheetgen.parts.piece import Piece


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    """With its beads and the lengths to bend at."""
    beyond, stack, own = piece[HeadPin.beyond], piece.usual(HeadPin.stack), piece.has(HeadPin.cut)
    end = beyond + stack
    long = piece[HeadPin.cut] if own else piece.length(end, "millimetre")
    last = f"cut {long.words}" if own else f"head at {long.words}"
    neck = piece.usual(HeadPin.neck) if piece.has(HeadPin.neck) else 0.0
    marks = beaded.marks(piece, beyond, piece.usual(HeadPin.end), neck)
    headed = own and piece.usual(HeadPin.head_wire)
    more = [(end, f"beads to {piece.length(end, 'millimetre').words}")] if headed else []
    reach = float(long) if own else end
    bead = piece[HeadPin.bead].size.usual
    sketches.stops(pen, reach, [*marks, *more, (reach, last)], piece[HeadPin.wire].thickness, k, bead)
    beaded.threaded(pen, piece, beyond, k)
    return (
        f"A wire with beads over {piece[HeadPin.stack].told}; from its end, {beyond.unit}: "
        f"{', '.join(words for _, words in marks)}, then the beads; {last}"
    )


def _view(pen: Pen, piece: Piece) -> float:
    """Loop, wraps, beads, head."""
    d, head = piece[HeadPin.wire].thickness, piece.usual(HeadPin.head)
    low = views.loop(pen, 0, piece.usual(HeadPin.loop), d)
    low = views.wraps(pen, low, int(piece.usual(HeadPin.turns)), d)
    low = views.beads(pen, low, beaded.run(piece))
    if head:
        pen.oval((0, low + head / 2), 2.5 * d, head)
    return low + head


DRAWN = Drawn(HeadPin.kind, diagram=_diagram, view=_view)
