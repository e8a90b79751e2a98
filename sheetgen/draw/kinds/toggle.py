"""Toggle clasp: the ring hanging, and the bar across it as it closes."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import sketches, views
from sheetgen.draw.bits import Bit
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


def _row(piece: Piece) -> list[Bit]:
    """The ring as it is pulled, and the bar that lies across it: what hangs on the bar comes out behind the ring."""
    ring, d, eye = piece[Toggle.wire].thickness, piece.usual(Toggle.staff), piece.usual(Toggle.eye_used)
    inside, half = piece.usual(Toggle.rod_used), piece.usual(Toggle.bar_made) / 2

    def bar(pen: Pen) -> None:
        pen.cover([[(-half, 0), (half, 0), (half, d), (-half, d)]])
        pen.box((-half, 0), 2 * half, d)

    return [
        Bit(lambda pen: views.loop(pen, 0, inside, ring), inside - d, ring, ring, hangs_on=False),
        Bit(bar, d, layer=1),
        Bit(lambda pen: views.loop(pen, 0, eye, d), eye, d, d, layer=-1),
    ]


DRAWN = Drawn(Toggle.kind, view=_view, row=_row)
