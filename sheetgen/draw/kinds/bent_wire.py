"""Bent wire: its middle at true size, the pieces of its form numbered along it, the bent wire."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import accumulate

from sheetgen.base.bend import Bend
from sheetgen.base.pen import Pen
from sheetgen.draw import forming, views
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.bent import legs, path
from sheetgen.parts.bent_wire import BentWire
from sheetgen.parts.piece import Piece

MANY = 8  # pieces: of more only how far along the wire each one ends
ARCS = ((85, 95, "quarter round"), (175, 185, "half round"), (300, 720, "loop"))
"""Arcs that have a name, by the degrees that they turn, from and to."""
START = 1.4  # mm across: the circle where the wire starts


def _pieces(piece: Piece) -> list[str]:
    """Each straight and arc in words."""
    return [_told(bend, piece.length(bend.size.usual, "fine").words) for bend in piece[BentWire.form]]


def _told(bend: Bend, size: str) -> str:
    if not bend.degrees:
        return f"straight {size}"
    named = next((words for least, most, words in ARCS if least <= bend.degrees <= most), "")
    if not named:
        named = f"bend {bend.degrees:g}° {'left' if bend.left else 'right'}"
    return f"{named}, {size} inside"


def _along(piece: Piece) -> Iterator[str]:
    """How far along the wire each of them ends."""
    thick = piece[BentWire.wire].thickness
    sizes = [(bend.size.usual, math.radians(bend.degrees)) for bend in piece[BentWire.form]]
    ends = accumulate(turn * (size + thick) / 2 if turn else size for size, turn in sizes)
    return (piece.length(end).words for end in ends)


def _template(pen: Pen, piece: Piece) -> None:
    outline = piece.flat[0].outline
    pen.circle(outline.points[0], START, "thin")


def _note(piece: Piece) -> str:
    pieces = _pieces(piece)
    told = f"; {', then '.join(pieces)}" if len(pieces) <= MANY else ""
    cut = f"{piece[BentWire.wire].name}, cut {piece[BentWire.cut].told}"
    return f"the line is the middle of the wire, and starts at the small circle{told}; {cut}"


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    """The bent wire with a number where each piece ends, and how far along the wire that is."""
    cut, along, pieces = piece[BentWire.cut], list(_along(piece)), _pieces(piece)
    few = len(pieces) <= MANY
    lines = [f"{i}: {one if few else f'to {end}'}" for i, (one, end) in enumerate(zip(pieces, along, strict=True), 1)]
    form, thick = piece[BentWire.form], piece[BentWire.wire].thickness
    run, joints = path(form, thick), [(0.0, 0.0), *(leg[-1] for leg in legs(form, thick))]
    forming.captioned(pen, lambda on: forming.bent(on, run, joints, thick, k), lines)
    told = "; ".join(lines)
    return f"The bent wire and its pieces, {cut.unit}, from the circle on: {told}; cut {cut.words}"


def _view(pen: Pen, piece: Piece) -> float:
    thick = piece[BentWire.wire].thickness
    return views.placed(pen, path(piece[BentWire.form], thick), thick)


DRAWN = Drawn(BentWire.kind, template=_template, note=_note, diagram=_diagram, view=_view)
