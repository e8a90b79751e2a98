"""Bezel strip: the strip with the line where its ends meet, and the closed strip round its stone from above."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import sketches, views
from sheetgen.draw.drawn import Drawn, fitting, thick
from sheetgen.parts.bezel_strip import BezelStrip
from sheetgen.parts.piece import Piece


def _template(pen: Pen, piece: Piece) -> None:
    sketches.strip(pen, piece[BezelStrip.cut], piece[BezelStrip.meets], piece[BezelStrip.strip])


def _note(piece: Piece) -> str:
    return f"{thick(piece, piece[BezelStrip.sheet])}; {piece[BezelStrip.stone].name}"


def _label(piece: Piece) -> str:
    metal = thick(piece, piece[BezelStrip.sheet])
    return fitting(f"{metal}; {piece[BezelStrip.stone].name}", metal, piece[BezelStrip.sheet].name)


def _view(pen: Pen, piece: Piece) -> float:
    stone, t = piece[BezelStrip.stone], 2 * piece[BezelStrip.sheet].thickness
    long, wide = stone.size.high, (stone.width or stone.size).high
    pen.oval((0, (long + t) / 2), wide + t, long + t)
    views.stone(pen, (0, (long + t) / 2), wide, long)
    return long + t


DRAWN = Drawn(BezelStrip.kind, template=_template, note=_note, label=_label, view=_view)
