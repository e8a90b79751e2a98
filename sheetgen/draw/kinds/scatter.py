"""Scatter: the plate with the line inside which the stones lie, and the plate with its stones, strewn evenly."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.base.spelling import counted
from sheetgen.draw import views
from sheetgen.draw.drawn import Drawn, clay_note
from sheetgen.parts.piece import Piece
from sheetgen.parts.scatter import Scatter


def _template(pen: Pen, piece: Piece) -> None:
    across = piece[Scatter.wet_across]
    down = piece[Scatter.wet_down] if piece.has(Scatter.wet_down) else across
    edge = piece.usual(Scatter.wet_margin)
    if piece[Scatter.shape] == "rectangle":
        pen.box((edge, edge), across - 2 * edge, down - 2 * edge, "thin")
    else:
        pen.oval((across / 2, down / 2), across - 2 * edge, down - 2 * edge, "thin")
    pen.across(-4, 0, across, across.words, to=0)
    if piece.has(Scatter.wet_down):
        pen.upright(-4, 0, down, down.words, to=0)


def _note(piece: Piece) -> str:
    seats, drill = piece[Scatter.stones].words, piece[Scatter.drill].told
    return f"{clay_note(piece)}; {counted(seats, 'seat')}, drill Ø {drill} inside the thin line"


def _view(pen: Pen, piece: Piece) -> float:
    """Strewn evenly: how they come to lie is chance."""
    wide, tall = piece.usual(Scatter.across), piece.usual(Scatter.tall)
    if piece[Scatter.shape] == "rectangle":
        pen.box((-wide / 2, 0), wide, tall)
    else:
        pen.oval((0, tall / 2), wide, tall)
    stone = piece[Scatter.stone].size.usual
    less = 2 * piece.usual(Scatter.margin) + stone
    for x, y in views.strewn(piece[Scatter.shape], int(piece[Scatter.stones])):
        views.stone(pen, (x * max(0.0, wide - less), tall / 2 + y * max(0.0, tall - less)), stone, stone)
    return tall


DRAWN = Drawn(Scatter.kind, template=_template, note=_note, view=_view)
