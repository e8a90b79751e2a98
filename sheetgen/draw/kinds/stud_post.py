"""Stud post: from the side, the pad at its foot, with what goes through the lobe and what the nut takes."""

from __future__ import annotations

from sheetgen.base.pen import Pen
from sheetgen.draw.drawn import Drawn
from sheetgen.parts.piece import Piece
from sheetgen.parts.stud_post import StudPost

PAD = (3.0, 1.2)  # half its width and how thick it is drawn, in millimetres on paper


def _diagram(pen: Pen, piece: Piece, k: float) -> str:
    d, stands = piece[StudPost.wire].thickness * k, piece[StudPost.stands]
    lobe, seat = piece[StudPost.lobe], piece.usual(StudPost.seat) * k
    half, deep = PAD[0] + d, max(PAD[1], seat * 2)
    pen.box((-deep, -half), deep, 2 * half, "thin")
    pen.box((-seat, -d / 2), seat + stands * k, d)
    pen.across(half + 3, 0, lobe * k, f"lobe {lobe.words}", to=d / 2)
    pen.across(-half - 3, 0, stands * k, stands.words, to=-d / 2)
    seated = f", {piece[StudPost.seat].told} of it in a seat" if seat else ""
    return (
        f"A post that stands {stands.told} out of its pad{seated}; {lobe.told} of it for the lobe, the rest for the nut"
    )


DRAWN = Drawn(StudPost.kind, diagram=_diagram)
