"""Metal disc: its circle with its middle, and the disc face on."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import views
from sheetgen.draw.drawn import Drawn, fitting, thick
from sheetgen.parts.metal_disc import MetalDisc
from sheetgen.parts.piece import Piece


def _template(pen: Pen, piece: Piece) -> None:
    disc = piece[MetalDisc.disc]
    pen.cross((disc / 2, disc / 2))
    pen.across(-4, 0, disc, f"Ø {disc.words}", to=0)


def _note(piece: Piece) -> str:
    """Sheet and hole."""
    hole = piece[MetalDisc.hole]
    return f"{thick(piece, piece[MetalDisc.sheet])}{f'; hole Ø {hole.told}' if hole else ''}"


def _label(piece: Piece) -> str:
    return fitting(thick(piece, piece[MetalDisc.sheet]), piece[MetalDisc.sheet].name)


def _view(pen: Pen, piece: Piece) -> float:
    across = piece.usual(MetalDisc.width_out if piece.has(MetalDisc.width_out) else MetalDisc.across)
    views.washer(pen, across, piece.usual(MetalDisc.hole) if piece[MetalDisc.hole] else 0)
    return across


DRAWN = Drawn(MetalDisc.kind, template=_template, note=_note, label=_label, view=_view)
