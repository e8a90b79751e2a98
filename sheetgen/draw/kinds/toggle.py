"""Toggle clasp: the ring hanging, and the bar across it as it closes."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import sketches, views
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.piece import Piece
from sheetgen.parts.toggle import Toggle


def _view(pen: Pen, piece: Piece) -> float:
    ring, d = piece[Toggle.wire].thickness, piece.usual(Toggle.staff)
    low = views.loop(pen, 0, piece.usual(Toggle.rod_used), ring)
    half = (piece.usual(Toggle.bar_made) - d) / 2
    pen.cover([[(-half, (low - d) / 2), (half, (low - d) / 2), (half, (low + d) / 2), (-half, (low + d) / 2)]])
    sketches.wire(pen, [(-half, low / 2), (half, low / 2)], d)
    return low - ring


DRAWN = Drawn(Toggle.kind, view=_view)
