"""Washer: its two circles with their diameters, and the finished ring face on."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import views
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.piece import Piece
from sheetgen.parts.washer import Washer, inner_cut, outer_cut


def _template(pen: Pen, piece: Piece) -> None:
    outside, opening = outer_cut(piece), inner_cut(piece)
    pen.cross((outside / 2, outside / 2))
    pen.across(-4, 0, outside, f"Ø {outside.words}", to=0)
    pen.across(outside + 5, (outside - opening) / 2, (outside + opening) / 2, f"Ø {opening.words}", to=outside)


def _view(pen: Pen, piece: Piece) -> float:
    """The washer face on; the next part's wire lies in its opening."""
    outside, opening = piece.usual(Washer.fired_outside), piece.usual(Washer.fired_opening)
    views.washer(pen, outside, opening)
    return (outside + opening) / 2


def _side(pen: Pen, piece: Piece) -> float:
    """Its edge, fired."""
    outside = piece.usual(Washer.fired_outside)
    thick = piece.usual(Washer.thickness) * (1 - piece[Washer.clay].thickness_shrinkage.usual)
    pen.box((-outside / 2, 0), outside, thick)
    return thick


DRAWN = Drawn(Washer.kind, template=_template, view=_view, side=_side)
