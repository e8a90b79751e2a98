"""Ring band: its strip with the line where the ends meet, the strip on its former, the finished ring."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import sketches
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.piece import Piece
from sheetgen.parts.ring_band import RingBand


def _template(pen: Pen, piece: Piece) -> None:
    sketches.strip(pen, piece[RingBand.strip_cut], piece[RingBand.strip_meets], piece[RingBand.wet_width])


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    return sketches.strip_on_former(pen, piece, piece[RingBand.former], piece.usual(RingBand.sheeted) / 2, k)


def _view(pen: Pen, piece: Piece) -> float:
    """The band along the finger: outside, inside."""
    outside = piece.usual(RingBand.fired_outside)
    pen.circle((0, outside / 2), outside)
    pen.circle((0, outside / 2), piece.usual(RingBand.fired_inside))
    return outside


DRAWN = Drawn(RingBand.kind, template=_template, diagram=_diagram, view=_view)
