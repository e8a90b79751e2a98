"""Stone ring: its circle with middles and drills, how it is marked, and the stones on their disc."""

from __future__ import annotations

from sheetgen.base.pen import Extent, Pen, arc
from sheetgen.draw import forming, views
from sheetgen.draw.drawn import Drawn, per_cent
from sheetgen.parts.piece import Piece
from sheetgen.parts.stone_ring import StoneRing, drilled


def _template(pen: Pen, piece: Piece) -> None:
    extent = piece.flat[0].extent
    wide = extent.width
    _marked(pen, piece, extent)
    if piece.has(StoneRing.wet_across):
        pen.across(wide + 5, 0, wide, f"Ø {piece[StoneRing.wet_across].words}", to=wide)


def _marked(pen: Pen, piece: Piece, around: Extent) -> None:
    """The circle and the seats on it, each with its middle."""
    middle = (around.left + around.right) / 2, (around.top + around.bottom) / 2
    pen.circle(middle, piece[StoneRing.wet_around], "centre")
    pen.cross(middle)
    for hole in drilled(piece, around):
        pen.circle(hole.centre, hole.width, "thin")
        pen.cross(hole.centre)


def _mark(pen: Pen, piece: Piece, around: Extent) -> str:
    _marked(pen, piece, around)
    return f"{piece[StoneRing.stones].words} × Ø {piece[StoneRing.drill].told}"


def _note(piece: Piece) -> str:
    clay, seats = piece[StoneRing.clay], piece[StoneRing.stones].words
    shrinks = f"{clay.name}, drawn for {piece.rounder.decimal(clay.shrinkage.usual * 100, 2)} % shrinkage"
    return f"a guide to prick through, not a cut; {seats} seats, drill Ø {piece[StoneRing.drill].told}; {shrinks}"


def _label(piece: Piece) -> str:
    """A seat drilled inside the ring is pricked with it, so that no number is told."""
    return f"prick each middle; shrinks {per_cent(piece, piece[StoneRing.clay])}"


def _mark_it(_piece: Piece) -> str:
    return "mark"


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    around, drill, pitch = piece[StoneRing.wet_around], piece[StoneRing.drill], piece[StoneRing.wet_pitch]
    n = int(piece[StoneRing.stones])
    wide = float(piece[StoneRing.wet_across]) if piece.has(StoneRing.wet_across) else 0.0
    forming.stone_ring(pen, (around, drill, pitch), n, wide, k)
    return f"{n} seats drilled {drill.told} on a circle of {around.told}, wet, {pitch.told} from middle to middle"


def _view(pen: Pen, piece: Piece) -> float:
    stone, around = piece[StoneRing.stone].size.usual, piece.usual(StoneRing.around)
    on_disc = piece[StoneRing.across] is not None
    wide = piece.usual(StoneRing.across) if on_disc else around + stone
    middle, n = (0.0, wide / 2), int(piece[StoneRing.stones])
    if on_disc:
        pen.circle(middle, wide)
    for centre in arc(middle, around / 2, -90, 270, n)[:n]:
        views.stone(pen, centre, stone, stone)
    return wide


DRAWN = Drawn(
    StoneRing.kind, template=_template, note=_note, label=_label, deed=_mark_it, diagram=_diagram, view=_view,
    mark=_mark, centred=True,
)  # fmt: skip
