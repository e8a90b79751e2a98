"""Ear wire: the middle of its wire at true size, where it is bent, and the finished hook from the side."""

from __future__ import annotations

from sheetgen.base.pen import Moved, Pen
from sheetgen.draw import sketches
from sheetgen.draw.drawn import Drawn, bend, thick, wire_label
from sheetgen.parts.ear_wire import EarWire, path
from sheetgen.parts.piece import Piece

START = 1.4  # mm across: the circle where the wire starts


def _template(pen: Pen, piece: Piece) -> None:
    pen.circle(piece.flat[0].outline.points[0], START, "thin")


def _note(piece: Piece) -> str:
    wire = f"{thick(piece, piece[EarWire.wire])}, cut {piece[EarWire.cut].told}"
    return f"the line is the middle of the wire, and starts with its loop at the small circle; {wire}"


def _label(piece: Piece) -> str:
    return wire_label(thick(piece, piece[EarWire.wire]), piece[EarWire.cut].told)


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    """The wire straight, with how far each piece of the hook reaches along it."""
    cut, ends, at = piece[EarWire.cut], [], 0.0
    for name, what in (
        ("loop", EarWire.loop_turn), ("front", EarWire.front), ("bend", EarWire.bend_turn), ("back", EarWire.back),
    ):  # fmt: skip
        at += piece.usual(what)
        ends.append((at, f"{name} to {piece.length(at, 'millimetre').words}"))
    marks = [*ends, (float(cut), f"cut {cut.words}")]
    sketches.stops(pen, cut, marks, piece[EarWire.wire].thickness, k)
    return f"A wire of {cut.told}; from the end that becomes the loop, {cut.unit}: {', '.join(w for _, w in ends)}"


def _view(pen: Pen, piece: Piece) -> float:
    """The middle of its loop under (0, 0)."""
    d, loop, points = piece[EarWire.wire].thickness, piece.usual(EarWire.loop), path(piece)
    top = min(y for _, y in points) - d / 2
    sketches.wire(Moved(pen, (-(loop + d) / 2, -top)), points, d)
    return loop / 2 - top


DRAWN = Drawn(EarWire.kind, template=_template, note=_note, label=_label, deed=bend, diagram=_diagram, view=_view)
