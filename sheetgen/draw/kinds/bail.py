"""Bail: its strip with the lines where it lies on the former, the strip over its former, seen from the front."""

from __future__ import annotations

from sheetgen.base.pen import Pen, arc
from sheetgen.draw import forming, sketches
from sheetgen.draw.drawn import Drawn, clay_note
from sheetgen.parts.bail import Bail
from sheetgen.parts.piece import Piece


def _template(pen: Pen, piece: Piece) -> None:
    long, wide, front, back = (piece[f] for f in (Bail.strip, Bail.wet_width, Bail.wet_front, Bail.wet_back))
    for x in (front, long - back):
        pen.line([(x, 0), (x, wide)], "fold")
    pen.across(-9, 0, front, front.words, to=0)
    pen.across(-4, long - back, long, back.words, to=0)
    pen.across(wide + 5, 0, long, long.words, to=wide)
    pen.upright(-4, 0, wide, wide.words, to=0)


def _note(piece: Piece) -> str:
    return f"{clay_note(piece)}; over a former of {piece[Bail.former_used].told}"


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    """The strip over its former, in section, wet."""
    front, back, former, strip = (piece[f] for f in (Bail.wet_front, Bail.wet_back, Bail.former_used, Bail.strip))
    thick, meet = piece.usual(Bail.thickness), piece[Bail.wet_meeting] if piece.has(Bail.wet_meeting) else None
    path = forming.over_bar((former + thick) / 2, front, back, (meet or 0, thick / 2))
    edge, start = (max(abs(x) for x, _ in path) + thick / 2) * k, (meet or 0) * k
    side = (thick if meet else former / 2 + thick) * k

    def section(on: Pen) -> None:
        forming.folded(on, path, former, thick, k)
        on.upright(-edge - 5, start, start + front * k, front.words, to=-side)
        on.upright(edge + (14 if meet else 7), start, start + back * k, back.words, to=side)
        if meet:
            on.upright(edge + 7, 0, start, meet.words, to=edge)

    forming.captioned(pen, section, [f"former {former.words}, strip {strip.words}"])
    joined = f", coming together {meet.told} under its middle" if meet else ""
    return (
        f"A strip of {strip.told} over a former of {former.told}, wet: front tail {front.told}, "
        f"back tail {back.told}{joined}"
    )


def _view(pen: Pen, piece: Piece) -> float:
    """From the front: the strip's width, over the loop and down the front tail."""
    inside, thick, wide = (piece.usual(n) for n in (Bail.fired_inside, Bail.fired_thickness, Bail.width))
    meeting = piece[Bail.meeting]
    loop = thick + (inside if meeting is None else inside / 2 + meeting)
    start = thick + inside / 2 if meeting is None else loop
    pen.box((-wide / 2, 0), wide, start + piece.usual(Bail.front_tail))
    return loop


def _side(pen: Pen, piece: Piece) -> float:
    """From the side, its tails up and its arch down: as a shank hangs under what it is joined to."""
    inside, thick = piece.usual(Bail.fired_inside), piece.usual(Bail.fired_thickness)
    r, tail = (inside + thick) / 2, piece.usual(Bail.front_tail)
    sketches.wire(pen, [(-r, 0.0), *arc((0.0, tail), r, 180, 0, 48), (r, 0.0)], thick)
    return tail + r + thick / 2


DRAWN = Drawn(Bail.kind, template=_template, note=_note, diagram=_diagram, view=_view, side=_side)
