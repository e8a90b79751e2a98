"""Bent wire: its middle at true size, the pieces of its form numbered along it, the bent wire."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import accumulate

from sheetgen.base.pen import Pen
from sheetgen.draw import forming, views
from sheetgen.draw.drawn import Drawn, bend, wire_label
from sheetgen.parts.bent import legs, path
from sheetgen.parts.bent_wire import BentWire
from sheetgen.parts.piece import Piece

MANY = 12  # pieces: of more only how far along the wire each one ends
START = 1.4  # mm across: the circle where the wire starts
TURNS = {0.25: "1/4 turn", 0.5: "1/2 turn", 0.75: "3/4 turn", 1.0: "1 turn"}  # a set fraction is too small to copy
NEAR = 0.03  # of a turn: about 10 degrees, less than an eye tells


def _pieces(piece: Piece) -> list[str]:
    """Each straight and arc as a hand goes about it."""
    sizes = [(piece.length(bend.size.usual, "fine").words, abs(bend.degrees)) for bend in piece[BentWire.form]]
    return [f"round {words}, {turned(degrees)}" if degrees else "straight" for words, degrees in sizes]


def turned(degrees: float) -> str:
    """How far round, in quarters of a turn, as an eye tells it."""
    turn = degrees / 360
    near = next((words for share, words in TURNS.items() if abs(turn - share) <= NEAR), "")
    if near:
        return near
    if turn > 1:
        return f"{turn:.3g} turns"
    after = next(words for share, words in TURNS.items() if share > turn)
    if turn > 0.75:  # noqa: PLR2004 - three quarters
        return f"almost {after}"
    before = [words for share, words in TURNS.items() if share < turn]
    return f"over {before[-1]}" if before else f"under {after}"


def _along(piece: Piece) -> Iterator[str]:
    """How far along the wire each of them ends."""
    thick = piece[BentWire.wire].thickness
    sizes = [(bend.size.usual, math.radians(bend.degrees)) for bend in piece[BentWire.form]]
    ends = accumulate(turn * (size + thick) / 2 if turn else size for size, turn in sizes)
    return (piece.length(end, "millimetre").words for end in ends)


def _template(pen: Pen, piece: Piece) -> None:
    outline = piece.flat[0].outline
    pen.circle(outline.points[0], START, "thin")


def _note(piece: Piece) -> str:
    pieces = _pieces(piece)
    told = f"; {', then '.join(pieces)}" if len(pieces) <= MANY else ""
    cut = f"{piece[BentWire.wire].name}, cut {piece[BentWire.cut].told}"
    return f"the line is the middle of the wire, and starts at the small circle{told}; {cut}"


def _label(piece: Piece) -> str:
    return wire_label(piece[BentWire.wire].name, piece[BentWire.cut].told)


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    """The bent wire with a number where each piece ends, and how far along the wire that is."""
    cut, along, pieces = piece[BentWire.cut], list(_along(piece)), _pieces(piece)
    few = len(pieces) <= MANY
    lines = [f"{i}: {f'{one}, to ' * few}{end}" for i, (one, end) in enumerate(zip(pieces, along, strict=True), 1)]
    head = [f"{cut.unit} along the wire from the circle:"] * few
    form, thick = piece[BentWire.form], piece[BentWire.wire].thickness
    run, joints = path(form, thick), [(0.0, 0.0), *(leg[-1] for leg in legs(form, thick))]
    forming.captioned(pen, lambda on: forming.bent(on, run, joints, thick, k), [*head, *lines, f"cut {cut.words}"])
    told = "; ".join(lines)
    return f"The bent wire and its pieces, {cut.unit}, each to so far along the wire: {told}; cut {cut.words}"


def _view(pen: Pen, piece: Piece) -> float:
    thick = piece[BentWire.wire].thickness
    return views.placed(pen, path(piece[BentWire.form], thick), thick)


DRAWN = Drawn(BentWire.kind, template=_template, note=_note, label=_label, deed=bend, diagram=_diagram, view=_view)
