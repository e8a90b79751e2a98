"""Hollow lentil: its disc, a half on its ball in section and where it is sanded, the finished lentil face on."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw import forming, sketches
from sheetgen.draw.drawn import Drawn, clay_note
from sheetgen.parts.lentil import Lentil
from sheetgen.parts.piece import Piece


def _template(pen: Pen, piece: Piece) -> None:
    wide = piece[Lentil.wet_disc]
    pen.across(-4, 0, wide, f"2 × Ø {wide.words}", to=0)
    pen.cross((wide / 2, wide / 2))


def _note(piece: Piece) -> str:
    vent = f"; vent Ø {piece[Lentil.drill].told} in one of the two" if piece.has(Lentil.drill) else ""
    return f"{clay_note(piece)}{vent}"


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    """A half on its ball, in section, wet: its height as it is formed, and to the line where its rim is sanded flat."""
    ball, disc, formed, high = (
        piece[one] for one in (Lentil.ball, Lentil.wet_disc, Lentil.formed_high, Lentil.wet_high)
    )

    def half(on: Pen) -> None:
        edge, rim, crown, _, foot = sketches.cap(on, ball, piece.usual(Lentil.thickness), disc, k, over=True)
        sanded = crown + high * k
        on.line([(-rim - 1, sanded), (rim + 1, sanded)], "meet")
        on.upright(-edge - 3, crown, foot, formed.words, to=-rim)
        on.upright(edge + 6, crown, sanded, high.words, to=rim + 1)

    under = (f"ball {ball.words}", f"{formed.words} high, formed", f"{high.words} high, sanded flat")
    forming.captioned(pen, half, under)
    return (
        f"A disc over a ball {ball.told} across, wet: each half is {formed.told} high over all as it is formed, "
        f"{high.told} when its rim is sanded flat"
    )


def _view(pen: Pen, piece: Piece) -> float:
    across = piece.usual(Lentil.across)
    pen.circle((0.0, across / 2), across)
    return across


DRAWN = Drawn(
    Lentil.kind, template=_template, note=_note, diagram=_diagram, view=_view, textured=("front", "side", "back")
)
