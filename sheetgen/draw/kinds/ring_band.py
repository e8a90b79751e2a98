"""Ring band: its strip with the line where the ends meet, the strip on its former, the finished ring."""

from __future__ import annotations

from sheetgen.base.pen import Pen, arc
from sheetgen.draw import sketches
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.piece import Piece
from sheetgen.parts.ring_band import RingBand

LEAN = 0.5  # how narrow its round is, seen from the side


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


def _side(pen: Pen, piece: Piece) -> float:
    """A little from the side: how wide the band is, and its opening."""
    tall, wide = piece.usual(RingBand.fired_outside), piece.usual(RingBand.width)
    inner, lean = piece.usual(RingBand.fired_inside), tall * LEAN / 2
    far = [(x * lean - wide / 2, tall / 2 + y * tall / 2) for x, y in arc((0, 0), 1, 90, 270, 48)]
    near = [(x * lean + wide / 2, tall / 2 + y * tall / 2) for x, y in arc((0, 0), 1, 270, 450, 48)]
    pen.line([*far, *near], closed=True)
    pen.oval((wide / 2, tall / 2), tall * LEAN, tall)
    pen.oval((wide / 2, tall / 2), inner * LEAN, inner)
    return tall


DRAWN = Drawn(RingBand.kind, template=_template, diagram=_diagram, view=_view, side=_side, textured=("side",))
