"""Wrapped-loop link: the wire straight with its beads and the lengths to bend at, and the finished link."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import beaded, sketches, views
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.piece import Piece
from sheetgen.parts.wrapped_link import WrappedLink


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    """Both ends are alike, so one is marked."""
    beyond, long, beads = piece[WrappedLink.beyond], piece[WrappedLink.cut], piece[WrappedLink.stack]
    marks = beaded.marks(piece, beyond, piece.usual(WrappedLink.end), piece.usual(WrappedLink.neck))
    end = beyond + piece.usual(WrappedLink.stack)
    more = [
        (end, f"beads to {piece.length(end, 'millimetre').words}"),
        (float(long), f"both ends alike, cut {long.words}"),
    ]
    bead = piece[WrappedLink.bead].size.usual
    sketches.stops(pen, long, [*marks, *more], piece[WrappedLink.wire].thickness, k, bead)
    beaded.threaded(pen, piece, beyond, k)
    return (
        f"A wire of {long.told} with beads over {beads.told}; from each end, {long.unit}: "
        f"{', '.join(words for _, words in marks)}, then the beads"
    )


def _view(pen: Pen, piece: Piece) -> float:
    """Loop, wraps, beads, wraps, loop."""
    d, turns, loop = piece[WrappedLink.wire].thickness, int(piece[WrappedLink.wraps]), piece.usual(WrappedLink.loop)
    low = views.wraps(pen, views.loop(pen, 0, loop, d), turns, d)
    low = views.wraps(pen, views.beads(pen, low, beaded.run(piece)), turns, d)
    return views.loop(pen, low, loop, d) - d


DRAWN = Drawn(WrappedLink.kind, diagram=_diagram, view=_view)
