"""Ring blank: the strip with the line where its ends meet, and the closed ring along the finger."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import sketches, views
from sheetgen.draw.drawn import Drawn, fitting, thick
from sheetgen.parts.piece import Piece
from sheetgen.parts.ring_blank import RingBlank


def _template(pen: Pen, piece: Piece) -> None:
    wide = piece[RingBlank.strip] if piece.has(RingBlank.strip) else None
    sketches.strip(pen, piece[RingBlank.cut], piece[RingBlank.meets], wide, piece.usual(RingBlank.thick))


def _note(piece: Piece) -> str:
    metal = piece[RingBlank.sheet] or piece[RingBlank.wire]
    return thick(piece, metal) if metal else ""


def _label(piece: Piece) -> str:
    metal = piece[RingBlank.sheet] or piece[RingBlank.wire]
    return fitting(thick(piece, metal), metal.name) if metal else ""


def _view(pen: Pen, piece: Piece) -> float:
    outside = piece.usual(RingBlank.outside)
    views.washer(pen, outside, outside - 2 * piece.usual(RingBlank.thick))
    return outside


DRAWN = Drawn(RingBlank.kind, template=_template, note=_note, label=_label, view=_view)
