"""Flat spiral: the middle of its wire at true size, measured through the outer end; the spiral face on."""

from __future__ import annotations

import math

from sheetgen.base.pen import Moved, Pen
from sheetgen.draw import sketches, views
from sheetgen.draw.drawn import Drawn, bend, wire_label
from sheetgen.parts.flat_spiral import FlatSpiral, middle
from sheetgen.parts.piece import Piece

LOOP = 3.0  # wires: the inside of the loop at its end, which its figures do not say


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
    """Hanging by a loop at the end of its tail, which stands over its middle; by its outer end where it has none."""
    d, tail = piece[FlatSpiral.wire].thickness, piece.usual(FlatSpiral.tail)
    points = middle(piece)
    stem = tail - math.pi * (LOOP + 1) * d
    if stem < d:
        return views.placed(pen, points, d)
    curl = [(y, -x) for x, y in points]  # its outer end on top
    top = min(y for _, y in curl)
    loop = views.loop(pen, 0, LOOP * d, d)
    sketches.wire(Moved(pen, (-curl[-1][0], loop + stem - top)), [*curl, (curl[-1][0], top - stem)], d)
    return loop + stem + max(y for _, y in curl) - top + d / 2


DRAWN = Drawn(FlatSpiral.kind, template=_template, note=_note, label=_label, deed=bend, view=_view)
