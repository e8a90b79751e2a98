"""Flat spiral: the middle of its wire at true size, measured through the outer end; the spiral face on."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import views
from sheetgen.draw.drawn import Drawn, bend, wire_label
from sheetgen.parts.flat_spiral import FlatSpiral, middle
from sheetgen.parts.piece import Piece


def _template(pen: Pen, piece: Piece) -> None:
    points, half, wide = middle(piece), piece[FlatSpiral.wire].thickness / 2, piece[FlatSpiral.wide]
    right = piece.usual(FlatSpiral.end) + half - min(x for x, _ in points)
    low = max(y for _, y in points) + half
    pen.across(low + 5, right - wide, right, wide.words, to=low)


def _note(piece: Piece) -> str:
    return f"the line is the middle of the wire; {piece[FlatSpiral.wire].name}, cut {piece[FlatSpiral.cut].told}"


def _label(piece: Piece) -> str:
    return wire_label(piece[FlatSpiral.wire].name, piece[FlatSpiral.cut].told)


def _view(pen: Pen, piece: Piece) -> float:
    return views.placed(pen, middle(piece), piece[FlatSpiral.wire].thickness)


DRAWN = Drawn(FlatSpiral.kind, template=_template, note=_note, label=_label, deed=bend, view=_view)
