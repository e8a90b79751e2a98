"""Box: the sizes of base, walls and lip, how the walls meet and stand on their base, the box from above."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import forming
from sheetgen.draw.drawn import Drawn, clay_note
from sheetgen.parts.box import APART, BESIDE, Box
from sheetgen.parts.piece import Piece


def _template(pen: Pen, piece: Piece) -> None:
    wide, tall, high = (piece[f] for f in (Box.wet_across, Box.wet_down, Box.wet_wall))
    bare = piece[Box.lid] == "none"
    pen.across(-4, 0, wide, wide.words if bare else f"2 × {wide.words}", to=0)
    pen.upright(-4, 0, tall, tall.words, to=0)
    pen.text((wide / 2, tall / 2 + 1), "base" if bare else "base, lid", anchor="middle")
    y = tall + APART
    pen.upright(-4, y, y + high, high.words, to=0)
    for left, long in ((0.0, wide), (wide + BESIDE, piece[Box.wall_down])):
        pen.across(y - 3, left, left + long, f"2 × {long.words}", to=y)
    if piece.has(Box.lip_across):
        lip, deep, left = piece[Box.lip_across], piece[Box.lip_down], wide + BESIDE
        pen.across(-4, left, left + lip, f"lip {lip.words}", to=0)
        pen.upright(left - 4, 0, deep, deep.words, to=left)


def _note(piece: Piece) -> str:
    """Thickness, clay and corners."""
    ends = ", cut square; sanded to 45° when dry" if piece[Box.corners] == "mitred" else ""
    plates = "base" if piece[Box.lid] == "none" else "base and lid"
    thick = piece[Box.base_thickness]
    base = f"; {plates} {thick.told}" if thick is not None else ""
    return f"{clay_note(piece)}{base}; walls of each length ×2{ends}"


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    """From above how the walls meet; in section walls on their base, and the lid over them; wet sizes."""
    across, down, short, high = (piece[f] for f in (Box.wet_across, Box.wet_down, Box.wall_down, Box.wet_wall))
    plate = piece.usual(Box.base_rolled)
    lip = piece[Box.lip_across] if piece.has(Box.lip_across) else None
    mitred, lidded = piece[Box.corners] == "mitred", piece[Box.lid] != "none"
    walls = (piece.usual(Box.thickness), plate, mitred)
    forming.case(pen, forming.Case((across, down, short, high), *walls, lidded, lip), k)
    meet = "mitred" if mitred else f"butted, two of {short.told} between two of {across.told}"
    lid = "" if not lidded else f", and its lid with a lip of {lip.told}" if lip else ", and its flat lid"
    return f"A box, wet: walls {high.told} high on a base of {across.words} by {down.told}, {meet}{lid}"


def _view(pen: Pen, piece: Piece) -> float:
    """From above: the lid, or the walls round the inside."""
    wide, tall = piece.usual(Box.fired_across), piece.usual(Box.fired_down)
    pen.box((-wide / 2, 0), wide, tall)
    if piece[Box.lid] == "none":
        inside = (piece.usual(Box.inside_across), piece.usual(Box.inside_down))
        pen.box((-inside[0] / 2, (tall - inside[1]) / 2), *inside)
    return tall


def _side(pen: Pen, piece: Piece) -> float:
    """From the front, its lid on."""
    wide, high = piece.usual(Box.fired_across), piece.usual(Box.fired_height)
    plate = piece.usual(Box.base_rolled) * (1 - piece[Box.clay].thickness_shrinkage.usual)
    top = 0.0 if piece[Box.lid] == "none" else plate
    if top:
        pen.box((-wide / 2, 0), wide, plate)
    pen.box((-wide / 2, top), wide, high)
    pen.line([(-wide / 2, top + high - plate), (wide / 2, top + high - plate)], "thin")
    return top + high


DRAWN = Drawn(Box.kind, template=_template, note=_note, diagram=_diagram, view=_view, side=_side)
