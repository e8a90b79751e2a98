"""Seat: where it is drilled in the middle of its part, and the stone face on."""

from __future__ import annotations

from sheetgen.base.pen import Extent, Pen
from sheetgen.draw import views
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.piece import Piece
from sheetgen.parts.seat import Seat, drilled


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
