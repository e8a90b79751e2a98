"""Stone row: its strip or guide with the seats in it, how they are marked, and the row upright as it hangs."""

from __future__ import annotations

from sheetgen.base.pen import Extent, Pen
from sheetgen.base.spelling import counted
from sheetgen.draw import forming, views
from sheetgen.draw.drawn import Drawn, clay_label, clay_note
from sheetgen.parts.piece import Piece
from sheetgen.parts.stone_row import StoneRow, drilled


def _template(pen: Pen, piece: Piece) -> None:
    long = piece[StoneRow.wet_length]
    around = piece.flat[0].extent
    wide = around.height
    centres = _marked(pen, piece, around)
    pen.across(wide + 5, 0, long, long.words, to=wide)
    if piece.has(StoneRow.wet_pitch):
        pen.across(-4, centres[0], centres[-1], piece[StoneRow.wet_span].words, to=0)
    if piece.has(StoneRow.wet_width):
        pen.upright(-4, 0, wide, piece[StoneRow.wet_width].words, to=0)


def _marked(pen: Pen, piece: Piece, around: Extent) -> list[float]:
    """The seats with their middles; how far to the right each is."""
    found = list(drilled(piece, around))
    for hole in found:
        pen.circle(hole.centre, hole.width, "thin")
        pen.cross(hole.centre)
    return [hole.centre[0] for hole in found]


def _mark(pen: Pen, piece: Piece, around: Extent) -> str:
    _marked(pen, piece, around)
    return f"{piece[StoneRow.stones].words} × Ø {piece[StoneRow.drill].told}"


def _note(piece: Piece) -> str:
    clay = clay_note(piece) if piece.has(StoneRow.wet_width) else "a marking guide"
    return f"{clay}; {counted(piece[StoneRow.stones].words, 'seat')}, drill Ø {piece[StoneRow.drill].told}"


def _label(piece: Piece) -> str:
    if piece.has(StoneRow.wet_width):
        return clay_label(piece)
    return f"prick {counted(piece[StoneRow.stones].words, 'middle')} through"


def _deed(piece: Piece) -> str:
    return "cut" if piece.has(StoneRow.wet_width) else "mark"


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    long, drill, n = piece[StoneRow.wet_length], piece[StoneRow.drill], int(piece[StoneRow.stones])
    wide = float(piece[StoneRow.wet_width]) if piece.has(StoneRow.wet_width) else drill + 2
    gaps = piece.has(StoneRow.wet_pitch)
    span, pitch = (piece.usual(StoneRow.wet_span), piece.usual(StoneRow.wet_pitch)) if gaps else (0.0, 0.0)
    first = (long - span) / 2
    edge = piece.length(first)
    pitched = f", {piece[StoneRow.wet_pitch].told} from centre to centre" if gaps else ""

    def row(on: Pen) -> None:
        on.box((0, 0), long * k, wide * k)
        for i in range(n):
            on.circle(((first + i * pitch) * k, wide * k / 2), drill * k, "thin")
        on.across(wide * k + 5, 0, first * k, edge.words, to=wide * k)
        if gaps:
            on.across(-4, first * k, (first + pitch) * k, piece[StoneRow.wet_pitch].words, to=0)

    forming.captioned(pen, row, [f"wet, {long.words} long, drill Ø {drill.words}"])
    return (
        f"{counted(n, 'seat')} along {long.told}, wet{pitched}, the first {edge.told} from the end, drill {drill.told}"
    )


def _view(pen: Pen, piece: Piece) -> float:
    long, d, n = piece.usual(StoneRow.along), piece[StoneRow.stone].size, int(piece[StoneRow.stones])
    if piece[StoneRow.width]:
        wide = piece.usual(StoneRow.width)
        pen.box((-wide / 2, 0), wide, long)
    pitch = d.high + piece.usual(StoneRow.even_gap) if piece.has(StoneRow.even_gap) else 0.0
    for i in range(n):
        views.stone(pen, (0.0, (long - (n - 1) * pitch) / 2 + i * pitch), d.usual, d.usual)
    return long


def _side(pen: Pen, piece: Piece) -> float:
    """The strip on edge, its back at the middle of the view."""
    long, thick = piece.usual(StoneRow.along), 0.0
    if piece[StoneRow.width]:
        thick = piece.usual(StoneRow.thickness) * (1 - piece[StoneRow.clay].thickness_shrinkage.usual)
        pen.box((-thick, 0), thick, long)
    return long


DRAWN = Drawn(
    StoneRow.kind, template=_template, note=_note, label=_label, deed=_deed, diagram=_diagram, view=_view, side=_side,
    mark=_mark,
)  # fmt: skip
