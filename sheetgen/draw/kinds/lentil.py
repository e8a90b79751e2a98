"""Hollow lentil: its disc, a half on its ball in section, the finished lentil face on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sheetgen.draw import sketches
from sheetgen.draw.drawn import Drawn, clay_note
from sheetgen.parts.lentil import Lentil

if TYPE_CHECKING:
    from sheetgen.base.pen import Pen
    from sheetgen.parts.piece import Piece


def _template(pen: Pen, piece: Piece) -> None:
    wide = piece[Lentil.wet_disc]
    pen.across(-4, 0, wide, f"2 × Ø {wide.words}", to=0)
    pen.cross((wide / 2, wide / 2))


def _note(piece: Piece) -> str:
    vent = f"; vent Ø {piece[Lentil.drill].told} in one of the two" if piece.has(Lentil.drill) else ""
    return f"{clay_note(piece)}{vent}"


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    """A half on its ball, in section, wet."""
    ball, disc, high = piece[Lentil.ball], piece[Lentil.wet_disc], piece[Lentil.wet_high]
    words = ("", f"{high.words} sanded", f"ball {ball.words}")
    sketches.dome(pen, ball, piece.usual(Lentil.thickness), disc, words, k, over=True)
    return f"A disc over a ball {ball.told} across, wet; sanded flat on its rim each half is {high.told} high"


def _view(pen: Pen, piece: Piece) -> float:
    across = piece.usual(Lentil.across)
    pen.circle((0.0, across / 2), across)
    return across


DRAWN = Drawn(Lentil.kind, template=_template, note=_note, diagram=_diagram, view=_view)
