"""Seat: where it is drilled in the middle of its part, and the stone face on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.draw import views
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.seat import Seat, drilled

if TYPE_CHECKING:
    from sheetgen.base.pen import Extent, Pen
    from sheetgen.parts.piece import Piece


def _mark(pen: Pen, piece: Piece, around: Extent) -> str:
    for hole in drilled(piece, around):
        pen.oval(hole.centre, hole.width, hole.height, "thin")
        pen.cross(hole.centre)
    return f"Ø {piece[Seat.drill].told}" if piece.has(Seat.drill) else piece[Seat.seat].told


def _view(pen: Pen, piece: Piece) -> float:
    long = piece[Seat.stone].size.usual
    width = piece[Seat.stone].width
    views.stone(pen, (0, long / 2), width.usual if width else long, long)
    return long


DRAWN = Drawn(Seat.kind, mark=_mark, view=_view)
