"""Cut shape: its sizes and the middle of its hole, the finished piece face on."""

from __future__ import annotations

from sheetgen.base.flat import Flat, Oval, disc
from sheetgen.base.pen import Moved, Pen
from sheetgen.draw import sketches
from sheetgen.draw.drawn import Drawn, clay_note
from sheetgen.parts.piece import Piece
from sheetgen.parts.shape import CutShape, outlined


def _template(pen: Pen, piece: Piece) -> None:
    [flat] = piece.flat
    if piece[CutShape.shape] == "disc":
        across = piece[CutShape.cutter_used if piece.has(CutShape.cutter_used) else CutShape.wet_disc]
        pen.across(-4, 0, across, f"Ø {across.words}", to=0)
    else:
        across = piece[CutShape.wet_across]
        down = piece[CutShape.wet_down if piece.has(CutShape.wet_down) else CutShape.wet_tall]
        pen.across(-4, 0, across, across.words, to=0)
        pen.upright(-4, 0, flat.extent.height, down.words, to=0)
    for hole in flat.holes:
        if isinstance(hole, Oval):
            pen.cross(hole.centre)


def _note(piece: Piece) -> str:
    """Thickness, clay and hole."""
    hole = f"; hole Ø {piece[CutShape.wet_hole].told}" if piece.has(CutShape.wet_hole) else ""
    return clay_note(piece) + hole


def _view(pen: Pen, piece: Piece) -> float:
    """The finished piece face on."""
    wide = piece.usual(CutShape.fired_disc if piece.has(CutShape.fired_disc) else CutShape.drawn)
    down, hole = piece[CutShape.down], piece[CutShape.hole]
    outline = outlined(piece, wide, float(down) if down is not None else wide)
    tall = outline.height
    holes = (disc(hole, (wide / 2, tall / 2)),) if hole is not None else ()
    Flat(outline, holes).draw(Moved(pen, (-wide / 2, 0)))
    return tall


def _side(pen: Pen, piece: Piece) -> float:
    """Its edge, fired."""
    wide = piece.usual(CutShape.fired_disc if piece.has(CutShape.fired_disc) else CutShape.drawn)
    clay = piece[CutShape.clay]
    thick = piece.usual(CutShape.thickness) * (1 - clay.thickness_shrinkage.usual)
    pen.box((-wide / 2, 0), wide, thick)
    return thick


def _above(pen: Pen, piece: Piece) -> float:
    """A disc seen a little from above."""
    wide = piece.usual(CutShape.fired_disc if piece.has(CutShape.fired_disc) else CutShape.drawn)
    thick = piece.usual(CutShape.thickness) * (1 - piece[CutShape.clay].thickness_shrinkage.usual)
    sketches.cylinder(pen, wide, thick)
    return thick


DRAWN = Drawn(CutShape.kind, template=_template, note=_note, view=_view, side=_side, above=_above)
